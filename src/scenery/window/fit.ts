import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { rectangle } from '../../geometry/primitives.js';
import { inverse, moveRegion, translation } from '../../geometry/transform.js';
import type { Region } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import { fitToCut } from '../land/fit.js';

/**
 * How far a body that stands in the window laps over its edge, mm: enough to be one with the frame,
 * and so near to the edge that the lap's own outline is not drawn on the frame.
 */
export const LAP_MM = 0.8;
/** Width of the frame that stands in for the card's while a body is made fit, in smallest webs. */
const RIM_WEBS = 5;

/** What of the shapes stands in the window, with its lap over the edge. */
export const inWindow = (shapes: readonly Region[], window: Region): Region =>
  intersect(union(shapes), offset(window, LAP_MM));

/** The lap itself: a ring that all of a body hangs on. */
export const lapOf = (window: Region): Region => subtract(offset(window, LAP_MM), [window]);

/** All of the frame that matters to a body, as card. */
export function rimOf(window: Region, widthMm: number): Region {
  const { minX, minY, maxX, maxY } = regionBounds(window);
  const box = rectangle(
    minX - widthMm,
    minY - widthMm,
    maxX - minX + 2 * widthMm,
    maxY - minY + 2 * widthMm,
  );
  return subtract(box, [window]);
}

/**
 * What of the drawing is fit to be cut in the window: nothing thinner than the smallest web, no gap
 * narrower than the smallest hole, and only what hangs on the frame.
 */
export function fitInWindow(drawn: Region, window: Region, plot: Plot): Region {
  const width = RIM_WEBS * plot.smallestWeb;
  const { minX, maxY } = regionBounds(window);
  // A trunk at the origin is what a drawing is held by: here a jamb is put in its place.
  const there = translation(width / 2 - minX, -maxY);
  const rim = moveRegion(rimOf(window, width), there);
  const opening = moveRegion(window, there);
  const standIn = { ...plot, root: width, frame: { ...plot.frame, card: rim, window: opening } };
  const card = union([rim, intersect(moveRegion(drawn, there), opening)]);
  const { body, holes } = fitToCut(card, standIn);
  const fit = moveRegion(subtract(body, [holes]), inverse(there));
  return inWindow([fit, lapOf(window)], window);
}
