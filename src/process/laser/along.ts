import { chordsOf } from '../../geometry/chain.js';
import type { Cubics, Point } from '../../geometry/types.js';

/** Looks along a contour lie about this far apart (mm), and never fewer than this many. */
const STEP_MM = 1;
const LEAST_LOOKS = 24;
/** Chords stand for the contour within this (mm). */
const CHORD_MM = 0.002;

/** A closed contour by the length round it, from its start. */
export interface Along {
  readonly roundMm: number;
  /** The place u on the chain at any length; lengths past the ends go on round. */
  readonly placeAt: (lengthMm: number) => number;
  readonly looks: readonly Look[];
}

/** A point of a contour, and how much (radians) it turns within some reach of it. */
export interface Look {
  readonly atMm: number;
  readonly point: Point;
  readonly turning: number;
}

/** Looks at even steps all round; `reachMm` to both sides counts for how much it turns there. */
export function alongOf(contour: Cubics, reachMm: number): Along {
  const { x, y, u } = chordsOf(contour, CHORD_MM);
  const at = new Float64Array(u.length);
  for (let k = 1; k < at.length; k++) {
    at[k] = at[k - 1] + Math.hypot(x[k] - x[k - 1], y[k] - y[k - 1]);
  }
  const roundMm = at[at.length - 1];
  const within = (lengthMm: number) => ((lengthMm % roundMm) + roundMm) % roundMm;
  const place = (lengthMm: number): { k: number; share: number } => {
    const length = within(lengthMm);
    let [low, high] = [0, at.length - 2];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (at[middle] <= length) low = middle;
      else high = middle - 1;
    }
    const chord = at[low + 1] - at[low];
    return { k: low, share: chord > 0 ? (length - at[low]) / chord : 0 };
  };
  const count = Math.max(LEAST_LOOKS, Math.ceil(roundMm / STEP_MM));
  const turning = turningAt(x, y, at, count, reachMm);
  const looks = turning.map((turn, n): Look => {
    const atMm = (roundMm * n) / count;
    const { k, share } = place(atMm);
    const point = { x: x[k] + share * (x[k + 1] - x[k]), y: y[k] + share * (y[k + 1] - y[k]) };
    return { atMm, point, turning: turn };
  });
  const placeAt = (lengthMm: number): number => {
    const { k, share } = place(lengthMm);
    return u[k] + share * (u[k + 1] - u[k]);
  };
  return { roundMm, placeAt, looks };
}

/** How much the chords turn within reach of each of `count` places. */
function turningAt(
  x: Float64Array,
  y: Float64Array,
  at: Float64Array,
  count: number,
  reachMm: number,
): number[] {
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
