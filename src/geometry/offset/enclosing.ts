import { boundsOf, flatten } from '../measure.js';
import type { Cubics, Point } from '../types.js';

/** Chord tolerance (mm): a chain is held to fit up to so much too soon or too late. */
const CHORD_MM = 1e-3;

interface Disc {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** Whether some circle of `radiusMm` holds the whole chain. */
export function fitsInCircle(chain: Cubics, radiusMm: number): boolean {
  const { minX, minY, maxX, maxY } = boundsOf([chain]);
  if (Math.max(maxX - minX, maxY - minY) > 2 * radiusMm) return false;
  return smallestDisc(flatten(chain, CHORD_MM)).radius <= radiusMm;
}

/** The smallest disc round points (E. Welzl, Smallest enclosing disks, 1991, unrolled into loops). */
function smallestDisc(points: readonly Point[]): Disc {
  let disc: Disc = { ...points[0], radius: 0 };
  for (let i = 1; i < points.length; i++) {
    if (holds(disc, points[i])) continue;
    disc = { ...points[i], radius: 0 };
    for (let j = 0; j < i; j++) {
      if (holds(disc, points[j])) continue;
      disc = discOnTwo(points[i], points[j]);
      for (let k = 0; k < j; k++) {
        if (!holds(disc, points[k])) disc = discOnThree(points[i], points[j], points[k]);
      }
    }
  }
  return disc;
}

const holds = ({ x, y, radius }: Disc, p: Point): boolean =>
  Math.hypot(p.x - x, p.y - y) <= radius * (1 + 1e-9) + 1e-9;

const discOnTwo = (a: Point, b: Point): Disc => ({
  x: (a.x + b.x) / 2,
  y: (a.y + b.y) / 2,
  radius: Math.hypot(b.x - a.x, b.y - a.y) / 2,
});

function discOnThree(a: Point, b: Point, c: Point): Disc {
  const [bx, by, cx, cy] = [b.x - a.x, b.y - a.y, c.x - a.x, c.y - a.y];
  const d = 2 * (bx * cy - by * cx);
  const [bb, cc] = [bx * bx + by * by, cx * cx + cy * cy];
  const [x, y] = [(cy * bb - by * cc) / d, (bx * cc - cx * bb) / d];
  return { x: a.x + x, y: a.y + y, radius: Math.hypot(x, y) };
}
