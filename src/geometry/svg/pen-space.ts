import { type Affine, IDENTITY, inOrder, scaling } from '../transform.js';
import { MM_PER_PX } from './number.js';

/**
 * The space in which a stroke's pen is round. A map that stretches unevenly makes the pen an
 * ellipse, so such a stroke is outlined before the map and moved after it; but already at about
 * its final size, so that the outline is as near as one made on the page.
 */
export interface PenSpace {
  readonly fromUser: Affine;
  readonly toPage: Affine;
  /** Pen space per unit of the stroke's width and dashes. */
  readonly scale: number;
}

/** Maps that stretch alike in all directions to this share count as even. */
const EVEN = 1e-9;

/** The pen space of strokes in user units that `matrix` maps to mm; see `vector-effect` in SVG 2. */
export function penSpace(matrix: Affine, isNonScaling: boolean): PenSpace {
  if (isNonScaling) return { fromUser: matrix, toPage: IDENTITY, scale: MM_PER_PX };
  const scale = largestStretch(matrix);
  if (scale - smallestStretch(matrix) <= EVEN * scale) {
    return { fromUser: matrix, toPage: IDENTITY, scale };
  }
  return { fromUser: scaling(scale), toPage: inOrder(scaling(1 / scale), matrix), scale };
}

/** By how much the map stretches where it does so most: its larger singular value. */
export function largestStretch({ a, b, c, d }: Affine): number {
  return (Math.hypot(a + d, b - c) + Math.hypot(a - d, b + c)) / 2;
}

function smallestStretch({ a, b, c, d }: Affine): number {
  return Math.abs(Math.hypot(a + d, b - c) - Math.hypot(a - d, b + c)) / 2;
}
