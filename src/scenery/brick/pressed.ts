import { contourArea } from '../../geometry/measure.js';
import { polygon, regionOf } from '../../geometry/pen.js';
import { roundedRectangle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import type { Relief } from '../family.js';
import { along, type RingJoint } from './arch.js';
import type { Box } from './patches.js';

/** Gap between two pressed bricks: less, and the card between them goes down with them. */
export const PRESSED_JOINT_MM = 0.8;
const PRESSED_CORNER_MM = 0.35;
const PRESS_DEPTH_MM = 0.3;
/** The least of a brick worth pressing, in courses squared (a header is 1.5). */
const LEAST_LEFT_COURSES_SQ = 0.35;

/** A brick as it is pressed, half of each joint left free round it. */
export function brickFace(c: Box): Region {
  const gap = PRESSED_JOINT_MM / 2;
  return roundedRectangle(
    c.x0 + gap,
    c.y0 + gap,
    c.x1 - c.x0 - 2 * gap,
    c.y1 - c.y0 - 2 * gap,
    PRESSED_CORNER_MM,
  );
}

/** A voussoir as it is pressed, `shyMm` behind the soffit. */
export function stoneFace(a: RingJoint, b: RingJoint, shyMm: number): Region {
  const between = (p: Point, q: Point, t: number) => ({
    x: p.x + (q.x - p.x) * t,
    y: p.y + (q.y - p.y) * t,
  });
  const gap = PRESSED_JOINT_MM / 2;
  const corners = (mm: number): [Point, Point] => {
    const [p, q] = [along(a, mm), along(b, mm)];
    const t = gap / Math.hypot(q.x - p.x, q.y - p.y);
    return [between(p, q, t), between(p, q, 1 - t)];
  };
  const [footA, footB] = corners(shyMm);
  const [headA, headB] = corners(-gap);
  return regionOf(polygon([headA, headB, footB, footA]));
}

/** Drops the crumbs that an edge leaves of bricks it cuts. */
const withoutSlivers =
  (courseMm: number) =>
  (region: Region): Region => ({
    contours: region.contours.filter(
      (c) => Math.abs(contourArea(c)) > LEAST_LEFT_COURSES_SQ * courseMm * courseMm,
    ),
  });

/** Faces pressed up or down, crumbs left out. */
export const pressed = (
  faces: readonly Region[],
  side: Relief['side'],
  courseMm: number,
): Relief[] =>
  faces
    .map(withoutSlivers(courseMm))
    .filter((region) => region.contours.length > 0)
    .map((region) => ({ region, side, depthMm: PRESS_DEPTH_MM }));
