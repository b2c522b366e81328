import { isStraightCubic, type Jet, jetAt, straightCubic } from '../../geometry/cubic.js';
import { tangent } from '../../geometry/offset/parallel.js';
import { pen } from '../../geometry/pen.js';
import type { Cubics, Point } from '../../geometry/types.js';

/**
 * The path of a swivelling blade's pivot for a wanted path of its tip. The blade points along the
 * tip's path, so the pivot is always one offset r ahead along the tangent: c + r c' for a path c
 * with unit tangent c'. At a corner the pivot overruns it by r, swings an arc of radius r through the
 * turn about it, and goes on (common practice, no source).
 */

/** Pieces are split until they pass within this (mm) of the true path. */
const NEAR_MM = 0.002;
/** A turn that moves the pivot no further than this (mm) needs no swing. */
const NO_SWING_MM = 0.002;
/** Halvings of one cubic; a piece still not near enough turns all but on the spot: it is swung. */
const MOST_HALVINGS = 12;
/** Cubics smaller than this all over (mm) are points: they have no direction. */
const POINT_MM = 1e-9;

/**
 * The pivot's path for a tip that follows `tip`, within 0.005 mm. It begins with a lead-in from the
 * tip's own start, one offset long, in which a blade that pointed elsewhere comes round; without
 * `leadIn` it begins one offset further on, for a blade that is already in line.
 */
export function pivotPath(tip: Cubics, offsetMm: number, leadIn: boolean): Cubics {
  const numbers: number[] = [];
  let heading: Point | null = null;
  for (let i = 0; i < tip.length; i += 8) {
    if (isPoint(tip, i)) continue;
    const start = directionAt(tip, i, 0);
    const [x, y] = [tip[i], tip[i + 1]];
    if (heading !== null) put(numbers, swing(x, y, offsetMm, heading, start));
    else if (leadIn)
      put(numbers, straightCubic(x, y, x + offsetMm * start.x, y + offsetMm * start.y));
    put(numbers, shifted(tip, i, offsetMm));
    heading = directionAt(tip, i, 1);
  }
  return Float64Array.from(numbers);
}

/** Adds cubics to a chain; they start where it ends, to the last bit. */
function put(numbers: number[], cubics: readonly number[]): void {
  const end = numbers.length;
  for (const value of cubics) numbers.push(value);
  if (end > 0 && cubics.length > 0) {
    numbers[end] = numbers[end - 2];
    numbers[end + 1] = numbers[end - 1];
  }
}

const isPoint = (c: Cubics, i: number): boolean =>
  [2, 4, 6].every((k) => Math.hypot(c[i + k] - c[i], c[i + k + 1] - c[i + 1]) < POINT_MM);

function directionAt(c: Cubics, i: number, t: number): Point {
  const [x, y] = tangent(c, i, t);
  return { x, y };
}

/** The arc of the pivot about a tip that rests at (x, y), the shorter way round. */
function swing(x: number, y: number, offsetMm: number, from: Point, to: Point): readonly number[] {
  const turn = Math.atan2(from.x * to.y - from.y * to.x, from.x * to.x + from.y * to.y);
  if (Math.abs(turn) * offsetMm <= NO_SWING_MM) return [];
  const { cubics } = pen(x + offsetMm * from.x, y + offsetMm * from.y)
    .arcAround(x, y, (turn * 180) / Math.PI)
    .line();
  return [...cubics];
}

/** One cubic of the tip's path as the pivot runs it. */
function shifted(c: Cubics, i: number, offsetMm: number): number[] {
  if (isStraightCubic(c, i)) {
    const { x, y } = directionAt(c, i, 0);
    const [dx, dy] = [offsetMm * x, offsetMm * y];
    return straightCubic(c[i] + dx, c[i + 1] + dy, c[i + 6] + dx, c[i + 7] + dy);
  }
  const out: number[] = [];
  const draw = (t0: number, t1: number, a: Jet, b: Jet, depth: number): void => {
    const quarters = [0.25, 0.5, 0.75].map((f) => pivotAt(c, i, t0 + f * (t1 - t0), offsetMm));
    const cubic = hermite(a, b, t1 - t0);
    if (passes(cubic, quarters)) put(out, cubic);
    else if (depth === MOST_HALVINGS) {
      const at = jetAt(c, i, t0);
      put(out, swing(at.x, at.y, offsetMm, directionAt(c, i, t0), directionAt(c, i, t1)));
    } else {
      const t = (t0 + t1) / 2;
      draw(t0, t, a, quarters[1], depth + 1);
      draw(t, t1, quarters[1], b, depth + 1);
    }
  };
  draw(0, 1, pivotAt(c, i, 0, offsetMm), pivotAt(c, i, 1, offsetMm), 0);
  return out;
}

/** Speed (mm per unit of t) below which a cubic counts as resting. */
const RESTING = 1e-9;

/** The pivot's place and its derivative in t: the blade turns at the rate at which the tip's path does. */
function pivotAt(c: Cubics, i: number, t: number, offsetMm: number): Jet {
  const at = jetAt(c, i, t);
  const [tx, ty] = tangent(c, i, t);
  const [x, y] = [at.x + offsetMm * tx, at.y + offsetMm * ty];
  const speedSq = at.dx * at.dx + at.dy * at.dy;
  if (speedSq < RESTING * RESTING) return { x, y, dx: 0, dy: 0 };
  const u = 1 - t;
  const bend = (k: number): number =>
    6 * (u * (c[k] - 2 * c[k + 2] + c[k + 4]) + t * (c[k + 2] - 2 * c[k + 4] + c[k + 6]));
  const turning = (at.dx * bend(i + 1) - at.dy * bend(i)) / speedSq;
  return { x, y, dx: at.dx - offsetMm * turning * ty, dy: at.dy + offsetMm * turning * tx };
}

/** The cubic with given ends and derivatives there, over dt of t. */
function hermite(a: Jet, b: Jet, dt: number): number[] {
  const h = dt / 3;
  return [
    ...[a.x, a.y, a.x + h * a.dx, a.y + h * a.dy],
    ...[b.x - h * b.dx, b.y - h * b.dy, b.x, b.y],
  ];
}

const passes = (cubic: readonly number[], quarters: readonly Jet[]): boolean => {
  const c = Float64Array.from(cubic);
  return quarters.every(({ x, y }, k) => {
    const at = jetAt(c, 0, (k + 1) / 4);
    return Math.hypot(at.x - x, at.y - y) <= NEAR_MM;
  });
};
