import { isStraightCubic } from '../cubic.js';
import type { Cubics, Point } from '../types.js';
import { type Course, jointLength, pointAtLength, trackBetween } from './course.js';
import { isStraightTrack, STRAIGHT_SHARE } from './fit-cubic.js';

/**
 * What the joints of a chain are: corners as drawn, or mere joints of a curve cut into cubics or
 * into the facets of a polyline.
 */

/** Turns from this on (20 degrees) are corners, if they look so from a little way off too. */
const CORNER_RAD = (20 * Math.PI) / 180;
/** A little way off, in tolerances: noise within the tolerance turns no more than a few degrees. */
const AWAY = 10;
/** A corner makes at least this share of the turn seen from away; else it is one facet of a bend. */
const CORNER_SHARE = 0.5;
/** Cubics that turn by less than this (radians) where they meet are one smooth curve. */
const SMOOTH_RAD = 0.01;
/** Straight edges that turn by less than this (radians) where they meet are one run. */
const COLLINEAR_RAD = 1e-4;
/** A straight edge is drawn as such and no facet if it is so many times as long as those beside it. */
const LONGER = 4;
/** Straight runs shorter than this many tolerances are not worth keeping apart. */
const LEAST_RUN = 10;

/** Cubics from joint to joint that make one straight edge. */
interface Edge {
  readonly from: number;
  readonly to: number;
  readonly lengthMm: number;
  readonly isStraight: boolean;
}

export interface Joints {
  /** For each joint, whether the outline turns there for good. The ends of an open chain do. */
  readonly isCorner: readonly boolean[];
  /** The direction in which the outline runs through each joint that is no corner, where known. */
  readonly heading: readonly (Point | null)[];
  /** Straight runs to be kept, in order. */
  readonly runs: readonly { readonly from: number; readonly to: number }[];
}

export function jointsOf(course: Course, toleranceMm: number): Joints {
  const count = course.chain.length / 8;
  const turns = Array.from({ length: count + 1 }, (_, k) => turnAt(course, k));
  const edges = edgesOf(course, turns);
  const edgeAt = edgesByCubic(edges, count);
  const isCorner = turns.map((turn, k) => {
    if (!course.closed && (k === 0 || k === count)) return true;
    const shorter = Math.min(
      edges[edgeAt[(k + count - 1) % count]].lengthMm,
      edges[edgeAt[k % count]].lengthMm,
    );
    return isCornerAt(course, k, turn.angle, shorter, toleranceMm);
  });
  const runs = edges.filter((_, k) => isRun(course, edges, k, turns, isCorner, toleranceMm));
  const heading = turns.map((turn, k) =>
    isCorner[k] || turn.angle > SMOOTH_RAD ? null : turn.heading,
  );
  for (const { from, to } of runs) {
    const [a, b] = [from * 8, to * 8 - 2];
    const along = unit(
      course.chain[b] - course.chain[a],
      course.chain[b + 1] - course.chain[a + 1],
    );
    for (const k of [from, to]) if (!isCorner[k]) heading[k] = along;
  }
  if (course.closed) {
    const seam = heading[0] ?? heading[count];
    heading[0] = heading[count] = seam;
  }
  return { isCorner, heading, runs };
}

interface Turn {
  readonly angle: number;
  /** Half way between the directions before and after. */
  readonly heading: Point;
}

/** The turn at a joint; none at an end of an open chain. */
function turnAt({ chain, closed }: Course, k: number): Turn {
  const count = chain.length / 8;
  const before = k > 0 ? k - 1 : count - 1;
  const after = k < count ? k : 0;
  const p = endDirection(chain, before * 8);
  const q = startDirection(chain, after * 8);
  if (!closed && k === 0) return { angle: 0, heading: q };
  if (!closed && k === count) return { angle: 0, heading: p };
  const angle = Math.abs(Math.atan2(p.x * q.y - p.y * q.x, p.x * q.x + p.y * q.y));
  return { angle, heading: unit(p.x + q.x, p.y + q.y) };
}

