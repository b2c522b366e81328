import { chordsOf, cubicLength } from './chain.js';
import { linesInside } from './clip-lines.js';
import { isStraightCubic, jetAt } from './cubic.js';
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
  const { x, y } = jetAt(c, i, t);
  return { x, y };
}

/**
 * The chain as points no further than `toleranceMm` from it, first point included and, for an open
 * chain, the last. A closed chain repeats its first point at the end.
 */
export function flatten(c: Cubics, toleranceMm: number): Point[] {
  const { x, y } = chordsOf(c, toleranceMm);
  return Array.from(x, (px, k) => ({ x: px, y: y[k] }));
}

/** Length in mm: exact on straight edges, within 1e-6 mm on curves, 0.1 % of a cubic with a cusp. */
export function chainLength(c: Cubics): number {
  let length = 0;
  for (let i = 0; i < c.length; i += 8) {
    length += isStraightCubic(c, i)
      ? Math.hypot(c[i + 6] - c[i], c[i + 7] - c[i + 1])
      : cubicLength(c, i);
  }
  return length;
}

export const lineLength = (line: Line): number => chainLength(line.cubics);

/** Length in mm of what of a line lies inside the region; not what runs along its edge. */
export const lengthInside = (line: Line, region: Region): number =>
  linesInside([line], region).reduce((sum, part) => sum + lineLength(part), 0);

/** Length in mm of the whole outline, round the holes too. */
export const perimeter = (region: Region): number =>
  region.contours.reduce((sum, c) => sum + chainLength(c), 0);

/** The tight box round chains, exact for cubics; empty (`minX > maxX`) round nothing. */
export function boundsOf(chains: readonly Cubics[]): Bounds {
  const low = [Infinity, Infinity];
  const high = [-Infinity, -Infinity];
  for (const c of chains) {
    for (let i = 0; i < c.length; i += 8) {
      for (let axis = 0; axis < 2; axis++) {
        for (const value of extremes(
          c[i + axis],
          c[i + 2 + axis],
          c[i + 4 + axis],
          c[i + 6 + axis],
        )) {
          low[axis] = Math.min(low[axis], value);
          high[axis] = Math.max(high[axis], value);
        }
      }
    }
  }
  return { minX: low[0], minY: low[1], maxX: high[0], maxY: high[1] };
}

/** One coordinate of a cubic at its ends and where it turns between them. */
function extremes(p0: number, p1: number, p2: number, p3: number): number[] {
  const values = [p0, p3];
  const isBetween = (p: number): boolean => p >= Math.min(p0, p3) && p <= Math.max(p0, p3);
  if (isBetween(p1) && isBetween(p2)) return values;
  // A third of the derivative is a t^2 + 2 b t + c.
  const a = p3 - p0 + 3 * (p1 - p2);
  const b = p0 - 2 * p1 + p2;
  const c = p1 - p0;
  const root = Math.sqrt(b * b - a * c);
  // The root that does not cancel, and the other one from the product of the two, c / a.
  const q = b < 0 ? root - b : -root - b;
  for (const t of [q / a, c / q]) {
    if (!(t > 0 && t < 1)) continue;
    const u = 1 - t;
    values.push(u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3);
  }
  return values;
}

export const middleOfBox = ({ minX, minY, maxX, maxY }: Bounds): Point => ({
  x: (minX + maxX) / 2,
  y: (minY + maxY) / 2,
});

export const regionBounds = (region: Region): Bounds => boundsOf(region.contours);

export const lineBounds = (line: Line): Bounds => boundsOf([line.cubics]);
