import type { Affine } from '../geometry/transform.js';
import type { Point } from '../geometry/types.js';
import type { Book } from './book.js';

/**
 * One-point perspective: an eye on the axis through (eyeX, eyeY), square to the panels, at
 * `distanceMm` from the front panel. Picture coordinates are the front panel's own.
 */
export interface Perspective {
  readonly eyeX: number;
  readonly eyeY: number;
  readonly distanceMm: number;
}

/** The eye at reading distance, before the middle of the front window. */
export function perspectiveOf(book: Book): Perspective {
  const window = book.panels[0]?.window;
  return {
    eyeX: window ? window.x + window.width / 2 : book.width / 2,
    eyeY: window ? window.y + window.height / 2 : book.height / 2,
    distanceMm: book.readingDistance,
  };
}

/** How large a length at `depthMm` behind the front panel looks: similar triangles, D / (D + z). */
export const scaleAt = (view: Perspective, depthMm: number): number =>
  view.distanceMm / (view.distanceMm + depthMm);

/** Where a point at `depthMm` is seen in the plane of the front panel. */
export function project(view: Perspective, point: Point, depthMm: number): Point {
  const s = scaleAt(view, depthMm);
  return {
    x: view.eyeX + (point.x - view.eyeX) * s,
    y: view.eyeY + (point.y - view.eyeY) * s,
  };
}

/** The same for a whole panel at `depthMm`. */
export function planeAt(view: Perspective, depthMm: number): Affine {
  const s = scaleAt(view, depthMm);
  return { a: s, b: 0, c: 0, d: s, e: view.eyeX * (1 - s), f: view.eyeY * (1 - s) };
}
