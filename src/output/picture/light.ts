import type { Point } from '../../geometry/types.js';

/**
 * One light for all pictures: a large window up to the left and in front of the book, so that its
 * rays run right, down and away from the eye.
 */

/** How far a ray moves right and down for each millimetre it goes back. Steeper gives longer
 * shadows, and drowns the deeper panels. */
const RUN_RIGHT = 0.2;
const RUN_DOWN = 0.3;
/** Share of light that comes from all round. Less makes the turned faces harsh. */
const AMBIENT = 0.55;

/** Where the shadow of something falls on a plane `gapMm` behind it. */
export const shadowShift = (gapMm: number): Point => ({
  x: RUN_RIGHT * gapMm,
  y: RUN_DOWN * gapMm,
});

/** Side light counts more on the standing folds than the shallow shadow slope would give. */
const SIDE_LIGHT = 2.4;

/**
 * How bright an upright face is beside one that faces the eye (1). The face runs `across` mm to
 * the right for every `back` mm away from the eye, and is seen from the front.
 */
export function faceBrightness(across: number, back: number): number {
  const length = Math.hypot(across, back);
  const rightward = (Math.sign(across) * back) / length;
  const outward = Math.abs(across) / length;
  const direct = Math.max(0, outward - SIDE_LIGHT * RUN_RIGHT * rightward);
  return AMBIENT + (1 - AMBIENT) * direct;
}
