import { jetAt, straightCubic } from '../cubic.js';
import type { Cubics, Point } from '../types.js';

/**
 * Raw offset outlines: the parallel curve of every cubic, joined at the nodes. They may cross
 * themselves; what they wind round a positive number of times is the offset.
 *
 * The parallel at distance d of a curve with unit tangent T and curvature k has the derivative
 * (1 + d k) times the curve's own (G. Farin, Curves and Surfaces for CAGD, offset curves), so its
 * cubic Hermite pieces are exact in place and direction at their ends.
 */

export type Join = 'round' | 'mitre';

/** A parallel piece is split until it is this near (mm) to the true parallel where it is tested. */
const PARALLEL_MM = 2e-3;
/** Bisections for the place where a parallel turns back: its t is then right to 1e-9. */
const CUSP_STEPS = 30;
/** Halvings of one cubic; only pieces round a cusp or a needle-sharp bend are halved that often. */
const MAX_DEPTH = 16;
/** Cosine of the turn (20 degrees) above which a piece counts as running straight on. */
const STRAIGHT_ON_COS = 0.94;
/** Ends this near (mm) and running the same way need no join. */
const SMOOTH_MM = 1e-5;
/** Sine of the turn below which tangents that point apart are a cusp, not a corner. */
const CUSP_SINE = 1e-2;
/** How far along its arms (t) a cusp is looked at. */
const ARM_T = 0.1;
/** Relative area between the two arms of a cusp below which they are the same line. */
const SAME_ARM = 1e-9;
/** Speed (mm per unit of t) below which a cubic counts as resting. */
const RESTING = 1e-9;
/** A mitre reaches at most this many distances from its corner; sharper ones are cut square. */
const MITRE_LIMIT = 4;
/** Area that the longest mitre adds to a round corner, in squares of the distance: tan h - h. */
export const MITRE_AREA = Math.sqrt(MITRE_LIMIT ** 2 - 1) - Math.acos(1 / MITRE_LIMIT);

/** A place on the parallel curve: source point, unit tangent, offset point and its derivative. */
interface Place {
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
 * The raw outline of a closed chain at `distanceMm` to its left as it runs (y down): outward from
 * an outer contour where positive, inward where negative.
 */
export function offsetOutline(chain: Cubics, distanceMm: number, join: Join): Cubics {
  return new Outline(withoutSpecks(chain), distanceMm, join).draw();
}

class Outline {
  private readonly numbers: number[] = [];
  /** How many numbers there were when an inverted stretch ended. */
  private invertedTo = -1;

  constructor(
    private readonly chain: Cubics,
    private readonly distance: number,
    private readonly join: Join,
  ) {}

  draw(): Cubics {
    const { chain } = this;
    const starts: Place[] = [];
    const ends: Place[] = [];
    for (let i = 0; i < chain.length; i += 8) {
      starts.push(this.place(i, 0));
      ends.push(this.place(i, 1));
    }
    starts.forEach((start, k) => {
      this.parallel(k * 8, 0, 1, start, ends[k], 0);
      const next = (k + 1) % starts.length;
      const before = jetAt(chain, k * 8, 1 - ARM_T);
      this.corner(ends[k], starts[next], before, jetAt(chain, next * 8, ARM_T));
    });
    return closedExactly(this.numbers);
  }

