import { placeAtLength, pointOn, subchain } from '../../../src/geometry/chain.js';
import { tangent } from '../../../src/geometry/offset/parallel.js';
import { nearestChord, outlineOf } from '../../../src/geometry/outline.js';
import { polyline } from '../../../src/geometry/pen.js';
import type { Cubics, Point } from '../../../src/geometry/types.js';
import { tipTrace } from '../../../src/process/knife/trace.js';
import type { Blade } from '../../../src/process/process.js';

/** Points on the way are looked at every so many mm. */
const STEP_MM = 0.05;

/** How far a row of points and a contour are apart (Hausdorff), by looking all along both. */
export function tipDistance(tips: readonly Point[], contour: Cubics): number {
  const cut = polyline(tips).cubics;
  return Math.max(oneWay(cut, contour), oneWay(contour, cut));
}

function oneWay(from: Cubics, to: Cubics): number {
  const [own, other] = [from, to].map((c) => outlineOf({ contours: [c] }));
  let most = 0;
  for (let k = 0; k < own.ax.length; k++) {
    const [dx, dy] = [own.bx[k] - own.ax[k], own.by[k] - own.ay[k]];
    const count = Math.ceil(Math.hypot(dx, dy) / STEP_MM);
    for (let j = 0; j <= count; j++) {
      const foot = nearestChord(other, own.ax[k] + (j / count) * dx, own.ay[k] + (j / count) * dy);
      most = Math.max(most, foot!.distanceMm);
    }
  }
  return most;
}

/** Which way a path sets out. */
export const directionAtStart = (c: Cubics): Point => {
  const [x, y] = tangent(c, 0, 0);
  return { x, y };
};

/** The tip's trace of a compensated cut once the pivot has gone on from its lead-in by so much. */
export function traceAfter(
  pivot: Cubics,
  heading: Point,
  { offsetMm }: Blade,
  furtherMm: number,
): Point[] {
  const from = placeAtLength(pivot, offsetMm + furtherMm);
  const at = pointOn(pivot, from);
  const before = tipTrace(subchain(pivot, 0, from), offsetMm, heading);
  const tip = before[before.length - 1];
  const set = { x: (at.x - tip.x) / offsetMm, y: (at.y - tip.y) / offsetMm };
  return tipTrace(subchain(pivot, from, pivot.length / 8), offsetMm, set);
}
