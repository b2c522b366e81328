import type { Book } from '../../book/book.js';
import { regionBounds } from '../../geometry/measure.js';
import { polyline } from '../../geometry/pen.js';
import type { Line } from '../../geometry/types.js';
import type { Attached } from '../../panel/attached.js';
import type { Panel } from '../../panel/panel.js';
import { lightnessOf } from '../../scene/colour.js';
import { cardDefs, cardMarkup, type DrawnCard, SHARED_DEFS } from './card.js';
import { lighter } from './colour.js';
import { foldMarkup } from './fold-marks.js';
import { GRAIN_DEFS, grain } from './grain.js';
import { GROUND_DEFS, tableTop } from './ground.js';
import { shadowShift } from './light.js';
import { blurFilter, grown, n, picture } from './markup.js';

/** Between neighbouring cards and round them all, as shares of a card's larger side. */
const GAP_SHARE = 0.11;
const MARGIN_SHARE = 0.16;
/** The picture is laid out to come near this width for each height. */
const WANTED_SHAPE = 1.4;
/** How high the cards seem to lie above the table; more makes them float. */
const LIFT_MM = 7;
const SHADOW_BLUR_MM = 1.7;
const SHADOW = '#3a2a1e';
/** The cards are drawn at about half the preview's size. */
const EMPHASIS = 1.7;

/**
 * All panels flat on a table, front first in reading order, as they come from the cutter: cut
 * through, pressed, and with their folds marked as in origami (valley dashed, mountain dash-dot).
 * Width and height are in mm of card.
 */
export function explodedSvg(book: Book, panels: readonly Panel[]): string {
  const inOrder = [...panels].sort((p, q) => p.number - q.number);
  const larger = Math.max(book.width, book.height);
  const pitchX = book.width + GAP_SHARE * larger;
  const pitchY = book.height + GAP_SHARE * larger;
  const columns = bestColumns(inOrder.length, pitchX, pitchY);
  const rows = Math.ceil(inOrder.length / columns);
  const width = (columns - 1) * pitchX + book.width;
  const foot = (rows - 1) * pitchY + book.height;
  const gap = GAP_SHARE * larger;
  const small = smallPieces(
    panels.flatMap(({ attached }) => attached),
    width,
    foot + gap,
    gap / 2,
  );
  const laid = { minX: 0, minY: 0, maxX: width, maxY: small.footMm ?? foot };
  const frame = grown(laid, MARGIN_SHARE * larger);
  const cards = inOrder.map((panel) => drawnCard(book, panel));
  const body = cards.map((card, i) => {
    const x = ((i % columns) + columnsFree(i, inOrder.length, columns) / 2) * pitchX;
    const y = Math.floor(i / columns) * pitchY;
    const content = laidCard(card, foldMarks(book, inOrder[i]));
    return `<g id="laid-${card.id}" transform="translate(${n(x)} ${n(y)})">${content}</g>`;
  });
  return picture(
    frame,
    SHARED_DEFS + GROUND_DEFS + GRAIN_DEFS + [...cards, ...small.cards].map(cardDefs).join(''),
    tableTop(frame) + body.join('') + small.markup,
  );
}

/** What is glued to the panels, laid out below them in rows as wide as they are. */
function smallPieces(
  pieces: readonly Attached[],
  widthMm: number,
  topMm: number,
  gapMm: number,
): { readonly cards: readonly DrawnCard[]; readonly markup: string; readonly footMm?: number } {
  if (pieces.length === 0) return { cards: [], markup: '' };
  let [x, y, rowMm] = [0, topMm, 0];
  const cards = pieces.map(smallCard);
  const markup = cards.map((card) => {
    const { minX, minY, maxX, maxY } = card.frame;
    if (x > 0 && x + maxX - minX > widthMm) [x, y, rowMm] = [0, y + rowMm + gapMm, 0];
    const place = `translate(${n(x - minX)} ${n(y - minY)})`;
    x += maxX - minX + gapMm;
    rowMm = Math.max(rowMm, maxY - minY);
    return `<g id="laid-${card.id}" transform="${place}">${laidCard(card, '')}</g>`;
  });
  return { cards, markup: markup.join(''), footMm: y + rowMm };
}

const smallCard = (piece: Attached): DrawnCard => ({
  id: `piece-${piece.name}`,
  stock: piece.stock,
  card: piece.card,
  grooves: piece.scores.map(({ line }) => line),
  reliefs: piece.reliefs,
  frame: regionBounds(piece.card),
  emphasis: EMPHASIS,
});

/** As many columns as bring the whole nearest to the wanted shape, compared as ratios. */
function bestColumns(count: number, width: number, height: number): number {
  let best = 1;
  let bestMiss = Number.POSITIVE_INFINITY;
  for (let columns = 1; columns <= count; columns++) {
    const shape = (columns * width) / (Math.ceil(count / columns) * height);
    const miss = Math.abs(Math.log(shape / WANTED_SHAPE));
    if (miss < bestMiss) [best, bestMiss] = [columns, miss];
  }
  return best;
}

/** Columns that stay empty in a card's row: a last row that is not full stands in the middle. */
function columnsFree(index: number, count: number, columns: number): number {
  const inLastRow = count % columns;
  const isLast = index >= count - inLastRow;
  return isLast && inLastRow > 0 ? columns - inLastRow : 0;
}

const drawnCard = (book: Book, panel: Panel): DrawnCard => ({
  id: `panel-${panel.number}`,
  stock: panel.stock,
  card: panel.card,
  grooves: panel.scores.filter(({ kind }) => kind === 'detail').map(({ line }) => line),
  reliefs: panel.reliefs,
  frame: regionBounds(book.panels[panel.number - 1].blank),
  emphasis: EMPHASIS,
});

function laidCard(card: DrawnCard, folds: string): string {
  const { x, y } = shadowShift(LIFT_MM);
  const shadow = `shadow-of-${card.id}`;
  return (
    blurFilter(shadow, grown(card.frame, 3 * SHADOW_BLUR_MM + y), SHADOW_BLUR_MM) +
    `<g filter="url(#${shadow})"><use href="#${card.id}" transform="translate(${n(x)} ${n(y)})" ` +
    `fill="${SHADOW}" fill-opacity="0.62"/></g>` +
    cardMarkup(card, folds + grain(card.frame))
  );
}

/** The two hinges and whatever folds the panel has of its own. */
function foldMarks(book: Book, panel: Panel): string {
  const { leftX, rightX, fold } = book.panels[panel.number - 1].hinge;
  const own = (kind: 'mountain' | 'valley') =>
    panel.scores.filter((score) => score.kind === kind).map(({ line }) => line);
  const hinges: Line[] = [leftX, rightX].map((x) =>
    polyline([
      { x, y: 0 },
      { x, y: book.height },
    ]),
  );
  const { colour } = panel.stock;
  const ink = lighter(colour, lightnessOf(colour) > 50 ? -45 : 45);
  return (['mountain', 'valley'] as const)
    .map((kind) => foldMarkup(kind, [...own(kind), ...(fold === kind ? hinges : [])], ink))
    .join('');
}
