import { inOrder, translation } from '../geometry/transform.js';
import type { Piece } from '../panel/piece.js';
import {
  type Face,
  isPressedFrom,
  type Layers,
  type Mark,
  moveLayers,
  pieceLayers,
  turnedOver,
} from '../process/layers.js';
import type { Stock } from '../scene/scene.js';
import { registerMarks } from './register-marks.js';

/** One piece on a sheet, upright as designed: its page's origin lies at (dx, dy), mm, y down. */
export interface Placement {
  readonly piece: Piece;
  readonly dx: number;
  readonly dy: number;
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
  /** In working order: the back comes first, because the cut on the front frees the pieces. */
  readonly faces: readonly Face[];
  /** All the work, the cut too, is done from the back, so that nothing is turned over. */
  readonly mirrored: boolean;
}

/** A sheet of the given placements, with the faces that it must be worked from. */
export function sheetOf(name: string, stock: Stock, placements: readonly Placement[]): Sheet {
  const front = placements.some((p) => isPressedFrom(p.piece, 'front'));
  const back = placements.some((p) => isPressedFrom(p.piece, 'back'));
  const mirrored = back && !front;
  return {
    name,
    stock,
    width: stock.sheet.width,
    height: stock.sheet.height,
    placements,
    faces: mirrored ? ['back'] : back ? ['back', 'front'] : ['front'],
    mirrored,
  };
}

export interface PlacedLayers {
  readonly piece: string;
  readonly copy: number;
  readonly layers: Layers;
}

/** What is done to a sheet from one of its faces. */
export interface SheetWork {
  /** Placement by placement, in the coordinates of the sheet with that face up (mm, y down). */
  readonly placed: readonly PlacedLayers[];
  readonly register: readonly Mark[];
}

/** The work of one face. The back is seen with the sheet turned over left to right. */
export function sheetWork(sheet: Sheet, face: Face): SheetWork {
  const faces: Face[] = sheet.mirrored ? ['front', 'back'] : [face];
  const placed = sheet.placements.map(({ piece, dx, dy, copy }) => {
    const place = translation(dx, dy);
    const m = face === 'back' ? inOrder(place, turnedOver(sheet.width)) : place;
    return { piece: piece.name, copy, layers: moveLayers(pieceLayers(piece, faces), m) };
  });
  const twoFaces = sheet.faces.length > 1;
  return {
    placed,
    register: twoFaces ? registerMarks(sheet.width, sheet.height, sheet.stock.margin) : [],
  };
}
