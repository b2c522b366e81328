import { polygon, regionOf } from '../geometry/pen.js';
import type { Region } from '../geometry/types.js';

/** A flap ends this far short of the outer fold, so that it never holds the fold open. */
export const FLAP_SETBACK_MM = 1.5;
/** How much a flap's free end is drawn in at top and bottom, as a share of its width: a glued
 * flap a little askew must not show beyond the spine. */
const FLAP_TAPER_SHARE = 0.25;

/**
 * The uncut card of a panel: the flat part between the hinges and a flap outside each of them.
 * The block is `width` wide from outer fold to outer fold; the card stops FLAP_SETBACK_MM short.
 */
export function panelBlank(width: number, height: number, pitch: number): Region {
  const outer = FLAP_SETBACK_MM;
  const taper = (pitch - outer) * FLAP_TAPER_SHARE;
  return regionOf(
    polygon([
      { x: pitch, y: 0 },
      { x: width - pitch, y: 0 },
      { x: width - outer, y: taper },
      { x: width - outer, y: height - taper },
      { x: width - pitch, y: height },
      { x: pitch, y: height },
      { x: outer, y: height - taper },
      { x: outer, y: taper },
    ]),
  );
}
