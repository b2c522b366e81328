import type { Piece } from '../panel/piece.js';
import { knifeLayers } from './knife/knife.js';
import { laserLayers } from './laser/laser.js';
import { type Face, type Layers, pieceLayers } from './layers.js';
import type { Process } from './process.js';

/** How pieces are to be made. */
export interface Means {
  readonly process: Process;
  /** Diameter of the ball that relief is pressed with, mm. */
  readonly ballMm: number;
}

/** A piece as it goes to the machine: relief that something else presses is not worked by it. */
export const asRun = (piece: Piece): Piece =>
  piece.pressedBy === undefined ? piece : { ...piece, reliefs: [] };

/**
 * What the machine runs to make a piece from the given faces, in the piece's own front coordinates
 * (mm, y down): the designed lines with kerf, nibs, overcut, perforation and relief strokes.
 */
export function machineLayers(
  piece: Piece,
  faces: readonly Face[],
  cutFace: Face,
  { process, ballMm }: Means,
): Layers {
  const designed = pieceLayers(piece, faces, cutFace);
  switch (process.kind) {
    case 'knife':
      return knifeLayers(piece, designed, process, ballMm);
    case 'laser':
      return laserLayers(piece, designed, process);
    case 'press':
      return designed;
  }
}
