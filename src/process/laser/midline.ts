import { polyline } from '../../geometry/pen.js';
import { fitCubics } from '../../geometry/tidy/fit.js';
import type { Cubics, Line, Point } from '../../geometry/types.js';
import { pointAlong, wayRound } from '../way.js';

/** Sides are looked at this often (mm): slots are narrower than the beam, but seldom shorter. */
const STEP_MM = 0.05;
/** More looks than these would be slow, fewer would miss a short slot's ends. */
const [LEAST_LOOKS, MOST_LOOKS] = [32, 2000];
/** The line stands for the middles within this (mm). */
const NEAR_MM = 0.002;

/**
 * The line along the middle of a long thin closed contour, end to end, however it is bent. The ends
 * are the place where the contour's two sides keep closest together on the way from one to the
 * other. A contour that branches or is not thin has no such line; something is returned all the
 * same.
 */
export function midlineOf(contour: Cubics): Line {
  const ring = evenly(contour);
  const half = ring.length / 2;
  const across = (start: number, k: number): [Point, Point] => [
    ring[(start + k) % ring.length],
    ring[(start - k + ring.length) % ring.length],
  ];
  let best = 0;
  let least = Infinity;
  for (let start = 0; start < half; start++) {
    let apart = 0;
    for (let k = 1; k < half; k++) {
      const [p, q] = across(start, k);
      apart += Math.hypot(q.x - p.x, q.y - p.y);
    }
    if (apart >= least) continue;
    least = apart;
    best = start;
  }
  const middles = Array.from({ length: half + 1 }, (_, k): Point => {
    const [p, q] = across(best, k);
    return { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
  });
  return { cubics: fitCubics(polyline(middles).cubics, NEAR_MM) };
}

/** An even number of points at equal steps round a closed contour. */
function evenly(contour: Cubics): Point[] {
  const way = wayRound(contour);
  const looks = Math.max(LEAST_LOOKS, Math.min(MOST_LOOKS, way.roundMm / STEP_MM));
  const count = 2 * Math.ceil(looks / 2);
  return Array.from({ length: count }, (_, n) => pointAlong(way, (way.roundMm * n) / count));
}
