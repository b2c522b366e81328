import type { Point } from '../../geometry/types.js';
import { pointAlong, type Way } from '../way.js';

/** Looks along a contour lie about this far apart (mm), and never fewer than this many. */
export const LOOK_STEP_MM = 1;
const LEAST_LOOKS = 24;

/** A point of a contour, and how much (radians) it turns within some reach of it. */
export interface Look {
  readonly atMm: number;
  readonly point: Point;
  readonly turning: number;
}

/**
 * Looks at even steps all round a closed contour; `reachMm` to both sides counts for how much it
 * turns there.
 */
export function looksRound(way: Way, reachMm: number): Look[] {
  const count = Math.max(LEAST_LOOKS, Math.ceil(way.roundMm / LOOK_STEP_MM));
  return turningAt(way, count, reachMm).map((turning, n): Look => {
    const atMm = (way.roundMm * n) / count;
    return { atMm, point: pointAlong(way, atMm), turning };
  });
}

/** How much the chords turn within reach of each of `count` places. */
function turningAt({ x, y, at }: Way, count: number, reachMm: number): number[] {
  const turning = new Array<number>(count).fill(0);
  const last = at.length - 1;
  const step = at[last] / count;
  let before = last;
  for (let k = 0; k < last; k++) {
    if (at[k + 1] === at[k]) continue;
    const turn = before === last ? turnAt(x, y, last - 1, k) : turnAt(x, y, before, k);
    before = k;
    const from = Math.ceil((at[k] - reachMm) / step);
    const to = Math.min(from + count - 1, Math.floor((at[k] + reachMm) / step));
    for (let n = from; n <= to; n++) turning[((n % count) + count) % count] += turn;
  }
  return turning;
}

/** The angle between chord j and chord k. */
function turnAt(x: Float64Array, y: Float64Array, j: number, k: number): number {
  const [ux, uy] = [x[j + 1] - x[j], y[j + 1] - y[j]];
  const [vx, vy] = [x[k + 1] - x[k], y[k + 1] - y[k]];
  return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
}
