import type { Cubics } from '../../src/geometry/types.js';

/**
 * Winding numbers and distances worked out from the cubics themselves, by halving them until their
 * hulls decide. It shares nothing with src, and makes no chords but for distances.
 */

/** Halvings of one cubic: 2^-48 of it is below the last bit of its coordinates. */
const MAX_DEPTH = 48;
/** Distances are true to this (mm). */
export const DISTANCE_ERROR_MM = 1e-4;

/** How often closed chains wind round a point, clockwise on screen; on a chain, either side's. */
export function windingOf(contours: readonly Cubics[], x: number, y: number): number {
  let turns = 0;
  for (const c of contours) {
    for (let i = 0; i < c.length; i += 8) {
      turns += crossings(
        x,
        y,
        c[i],
        c[i + 1],
        c[i + 2],
        c[i + 3],
        c[i + 4],
        c[i + 5],
        c[i + 6],
        c[i + 7],
        0,
      );
    }
  }
  return turns;
}

/** Crossings of a cubic with the ray from (x, y) to the right; downward ones count up. */
function crossings(
  x: number,
  y: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  depth: number,
): number {
  if (y0 > y && y1 > y && y2 > y && y3 > y) return 0;
  if (y0 <= y && y1 <= y && y2 <= y && y3 <= y) return 0;
  if (x0 <= x && x1 <= x && x2 <= x && x3 <= x) return 0;
  if ((x0 > x && x1 > x && x2 > x && x3 > x) || depth === MAX_DEPTH) {
    return (y3 > y ? 1 : 0) - (y0 > y ? 1 : 0);
  }
  const [ax, ay, bx, by, ex, ey] = [
    (x0 + x1) / 2,
    (y0 + y1) / 2,
    (x1 + x2) / 2,
    (y1 + y2) / 2,
    (x2 + x3) / 2,
    (y2 + y3) / 2,
  ];
  const [fx, fy, gx, gy] = [(ax + bx) / 2, (ay + by) / 2, (bx + ex) / 2, (by + ey) / 2];
  const [mx, my] = [(fx + gx) / 2, (fy + gy) / 2];
  return (
    crossings(x, y, x0, y0, ax, ay, fx, fy, mx, my, depth + 1) +
    crossings(x, y, mx, my, gx, gy, ex, ey, x3, y3, depth + 1)
  );
}

/** Distance (mm) from a point to the nearest chain, or `limitMm` where none is nearer. */
export function distanceFrom(
  contours: readonly Cubics[],
  x: number,
  y: number,
  limitMm: number,
): number {
  let best = limitMm;
  for (const c of contours) {
    for (let i = 0; i < c.length; i += 8) {
      best = nearer(
        best,
        x,
        y,
        c[i],
        c[i + 1],
        c[i + 2],
        c[i + 3],
        c[i + 4],
        c[i + 5],
        c[i + 6],
        c[i + 7],
        0,
      );
    }
  }
  return best;
}

function nearer(
  best: number,
  x: number,
  y: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
  depth: number,
): number {
  const offX = Math.max(Math.min(x0, x1, x2, x3) - x, x - Math.max(x0, x1, x2, x3), 0);
  const offY = Math.max(Math.min(y0, y1, y2, y3) - y, y - Math.max(y0, y1, y2, y3), 0);
  if (offX >= best || offY >= best || offX * offX + offY * offY >= best * best) return best;
  // Both handles this near to the thirds of the chord keep the curve as near to it.
  const bulge = Math.max(
    Math.abs(2 * x0 - 3 * x1 + x3),
    Math.abs(2 * y0 - 3 * y1 + y3),
    Math.abs(x0 - 3 * x2 + 2 * x3),
    Math.abs(y0 - 3 * y2 + 2 * y3),
  );
  if (bulge < DISTANCE_ERROR_MM || depth === MAX_DEPTH) {
    return Math.min(best, chordDistance(x, y, x0, y0, x3, y3));
  }
  const [ax, ay, bx, by, ex, ey] = [
    (x0 + x1) / 2,
    (y0 + y1) / 2,
    (x1 + x2) / 2,
    (y1 + y2) / 2,
    (x2 + x3) / 2,
    (y2 + y3) / 2,
  ];
  const [fx, fy, gx, gy] = [(ax + bx) / 2, (ay + by) / 2, (bx + ex) / 2, (by + ey) / 2];
  const [mx, my] = [(fx + gx) / 2, (fy + gy) / 2];
  const half = nearer(best, x, y, x0, y0, ax, ay, fx, fy, mx, my, depth + 1);
  return nearer(half, x, y, mx, my, gx, gy, ex, ey, x3, y3, depth + 1);
}

function chordDistance(
  x: number,
  y: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const lengthSq = dx * dx + dy * dy;
  const along = lengthSq === 0 ? 0 : ((x - x0) * dx + (y - y0) * dy) / lengthSq;
  const f = Math.max(0, Math.min(1, along));
  return Math.hypot(x0 + f * dx - x, y0 + f * dy - y);
}
