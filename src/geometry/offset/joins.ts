import { straightCubic } from '../cubic.js';
import type { Point } from '../types.js';
import type { Place } from './parallel.js';

/**
 * How the edges are joined round a corner that opens between them (SVG 2, section 13.5.5):
 * rounded; prolonged until they meet; or straight across.
 */
export type Join = 'round' | 'mitre' | 'bevel';

/** How a line ends (SVG 2, section 13.5.4): rounded, cut off, or cut off half a width further on. */
export type Cap = 'round' | 'butt' | 'square';

export interface Style {
  readonly cap: Cap;
  readonly join: Join;
  /**
   * A mitre reaches at most this many distances from its corner; sharper corners are bevelled. For
   * a stroke this is SVG's stroke-miterlimit.
   */
  readonly mitreLimit: number;
}

/** Where the source turns on the spot, from place a to place b. */
export interface Turn {
  readonly kind: 'turn';
  readonly a: Place;
  readonly b: Place;
  /** The angle (radians, at most 2 pi) that opens between the parallels; 0 where they overlap. */
  readonly sweep: number;
  readonly shape: Join | Cap;
}

/** Ends this near (mm) are one point: an edge between them would be rounding, not shape. */
export const SAME_POINT_MM = 1e-5;
/** Sine of the turn below which tangents that point apart are a cusp, not a corner. */
const CUSP_SINE = 1e-2;
/** Relative area between the two arms of a cusp below which they are the same line. */
const SAME_ARM = 1e-9;
/** Arcs stay this near (mm) to their circle. */
const ARC_MM = 5e-4;
/** Radial error of a quarter circle as one cubic, of its radius; it falls with angle to the 6th. */
const QUARTER_ERROR = 2.73e-4;

/**
 * The turn round the node (or cusp) that both places belong to; `before` and `after` are points of
 * the source some way along its arms. `turned` is how far (radians) the source turns where
 * something too small to be drawn was left out of it, else null.
 */
export function turnAt(
  a: Place,
  b: Place,
  before: Point,
  after: Point,
  distanceMm: number,
  join: Join,
  turned: number | null = null,
): Turn {
  const cross = a.tx * b.ty - a.ty * b.tx;
  const dot = a.tx * b.tx + a.ty * b.ty;
  if (dot > 0 && Math.hypot(b.x - a.x, b.y - a.y) < SAME_POINT_MM) {
    return { kind: 'turn', a, b, sweep: Math.abs(cross) || Number.MIN_VALUE, shape: 'bevel' };
  }
  const outward = Math.sign(distanceMm);
  const cusp = dot < 0 && Math.abs(cross) < CUSP_SINE;
  const byTangents = Math.sign(turned && dot < 0 ? turned : cross);
  const turn = cusp ? cuspTurn(a, before, after, outward) : byTangents;
  const angle = Math.abs(Math.atan2(cross, dot));
  const wide = cross !== 0 && turn !== Math.sign(cross);
  const sweep = turn !== outward ? 0 : wide ? 2 * Math.PI - angle : angle;
  return { kind: 'turn', a, b, sweep, shape: join };
}

/**
 * Which way a cusp turns: its tangents cannot tell a spike from a notch, but points further along
 * its arms can. Arms that retrace each other are the bare end of a line, which turns outward.
 */
function cuspTurn(a: Place, before: Point, after: Point, outward: number): number {
  const [ux, uy] = [a.px - before.x, a.py - before.y];
  const [vx, vy] = [after.x - a.px, after.y - a.py];
  const cross = ux * vy - uy * vx;
  const size = Math.hypot(ux, uy) * Math.hypot(vx, vy);
  return Math.abs(cross) <= SAME_ARM * size ? outward : Math.sign(cross);
}

/** The cubics, eight numbers each, across a turn that opens. */
export function joinOf({ a, b, sweep, shape }: Turn, distanceMm: number, limit: number): number[] {
  if (shape === 'round') return arc(a, b, Math.sign(distanceMm) * sweep, Math.abs(distanceMm));
  if (shape === 'bevel' || shape === 'butt') return path(a, b);
  // A square cap is the mitre of two corners half as sharp.
  const past = Math.abs(distanceMm) * Math.tan(shape === 'square' ? Math.PI / 4 : sweep / 2);
  const ahead = { x: a.x + past * a.tx, y: a.y + past * a.ty };
  if (shape === 'square') return path(a, ahead, { x: b.x - past * b.tx, y: b.y - past * b.ty }, b);
  // The mitre's reach is distance / cos(sweep / 2).
  const tooLong = sweep >= Math.PI || 1 > limit * Math.cos(sweep / 2);
  return tooLong ? path(a, b) : path(a, ahead, b);
}

function arc(a: Place, b: Place, sweep: number, radiusMm: number): number[] {
  const fine = (ARC_MM / (QUARTER_ERROR * radiusMm)) ** (1 / 6);
  const parts = Math.ceil(Math.abs(sweep) / ((Math.PI / 2) * Math.min(1, fine) + 1e-6));
  const step = sweep / parts;
  const handle = (4 / 3) * Math.tan(step / 4);
  const numbers: number[] = [];
  let [ux, uy] = [a.x - a.px, a.y - a.py];
  let [x, y] = [a.x, a.y];
  for (let k = 1; k <= parts; k++) {
    const vx = ux * Math.cos(step) - uy * Math.sin(step);
    const vy = ux * Math.sin(step) + uy * Math.cos(step);
    const [x3, y3] = k === parts ? [b.x, b.y] : [a.px + vx, a.py + vy];
    numbers.push(x, y, x - handle * uy, y + handle * ux);
    numbers.push(x3 + handle * vy, y3 - handle * vx, x3, y3);
    [ux, uy, x, y] = [vx, vy, x3, y3];
  }
  return numbers;
}

/** Straight edges from point to point, where they are not the same. */
export function path(...points: readonly Point[]): number[] {
  const numbers: number[] = [];
  for (let k = 1; k < points.length; k++) {
    const [p, q] = [points[k - 1], points[k]];
    if (Math.hypot(q.x - p.x, q.y - p.y) < SAME_POINT_MM) continue;
    numbers.push(...straightCubic(p.x, p.y, q.x, q.y));
  }
  return numbers;
}
