import type { Point } from '../types.js';
import { ChordGrid } from './chord-grid.js';
import type { ChordTable } from './chords.js';

/** Two chords that cross properly: each has its ends on either side of the other. */
export interface Crossing {
  readonly a: number;
  readonly b: number;
  /** In grid units, not rounded. */
  readonly at: Point;
}

/**
 * The proper crossings among the chords of a table, or null where there are more than `most`.
 * Chords that only touch, share an end or overlap along a line do not count.
 */
export function crossingsOf(table: ChordTable, most: number): Crossing[] | null {
  const found = new Map<string, Crossing>();
  const tooMany = new ChordGrid(table).someCell((chords) => {
    for (let j = 1; j < chords.length; j++) {
      for (let k = 0; k < j; k++) {
        const a = Math.min(chords[j], chords[k]);
        const b = Math.max(chords[j], chords[k]);
        const at = crossing(table, a, b);
        if (at) found.set(`${a} ${b}`, { a, b, at });
      }
    }
    return found.size > most;
  });
  return tooMany ? null : [...found.values()];
}

function crossing({ x, y, next }: ChordTable, a: number, b: number): Point | null {
  const [ax, ay, bx, by] = [x[a], y[a], x[b], y[b]];
  const [cx, cy, dx, dy] = [x[next[a]], y[next[a]], x[next[b]], y[next[b]]];
  if (Math.max(ax, cx) < Math.min(bx, dx) || Math.max(bx, dx) < Math.min(ax, cx)) return null;
  if (Math.max(ay, cy) < Math.min(by, dy) || Math.max(by, dy) < Math.min(ay, cy)) return null;
  const sideB = cross(cx - ax, cy - ay, bx - ax, by - ay);
  const sideD = cross(cx - ax, cy - ay, dx - ax, dy - ay);
  if (Math.sign(sideB) * Math.sign(sideD) >= 0) return null;
  const sideA = cross(dx - bx, dy - by, ax - bx, ay - by);
  const sideC = cross(dx - bx, dy - by, cx - bx, cy - by);
  if (Math.sign(sideA) * Math.sign(sideC) >= 0) return null;
  const f = sideA / (sideA - sideC);
  return { x: ax + f * (cx - ax), y: ay + f * (cy - ay) };
}

const cross = (ux: number, uy: number, vx: number, vy: number): number => ux * vy - uy * vx;
