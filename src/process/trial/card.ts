import { union } from '../../geometry/boolean/boolean.js';
import { outlineLines } from '../../geometry/clip-lines.js';
import { regionBounds } from '../../geometry/measure.js';
import { moveRegion, reversed, translation } from '../../geometry/transform.js';
import type { Region } from '../../geometry/types.js';
import type { Piece } from '../../panel/piece.js';
import type { Score } from '../../panel/score.js';
import type { Stock } from '../../scene/scene.js';
import { BUNDLED_FONTS } from '../../scenery/lettering/fonts.js';
import { lineOfText } from '../../scenery/lettering/line-of-text.js';
import type { Process } from '../process.js';

/** A piece of a trial card and the process that it is run by: of that, one setting is tried. */
export interface TrialPiece {
  readonly piece: Piece;
  readonly process: Process;
  /** How often its folds are gone over; once if not said. */
  readonly foldPasses?: number;
}

/** Pieces that together show what one setting should be, or several. */
export interface TrialCard {
  readonly title: string;
  /** What to do with it, look for and measure, a paragraph each. */
  readonly says: readonly string[];
  readonly pieces: readonly TrialPiece[];
}

/** What the cards are cut from and pressed with. */
export interface TrialMeans {
  readonly process: Process;
  readonly stock: Stock;
}

/** Letters of labels are drawn, not cut, and keep this far apart. */
const LETTER_GAP_MM = 0.25;
/** Height of the capitals; well above what can be read from 400 mm by ISO 9241-3, 1.9 mm. */
export const LABEL_MM = 2.8;

/** Of small cards, so that they handle well. */
export const CORNER_MM = 2;

export type Anchor = 'left' | 'middle' | 'right';

/** Outlines of letters, their baseline at y, standing left of, about or right of x. */
export function label(
  text: string,
  x: number,
  y: number,
  { anchor = 'middle', capMm = LABEL_MM }: { anchor?: Anchor; capMm?: number } = {},
): Score[] {
  const font = BUNDLED_FONTS.fontNamed('sans')!;
  const { letters, widthMm } = lineOfText(font, text, { capHeightMm: capMm, gapMm: LETTER_GAP_MM });
  const left = x - widthMm * { left: 0, middle: 0.5, right: 1 }[anchor];
  const shapes = union(letters.map(({ shape }) => moveRegion(shape, translation(left, y))));
  return outlineLines(shapes).map((line) => ({ line, kind: 'detail' }));
}

/** Card with holes in it, none of which touches another or the edge. */
export const pierced = (card: Region, holes: readonly Region[]): Region => ({
  contours: [
    ...card.contours,
    ...holes.flatMap(({ contours }) => contours.map((contour) => reversed(contour))),
  ],
});

/** A piece as large as its card, worked from the front alone. */
export function trialPiece(
  name: string,
  stock: Stock,
  card: Region,
  { scores = [], reliefs = [] }: Partial<Pick<Piece, 'scores' | 'reliefs'>>,
): Piece {
  const { maxX, maxY } = regionBounds(card);
  return {
    name,
    folder: 'trial',
    stock,
    copies: 1,
    width: maxX,
    height: maxY,
    card,
    scores,
    reliefs,
    guides: [],
    scoring: 'front',
  };
}
