import { chordsOf } from '../../../src/geometry/chain.js';
import type { Cubics } from '../../../src/geometry/types.js';

/** Chords for the measurement (mm), and how far apart points are looked at. */
const CHORD_MM = 5e-4;
const STEP_MM = 0.05;

/** The Hausdorff distance of two chains, by looking from points all along each to all the other. */
export const hausdorff = (a: Cubics, b: Cubics): number => Math.max(oneWay(a, b), oneWay(b, a));

function oneWay(from: Cubics, to: Cubics): number {
  const p = chordsOf(from, CHORD_MM);
  const q = chordsOf(to, CHORD_MM);
  let most = 0;
  for (let k = 0; k + 1 < p.x.length; k++) {
    const [dx, dy] = [p.x[k + 1] - p.x[k], p.y[k + 1] - p.y[k]];
    const count = Math.ceil(Math.hypot(dx, dy) / STEP_MM);
    for (let j = 0; j <= count; j++) {
      const f = count === 0 ? 0 : j / count;
      most = Math.max(most, nearest(q.x, q.y, p.x[k] + f * dx, p.y[k] + f * dy));
    }
  }
  return most;
}

function nearest(xs: Float64Array, ys: Float64Array, x: number, y: number): number {
  let best = Infinity;
  for (let k = 0; k + 1 < xs.length; k++) {
    const [dx, dy] = [xs[k + 1] - xs[k], ys[k + 1] - ys[k]];
    const lengthSq = dx * dx + dy * dy;
    const along = lengthSq === 0 ? 0 : ((x - xs[k]) * dx + (y - ys[k]) * dy) / lengthSq;
    const f = Math.max(0, Math.min(1, along));
    best = Math.min(best, (xs[k] + f * dx - x) ** 2 + (ys[k] + f * dy - y) ** 2);
  }
  return Math.sqrt(best);
}
