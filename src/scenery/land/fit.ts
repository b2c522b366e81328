import { subtract } from '../../geometry/boolean/boolean.js';
import type { Point, Region } from '../../geometry/types.js';
import { aboveRoot } from '../above-root.js';
import { bodyAndHoles } from '../body-and-holes.js';
import { rounded } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { tied } from '../grass/tidy.js';
import { cutSafe } from '../tree/finish.js';

/** Radius of the finest top that is left standing, in smallest webs. */
const TOP = 0.53;

/**
 * Land made fit to cut, as body and holes: no top finer than the smallest web, nothing loose from
 * the card at `held`, or over the middle of the foot, nothing below `foot`.
 */
export function fitToCut(
  land: Region,
  plot: Plot,
  held?: Point,
  foot: Point = { x: 0, y: plot.root },
): { body: Region; holes: Region } {
  const blunt = rounded(land, TOP * plot.smallestWeb);
  const { body, holes } = cutSafe(blunt, plot, foot, held);
  const { smallestWeb, smallestHole } = plot;
  const fineness = { smallestWeb, smallestHole, eyelet: smallestHole };
  return bodyAndHoles(aboveRoot(tied(subtract(body, [holes]), fineness), foot.y));
}
