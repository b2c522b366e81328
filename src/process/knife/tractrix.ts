/**
 * How a dragged tip follows its pivot after a corner. The tip trails the pivot by the blade's offset
 * r and moves only along the blade, so behind a straight run it draws a tractrix: the angle phi
 * between blade and run shrinks as tan(phi/2) = tan(a/2) exp(-s/r), where a is the corner's turn and
 * s the travel since (tractrix in curve tables, from memory). Angles in radians, lengths in mm.
 */

/** Angle between blade and run after `travelMm` of it, of the sign of the angle at its start. */
export const angleAfter = (angleRad: number, travelMm: number, offsetMm: number): number =>
  2 * Math.atan(Math.tan(angleRad / 2) * Math.exp(-travelMm / offsetMm));

/** How far the tip is from the line of the run; never negative. */
export const lateralAfter = (turnRad: number, travelMm: number, offsetMm: number): number =>
  offsetMm * Math.abs(Math.sin(angleAfter(turnRad, travelMm, offsetMm)));

/** The farthest the tip gets from the line of the run after a corner. */
export const largestLateral = (turnRad: number, offsetMm: number): number =>
  Math.abs(turnRad) >= Math.PI / 2 ? offsetMm : offsetMm * Math.abs(Math.sin(turnRad));

/**
 * Travel after which the tip stays within `withinMm` of the line of the run; 0 where it never leaves
 * that, Infinity after a turn straight back, where the pivot would push the blade.
 */
export function settlingTravel(turnRad: number, offsetMm: number, withinMm: number): number {
  if (largestLateral(turnRad, offsetMm) <= withinMm) return 0;
  const settled = Math.tan(Math.asin(withinMm / offsetMm) / 2);
  const turned = Math.tan(Math.min(Math.abs(turnRad), Math.PI) / 2);
  if (turned > STRAIGHT_BACK) return Infinity;
  return Math.max(0, -offsetMm * Math.log(settled / turned));
}

/** Tangent of half a turn beyond which it is straight back, to rounding. */
const STRAIGHT_BACK = 1e9;
