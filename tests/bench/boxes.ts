import type { Box } from '../../src/sheet/footprint.js';

/** Packings of boxes as anyone would do them by hand, to measure against; all lengths in one unit. */

export type Size = Pick<Box, 'width' | 'height'>;

const tallestFirst = (boxes: readonly Size[]): Size[] =>
  boxes.toSorted((a, b) => b.height - a.height || b.width - a.width);

interface Shelf {
  readonly height: number;
  used: number;
}

/** Sheets taken when boxes stand on shelves, tallest first, each on the first shelf with room. */
export function shelfSheets(boxes: readonly Size[], sheet: Size, gap: number): number {
  const sheets: { shelves: Shelf[]; used: number }[] = [];
  for (const box of tallestFirst(boxes)) {
    const room = ({ height, used }: Shelf) =>
      height >= box.height && used + box.width <= sheet.width;
    const shelf = sheets.flatMap(({ shelves }) => shelves).find(room);
    if (shelf) {
      shelf.used += box.width + gap;
      continue;
    }
    let on = sheets.find(({ used }) => used + box.height <= sheet.height);
    if (!on) {
      on = { shelves: [], used: 0 };
      sheets.push(on);
    }
    on.shelves.push({ height: box.height, used: box.width + gap });
    on.used += box.height + gap;
  }
  return sheets.length;
}

/** Sheets taken when each box, tallest first, goes as far up and then left as it can. */
export function bottomLeftSheets(boxes: readonly Size[], sheet: Size, gap: number): number {
  const sheets: Box[][] = [];
  for (const box of tallestFirst(boxes)) {
    const at = sheets.findIndex((laid) => topLeftPlace(laid, box, sheet, gap) !== null);
    const laid = at < 0 ? [] : sheets[at];
    if (at < 0) sheets.push(laid);
    laid.push(topLeftPlace(laid, box, sheet, gap)!);
  }
  return sheets.length;
}

function topLeftPlace(laid: readonly Box[], box: Size, sheet: Size, gap: number): Box | null {
  const xs = [0, ...laid.map((b) => b.x + b.width + gap)].toSorted((a, b) => a - b);
  const ys = [0, ...laid.map((b) => b.y + b.height + gap)].toSorted((a, b) => a - b);
  for (const y of ys.filter((v) => v + box.height <= sheet.height)) {
    for (const x of xs.filter((v) => v + box.width <= sheet.width)) {
      const clear = laid.every(
        (b) =>
          x >= b.x + b.width + gap ||
          b.x >= x + box.width + gap ||
          y >= b.y + b.height + gap ||
          b.y >= y + box.height + gap,
      );
      if (clear) return { x, y, ...box };
    }
  }
  return null;
}