  private place(i: number, t: number): Place {
    const { chain: c, distance: d } = this;
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

  /** The parallel of the cubic at i from parameter t0 to t1. */
  private parallel(i: number, t0: number, t1: number, a: Place, b: Place, depth: number): void {
    if (a.stretch * b.stretch < 0) {
      const tc = this.turnBetween(i, t0, t1, a.stretch < 0);
      const cusp = { ...this.place(i, tc), dx: 0, dy: 0, stretch: 0 };
      this.parallel(i, t0, tc, a, cusp, depth + 1);
      this.parallel(i, tc, t1, cusp, b, depth + 1);
      return;
    }
    const inverted = a.stretch < 0 || b.stretch < 0;
    const last = depth >= MAX_DEPTH;
    const straightOn = a.tx * b.tx + a.ty * b.ty > STRAIGHT_ON_COS;
    const h = (t1 - t0) / 3;
    const [x1, y1, x2, y2] = [a.x + a.dx * h, a.y + a.dy * h, b.x - b.dx * h, b.y - b.dy * h];
    const piece = Float64Array.of(a.x, a.y, x1, y1, x2, y2, b.x, b.y);
    if (inverted && (straightOn || last)) {
      this.inverted(a, b);
    } else if (last && !straightOn) {
      const before = jetAt(this.chain, i, Math.max(0, t0 - ARM_T));
      this.corner(a, b, before, jetAt(this.chain, i, Math.min(1, t1 + ARM_T)));
    } else if (last || (!inverted && this.isNear(piece, i, t0, t1))) {
      this.numbers.push(...piece);
    } else {
      const tm = (t0 + t1) / 2;
      const middle = this.place(i, tm);
      this.parallel(i, t0, tm, a, middle, depth + 1);
      this.parallel(i, tm, t1, middle, b, depth + 1);
    }
  }

  /** Where between two parameters the parallel turns from backward to forward or the reverse. */
  private turnBetween(i: number, t0: number, t1: number, startsBackward: boolean): number {
    let [low, high] = [t0, t1];
    for (let k = 0; k < CUSP_STEPS; k++) {
      const middle = (low + high) / 2;
      if (this.place(i, middle).stretch < 0 === startsBackward) low = middle;
      else high = middle;
    }
    return (low + high) / 2;
  }

  private isNear(piece: Cubics, i: number, t0: number, t1: number): boolean {
    return [0.25, 0.5, 0.75].every((f) => {
      const p = jetAt(piece, 0, f);
      const q = this.place(i, t0 + f * (t1 - t0));
      return Math.hypot(p.x - q.x, p.y - q.y) <= PARALLEL_MM;
    });
  }

  /**
   * A stretch that runs backwards never bounds the offset. It goes through the source points, so
   * that what it encloses counts as wound round the other way and falls out.
   */
  private inverted(a: Place, b: Place): void {
    const nx = a.ty + b.ty;
    const ny = -(a.tx + b.tx);
    const scale = this.distance / (Math.hypot(nx, ny) || 1);
    // Two such stretches in a row would go from the source to the parallel and back for nothing.
    if (this.invertedTo === this.numbers.length) this.numbers.length -= 8;
    else this.line(a.x, a.y, a.px, a.py);
    const [ax, ay] = [a.px + nx * scale, a.py + ny * scale];
    const [bx, by] = [b.px + nx * scale, b.py + ny * scale];
    this.line(a.px, a.py, ax, ay);
    this.line(ax, ay, bx, by);
    this.line(bx, by, b.px, b.py);
    this.line(b.px, b.py, b.x, b.y);
    this.invertedTo = this.numbers.length;
  }

  /**
   * From place a to place b round the node (or cusp) that both belong to; `before` and `after` are
   * points of the source some way along its arms.
   */
  private corner(a: Place, b: Place, before: Point, after: Point): void {
    const cross = a.tx * b.ty - a.ty * b.tx;
    const dot = a.tx * b.tx + a.ty * b.ty;
    if (dot > 0 && Math.hypot(b.x - a.x, b.y - a.y) < SMOOTH_MM) return;
    const cusp = dot < 0 && Math.abs(cross) < CUSP_SINE;
    const turn = cusp ? this.cuspTurn(a, before, after) : Math.sign(cross);
    if (turn * this.distance <= 0) {
      // An inner corner: through the node, for the same reason as in `inverted`.
      this.line(a.x, a.y, a.px, a.py);
      this.line(a.px, a.py, b.x, b.y);
      return;
    }
    const angle = Math.abs(Math.atan2(cross, dot));
    const wide = cross !== 0 && turn !== Math.sign(cross);
    const sweep = Math.sign(this.distance) * (wide ? 2 * Math.PI - angle : angle);
    if (this.join === 'mitre') this.mitre(a, b, dot, angle);
    else this.arc(a, b, sweep);
  }

  /**
   * Which way a cusp turns: its tangents cannot tell a spike from a notch, but points further along
   * its arms can. Arms that retrace each other are the bare end of a line, which turns outward.
   */
  private cuspTurn(a: Place, before: Point, after: Point): number {
    const [ux, uy] = [a.px - before.x, a.py - before.y];
    const [vx, vy] = [after.x - a.px, after.y - a.py];
    const cross = ux * vy - uy * vx;
    const size = Math.hypot(ux, uy) * Math.hypot(vx, vy);
    return Math.abs(cross) <= SAME_ARM * size ? Math.sign(this.distance) : Math.sign(cross);
  }

  /** The edges prolonged until they meet or, where that is too far, cut square at the distance. */
  private mitre(a: Place, b: Place, dot: number, angle: number): void {
    // Reach over distance is 1 / cos(angle / 2), and cos2(angle / 2) = (1 + dot) / 2.
    const tooLong = 2 > MITRE_LIMIT * MITRE_LIMIT * (1 + dot);
    const past = Math.abs(this.distance) * Math.tan(tooLong ? angle / 4 : angle / 2);
    const [x1, y1] = [a.x + past * a.tx, a.y + past * a.ty];
    const [x2, y2] = [b.x - past * b.tx, b.y - past * b.ty];
    this.line(a.x, a.y, x1, y1);
    if (tooLong) this.line(x1, y1, x2, y2);
    this.line(tooLong ? x2 : x1, tooLong ? y2 : y1, b.x, b.y);
  }

  /** An arc round the node in cubics of at most a quarter turn each. */
  private arc(a: Place, b: Place, sweep: number): void {
    const parts = Math.ceil(Math.abs(sweep) / (Math.PI / 2 + 1e-6));
    const step = sweep / parts;
    const handle = (4 / 3) * Math.tan(step / 4);
    let [ux, uy] = [a.x - a.px, a.y - a.py];
    let [x, y] = [a.x, a.y];
    for (let k = 1; k <= parts; k++) {
      const vx = ux * Math.cos(step) - uy * Math.sin(step);
      const vy = ux * Math.sin(step) + uy * Math.cos(step);
      const [x3, y3] = k === parts ? [b.x, b.y] : [a.px + vx, a.py + vy];
      this.numbers.push(x, y, x - handle * uy, y + handle * ux);
      this.numbers.push(x3 + handle * vy, y3 - handle * vx, x3, y3);
      [ux, uy, x, y] = [vx, vy, x3, y3];
    }
  }

  private line(x0: number, y0: number, x1: number, y1: number): void {
    if (Math.hypot(x1 - x0, y1 - y0) > 1e-9) this.numbers.push(...straightCubic(x0, y0, x1, y1));
  }
}

/** Unit tangent; where a handle lies on its node, the direction that the curve leaves it in. */
function tangent(c: Cubics, i: number, t: number): [number, number] {
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

/** How many nodes of closed chains turn by more than 20 degrees. */
export function cornerCount(chains: readonly Cubics[]): number {
  let count = 0;
  for (const chain of chains.map(withoutSpecks)) {
    for (let i = 0; i < chain.length; i += 8) {
      const [ax, ay] = tangent(chain, i, 1);
      const [bx, by] = tangent(chain, (i + 8) % chain.length, 0);
      if (ax * bx + ay * by < STRAIGHT_ON_COS) count++;
    }
  }
  return count;
}

/** The chain without cubics that are mere points: they have no direction. */
function withoutSpecks(chain: Cubics): Cubics {
  const kept: number[] = [];
  for (let i = 0; i < chain.length; i += 8) {
    const cubic = chain.subarray(i, i + 8);
    const size = Math.max(
      ...[2, 4, 6].map((k) => Math.hypot(cubic[k] - cubic[0], cubic[k + 1] - cubic[1])),
    );
    if (size > 1e-9) kept.push(...cubic);
  }
  return Float64Array.from(kept);
}

/** Each cubic ends exactly where the next starts; what is closed up is rounding. */
function closedExactly(numbers: readonly number[]): Cubics {
  const chain = Float64Array.from(numbers);
  for (let i = 0; i < chain.length; i += 8) {
    const next = (i + 8) % chain.length;
    chain[i + 6] = chain[next];
    chain[i + 7] = chain[next + 1];
  }
  return chain;
}
