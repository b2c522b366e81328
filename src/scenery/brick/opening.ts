import { flatten, regionBounds } from '../../geometry/measure.js';
import type { Bounds, Point, Region } from '../../geometry/types.js';

/** What a bricklayer sees in a window's outline. */
export interface Opening {
  readonly bounds: Bounds;
  /** `flat`: a level head; `arched`: curved above its springing; `round`: curved all round. */
  readonly form: 'flat' | 'arched' | 'round';
  /** Where the plumb edges end at the top, y in mm. */
  readonly springing: number;
  /** The soffit: left springing over the crown to the right one; all round for a round one. */
  readonly soffit: readonly Point[];
}

/** A head that rises less than this share of the width is bridged by a flat arch. */
const FLAT_RISE = 0.12;
/** A foot that curves up by more than this share of the height makes the opening round. */
const ROUND_FOOT = 0.2;
/** How far a point may be off the outermost x to lie on the plumb edge, mm. */
const PLUMB_MM = 0.03;
const FLATTEN_MM = 0.01;

/** Null where there is no window. */
export function openingOf(window: Region): Opening | null {
  if (window.contours.length === 0) return null;
  const bounds = regionBounds(window);
  const points = flatten(window.contours[0], FLATTEN_MM).slice(0, -1);
  const left = points.filter((p) => p.x < bounds.minX + PLUMB_MM).map((p) => p.y);
  const right = points.filter((p) => p.x > bounds.maxX - PLUMB_MM).map((p) => p.y);
  const springing = Math.max(Math.min(...left), Math.min(...right));
  const feet = Math.min(Math.max(...left), Math.max(...right));
  const width = bounds.maxX - bounds.minX;
  const height = bounds.maxY - bounds.minY;
  if (bounds.maxY - feet > ROUND_FOOT * height) {
    const start = points.findIndex((p) => p.y === Math.max(...points.map((q) => q.y)));
    const soffit = [...points.slice(start), ...points.slice(0, start + 1)];
    return { bounds, form: 'round', springing, soffit };
  }
  if (springing - bounds.minY < FLAT_RISE * width) {
    const soffit = [
      { x: bounds.minX, y: bounds.minY },
      { x: bounds.maxX, y: bounds.minY },
    ];
    return { bounds, form: 'flat', springing: bounds.minY, soffit };
  }
  return { bounds, form: 'arched', springing, soffit: overTheTop(points, bounds, springing) };
}

/** The clockwise contour from the left springing to the right one. */
function overTheTop(points: readonly Point[], bounds: Bounds, springing: number): Point[] {
  const nearest = (x: number) => {
    const off = points.map((p) => Math.hypot(p.x - x, p.y - springing));
    return off.indexOf(Math.min(...off));
  };
  const from = nearest(bounds.minX);
  const to = nearest(bounds.maxX);
  return from < to
    ? points.slice(from, to + 1)
    : [...points.slice(from), ...points.slice(0, to + 1)];
}
