import type { Cubics } from './types.js';

/**
 * Tools for one cubic of a chain: `c` is the chain and `i` the index of the cubic's first number.
 * Parameters run from 0 to 1 unless said otherwise.
 */

/** A place on a cubic and the derivative there, in mm per unit of t. */
export interface Jet {
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
}

/** Place and derivative at t; t outside 0..1 gives the cubic's continuation. */
export function jetAt(c: Cubics, i: number, t: number): Jet {
  const u = 1 - t;
  const w0 = u * u * u;
  const w1 = 3 * u * u * t;
  const w2 = 3 * u * t * t;
  const w3 = t * t * t;
  const d0 = 3 * u * u;
  const d1 = 6 * u * t;
  const d2 = 3 * t * t;
  return {
    x: w0 * c[i] + w1 * c[i + 2] + w2 * c[i + 4] + w3 * c[i + 6],
    y: w0 * c[i + 1] + w1 * c[i + 3] + w2 * c[i + 5] + w3 * c[i + 7],
    dx: d0 * (c[i + 2] - c[i]) + d1 * (c[i + 4] - c[i + 2]) + d2 * (c[i + 6] - c[i + 4]),
    dy: d0 * (c[i + 3] - c[i + 1]) + d1 * (c[i + 5] - c[i + 3]) + d2 * (c[i + 7] - c[i + 5]),
  };
}

/** A straight edge as a cubic, its handles at the thirds. */
export const straightCubic = (x0: number, y0: number, x1: number, y1: number): number[] => {
  const dx = (x1 - x0) / 3;
  const dy = (y1 - y0) / 3;
  return [x0, y0, x0 + dx, y0 + dy, x1 - dx, y1 - dy, x1, y1];
};

/** Whether the handles lie on the chord (to rounding) and between its ends. */
export function isStraightCubic(c: Cubics, i: number): boolean {
  const dx = c[i + 6] - c[i];
  const dy = c[i + 7] - c[i + 1];
  const length = Math.hypot(dx, dy);
  if (length === 0) return false;
  const slack = 1e-9 * Math.max(1, length);
  for (const k of [2, 4]) {
    const ux = c[i + k] - c[i];
    const uy = c[i + k + 1] - c[i + 1];
    const along = (ux * dx + uy * dy) / length;
    if (Math.abs(ux * dy - uy * dx) / length > slack) return false;
    if (along < -slack || along > length + slack) return false;
  }
  return true;
}

/** More chords than this for one cubic would only be a sign of absurd input. */
const MAX_CHORDS = 8000;

/**
 * How many chords of equal steps in t keep within `toleranceMm` of the cubic (Wang's bound on the
 * second differences; see G. Farin, Curves and Surfaces for CAGD). At least 1.
 */
export function chordCount(c: Cubics, i: number, toleranceMm: number): number {
  const ax = c[i] - 2 * c[i + 2] + c[i + 4];
  const ay = c[i + 1] - 2 * c[i + 3] + c[i + 5];
  const bx = c[i + 2] - 2 * c[i + 4] + c[i + 6];
  const by = c[i + 3] - 2 * c[i + 5] + c[i + 7];
  const bend = Math.sqrt(Math.max(ax * ax + ay * ay, bx * bx + by * by));
  // The small allowance keeps rounding from adding a chord to one of two equal cubics.
  const n = Math.ceil(Math.sqrt((0.75 * bend) / toleranceMm) - 1e-6);
  return Math.max(1, Math.min(MAX_CHORDS, n));
}

/**
 * The part of a cubic from t0 to t1, eight numbers; t0 > t1 runs it backwards. The whole cubic
 * comes back bit for bit.
 */
export function subCubic(c: Cubics, i: number, t0: number, t1: number): number[] {
  const n = (k: number): number => c[i + k];
  if (t0 === 0 && t1 === 1) return [n(0), n(1), n(2), n(3), n(4), n(5), n(6), n(7)];
  if (t0 === 1 && t1 === 0) return [n(6), n(7), n(4), n(5), n(2), n(3), n(0), n(1)];
  const a = jetAt(c, i, t0);
  const b = jetAt(c, i, t1);
  const h = (t1 - t0) / 3;
  return [a.x, a.y, a.x + a.dx * h, a.y + a.dy * h, b.x - b.dx * h, b.y - b.dy * h, b.x, b.y];
}

/** Steps for the nearest point: 2 to 4 do for a point close to the curve. */
const FOOT_STEPS = 8;

/**
 * The parameter in 0..1 of the point of a cubic nearest to (x, y), searched from t near it. For
 * points much closer to the curve than its radius of curvature; others may come out wrong.
 */
export function footNear(c: Cubics, i: number, t: number, x: number, y: number): number {
  let foot = t;
  for (let step = 0; step < FOOT_STEPS; step++) {
    const at = jetAt(c, i, foot);
    const speedSq = at.dx * at.dx + at.dy * at.dy;
    if (speedSq < 1e-18) break;
    const move = ((x - at.x) * at.dx + (y - at.y) * at.dy) / speedSq;
    foot = Math.max(0, Math.min(1, foot + move));
    if (Math.abs(move) < 1e-11) break;
  }
  return foot;
}

/** Newton steps for a crossing: quadratic convergence needs 3 to 5, near tangency a few more. */
const CROSSING_STEPS = 12;
/** Squared sine of the angle under which two curves count as tangent and have no safe crossing. */
const TANGENT_SINE_SQ = 1e-10;

/**
 * Where two cubics cross near the parameters ta and tb. The answer may lie up to 0.5 outside 0..1
 * (the caller decides what that means); null where the curves run tangent or do not cross there.
 */
export function crossingNear(
  a: Cubics,
  i: number,
  ta: number,
  b: Cubics,
  j: number,
  tb: number,
): { ta: number; tb: number } | null {
  for (let step = 0; step < CROSSING_STEPS; step++) {
    const p = jetAt(a, i, ta);
    const q = jetAt(b, j, tb);
    const rx = q.x - p.x;
    const ry = q.y - p.y;
    const det = q.dx * p.dy - p.dx * q.dy;
    const speeds = (p.dx * p.dx + p.dy * p.dy) * (q.dx * q.dx + q.dy * q.dy);
    if (!(det * det >= TANGENT_SINE_SQ * speeds) || speeds === 0) return null;
    const da = (q.dx * ry - rx * q.dy) / det;
    const db = (p.dx * ry - p.dy * rx) / det;
    ta += da;
    tb += db;
    if (!(ta > -0.5 && ta < 1.5 && tb > -0.5 && tb < 1.5)) return null;
    if (Math.abs(da) + Math.abs(db) < 1e-12 || rx * rx + ry * ry < 1e-22) return { ta, tb };
  }
  return null;
}
