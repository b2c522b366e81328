import type { Outline } from '../outline.js';
import type { Point } from '../types.js';

/** Two points and how far apart they are. */
export interface Pair {
  readonly a: Point;
  readonly b: Point;
  readonly distanceMm: number;
}

/** The outline round a point on one of its chords, `reachMm` both ways along it, as a polyline. */
export function stretchOfOutline(
  outline: Outline,
  chord: number,
  point: Point,
  reachMm: number,
): Point[] {
  const { ax, ay, bx, by, contour, first } = outline;
  const from = first[contour[chord]];
  const size = first[contour[chord] + 1] - from;
  const walk = (step: 1 | -1): Point[] => {
    const points: Point[] = [];
    let at = point;
    let left = reachMm;
    for (let k = 0; k < size && left > 0; k++) {
      const n = from + ((((chord - from + step * k) % size) + size) % size);
      const end = step === 1 ? { x: bx[n], y: by[n] } : { x: ax[n], y: ay[n] };
      const length = Math.hypot(end.x - at.x, end.y - at.y);
      const f = length > left ? left / length : 1;
      at = { x: at.x + f * (end.x - at.x), y: at.y + f * (end.y - at.y) };
      points.push(at);
      left -= length;
    }
    return points;
  };
  return [...walk(-1).reverse(), point, ...walk(1)];
}

/** The closest points of two polylines that do not cross; each has one point at least. */
export function closestPair(p: readonly Point[], q: readonly Point[]): Pair {
  let best: Pair = { a: p[0], b: q[0], distanceMm: Infinity };
  const offer = (a: Point, b: Point): void => {
    const distanceMm = Math.hypot(a.x - b.x, a.y - b.y);
    if (distanceMm < best.distanceMm) best = { a, b, distanceMm };
  };
  // Of two segments that do not cross, one of the closest points is an end of its segment.
  for (const a of p) {
    for (let k = 0; k < q.length; k++) offer(a, footOn(q[k], q[k + 1] ?? q[k], a));
  }
  for (const b of q) {
    for (let k = 0; k < p.length; k++) offer(footOn(p[k], p[k + 1] ?? p[k], b), b);
  }
  return best;
}

/** The point of the segment from a to b nearest to p. */
function footOn(a: Point, b: Point, p: Point): Point {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const lengthSq = dx * dx + dy * dy;
  if (lengthSq === 0) return a;
  const f = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / lengthSq));
  return { x: a.x + f * dx, y: a.y + f * dy };
}
