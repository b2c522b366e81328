import { chordsOf, isClosed } from '../chain.js';
import type { Cubics, Point } from '../types.js';

/**
 * A chain seen as a row of points near enough to it to measure by, with lengths along them. Joint k
 * is where cubic k starts; the last joint is the chain's end.
 */
export interface Course {
  readonly chain: Cubics;
  readonly closed: boolean;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Length in mm from the start to each point. */
  readonly at: Float64Array;
  /** The point that is each joint. */
  readonly joint: Int32Array;
}

/** A row of points. */
export type Track = Pick<Course, 'x' | 'y'>;

export function courseOf(chain: Cubics, chordMm: number): Course {
  const { x, y, u } = chordsOf(chain, chordMm);
  const at = new Float64Array(x.length);
  const joint = new Int32Array(chain.length / 8 + 1);
  for (let k = 1; k < x.length; k++) {
    at[k] = at[k - 1] + Math.hypot(x[k] - x[k - 1], y[k] - y[k - 1]);
    if (Number.isInteger(u[k])) joint[u[k]] = k;
  }
  return { chain, closed: isClosed(chain), x, y, at, joint };
}

/** The stretch from one joint to a later one. */
export function trackBetween({ x, y, joint }: Course, from: number, to: number): Track {
  const [start, end] = [joint[from], joint[to] + 1];
  return { x: x.subarray(start, end), y: y.subarray(start, end) };
}

export const jointLength = ({ at, joint }: Course, k: number): number => at[joint[k]];

/** The point at a length along the course; a closed course goes round, an open one stops. */
export function pointAtLength({ x, y, at, closed }: Course, lengthMm: number): Point {
  const whole = at[at.length - 1];
  const round = closed ? ((lengthMm % whole) + whole) % whole : lengthMm;
  const length = Math.max(0, Math.min(whole, round));
  const k = lastAtMost(at, length);
  const span = k + 1 < at.length ? at[k + 1] - at[k] : 0;
  if (span === 0) return { x: x[k], y: y[k] };
  const f = (length - at[k]) / span;
  return { x: x[k] + f * (x[k + 1] - x[k]), y: y[k] + f * (y[k + 1] - y[k]) };
}

/** The index of the last of rising values that is no larger than `value`. */
export function lastAtMost(values: ArrayLike<number>, value: number): number {
  let [low, high] = [0, values.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (values[middle] <= value) low = middle;
    else high = middle - 1;
  }
  return low;
}
