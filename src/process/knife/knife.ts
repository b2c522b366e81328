import type { Piece } from '../../panel/piece.js';
import type { Layers, Mark } from '../layers.js';
import { heldMarks } from '../nibs/nibs.js';
import { foldMarks } from '../perforation.js';
import type { KnifeProcess } from '../process.js';
import { bladeMark } from './blade-marks.js';
import { stylusMarks } from './stylus.js';

/** A blade parts card and takes none away. */
const NO_KERF = 0;

/**
 * The designed layers of a piece as a drag knife and its other tools run them: cuts with overcut
 * and, where the file compensates, on the blade's pivot; relief as strokes of a ball. Folds that
 * come as short cuts (`perforation`) are the blade's work too.
 */
export function knifeLayers(
  piece: Piece,
  designed: Layers,
  { blade, relief, folds, nibs }: KnifeProcess,
  ballMm: number,
): Layers {
  const cut = (mark: Mark): Mark => bladeMark(mark, blade);
  return {
    ...designed,
    emboss: stylusMarks(piece, designed.emboss, relief, ballMm),
    fold: designed.fold
      .flatMap((mark) => foldMarks(mark, folds))
      .map((mark) => (mark.kind === 'perforation' ? cut(mark) : mark)),
    cut: heldMarks(piece, designed.cut, nibs, NO_KERF).map(cut),
  };
}
