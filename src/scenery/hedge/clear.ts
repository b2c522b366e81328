import { flatten } from '../../geometry/measure.js';
import type { Cubics, Point } from '../../geometry/types.js';

/** Far finer than any distance that is asked of it. */
const TOLERANCE_MM = 0.05;

/**
 * A test for points that lie on the card and at least `clearMm` from every edge of it. The contours
 * are the card's outlines and its holes in any order and direction (even-odd rule).
 */
export function clearOf(contours: readonly Cubics[], clearMm: number): (p: Point) => boolean {
  const clearSq = clearMm * clearMm;
  const chains = contours.map((c) => flatten(c, TOLERANCE_MM));
  return (p) => {
    let inside = false;
    for (const chain of chains) {
      for (let i = 1; i < chain.length; i++) {
        const a = chain[i - 1];
        const b = chain[i];
        if (distanceSq(p, a, b) < clearSq) return false;
        // A ray to the right.
        if (a.y > p.y === b.y > p.y) continue;
        if (p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
      }
    }
    return inside;
  };
}

function distanceSq(p: Point, a: Point, b: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const along = ((p.x - a.x) * dx + (p.y - a.y) * dy) / Math.max(1e-18, dx * dx + dy * dy);
  const t = Math.max(0, Math.min(1, along));
  const ex = p.x - a.x - t * dx;
  const ey = p.y - a.y - t * dy;
  return ex * ex + ey * ey;
}
