import { union } from '../../geometry/boolean/boolean.js';
import { flatten } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import { rounded } from '../brick/craft.js';
import { openingOf } from '../brick/opening.js';
import type { Opening } from '../window/opening.js';

/** A place on a branch's way: the point, the way it grows and the way into the window. */
export interface Place {
  readonly at: Point;
  readonly along: Point;
  readonly inward: Point;
}

/** A branch's way from the foot of its jamb to the middle of the head. */
export interface Course {
  readonly lengthMm: number;
  place(mm: number): Place;
}

/** The arch's corners under a square head, as a share of the window's smaller side. */
const ARCHED = 0.44;
/** In a round window a branch starts this share of the way up from the lowest point. */
const ROUND_START = 0.16;
const FLATTEN_MM = 0.03;

/** The two branches' ways, left and right, `insetMm` from the window's edge where it is smooth. */
export function coursesOf({ window, bounds }: Opening, insetMm: number): [Course, Course] {
  const { minX, maxX, minY, maxY } = bounds;
  const [width, height] = [maxX - minX, maxY - minY];
  const round = openingOf(window)?.form === 'round';
  // Feet stand square on the sill: only the head's corners are arched over.
  const below = rectangle(minX, maxY - 0.3 * height, width, 2 * height);
  const tall: Region = round ? window : union([window, below]);
  const arch = rounded(offset(tall, -insetMm), ARCHED * Math.min(width, height) - insetMm);
  const outline = flatten(arch.contours[0], FLATTEN_MM);
  const middle = (minX + maxX) / 2;
  const half = (side: -1 | 1): Course => {
    const points = outline
      .filter((p) => side * (p.x - middle) > 0 && p.y < maxY + insetMm)
      .map((p) => ({ ...p, angle: Math.atan2(side * (p.x - middle), p.y - (minY + maxY) / 2) }))
      .sort((a, b) => a.angle - b.angle);
    const foot = round ? [] : [{ x: points[0].x, y: maxY + insetMm }];
    const top = { x: middle, y: Math.min(...outline.map((p) => p.y)) };
    return courseOf([...foot, ...points, top], round ? ROUND_START : 0, side);
  };
  return [half(-1), half(1)];
}

function courseOf(points: readonly Point[], startShare: number, side: -1 | 1): Course {
  const lengths = [0];
  for (let i = 1; i < points.length; i++) {
    const [p, q] = [points[i - 1], points[i]];
    lengths.push(lengths[i - 1] + Math.hypot(q.x - p.x, q.y - p.y));
  }
  const whole = lengths[lengths.length - 1];
  const start = startShare * whole;
  const point = (mm: number): Point => {
    const l = Math.max(0, Math.min(whole, start + mm));
    const i = Math.max(
      1,
      lengths.findIndex((end) => end >= l - 1e-9),
    );
    const share = (l - lengths[i - 1]) / Math.max(1e-9, lengths[i] - lengths[i - 1]);
    const [p, q] = [points[i - 1], points[i]];
    return { x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) };
  };
  return {
    lengthMm: whole - start,
    place(mm) {
      const [a, b] = [point(mm - 1), point(mm + 1)];
      const length = Math.max(1e-9, Math.hypot(b.x - a.x, b.y - a.y));
      const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
      return { at: point(mm), along, inward: { x: side * along.y, y: -side * along.x } };
    },
  };
}

/** The point so far into the window from a place. */
export const stepIn = ({ at, inward }: Place, mm: number): Point => ({
  x: at.x + inward.x * mm,
  y: at.y + inward.y * mm,
});
