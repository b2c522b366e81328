import { intersect } from '../../geometry/boolean/boolean.js';
import { regionArea } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { polyline } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import { EMPTY_REGION, type Line, type Point, type Region } from '../../geometry/types.js';
import { rounded } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { landUnder } from '../land/ground.js';
import type { Random } from '../random.js';
import type { Peak } from './massif.js';

/** Snow reaches down by this share of a peak's height over its higher saddle. */
const REACH = [0.72, 0.95] as const;
/** Tongues of snow at the lower edge, and how far they run up and down. */
const TONGUES = 7;
const PLAY = 0.32;
/** Card left round a cap that is cut out, in smallest webs. */
const RIM_WEBS = 1.35;

/** The lower edge of the snow on a peak, in tongues. */
export function snowLines(peak: Peak, random: Random): Line {
  const reach = Math.min(-peak.y * 0.46, (Math.min(peak.left.y, peak.right.y) - peak.y) * 0.95);
  const deep = reach * random.between(...REACH);
  const points: Point[] = [];
  for (let k = 0; k <= TONGUES; k++) {
    const t = (k + (k > 0 && k < TONGUES ? random.between(-0.25, 0.25) : 0)) / TONGUES;
    const x = peak.left.x + t * (peak.right.x - peak.left.x);
    const tongue = (k % 2 === 0 ? 1 : -1) * PLAY * random.between(0.5, 1.2);
    points.push({ x, y: peak.y + deep * (1 + tongue) });
  }
  return polyline(finer(points, peak));
}

/** The tongues drawn together to where the peak is at that depth: about half its foot. */
const finer = (points: readonly Point[], peak: Peak): Point[] =>
  points.map((p) => ({ x: peak.x + (p.x - peak.x) * 0.6, y: p.y }));

/** All that lies over the snow's edge, up to a little over the peak. */
export const snowOver = (peak: Peak, edge: Line): Region => landUnder(edge, peak.y - 1);

/** The cap above the snow's edge as a hole, with a rim of card left against the sky. */
export function snowHoles(peak: Peak, edge: Line, solid: Region, plot: Plot): Region {
  const rim = RIM_WEBS * plot.smallestWeb;
  const above = snowOver(peak, edge);
  const { left, right } = peak;
  const own = rectangle(left.x + rim, peak.y, Math.max(0.1, right.x - left.x - 2 * rim), -peak.y);
  const cap = intersect(intersect(offset(solid, -rim), above), own);
  const hole = rounded(cap, 0.53 * plot.smallestHole);
  return regionArea(hole) < plot.smallestHole ** 2 * 1.2 ? EMPTY_REGION : hole;
}
