import { chordsOf } from '../geometry/chain.js';
import type { Cubics, Point } from '../geometry/types.js';

/** Chords stand for a contour within this (mm), which is as true as its lengths need be. */
const CHORD_MM = 0.002;

/** A closed contour as chords, whose ends are known by place and by length from its start. */
export interface Way {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly u: Float64Array;
  readonly at: Float64Array;
  readonly roundMm: number;
}

export function wayRound(contour: Cubics): Way {
  const { x, y, u } = chordsOf(contour, CHORD_MM);
  const at = new Float64Array(u.length);
  for (let k = 1; k < at.length; k++) {
    at[k] = at[k - 1] + Math.hypot(x[k] - x[k - 1], y[k] - y[k - 1]);
  }
  return { x, y, u, at, roundMm: at[at.length - 1] };
}

/** The place u on the contour at a length, which goes on round past both ends. */
export function placeAt(way: Way, lengthMm: number): number {
  const { k, share } = chordAt(way, lengthMm);
  return way.u[k] + share * (way.u[k + 1] - way.u[k]);
}

/** The point on the chords at a length. */
export function pointAlong(way: Way, lengthMm: number): Point {
  const { k, share } = chordAt(way, lengthMm);
  const { x, y } = way;
  return { x: x[k] + share * (x[k + 1] - x[k]), y: y[k] + share * (y[k + 1] - y[k]) };
}

function chordAt({ at, roundMm }: Way, lengthMm: number): { k: number; share: number } {
  const length = ((lengthMm % roundMm) + roundMm) % roundMm;
  let [low, high] = [0, at.length - 2];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (at[middle] <= length) low = middle;
    else high = middle - 1;
  }
  const chord = at[low + 1] - at[low];
  return { k: low, share: chord > 0 ? (length - at[low]) / chord : 0 };
}
