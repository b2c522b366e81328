import type { Cubics, Line, Point, Region } from './types.js';

/** Coordinates nearer than this (mm) are one point: far below what any cutter can place. */
const SAME_POINT_MM = 1e-7;

/**
 * Draws one chain of cubics stroke by stroke. Angles are degrees, and positive turns are clockwise
 * on screen because y runs down.
 */
export class Pen {
  private readonly numbers: number[] = [];
  private startX = 0;
  private startY = 0;
  private x = 0;
  private y = 0;

  moveTo(x: number, y: number): this {
    if (this.numbers.length > 0) throw new Error('A pen draws one chain: start a new pen instead.');
    this.startX = this.x = x;
    this.startY = this.y = y;
    return this;
  }

  lineTo(x: number, y: number): this {
    if (Math.hypot(x - this.x, y - this.y) < SAME_POINT_MM) return this;
    const dx = (x - this.x) / 3;
    const dy = (y - this.y) / 3;
    return this.curveTo(this.x + dx, this.y + dy, x - dx, y - dy, x, y);
  }

  curveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this {
    this.numbers.push(this.x, this.y, x1, y1, x2, y2, x, y);
    this.x = x;
    this.y = y;
    return this;
  }

  /** A quadratic Bézier, raised exactly to a cubic. */
  quadTo(cx: number, cy: number, x: number, y: number): this {
    return this.curveTo(
      this.x + (2 / 3) * (cx - this.x),
      this.y + (2 / 3) * (cy - this.y),
      x + (2 / 3) * (cx - x),
      y + (2 / 3) * (cy - y),
      x,
      y,
    );
  }

  /**
   * Part of a circle round (cx, cy) from the pen's place through `sweepDeg`. Each cubic spans at
   * most 90 degrees, so that the radial error stays below 0.0273 % of the radius.
   */
  arcAround(cx: number, cy: number, sweepDeg: number): this {
    const parts = Math.max(1, Math.ceil(Math.abs(sweepDeg) / 90 - 1e-9));
    const step = (sweepDeg * Math.PI) / 180 / parts;
    const handle = (4 / 3) * Math.tan(step / 4);
    let ux = this.x - cx;
    let uy = this.y - cy;
    for (let i = 0; i < parts; i++) {
      const vx = ux * Math.cos(step) - uy * Math.sin(step);
      const vy = ux * Math.sin(step) + uy * Math.cos(step);
      this.curveTo(
        this.x - handle * uy,
        this.y + handle * ux,
        cx + vx + handle * vy,
        cy + vy - handle * vx,
        cx + vx,
        cy + vy,
      );
      ux = vx;
      uy = vy;
    }
    return this;
  }

  /**
   * A smooth curve through the given points, going on from the pen's place (centripetal
   * Catmull-Rom, so that uneven spacing makes no loops).
   * P. J. Barry and R. N. Goldman, A recursive evaluation algorithm for a class of Catmull-Rom
   * splines, SIGGRAPH 1988; centripetal parameters: C. Yuksel, S. Schaefer and J. Keyser,
   * Parameterization and applications of Catmull-Rom curves, CAD 43 (2011).
   */
  smoothTo(points: readonly Point[]): this {
    const all = [{ x: this.x, y: this.y }, ...points];
    for (let i = 0; i + 1 < all.length; i++) {
      const [c1, c2] = splineHandles(
        all[i - 1] ?? all[i],
        all[i],
        all[i + 1],
        all[i + 2] ?? all[i + 1],
      );
      this.curveTo(c1.x, c1.y, c2.x, c2.y, all[i + 1].x, all[i + 1].y);
    }
    return this;
  }

  /** The closed chain, with a straight closing edge where the ends do not meet. */
  close(): Cubics {
    this.lineTo(this.startX, this.startY);
    const chain = Float64Array.from(this.numbers);
    if (chain.length > 0) {
      chain[chain.length - 2] = this.startX;
      chain[chain.length - 1] = this.startY;
    }
    return chain;
  }

  /** The open chain as a line. */
  line(): Line {
    return { cubics: Float64Array.from(this.numbers) };
  }
}

export const pen = (x: number, y: number): Pen => new Pen().moveTo(x, y);

/** A closed contour with straight edges. It keeps the points' own direction. */
export function polygon(points: readonly Point[]): Cubics {
  const p = pen(points[0].x, points[0].y);
  for (const q of points.slice(1)) p.lineTo(q.x, q.y);
  return p.close();
}

/** An open line with straight edges. */
export function polyline(points: readonly Point[]): Line {
  const p = pen(points[0].x, points[0].y);
  for (const q of points.slice(1)) p.lineTo(q.x, q.y);
  return p.line();
}

/** A closed smooth contour through the points (centripetal Catmull-Rom). */
export function smoothContour(points: readonly Point[]): Cubics {
  const n = points.length;
  const p = pen(points[0].x, points[0].y);
  for (let i = 0; i < n; i++) {
    const next = points[(i + 1) % n];
    const [c1, c2] = splineHandles(points[(i + n - 1) % n], points[i], next, points[(i + 2) % n]);
    p.curveTo(c1.x, c1.y, c2.x, c2.y, next.x, next.y);
  }
  return p.close();
}

/** An open smooth line through the points (centripetal Catmull-Rom). */
export function smoothLine(points: readonly Point[]): Line {
  return pen(points[0].x, points[0].y).smoothTo(points.slice(1)).line();
}

/** Only the contour, as a region. The caller vouches that it is simple and runs clockwise. */
export const regionOf = (...contours: Cubics[]): Region => ({ contours });

function splineHandles(a: Point, b: Point, c: Point, d: Point): [Point, Point] {
  const ab = Math.sqrt(Math.hypot(b.x - a.x, b.y - a.y));
  const bc = Math.sqrt(Math.hypot(c.x - b.x, c.y - b.y));
  const cd = Math.sqrt(Math.hypot(d.x - c.x, d.y - c.y));
  const c1 =
    ab < 1e-6 ? { x: b.x + (c.x - b.x) / 3, y: b.y + (c.y - b.y) / 3 } : handle(a, b, c, ab, bc);
  const c2 =
    cd < 1e-6 ? { x: c.x + (b.x - c.x) / 3, y: c.y + (b.y - c.y) / 3 } : handle(d, c, b, cd, bc);
  return [c1, c2];
}

function handle(a: Point, b: Point, c: Point, ab: number, bc: number): Point {
  const wa = bc * bc;
  const wb = 2 * ab * ab + 3 * ab * bc + bc * bc;
  const wc = ab * ab;
  const k = 3 * ab * (ab + bc);
  if (k < 1e-12) return b;
  return { x: (wc * c.x + wb * b.x - wa * a.x) / k, y: (wc * c.y + wb * b.y - wa * a.y) / k };
}
