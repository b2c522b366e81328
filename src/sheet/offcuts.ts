import { chordsOf } from '../geometry/chain.js';
import { boundsOf } from '../geometry/measure.js';
import { outlineOf, windingAt } from '../geometry/outline.js';
import { moveRegion } from '../geometry/transform.js';
import { placementOf } from './job.js';
import type { Placement, Sheet } from './sheet.js';

/** A rectangle of card that is left over, in whole mm from the sheet's top left, seen from its front. */
export interface Offcut {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Worth keeping: room for a small loose piece with its margins. Common practice, no source. */
const LEAST_MM = 60;

/**
 * The largest rectangles of card left on a sheet, beside its pieces and in their windows, largest
 * first; none overlaps another. Found in whole millimetres, so each may be 2 mm larger in truth.
 */
export function offcuts(sheet: Sheet, leastMm = LEAST_MM): Offcut[] {
  const grid = new Grid(Math.floor(sheet.width), Math.floor(sheet.height));
  for (const placement of sheet.placements) takeCard(grid, placement);
  const found: Offcut[] = [];
  for (let next = grid.largest(leastMm); next !== null; next = grid.largest(leastMm)) {
    found.push(next);
    grid.takeBox(next);
  }
  return found;
}

/** Chords stay this near to curves; places along an outline are this far from each other, mm. */
const CHORD_MM = 0.05;
const STEP_MM = 0.2;

/** Takes every cell that has any of the card in it. */
function takeCard(grid: Grid, placement: Placement): void {
  const card = moveRegion(placement.piece.card, placementOf(placement));
  const reach = STEP_MM / 2 + CHORD_MM;
  for (const contour of card.contours) {
    const { x, y } = chordsOf(contour, CHORD_MM);
    for (let k = 0; k + 1 < x.length; k++) {
      const steps = Math.ceil(Math.hypot(x[k + 1] - x[k], y[k + 1] - y[k]) / STEP_MM);
      for (let s = 0; s <= steps; s++) {
        const t = steps === 0 ? 0 : s / steps;
        grid.takeNear(x[k] + t * (x[k + 1] - x[k]), y[k] + t * (y[k + 1] - y[k]), reach);
      }
    }
  }
  // A cell that no outline crosses is all card or none.
  const outline = outlineOf(card);
  const { minX, minY, maxX, maxY } = boundsOf(card.contours);
  for (let row = Math.floor(minY); row < maxY; row++) {
    for (let column = Math.floor(minX); column < maxX; column++) {
      if (windingAt(outline, column + 0.5, row + 0.5) !== 0) grid.take(column, row);
    }
  }
}

/** A sheet in cells of 1 mm, free or taken. */
class Grid {
  private readonly taken: Uint8Array;

  constructor(
    private readonly columns: number,
    private readonly rows: number,
  ) {
    this.taken = new Uint8Array(columns * rows);
  }

  take(column: number, row: number): void {
    if (column < 0 || row < 0 || column >= this.columns || row >= this.rows) return;
    this.taken[row * this.columns + column] = 1;
  }

  takeNear(x: number, y: number, reach: number): void {
    for (let row = Math.floor(y - reach); row <= y + reach; row++) {
      for (let column = Math.floor(x - reach); column <= x + reach; column++) {
        this.take(column, row);
      }
    }
  }

  takeBox({ x, y, width, height }: Offcut): void {
    for (let row = y; row < y + height; row++) {
      this.taken.fill(1, row * this.columns + x, row * this.columns + x + width);
    }
  }

  /** The free rectangle of the largest area with neither side less than `least`. */
  largest(least: number): Offcut | null {
    let best: Offcut | null = null;
    let area = 0;
    const depth = new Int32Array(this.columns + 1);
    for (let row = 0; row < this.rows; row++) {
      for (let column = 0; column < this.columns; column++) {
        depth[column] = this.taken[row * this.columns + column] === 1 ? 0 : depth[column] + 1;
      }
      eachSpan(depth, (from, to, high) => {
        const width = to - from;
        if (width < least || high < least || width * high <= area) return;
        best = { x: from, y: row + 1 - high, width, height: high };
        area = width * high;
      });
    }
    return best;
  }
}

/** Each widest span under a skyline, as high as its lowest column; the last column must be 0 high. */
function eachSpan(
  depth: Int32Array,
  visit: (from: number, to: number, high: number) => void,
): void {
  const starts = new Int32Array(depth.length);
  const highs = new Int32Array(depth.length);
  let open = 0;
  for (let to = 0; to < depth.length; to++) {
    let from = to;
    while (open > 0 && highs[open - 1] >= depth[to]) {
      open--;
      visit(starts[open], to, highs[open]);
      from = starts[open];
    }
    starts[open] = from;
    highs[open++] = depth[to];
  }
}
