import { joined, subchain } from '../chain.js';
import { footNear, jetAt, straightCubic } from '../cubic.js';
import { boundsOf } from '../measure.js';
import type { Cubics, Point } from '../types.js';
import { type Course, courseOf, jointLength, trackBetween } from './course.js';
import { selfCrossings } from './crossing-count.js';
import { CHORD_SHARE, fittedCubic, type Heading } from './fit-cubic.js';
import { jointsOf } from './joints.js';

/** Where fitting makes an outline cross itself, it is tried again with these shares of tolerance. */
const TOLERANCE_SHARES = [1, 1 / 4, 1 / 16];

/** A tolerance above this share of a shape's size would show, however fine it is. */
const SIZE_SHARE = 1 / 50;

/**
 * Few cubics for a dense outline, be it a polyline or many small cubics, open or closed. The result
 * lies within `toleranceMm` of the chain and the chain of it (Hausdorff distance, measured), starts
 * where it does and runs the same way. Corners are kept exactly, straight runs straight, and what
 * was smooth stays smooth; facets of a polyline are taken for the curve that they stand for. It
 * never has more cubics than the chain and crosses itself no more often; where that cannot be had
 * the chain comes back as it is. Small shapes get a finer tolerance, a fiftieth of their size.
 */
export function fitCubics(chain: Cubics, toleranceMm = 0.02): Cubics {
  const given = withoutPoints(chain);
  if (given.length <= 8) return given.length === 0 ? chain : given;
  const { minX, minY, maxX, maxY } = boundsOf([given]);
  const nearMm = Math.min(toleranceMm, SIZE_SHARE * Math.hypot(maxX - minX, maxY - minY));
  const course = courseOf(given, nearMm * CHORD_SHARE);
  const crossings = selfCrossings(chain);
  for (const share of TOLERANCE_SHARES) {
    const fitted = fittedChain(course, nearMm * share);
    if (fitted.length >= chain.length) return chain;
    if (selfCrossings(fitted) <= crossings) return fitted;
  }
  return chain;
}

/** Cubics smaller than this all over (mm) are points: they have no direction. */
const POINT_MM = 1e-9;

function withoutPoints(c: Cubics): Cubics {
  const kept: number[] = [];
  for (let i = 0; i < c.length; i += 8) {
    const isPoint = [2, 4, 6].every(
      (k) => Math.hypot(c[i + k] - c[i], c[i + k + 1] - c[i + 1]) < POINT_MM,
    );
    if (!isPoint) kept.push(...c.subarray(i, i + 8));
  }
  return Float64Array.from(kept);
}

/** The course fitted stretch by stretch, from one stop (a corner or a straight run's end) on. */
function fittedChain(course: Course, toleranceMm: number): Cubics {
  const count = course.chain.length / 8;
  const { isCorner, heading, runs } = jointsOf(course, toleranceMm);
  const runTo = new Map(runs.map(({ from, to }) => [from, to]));
  const stops = new Set([0, count, ...runs.flatMap(({ from, to }) => [from, to])]);
  for (let k = 0; k <= count; k++) if (isCorner[k]) stops.add(k);
  const inOrder = [...stops].sort((a, b) => a - b);
  const seam = isCorner[0] ? null : (heading[0] ?? seamHeading(course, inOrder, toleranceMm));
  const headingAt = (k: number): Heading => (k === 0 || k === count ? seam : heading[k]);
  const pieces: Cubics[] = [];
  for (let k = 0; k + 1 < inOrder.length; k++) {
    const [from, to] = [inOrder[k], inOrder[k + 1]];
    if (runTo.get(from) === to) pieces.push(straightPiece(course, from, to));
    else {
      const span = { from, to, start: headingAt(from), end: headingAt(to) };
      pieces.push(...fitSpan(course, heading, span, toleranceMm));
    }
  }
  return Float64Array.from(pieces.flatMap((piece) => [...piece]));
}

/** The cubic that stands at a joint, as it is. */
const ownCubic = ({ chain }: Course, k: number): Cubics => chain.slice(k * 8, k * 8 + 8);

function straightPiece(course: Course, from: number, to: number): Cubics {
  if (to - from === 1) return ownCubic(course, from);
  const [x0, y0] = course.chain.subarray(from * 8);
  const [x1, y1] = course.chain.subarray(to * 8 - 2);
  return Float64Array.from(straightCubic(x0, y0, x1, y1));
}

/** Cubics from joint to joint, and the directions of the outline at both. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly start: Heading;
  readonly end: Heading;
}

/**
 * A smooth stretch as few cubics: cut first where runs as long as possible end whose ends are free,
 * then fitted anew between these cuts with one direction at each, measured from both its sides.
 */
function fitSpan(
  course: Course,
  known: readonly Heading[],
  span: Span,
  toleranceMm: number,
): Cubics[] {
  const cuts = longestRuns(course, known, span, toleranceMm);
  const headings = cuts.map((k, n): Heading => {
    if (n === 0) return span.start;
    if (n + 1 === cuts.length) return span.end;
    if (known[k]) return known[k];
    const low = middleJoint(course, cuts[n - 1], k);
    const high = middleJoint(course, k, cuts[n + 1]);
    return headingWithin(course, k, low, high, toleranceMm);
  });
  const pieces = cuts.slice(1).flatMap((to, n) => {
    const run = { from: cuts[n], to, start: headings[n], end: headings[n + 1] };
    return fitOrHalve(course, known, run, toleranceMm);
  });
  return merged(course, pieces, toleranceMm).map(({ cubic }) => cubic);
}

