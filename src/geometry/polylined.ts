import type { Cubics, Region } from './types.js';

/**
 * Contours whose curves could not be kept: fine polylines stand in for them. The mark goes with a
 * contour through booleans, offsets and moves, so that a check can tell of it at the end.
 */
const polylined = new WeakSet<Cubics>();

export function markPolylined(contours: readonly Cubics[]): void {
  for (const contour of contours) polylined.add(contour);
}

export const isPolylined = (contour: Cubics): boolean => polylined.has(contour);

/** Those contours of a region that follow their true curves only within 0.01 mm. */
export const polylinedContours = (region: Region): Cubics[] => region.contours.filter(isPolylined);
