import { jetAt, straightCubic } from '../cubic.js';
import type { Cubics, Point } from '../types.js';

/**
 * The parallel curve of one cubic. At distance d of a curve with unit tangent T and curvature k it
 * has the derivative (1 + d k) times the curve's own (G. Farin, Curves and Surfaces for CAGD,
 * offset curves), so its cubic Hermite pieces are exact in place and direction at their ends.
 */

/** A piece is split until it is this near (mm) to the true parallel where it is tested. */
const PARALLEL_MM = 5e-4;
/** What lies within this (mm) of one point is drawn as a straight edge, and cut off if it can be. */
const POINT_MM = 1e-3;
/** Bisections for the place where a parallel turns back: its t is then right to 1e-9. */
const CUSP_STEPS = 30;
/** Halvings of one cubic; only pieces round a cusp or a needle-sharp bend are halved that often. */
const MAX_DEPTH = 16;
/** Cosine of the turn (20 degrees) above which a piece counts as running straight on. */
const STRAIGHT_ON_COS = 0.94;
/** Speed (mm per unit of t) below which a cubic counts as resting. */
const RESTING = 1e-9;
/** How far along its arms (t) a cusp is looked at. */
export const ARM_T = 0.1;

/** A place on the parallel curve: source point, unit tangent, offset point and its derivative. */
export interface Place {
  readonly px: number;
  readonly py: number;
  readonly tx: number;
  readonly ty: number;
  readonly x: number;
  readonly y: number;
  readonly dx: number;
  readonly dy: number;
  /** 1 + d k: negative where the parallel runs backwards, beyond the centre of curvature. */
  readonly stretch: number;
}

/**
 * A stretch of the parallel from place a to place b: a piece of it as a cubic, `inverted` where it
 * runs backwards or is no more than a point; or a bend, where the source turns all but on the spot.
 * `before` and `after` lie on the source a little way off.
 */
export type Stretch = Curve | Bend;

export interface Curve {
  readonly kind: 'curve';
  readonly a: Place;
  readonly b: Place;
  readonly cubic: Cubics;
  readonly inverted: boolean;
  /** The stretch of the source: parameters t0 to t1 of the chain's cubic at index i. */
  readonly i: number;
  readonly t0: number;
  readonly t1: number;
}

export interface Bend {
  readonly kind: 'bend';
  readonly a: Place;
  readonly b: Place;
  readonly before: Point;
  readonly after: Point;
}

/** The parallel at `distanceMm` to the left (y down) of the cubic at index i of a chain. */
export function parallelOf(chain: Cubics, i: number, distanceMm: number): Stretch[] {
  const stretches: Stretch[] = [];
  new Parallel(chain, i, distanceMm, stretches).draw();
  return stretches;
}

class Parallel {
  constructor(
    private readonly chain: Cubics,
    private readonly i: number,
    private readonly distance: number,
    private readonly out: Stretch[],
  ) {}

  draw(): void {
    this.between(0, 1, this.place(0), this.place(1), 0);
  }

  private between(t0: number, t1: number, a: Place, b: Place, depth: number): void {
    const tests = [0.25, 0.5, 0.75].map((f) => this.place(t0 + f * (t1 - t0)));
    const isPoint = [...tests, b].every((p) => Math.hypot(p.x - a.x, p.y - a.y) <= POINT_MM);
    if (isPoint) {
      const cubic = Float64Array.from(straightCubic(a.x, a.y, b.x, b.y));
      this.out.push({ kind: 'curve', a, b, cubic, inverted: true, i: this.i, t0, t1 });
    } else if (a.stretch * b.stretch < 0) {
      const t = this.cuspBetween(t0, t1, a.stretch < 0);
      const cusp = { ...this.place(t), dx: 0, dy: 0, stretch: 0 };
      this.between(t0, t, a, cusp, depth + 1);
      this.between(t, t1, cusp, b, depth + 1);
    } else if (depth >= MAX_DEPTH && a.tx * b.tx + a.ty * b.ty < STRAIGHT_ON_COS) {
      const before = jetAt(this.chain, this.i, Math.max(0, t0 - ARM_T));
      const after = jetAt(this.chain, this.i, Math.min(1, t1 + ARM_T));
      this.out.push({ kind: 'bend', a, b, before, after });
    } else {
      const cubic = hermite(a, b, t1 - t0);
      if (depth >= MAX_DEPTH || passes(cubic, tests)) {
        const inverted = a.stretch < 0 || b.stretch < 0;
        this.out.push({ kind: 'curve', a, b, cubic, inverted, i: this.i, t0, t1 });
      } else {
        const t = (t0 + t1) / 2;
        this.between(t0, t, a, tests[1], depth + 1);
        this.between(t, t1, tests[1], b, depth + 1);
      }
    }
  }

