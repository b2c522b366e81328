import { chordCount, jetAt, subCubic } from './cubic.js';
import type { Cubics, Point } from './types.js';

/**
 * Places on a chain of cubics. A place is one number u: its whole part counts the cubics before
 * it, its fraction is the parameter t on its own cubic. So u runs from 0 to the number of cubics.
 */

/** Ends nearer to each other than this (mm) make a chain closed: rounding, not a drawn gap. */
const CLOSED_MM = 1e-6;

/** A chain as a row of points with the place u of each; both ends are included. */
export interface Chords {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly u: Float64Array;
}

/** The chain cut into chords no further than `toleranceMm` from it. An empty chain has no points. */
export function chordsOf(c: Cubics, toleranceMm: number): Chords {
  const x: number[] = [];
  const y: number[] = [];
  const u: number[] = [];
  const put = (px: number, py: number, pu: number): void => {
    x.push(px);
    y.push(py);
    u.push(pu);
  };
  if (c.length > 0) put(c[0], c[1], 0);
  for (let i = 0; i < c.length; i += 8) {
    const n = chordCount(c, i, toleranceMm);
    for (let k = 1; k < n; k++) {
      const p = jetAt(c, i, k / n);
      put(p.x, p.y, i / 8 + k / n);
    }
    put(c[i + 6], c[i + 7], i / 8 + 1);
  }
  return { x: new Float64Array(x), y: new Float64Array(y), u: new Float64Array(u) };
}

/** The cubic that holds the place u, as the index of its first number, and the parameter on it. */
export function placeOn(c: Cubics, u: number): { i: number; t: number } {
  const last = c.length / 8 - 1;
  const k = Math.max(0, Math.min(last, Math.floor(u)));
  return { i: k * 8, t: Math.max(0, Math.min(1, u - k)) };
}

/** The point at the place u; the chain must not be empty. */
export function pointOn(c: Cubics, u: number): Point {
  const { i, t } = placeOn(c, u);
  const { x, y } = jetAt(c, i, t);
  return { x, y };
}

/** The part of the chain from place `from` to place `to`, with `from < to`, curves kept. */
export function subchain(c: Cubics, from: number, to: number): Cubics {
  const start = placeOn(c, from);
  const end = placeOn(c, to);
  // A place at a joint belongs to the cubic after it as a start, to the one before it as an end.
  if (end.t === 0 && end.i > start.i) {
    end.i -= 8;
    end.t = 1;
  }
  if (start.t === 1 && end.i > start.i) {
    start.i += 8;
    start.t = 0;
  }
  const out = new Float64Array(end.i - start.i + 8);
  for (let i = start.i; i <= end.i; i += 8) {
    const t0 = i === start.i ? start.t : 0;
    const t1 = i === end.i ? end.t : 1;
    out.set(subCubic(c, i, t0, t1), i - start.i);
  }
  return out;
}

/** Whether the chain ends where it starts. */
export function isClosed(c: Cubics): boolean {
  const n = c.length;
  return n > 0 && Math.hypot(c[n - 2] - c[0], c[n - 1] - c[1]) <= CLOSED_MM;
}

/** One chain of two, the second starting where the first ends; the joint becomes exact. */
export function joined(a: Cubics, b: Cubics): Cubics {
  const out = new Float64Array(a.length + b.length);
  out.set(a);
  out.set(b, a.length);
  out[a.length] = a[a.length - 2];
  out[a.length + 1] = a[a.length - 1];
  return out;
}

/** Abscissae and weights for 8-point Gauss-Legendre (Abramowitz and Stegun 1964, table 25.4). */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
];

/** A cubic is measured in this many equal steps of t: enough for 1e-6 mm on all but cusps. */
const LENGTH_STEPS = 4;

/** Length in mm of the cubic at index i from t0 to t1. */
export function cubicLength(c: Cubics, i: number, t0 = 0, t1 = 1): number {
  const half = (t1 - t0) / LENGTH_STEPS / 2;
  let sum = 0;
  for (let k = 0; k < LENGTH_STEPS; k++) {
    const middle = t0 + (2 * k + 1) * half;
    for (const [abscissa, weight] of GAUSS) {
      for (const t of [middle - half * abscissa, middle + half * abscissa]) {
        const { dx, dy } = jetAt(c, i, t);
        sum += weight * Math.hypot(dx, dy);
      }
    }
  }
  return sum * half;
}

/** Lengths nearer to each other than this (mm) are one: a joint is met exactly. */
const SAME_LENGTH_MM = 1e-9;
/** Halvings for a place of given length: 2^-45 of a cubic is far below a nanometre. */
const HALVINGS = 45;

/** The place that lies `lengthMm` along the chain from its start, held to the chain's two ends. */
export function placeAtLength(c: Cubics, lengthMm: number): number {
  let left = lengthMm;
  if (left <= 0) return 0;
  for (let i = 0; i < c.length; i += 8) {
    const whole = cubicLength(c, i);
    if (Math.abs(left - whole) < SAME_LENGTH_MM) return i / 8 + 1;
    if (left < whole) {
      let [low, high] = [0, 1];
      for (let k = 0; k < HALVINGS; k++) {
        const t = (low + high) / 2;
        if (cubicLength(c, i, 0, t) < left) low = t;
        else high = t;
      }
      return i / 8 + (low + high) / 2;
    }
    left -= whole;
  }
  return c.length / 8;
}
