import type { Piece } from '../../panel/piece.js';
import type { Mark } from '../layers.js';
import type { StylusRelief } from '../process.js';

export const stylusMarks = (
  _piece: Piece,
  designed: readonly Mark[],
  _relief: StylusRelief,
  _ballMm: number,
): readonly Mark[] => designed;
