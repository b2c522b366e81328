import type { Point } from '../types.js';
import { type ChordTable, GRID_PER_MM } from './chords.js';
import type { Crossing } from './crossings.js';

/** A sliver goes on over no more chords than this on either side. */
const MAX_STEPS = 32;

/** A stretch of a contour that bounds a sliver, from one chord on to another as the contour runs. */
export interface Side {
  readonly from: number;
  readonly to: number;
  /** Where it leaves the one chord and ends on the other, in grid units. */
  readonly start: Point;
  readonly end: Point;
}

/**
 * A narrow overlap: a lens between two crossings of the same two stretches, or a knot where one
 * stretch crosses itself.
 */
export interface Sliver {
  readonly areaMm2: number;
  /** Its corners, in grid units. */
  readonly outline: readonly Point[];
  /** One side of a knot; two of a lens, run through opposite ways; none where they run alike. */
  readonly sides: readonly Side[];
}

/** The slivers that a few crossings enclose, or null where one of them belongs to none. */
export function sliversOf(crossings: readonly Crossing[], table: ChordTable): Sliver[] | null {
  const open = [...crossings];
  const slivers: Sliver[] = [];
  while (open.length > 0) {
    const one = open.shift()!;
    let least = knot(one, table);
    let partner = -1;
    open.forEach((other, k) => {
      const sliver = lens(one, other, table);
      if (sliver === null || (least !== null && sliver.areaMm2 >= least.areaMm2)) return;
      least = sliver;
      partner = k;
    });
    if (least === null) return null;
    if (partner >= 0) open.splice(partner, 1);
    slivers.push(least);
  }
  return slivers;
}

/** The loop of a contour from the crossing back to it. */
function knot({ a, b, at }: Crossing, table: ChordTable): Sliver | null {
  let least: Sliver | null = null;
  for (const [from, to] of [
    [a, b],
    [b, a],
  ]) {
    const loop = stretch(from, to, table);
    if (loop === null) continue;
    const outline = [at, ...loop];
    const areaMm2 = area(outline);
    if (least !== null && areaMm2 >= least.areaMm2) continue;
    least = { areaMm2, outline, sides: [{ from, to, start: at, end: at }] };
  }
  return least;
}

/** What lies between two stretches from one crossing to the other, whichever way is the shorter. */
function lens(one: Crossing, other: Crossing, table: ChordTable): Sliver | null {
  let least: Sliver | null = null;
  for (const [a, b] of [
    [other.a, other.b],
    [other.b, other.a],
  ]) {
    const backs = bothWays(b, one.b, other.at, one.at, table);
    for (const there of bothWays(one.a, a, one.at, other.at, table)) {
      for (const back of backs) {
        const outline = [one.at, ...there.points, other.at, ...back.points];
        const areaMm2 = area(outline);
        if (least !== null && areaMm2 >= least.areaMm2) continue;
        const opposite = there.isForward === back.isForward;
        least = { areaMm2, outline, sides: opposite ? [there.side, back.side] : [] };
      }
    }
  }
  return least;
}

/**
 * Whether the contours wind round the sliver's middle in a way that no proper region does: twice,
 * or backwards. Where they wind round it once or not at all, the crossing is rounding at a point in
 * which the contours touch, and what it seems to enclose is card or opening.
 */
export function isOverlap({ outline }: Sliver, { x, y, next }: ChordTable, count: number): boolean {
  const middle = pointWithin(outline);
  let winding = 0;
  for (let v = 0; v < count; v++) {
    winding += turnRound(middle, x[v], y[v], x[next[v]], y[next[v]]);
  }
  return winding < 0 || winding > 1;
}

/** A point inside a polygon: the middle of the widest stretch on the level line across it. */
function pointWithin(outline: readonly Point[]): Point {
  const levels = outline.map((p) => p.y);
  // Between two grid rows, so that no corner lies on it.
  const y = Math.floor((Math.min(...levels) + Math.max(...levels)) / 2) + 0.4837;
  const crossings: number[] = [];
  outline.forEach((p, k) => {
    const q = outline[(k + 1) % outline.length];
    if (p.y > y !== q.y > y) crossings.push(p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x));
  });
  crossings.sort((a, b) => a - b);
  let [left, right] = [crossings[0], crossings[0]];
  for (let k = 0; k + 1 < crossings.length; k += 2) {
    if (crossings[k + 1] - crossings[k] > right - left) {
      [left, right] = [crossings[k], crossings[k + 1]];
    }
  }
  return { x: (left + right) / 2, y };
}

/** What the edge from a to b adds to the winding number round p: 1, -1 or 0. */
function turnRound(p: Point, ax: number, ay: number, bx: number, by: number): number {
  if (ay > p.y === by > p.y) return 0;
  const crossing = ax + ((p.y - ay) / (by - ay)) * (bx - ax);
  if (crossing <= p.x) return 0;
  return by > p.y ? 1 : -1;
}

interface Way {
  readonly points: Point[];
  readonly isForward: boolean;
  readonly side: Side;
}

/** The ways along a contour from one chord to another, forward and backward, if near enough. */
function bothWays(from: number, to: number, start: Point, end: Point, table: ChordTable): Way[] {
  const ways: Way[] = [];
  const forward = stretch(from, to, table);
  if (forward) ways.push({ points: forward, isForward: true, side: { from, to, start, end } });
  const backward = stretch(to, from, table)?.reverse();
  if (!backward) return ways;
  const side = { from: to, to: from, start: end, end: start };
  return [...ways, { points: backward, isForward: false, side }];
}

/** The vertices passed from chord `from` on to chord `to`, or null where it is too far. */
function stretch(from: number, to: number, { x, y, next }: ChordTable): Point[] | null {
  const points: Point[] = [];
  for (let v = from; v !== to; ) {
    if (points.length >= MAX_STEPS) return null;
    v = next[v];
    points.push({ x: x[v], y: y[v] });
  }
  return points;
}

function area(points: readonly Point[]): number {
  let sum = 0;
  const [o] = points;
  for (let k = 1; k + 1 < points.length; k++) {
    const [p, q] = [points[k], points[k + 1]];
    sum += (p.x - o.x) * (q.y - o.y) - (q.x - o.x) * (p.y - o.y);
  }
  return Math.abs(sum) / 2 / (GRID_PER_MM * GRID_PER_MM);
}