/** A span with its cubic. */
interface Piece extends Span {
  readonly cubic: Cubics;
}

/** The pieces with neighbours made one where a single cubic follows both. */
function merged(course: Course, pieces: readonly Piece[], toleranceMm: number): Piece[] {
  const out: Piece[] = [];
  for (const piece of pieces) {
    let last = piece;
    for (let before = out.pop(); before; before = out.pop()) {
      const both = { from: before.from, to: last.to, start: before.start, end: last.end };
      const cubic = fitted(course, both, toleranceMm);
      if (cubic === null) {
        out.push(before);
        break;
      }
      last = { ...both, cubic };
    }
    out.push(last);
  }
  return out;
}

function fitted(
  course: Course,
  { from, to, start, end }: Span,
  toleranceMm: number,
): Cubics | null {
  if (to - from === 1) return ownCubic(course, from);
  return fittedCubic(trackBetween(course, from, to), start, end, toleranceMm);
}

/** The joints at which runs end that are as long as one cubic can follow, both ends included. */
function longestRuns(
  course: Course,
  known: readonly Heading[],
  span: Span,
  toleranceMm: number,
): number[] {
  const cuts = [span.from];
  for (let from = span.from; from < span.to; from = cuts[cuts.length - 1]) {
    const fits = (to: number): boolean => {
      const start = from === span.from ? span.start : known[from];
      const end = to === span.to ? span.end : known[to];
      return fitted(course, { from, to, start, end }, toleranceMm) !== null;
    };
    cuts.push(farthest(from + 1, span.to, fits));
  }
  return cuts;
}

/** The farthest whole number up to `most` that passes, `least` given: in growing steps, then halved. */
function farthest(least: number, most: number, passes: (to: number) => boolean): number {
  if (least === most || passes(most)) return most;
  let [low, high] = [least, most];
  for (let step = 1; low + step < high; step *= 2) {
    if (passes(low + step)) low += step;
    else high = low + step;
  }
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (passes(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** One cubic, or two stretches that meet in the middle with one direction. */
function fitOrHalve(
  course: Course,
  known: readonly Heading[],
  span: Span,
  toleranceMm: number,
): Piece[] {
  const cubic = fitted(course, span, toleranceMm);
  if (cubic) return [{ ...span, cubic }];
  const { from, to } = span;
  const middle = Math.max(from + 1, middleJoint(course, from, to));
  const through = known[middle] ?? headingWithin(course, middle, from, to, toleranceMm);
  const halves = [
    { from, to: middle, start: span.start, end: through },
    { from: middle, to, start: through, end: span.end },
  ];
  return halves.flatMap((half) => fitOrHalve(course, known, half, toleranceMm));
}

/** The joint next to the middle by length, no later than it. */
function middleJoint(course: Course, from: number, to: number): number {
  const middle = (jointLength(course, from) + jointLength(course, to)) / 2;
  let [low, high] = [from, to - 1];
  while (low < high) {
    const k = (low + high + 1) >> 1;
    if (jointLength(course, k) <= middle) low = k;
    else high = k - 1;
  }
  return low;
}

/** Halvings of a window round a joint in search of one that a single cubic fits. */
const MOST_WINDOWS = 16;

/** The direction at a joint of one cubic fitted from `low` to `high`, or from nearer joints. */
function headingWithin(
  course: Course,
  k: number,
  low: number,
  high: number,
  toleranceMm: number,
): Point {
  let [from, to] = [Math.min(low, k - 1), Math.max(high, k + 1)];
  for (let window = 0; window < MOST_WINDOWS; window++) {
    const cubic = fittedCubic(trackBetween(course, from, to), null, null, toleranceMm);
    if (cubic) return directionNear(cubic, course.chain[k * 8], course.chain[k * 8 + 1]);
    if (from === k - 1 && to === k + 1) break;
    from = k - Math.max(1, (k - from) >> 1);
    to = k + Math.max(1, (to - k) >> 1);
  }
  const { chain } = course;
  return unit(chain[k * 8 + 8] - chain[k * 8 - 8], chain[k * 8 + 9] - chain[k * 8 - 7]);
}

/** Parameters tried first for the foot of a point on a cubic. */
const TRIES = 16;

function directionNear(cubic: Cubics, x: number, y: number): Point {
  let [best, bestMm] = [0, Infinity];
  for (let k = 0; k <= TRIES; k++) {
    const at = jetAt(cubic, 0, k / TRIES);
    const mm = Math.hypot(at.x - x, at.y - y);
    if (mm < bestMm) [best, bestMm] = [k / TRIES, mm];
  }
  const { dx, dy } = jetAt(cubic, 0, footNear(cubic, 0, best, x, y));
  return unit(dx, dy);
}

function unit(x: number, y: number): Point {
  const length = Math.hypot(x, y);
  return { x: x / length, y: y / length };
}

/** The direction at the start of a closed course that is smooth there, seen from both sides. */
function seamHeading(course: Course, stops: readonly number[], toleranceMm: number): Point {
  const { chain } = course;
  const count = chain.length / 8;
  const before = middleJoint(course, stops[stops.length - 2], count);
  const after = Math.max(1, middleJoint(course, 0, stops[1]));
  const round = joined(
    subchain(chain, Math.min(before, count - 1), count),
    subchain(chain, 0, after),
  );
  const own = courseOf(round, toleranceMm * CHORD_SHARE);
  const seam = count - Math.min(before, count - 1);
  return headingWithin(own, seam, 0, round.length / 8, toleranceMm);
}
