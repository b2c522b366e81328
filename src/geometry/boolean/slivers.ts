import type { Point } from '../types.js';
import { type ChordTable, GRID_PER_MM } from './chords.js';
import type { Crossing } from './crossings.js';

/** A sliver goes on over no more chords than this on either side. */
const MAX_STEPS = 32;

/**
 * The area (mm2) of the slivers that a few crossings enclose: lenses between two crossings of the
 * same two stretches, and knots where one stretch crosses itself. Infinity where some crossing
 * belongs to neither, so that a larger overlap may lie behind it.
 */
export function sliverArea(crossings: readonly Crossing[], table: ChordTable): number {
  const open = [...crossings];
  let total = 0;
  while (open.length > 0) {
    const one = open.shift()!;
    let least = knotArea(one, table);
    let partner = -1;
    open.forEach((other, k) => {
      const area = lensArea(one, other, table);
      if (area >= least) return;
      least = area;
      partner = k;
    });
    if (partner >= 0) open.splice(partner, 1);
    total += least;
  }
  return total / (GRID_PER_MM * GRID_PER_MM);
}

/** The loop of a contour from the crossing back to it. */
function knotArea({ a, b, at }: Crossing, table: ChordTable): number {
  const loops = [stretch(a, b, table), stretch(b, a, table)];
  return Math.min(...loops.map((loop) => (loop ? area([at, ...loop]) : Infinity)));
}

/** What lies between two stretches from one crossing to the other, whichever way is the shorter. */
function lensArea(one: Crossing, other: Crossing, table: ChordTable): number {
  let least = Infinity;
  for (const [a, b] of [
    [other.a, other.b],
    [other.b, other.a],
  ]) {
    const backs = bothWays(b, one.b, table);
    for (const there of bothWays(one.a, a, table)) {
      for (const back of backs) {
        least = Math.min(least, area([one.at, ...there, other.at, ...back]));
      }
    }
  }
  return least;
}

/** The ways along a contour from one chord to another, forward and backward, if near enough. */
const bothWays = (from: number, to: number, table: ChordTable): Point[][] =>
  [stretch(from, to, table), stretch(to, from, table)?.reverse()].filter((way) => way != null);

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
  return Math.abs(sum) / 2;
}
