import type { Book } from '../book/book.js';
import type { Panel } from './panel.js';

/** A fold's radius in calipers of its card. */
const FOLD_RADIUS = 0.5;

/**
 * Thickness of the closed book, mm: both strips' faces lie on each other, N (t + r) with the fold
 * radius r = t / 2, the panels between them, and whatever is glued to the panels. Glue left out.
 */
export function closedThickness(book: Book, panels: readonly Panel[]): number {
  const { faces, card } = book.spine;
  const strips = faces * card.caliperMm * (1 + FOLD_RADIUS);
  const cards = book.panels.reduce((sum, panel) => sum + panel.card.caliperMm, 0);
  const attached = panels.reduce(
    (sum, panel) => sum + thickest(panel, 'front') + thickest(panel, 'behind'),
    0,
  );
  return strips + cards + attached;
}

/** What lies on one face of a panel lies side by side: the thickest counts. */
const thickest = ({ attached }: Panel, place: 'front' | 'behind'): number =>
  Math.max(
    0,
    ...attached
      .filter((piece) => piece.place === place)
      .map(({ standOffMm, stock }) => standOffMm + stock.caliperMm),
  );
