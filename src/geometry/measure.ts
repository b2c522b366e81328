import type { Bounds, Cubics, Line, Point, Region } from './types.js';

/**
 * Signed area of a closed chain in mm2, exact for cubics (Green's theorem). Positive when the chain
 * runs clockwise on screen (y down).
 */
export function contourArea(c: Cubics): number {
  let area = 0;
  for (let i = 0; i < c.length; i += 8) {
    const [x0, y0, x1, y1, x2, y2, x3, y3] = c.subarray(i, i + 8);
    area +=
      3 *
      ((y3 - y0) * (x1 + x2) -
        (x3 - x0) * (y1 + y2) +
        y1 * (x0 - x2) -
        x1 * (y0 - y2) +
        y3 * (x2 + x0 / 3) -
        x3 * (y2 + y0 / 3));
  }
  return area / 20;
}

/** Area in mm2, holes taken off. */
export const regionArea = (region: Region): number =>
  region.contours.reduce((sum, c) => sum + contourArea(c), 0);

/** The point at parameter t of the cubic that starts at index i of the chain. */
export function pointAt(c: Cubics, i: number, t: number): Point {
  const u = 1 - t;
  const w0 = u * u * u;
  const w1 = 3 * u * u * t;
  const w2 = 3 * u * t * t;
  const w3 = t * t * t;
  return {
    x: w0 * c[i] + w1 * c[i + 2] + w2 * c[i + 4] + w3 * c[i + 6],
    y: w0 * c[i + 1] + w1 * c[i + 3] + w2 * c[i + 5] + w3 * c[i + 7],
  };
}

/**
 * The chain as points no further than `toleranceMm` from it, first point included and, for an open
 * chain, the last. A closed chain repeats its first point at the end.
 */
export function flatten(c: Cubics, toleranceMm: number): Point[] {
  const points: Point[] = c.length > 0 ? [{ x: c[0], y: c[1] }] : [];
  for (let i = 0; i < c.length; i += 8) {
    const ax = c[i] - 2 * c[i + 2] + c[i + 4];
    const ay = c[i + 1] - 2 * c[i + 3] + c[i + 5];
    const bx = c[i + 2] - 2 * c[i + 4] + c[i + 6];
    const by = c[i + 3] - 2 * c[i + 5] + c[i + 7];
    const bend = Math.sqrt(Math.max(ax * ax + ay * ay, bx * bx + by * by));
    // Wang's bound on the chord error of a cubic cut into n equal steps of t.
    const n = Math.min(1000, Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / toleranceMm))));
    for (let k = 1; k < n; k++) points.push(pointAt(c, i, k / n));
    points.push({ x: c[i + 6], y: c[i + 7] });
  }
  return points;
}

/** Length in mm, from chords within 0.002 mm of the curve. */
export function chainLength(c: Cubics): number {
  const points = flatten(c, 0.002);
  let length = 0;
  for (let i = 1; i < points.length; i++) {
    length += Math.hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y);
  }
  return length;
}

export const lineLength = (line: Line): number => chainLength(line.cubics);

export const perimeter = (region: Region): number =>
  region.contours.reduce((sum, c) => sum + chainLength(c), 0);

/** The tight box round chains, from chords within 0.002 mm of them. */
export function boundsOf(chains: readonly Cubics[]): Bounds {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const chain of chains) {
    for (const p of flatten(chain, 0.002)) {
      minX = Math.min(minX, p.x);
      minY = Math.min(minY, p.y);
      maxX = Math.max(maxX, p.x);
      maxY = Math.max(maxY, p.y);
    }
  }
  return { minX, minY, maxX, maxY };
}

export const regionBounds = (region: Region): Bounds => boundsOf(region.contours);

export const lineBounds = (line: Line): Bounds => boundsOf([line.cubics]);