function unit(x: number, y: number): Point {
  const length = Math.hypot(x, y);
  return length === 0 ? { x: 0, y: 0 } : { x: x / length, y: y / length };
}

/** Handles shorter than this (mm) give no direction. */
const NO_HANDLE_MM = 1e-7;

function startDirection(c: Cubics, i: number): Point {
  for (const k of [2, 4, 6]) {
    const [dx, dy] = [c[i + k] - c[i], c[i + k + 1] - c[i + 1]];
    if (Math.hypot(dx, dy) > NO_HANDLE_MM) return unit(dx, dy);
  }
  return { x: 0, y: 0 };
}

function endDirection(c: Cubics, i: number): Point {
  for (const k of [4, 2, 0]) {
    const [dx, dy] = [c[i + 6] - c[i + k], c[i + 7] - c[i + k + 1]];
    if (Math.hypot(dx, dy) > NO_HANDLE_MM) return unit(dx, dy);
  }
  return { x: 0, y: 0 };
}

/** Collinear straight cubics in a row as one edge, every other cubic as one by itself. */
function edgesOf(course: Course, turns: readonly Turn[]): Edge[] {
  const { chain } = course;
  const edges: Edge[] = [];
  for (let k = 0; k < chain.length / 8; k++) {
    const isStraight = isStraightCubic(chain, k * 8);
    const last = edges[edges.length - 1];
    const lengthMm = jointLength(course, k + 1) - jointLength(course, k);
    if (last?.isStraight && isStraight && turns[k].angle < COLLINEAR_RAD) {
      edges[edges.length - 1] = { ...last, to: k + 1, lengthMm: last.lengthMm + lengthMm };
    } else {
      edges.push({ from: k, to: k + 1, lengthMm, isStraight });
    }
  }
  return edges;
}

function edgesByCubic(edges: readonly Edge[], count: number): Int32Array {
  const edgeAt = new Int32Array(count);
  edges.forEach(({ from, to }, e) => {
    edgeAt.fill(e, from, to);
  });
  return edgeAt;
}

/**
 * A turn is a corner if rounding it off over the shorter of its edges (which moves the outline by
 * an eighth of length times angle) is more than the tolerance allows, or if it is sharp by itself.
 */
function isCornerAt(
  course: Course,
  k: number,
  angle: number,
  shorterMm: number,
  toleranceMm: number,
): boolean {
  if ((angle * shorterMm) / 8 > toleranceMm) return true;
  if (angle < CORNER_RAD) return false;
  const away = AWAY * toleranceMm;
  const length = jointLength(course, k);
  const p = pointAtLength(course, length - away);
  const at = pointAtLength(course, length);
  const q = pointAtLength(course, length + away);
  const [ux, uy, vx, vy] = [at.x - p.x, at.y - p.y, q.x - at.x, q.y - at.y];
  const seen = Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
  return seen >= CORNER_RAD && angle >= CORNER_SHARE * seen;
}

/** Whether an edge is straight by intent: long, and beside facets far shorter, curves or corners. */
function isRun(
  course: Course,
  edges: readonly Edge[],
  e: number,
  turns: readonly Turn[],
  isCorner: readonly boolean[],
  toleranceMm: number,
): boolean {
  const { from, to, lengthMm, isStraight } = edges[e];
  if (!isStraight || lengthMm < LEAST_RUN * toleranceMm) return false;
  // Many small turns add up.
  if (!isStraightTrack(trackBetween(course, from, to), STRAIGHT_SHARE * toleranceMm)) return false;
  const beside = [
    { joint: from, edge: edges[(e + edges.length - 1) % edges.length] },
    { joint: to, edge: edges[(e + 1) % edges.length] },
  ];
  return beside.every(({ joint, edge }) => {
    const goesOnAcrossStart = turns[joint].angle < COLLINEAR_RAD && edge.isStraight;
    if (isCorner[joint] || !edge.isStraight || goesOnAcrossStart) return true;
    return lengthMm > LONGER * edge.lengthMm;
  });
}
