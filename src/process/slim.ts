import { chordsOf, joined, subchain } from '../geometry/chain.js';
import { boundsOf, perimeter, regionArea } from '../geometry/measure.js';
import { nearestChord, outlineOf } from '../geometry/outline.js';
import { polyline } from '../geometry/pen.js';
import type { Cubics, Line, Point, Region } from '../geometry/types.js';

/** One stroke of a tool: a ring where it is closed. */
export interface Stroke {
  readonly cubics: Cubics;
  readonly closed: boolean;
}

/** Chords of a slim ring, mm: few, as every pair of their ends is looked at. */
const CHORD_MM = 0.02;

/** How wide a region is, on the whole, mm. */
const meanWidth = (part: Region): number => (2 * regionArea(part)) / perimeter(part);

/**
 * The contours of one part as strokes, such that no two sides nearer to each other than `leastMm` on
 * the whole are both run: of a slim part only the outer contour or, where its two sides are one to
 * that measure, one side of it from end to end; of a speck a dot.
 */
export function contourStrokes(part: Region, leastMm: number, dotMm: number): Stroke[] {
  if (meanWidth(part) >= leastMm) return part.contours.map(ring);
  const [outer, ...holes] = part.contours;
  return [holes.length > 0 ? ring(outer) : oneSide(outer, leastMm, dotMm)];
}

const ring = (cubics: Cubics): Stroke => ({ cubics, closed: true });

function oneSide(slim: Cubics, nearMm: number, dotMm: number): Stroke {
  const { minX, minY, maxX, maxY } = boundsOf([slim]);
  if (Math.hypot(maxX - minX, maxY - minY) < dotMm) {
    return { ...dot({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 }, dotMm), closed: false };
  }
  const [from, to] = farthestApart(slim);
  const end = slim.length / 8;
  const back = to < end ? subchain(slim, to, end) : new Float64Array(0);
  const sides = [
    subchain(slim, from, to),
    from > 0 ? joinedOf(back, subchain(slim, 0, from)) : back,
  ];
  const side = sides.find((cubics) => cubics.length > 0 && isNear(slim, cubics, nearMm));
  return side ? { cubics: side, closed: false } : ring(slim);
}

const joinedOf = (a: Cubics, b: Cubics): Cubics => (a.length > 0 ? joined(a, b) : b);

/** The two places on a closed chain farthest from each other. */
function farthestApart(c: Cubics): [from: number, to: number] {
  const { x, y, u } = chordsOf(c, CHORD_MM);
  let [from, to, mostSq] = [0, 0, 0];
  for (let a = 0; a < x.length; a++) {
    for (let b = a + 1; b < x.length; b++) {
      const distanceSq = (x[b] - x[a]) ** 2 + (y[b] - y[a]) ** 2;
      if (distanceSq > mostSq) [from, to, mostSq] = [a, b, distanceSq];
    }
  }
  return [u[from], u[to]];
}

/** Whether all of a ring lies near one of its sides. */
function isNear(whole: Cubics, side: Cubics, nearMm: number): boolean {
  const { x, y } = chordsOf(whole, CHORD_MM);
  const outline = outlineOf({ contours: [side] });
  return x.every((px, k) => nearestChord(outline, px, y[k], nearMm) !== null);
}

/** A dot as a level stroke. */
export const dot = ({ x, y }: Point, lengthMm: number): Line =>
  polyline([
    { x: x - lengthMm / 2, y },
    { x: x + lengthMm / 2, y },
  ]);
