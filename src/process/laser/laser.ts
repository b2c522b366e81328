import { outlineLines } from '../../geometry/clip-lines.js';
import type { Piece } from '../../panel/piece.js';
import { cutMarks, type Layers, type Mark } from '../layers.js';
import { heldMarks } from '../nibs/nibs.js';
import { foldMarks } from '../perforation.js';
import type { LaserProcess } from '../process.js';
import { undoubled } from '../undoubled.js';
import { engravedMarks } from './engrave.js';
import { kerfPath } from './kerf.js';

/**
 * The designed layers of a piece as a laser burns them: the cut moved into the waste by half the
 * kerf, with its nibs; folds as short cuts if asked; relief as strokes; nothing burnt twice.
 */
export function laserLayers(piece: Piece, designed: Layers, process: LaserProcess): Layers {
  const { cut, slits } = kerfPath(piece.card, process.kerfMm);
  const [fold, detail, emboss] = undoubled(
    [...outlineLines(piece.card), ...slits],
    [designed.fold, designed.detail, engravedMarks(designed.emboss, process.relief)],
  );
  // Only the face that the card is cut from has a designed cut.
  const isCut = designed.cut.length > 0;
  return {
    emboss,
    fold: fold.flatMap((mark) => foldMarks(mark, process.folds)),
    detail,
    cut: isCut
      ? [...slits.map(slitMark), ...heldMarks(piece, cutMarks(cut), process.nibs, process.kerfMm)]
      : [],
    guide: designed.guide,
  };
}

const slitMark = ({ cubics }: { cubics: Mark['cubics'] }): Mark => ({
  cubics,
  closed: false,
  kind: 'slit',
});
