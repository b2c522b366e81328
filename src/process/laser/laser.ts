import { outlineLines } from '../../geometry/clip-lines.js';
import { chainLength } from '../../geometry/measure.js';
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
      ? cutOnce([
          ...slits.map(slitMark),
          ...heldMarks(piece, cutMarks(cut), process.nibs, process.kerfMm),
        ])
      : [],
    guide: designed.guide,
  };
}

/** Of a contour whose sides lie on each other for more than this share of it a slit is left. */
const SLIT_SHARE = 1 / 3;

/** Cuts of which none runs where another has: openings hardly wider than the beam have such sides. */
function cutOnce(marks: readonly Mark[]): Mark[] {
  const groups = undoubled(
    [],
    marks.map((mark) => [mark]),
  );
  return groups.flatMap((parts, k) => openAs(marks[k], parts));
}

function openAs(whole: Mark, parts: readonly Mark[]): readonly Mark[] {
  if (!whole.closed || parts.every(({ closed }) => closed)) return parts;
  const leftMm = parts.reduce((mm, { cubics }) => mm + chainLength(cubics), 0);
  const isSlit = leftMm < (1 - SLIT_SHARE) * chainLength(whole.cubics);
  return parts.map((part) => ({ ...part, kind: isSlit ? 'slit' : 'shared' }));
}

const slitMark = ({ cubics }: { cubics: Mark['cubics'] }): Mark => ({
  cubics,
  closed: false,
  kind: 'slit',
});
