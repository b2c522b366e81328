import { jetAt } from './cubic.js';
import type { Point, Region } from './types.js';

/** How a region's area is spread, as if all of it were card of one weight. */
export interface Moments {
  readonly areaMm2: number;
  /** The point on which it balances; it need not lie on card. */
  readonly centroid: Point;
  /** Second moment (mm4) about the level line through the centroid: the integral of dy^2. */
  readonly ixx: number;
  /** Second moment (mm4) about the upright line through the centroid: the integral of dx^2. */
  readonly iyy: number;
  /** Product moment (mm4) about the centroid, the integral of dx dy: y down, so tables' negative. */
  readonly ixy: number;
}

/**
 * Abscissae and weights for 6-point Gauss-Legendre (M. Abramowitz and I. A. Stegun, Handbook of
 * Mathematical Functions, 1964, table 25.4). It is exact up to degree 11, the highest met here:
 * x^3 dy on a cubic has degree 3 * 3 + 2.
 */
const GAUSS: readonly (readonly [number, number])[] = [
  [0.2386191860831969, 0.467913934572691],
  [0.6612093864662645, 0.3607615730481386],
  [0.9324695142031521, 0.1713244923791704],
];

/**
 * Area, centroid and second moments, exact for cubics but for rounding. Holes run the other way
 * round and so take off; a region wound the wrong way has the same centroid and negative moments.
 * Null where there is no area.
 *
 * By Green's theorem each integral over the area is one round the outline: that of x^p y^q over
 * the area is that of x^(p+1) y^q / (p+1) dy, clockwise on screen (y down).
 */
export function momentsOf(region: Region): Moments | null {
  const first = region.contours.find((c) => c.length > 0);
  if (!first) return null;
  // Near the region itself little is lost to cancelling, however far off the page's corner lies.
  const [ox, oy] = first;
  let [area, sx, sy, sxx, syy, sxy] = [0, 0, 0, 0, 0, 0];
  for (const c of region.contours) {
    for (let i = 0; i < c.length; i += 8) {
      for (const [abscissa, weight] of GAUSS) {
        for (const t of [(1 - abscissa) / 2, (1 + abscissa) / 2]) {
          const at = jetAt(c, i, t);
          const [x, y, dy] = [at.x - ox, at.y - oy, (at.dy * weight) / 2];
          area += x * dy;
          sx += (x * x * dy) / 2;
          sy += x * y * dy;
          sxx += (x * x * x * dy) / 3;
          syy += x * y * y * dy;
          sxy += (x * x * y * dy) / 2;
        }
      }
    }
  }
  if (area === 0) return null;
  const [cx, cy] = [sx / area, sy / area];
  return {
    areaMm2: area,
    centroid: { x: ox + cx, y: oy + cy },
    ixx: syy - area * cy * cy,
    iyy: sxx - area * cx * cx,
    ixy: sxy - area * cx * cy,
  };
}
