import { flatten } from '../../geometry/measure.js';
import {
  type Affine,
  inOrder,
  moveRegion,
  rotation,
  translation,
} from '../../geometry/transform.js';
import type { Cubics, Point, Region } from '../../geometry/types.js';
import type { LineOfText } from './line-of-text.js';

/** A baseline: where it is, and which way it runs, so far (mm) to the right of its middle. */
export type Guide = (mm: number) => { readonly at: Point; readonly degrees: number };

/** A level line through a point. */
export const straight =
  (x: number, y: number): Guide =>
  (mm) => ({ at: { x: x + mm, y }, degrees: 0 });

/**
 * A circle's arc, its crown at the point, on whose chord of `chordMm` it rises by `riseMm` (sags
 * where that is negative): radius = rise / 2 + chord^2 / (8 rise), CRC Standard Mathematical Tables,
 * circular segment.
 */
export function arched(x: number, y: number, chordMm: number, riseMm: number): Guide {
  if (Math.abs(riseMm) < 1e-6) return straight(x, y);
  const radius = riseMm / 2 + chordMm ** 2 / (8 * riseMm);
  return (mm) => {
    const turn = mm / radius;
    return {
      at: { x: x + radius * Math.sin(turn), y: y + radius * (1 - Math.cos(turn)) },
      degrees: (turn * 180) / Math.PI,
    };
  };
}

const TOLERANCE_MM = 0.01;
/** A direction is taken over so much of the line either way: letters turn, they do not jolt, mm. */
const FEEL_MM = 1;

/**
 * Along a closed contour, clockwise on screen or, `backwards`, the other way; its middle is where
 * the contour crosses the plumb line at x highest or, backwards, lowest. Null where it does not.
 */
export function alongContour(contour: Cubics, x: number, backwards: boolean): Guide | null {
  const points = flatten(contour, TOLERANCE_MM);
  if (backwards) points.reverse();
  const ends = [0];
  let middle: { mm: number; y: number } | null = null;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    if (a.x <= x !== b.x <= x) {
      const t = (x - a.x) / (b.x - a.x);
      const y = a.y + t * (b.y - a.y);
      if (middle === null || (backwards ? y > middle.y : y < middle.y)) {
        middle = { mm: ends[i - 1] + t * length, y };
      }
    }
    ends.push(ends[i - 1] + length);
  }
  if (middle === null) return null;
  const start = middle.mm;
  return (mm) => {
    const a = pointAt(points, ends, start + mm - FEEL_MM);
    const b = pointAt(points, ends, start + mm + FEEL_MM);
    return {
      at: pointAt(points, ends, start + mm),
      degrees: (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI,
    };
  };
}

/** The point so far round a closed chain of chords, counted on past its end. */
function pointAt(points: readonly Point[], ends: readonly number[], mm: number): Point {
  const whole = ends[ends.length - 1];
  const along = ((mm % whole) + whole) % whole;
  let [low, high] = [0, ends.length - 1];
  while (high - low > 1) {
    const half = (low + high) >> 1;
    if (ends[half] <= along) low = half;
    else high = half;
  }
  const t = (along - ends[low]) / Math.max(1e-9, ends[high] - ends[low]);
  return {
    x: points[low].x + t * (points[high].x - points[low].x),
    y: points[low].y + t * (points[high].y - points[low].y),
  };
}

/** A letter in its place, and how far its upright is turned clockwise. */
export interface SetLetter {
  readonly shape: Region;
  readonly degrees: number;
}

/** The letters set on a guide, middle on middle; each stands square on it and keeps its shape. */
export const setOn = ({ letters, widthMm }: LineOfText, guide: Guide): SetLetter[] =>
  letters.map(({ shape, middle }) => {
    const { at, degrees } = guide(middle - widthMm / 2);
    const toGuide: Affine = inOrder(
      translation(-middle, 0),
      rotation(degrees),
      translation(at.x, at.y),
    );
    return { shape: moveRegion(shape, toGuide), degrees };
  });
