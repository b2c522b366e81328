import { circle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import { shape } from '../brick/craft.js';

/** One star's place and size, mm, and how it is drawn. */
export interface Star extends Point {
  readonly radius: number;
  /** Points of the star; 0 for a round. */
  readonly points: number;
  readonly turnDeg: number;
}

/** Inner corners as a share of the radius: the more points, the fuller. */
const INNER: Record<number, number> = { 4: 0.38, 5: 0.44, 6: 0.52 };
/** A round is smaller than a star of the same reach. */
const ROUND = 0.58;

/** The star as card, one point towards the foot (y down), or as a round. */
export function starShape({ x, y, radius, points, turnDeg }: Star): Region {
  if (points === 0) return circle(x, y, ROUND * radius);
  return shape(
    Array.from({ length: 2 * points }, (_, k) => {
      const a = ((90 + turnDeg + (k * 180) / points) * Math.PI) / 180;
      const r = k % 2 === 0 ? radius : (INNER[points] ?? 0.5) * radius;
      return { x: x + r * Math.cos(a), y: y + r * Math.sin(a) };
    }),
  );
}
