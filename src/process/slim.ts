import { chordsOf, joined, subchain } from '../geometry/chain.js';
import { perimeter, regionArea } from '../geometry/measure.js';
import { nearestChord, outlineOf } from '../geometry/outline.js';
import { polyline } from '../geometry/pen.js';
import { courseOf, pointAtLength } from '../geometry/tidy/course.js';
import { fitCubics } from '../geometry/tidy/fit.js';
import type { Cubics, Line, Point, Region } from '../geometry/types.js';

/** One stroke of a tool: a ring where it is closed. */
export interface Stroke {
  readonly cubics: Cubics;
  readonly closed: boolean;
}

/** Chords of a slim ring, mm: few, as every pair of their ends is looked at. */
const CHORD_MM = 0.02;
/** A middle line is found at places so far apart at most, mm, and fitted this near to them. */
const STEP_MM = 0.1;
const FIT_MM = 0.02;

/** What of a slim part lies no further from its middle line than so many of its widths is run with it. */
const NEAR_WIDTHS = 1.5;

/** Whether a part is slimmer than `leastMm` on the whole. */
export const isSlim = (part: Region, leastMm: number): boolean =>
  2 * regionArea(part) < leastMm * perimeter(part);

/**
 * The contours of one part as strokes, but of a part slimmer than `leastMm` on the whole, whose two
 * sides would be one stroke run twice, only its middle line; where it has branches or a hole, its
 * outer contour. What is shorter than `dotMm` becomes a dot of that length.
 */
export function contourStrokes(part: Region, leastMm: number, dotMm: number): Stroke[] {
  if (!isSlim(part, leastMm)) return part.contours.map(ring);
  const [outer, ...holes] = part.contours;
  const middle = holes.length === 0 ? middleLine(outer, NEAR_WIDTHS * leastMm) : null;
  if (middle === null) return [ring(outer)];
  return [{ ...atLeast(middle, dotMm), closed: false }];
}

const ring = (cubics: Cubics): Stroke => ({ cubics, closed: true });

/** A line, or a dot in its place where it is shorter than that. */
function atLeast(line: Line, dotMm: number): Line {
  const { cubics: c } = line;
  const [dx, dy] = [c[c.length - 2] - c[0], c[c.length - 1] - c[1]];
  if (Math.hypot(dx, dy) >= dotMm) return line;
  return dot({ x: c[0] + dx / 2, y: c[1] + dy / 2 }, dotMm);
}

/**
 * The line half way between the two sides of a slim contour, from one of the two places farthest
 * apart on it to the other: what is as far along one side as along the other, by shares of their
 * lengths, lies across from it. Null where some of the contour is farther than `nearMm` from that
 * line, as where it has branches.
 */
export function middleLine(contour: Cubics, nearMm: number): Line | null {
  const [left, right] = sidesOf(contour).map((side) => courseOf(side, CHORD_MM));
  const [lengthMm, otherMm] = [left, right].map(({ at }) => at[at.length - 1]);
  const steps = Math.ceil(Math.max(lengthMm, otherMm) / STEP_MM);
  const middles = Array.from({ length: steps + 1 }, (_, k): Point => {
    const a = pointAtLength(left, (k / steps) * lengthMm);
    const b = pointAtLength(right, (1 - k / steps) * otherMm);
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  });
  const cubics = fitCubics(polyline(middles).cubics, FIT_MM);
  return isNear(contour, cubics, nearMm) ? { cubics } : null;
}

/** A closed chain as two, both between the places on it that are farthest from each other. */
function sidesOf(c: Cubics): [Cubics, Cubics] {
  const { x, y, u } = chordsOf(c, CHORD_MM);
  let [from, to, mostSq] = [0, 0, -1];
  // The last point is the first again.
  for (let a = 0; a + 1 < x.length; a++) {
    for (let b = a + 1; b + 1 < x.length; b++) {
      const distanceSq = (x[b] - x[a]) ** 2 + (y[b] - y[a]) ** 2;
      if (distanceSq > mostSq) [from, to, mostSq] = [a, b, distanceSq];
    }
  }
  const home = subchain(c, u[to], c.length / 8);
  const round = from === 0 ? home : joined(home, subchain(c, 0, u[from]));
  return [subchain(c, u[from], u[to]), round];
}

/** Whether all the joints and bends of a ring lie near a line. */
function isNear(whole: Cubics, line: Cubics, nearMm: number): boolean {
  const outline = outlineOf({ contours: [line] });
  const { x, y } = chordsOf(whole, CHORD_MM);
  return x.every((px, k) => nearestChord(outline, px, y[k], nearMm) !== null);
}

/** A dot as a level stroke. */
export const dot = ({ x, y }: Point, lengthMm: number): Line =>
  polyline([
    { x: x - lengthMm / 2, y },
    { x: x + lengthMm / 2, y },
  ]);
