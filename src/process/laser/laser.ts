import type { Piece } from '../../panel/piece.js';
import type { Layers } from '../layers.js';
import type { LaserProcess } from '../process.js';

/** The designed layers of a piece as a laser burns them. */
export function laserLayers(_piece: Piece, designed: Layers, _process: LaserProcess): Layers {
  return designed;
}
