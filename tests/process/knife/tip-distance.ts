import { nearestChord, outlineOf } from '../../../src/geometry/outline.js';
import { polyline } from '../../../src/geometry/pen.js';
import type { Cubics, Point } from '../../../src/geometry/types.js';

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
