import type { Book } from '../book/book.js';
import { regionBounds } from '../geometry/measure.js';
import { moveLine, moveRegion, translation } from '../geometry/transform.js';
import type { Piece } from './piece.js';

/** Card between a small piece and the edge of its file's page, mm. */
const PAGE_MARGIN_MM = 1;

/** A piece wherever it was drawn. */
export type DrawnPiece = Omit<Piece, 'width' | 'height' | 'scoring' | 'pressedBy'>;

/** A drawing moved to a page of its own. */
export function pageOf(book: Book, drawn: DrawnPiece): Piece {
  const { minX, minY, maxX, maxY } = regionBounds(drawn.card);
  const place = translation(PAGE_MARGIN_MM - minX, PAGE_MARGIN_MM - minY);
  return {
    ...drawn,
    width: maxX - minX + 2 * PAGE_MARGIN_MM,
    height: maxY - minY + 2 * PAGE_MARGIN_MM,
    card: moveRegion(drawn.card, place),
    scores: drawn.scores.map((score) => ({ ...score, line: moveLine(score.line, place) })),
    reliefs: drawn.reliefs.map(({ strokes, ...relief }) => ({
      ...relief,
      region: moveRegion(relief.region, place),
      ...(strokes ? { strokes: strokes.map((line) => moveLine(line, place)) } : {}),
    })),
    guides: drawn.guides.map((line) => moveLine(line, place)),
    scoring: book.spine.scoring,
  };
}
