import { subtract } from '../../geometry/boolean/boolean.js';
import { contourArea } from '../../geometry/measure.js';
import { reversed } from '../../geometry/transform.js';
import type { Point, Region } from '../../geometry/types.js';
import { rounded } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { tied } from '../grass/tidy.js';
import { cutSafe } from '../tree/finish.js';

/** Radius of the finest top that is left standing, in smallest webs. */
const TOP = 0.53;

/**
 * Land made fit to cut, as body and holes: no top finer than the smallest web, nothing loose, and
 * nothing below `foot`. It must be card half a millimetre over the ground at the foot's x.
 */
export function fitToCut(
  land: Region,
  plot: Plot,
  foot: Point = { x: 0, y: plot.root },
): { body: Region; holes: Region } {
  const blunt = rounded(land, TOP * plot.smallestWeb);
  const { body, holes } = cutSafe(blunt, plot, foot);
  const { smallestWeb, smallestHole } = plot;
  const fineness = { smallestWeb, smallestHole, eyelet: smallestHole };
  const { contours } = tied(subtract(body, [holes]), fineness);
  return {
    body: { contours: contours.filter((c) => contourArea(c) > 0) },
    holes: { contours: contours.filter((c) => contourArea(c) < 0).map(reversed) },
  };
}