  private place(t: number): Place {
    const { chain: c, i, distance: d } = this;
    const at = jetAt(c, i, t);
    const [tx, ty] = tangent(c, i, t);
    const [x, y] = [at.x + d * ty, at.y - d * tx];
    const speed = Math.hypot(at.dx, at.dy);
    if (speed < RESTING) return { px: at.x, py: at.y, tx, ty, x, y, dx: 0, dy: 0, stretch: 1 };
    const u = 1 - t;
    const ax = u * (c[i + 4] - 2 * c[i + 2] + c[i]) + t * (c[i + 6] - 2 * c[i + 4] + c[i + 2]);
    const ay = u * (c[i + 5] - 2 * c[i + 3] + c[i + 1]) + t * (c[i + 7] - 2 * c[i + 5] + c[i + 3]);
    const curvature = (6 * (at.dx * ay - at.dy * ax)) / (speed * speed * speed);
    const stretch = 1 + d * curvature;
    const [dx, dy] = [at.dx * stretch, at.dy * stretch];
    return { px: at.x, py: at.y, tx, ty, x, y, dx, dy, stretch };
  }

  /** Where between two parameters the parallel turns from backward to forward or the reverse. */
  private cuspBetween(t0: number, t1: number, startsBackward: boolean): number {
    let [low, high] = [t0, t1];
    for (let k = 0; k < CUSP_STEPS; k++) {
      const middle = (low + high) / 2;
      if (this.place(middle).stretch < 0 === startsBackward) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }
}

/** The cubic with given ends and derivatives there, over dt of the source's t. */
function hermite(a: Place, b: Place, dt: number): Cubics {
  const h = dt / 3;
  const [x1, y1, x2, y2] = [a.x + a.dx * h, a.y + a.dy * h, b.x - b.dx * h, b.y - b.dy * h];
  return Float64Array.of(a.x, a.y, x1, y1, x2, y2, b.x, b.y);
}

/** Whether a cubic passes its quarters where the true parallel does. */
const passes = (cubic: Cubics, quarters: readonly Place[]): boolean =>
  quarters.every((p, k) => {
    const q = jetAt(cubic, 0, (k + 1) / 4);
    return Math.hypot(p.x - q.x, p.y - q.y) <= PARALLEL_MM;
  });

/** Unit tangent; where a handle lies on its node, the direction that the curve leaves it in. */
export function tangent(c: Cubics, i: number, t: number): [number, number] {
  const at = jetAt(c, i, t);
  const speed = Math.hypot(at.dx, at.dy);
  if (speed >= RESTING) return [at.dx / speed, at.dy / speed];
  const [to, from] = t < 0.5 ? [4, 0] : [6, 2];
  for (const [p, q] of [
    [to, from],
    [6, 0],
  ]) {
    const [dx, dy] = [c[i + p] - c[i + q], c[i + p + 1] - c[i + q + 1]];
    const length = Math.hypot(dx, dy);
    if (length > 1e-12) return [dx / length, dy / length];
  }
  return [1, 0];
}
