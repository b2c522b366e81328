import type { Piece } from '../panel/piece.js';
import { type Face, isPressedFrom } from '../process/layers.js';
import type { Process } from '../process/process.js';
import type { Stock } from '../scene/scene.js';

/**
 * One piece on a sheet: its page's origin lies at (dx, dy), mm, y down. Upright as designed, or
 * turned by half round the middle of its page, which keeps its grain.
 */
export interface Placement {
  readonly piece: Piece;
  readonly dx: number;
  readonly dy: number;
  readonly halfTurn?: boolean;
  /** 1 for the first copy of the piece. */
  readonly copy: number;
}

/** One sheet of card with all that is made from it, grain along its height. */
export interface Sheet {
  /** Such as `sheet-01`; also its file's name. */
  readonly name: string;
  readonly stock: Stock;
  readonly width: number;
  readonly height: number;
  /** As seen from the front. */
  readonly placements: readonly Placement[];
  /** In working order: the face it is cut from comes last, because the cut frees the pieces. */
  readonly faces: readonly Face[];
  /** All the work, the cut too, is done from the back, so that nothing is turned over. */
  readonly mirrored: boolean;
}

/** A sheet of the given placements, with the faces that it must be worked from. */
export function sheetOf(
  name: string,
  stock: Stock,
  placements: readonly Placement[],
  process: Process,
): Sheet {
  const faces = workedFaces(pressedOf(placements.map((p) => p.piece)), process);
  return {
    name,
    stock,
    width: stock.sheet.width,
    height: stock.sheet.height,
    placements,
    faces,
    mirrored: faces.length === 1 && faces[0] === 'back',
  };
}

/** The face that a sheet is cut from. */
export const cutFace = (sheet: Sheet): Face => sheet.faces[sheet.faces.length - 1];

/** From which faces anything is scored or embossed. */
export interface Pressed {
  readonly front: boolean;
  readonly back: boolean;
}

export const pressedOf = (pieces: readonly Piece[]): Pressed => ({
  front: pieces.some((piece) => isPressedFrom(piece, 'front')),
  back: pieces.some((piece) => isPressedFrom(piece, 'back')),
});

/** The faces that a sheet must be worked from, in working order. */
export function workedFaces({ front, back }: Pressed, process: Process): readonly Face[] {
  if (process.faces.length === 1) return process.faces;
  const soots = process.kind === 'laser' && process.faceDown;
  if (soots) return front ? ['front', 'back'] : ['back'];
  if (!back) return ['front'];
  return front ? ['back', 'front'] : ['back'];
}
