import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { components, containsPoint } from '../../geometry/components.js';
import { regionArea } from '../../geometry/measure.js';
import { offset, stroke } from '../../geometry/offset/offset.js';
import { smoothLine } from '../../geometry/pen.js';
import { EMPTY_REGION, type Point, type Region } from '../../geometry/types.js';
import { rounded } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Row } from './rows.js';

/** Card left round a hollow or a bubble, in webs. */
const RIM_WEBS = 1.12;

/** What of the hollows can be cut out of the card behind them. */
export function hollowHoles(hollows: readonly Region[], room: Region, plot: Plot): Region[] {
  const inner = offset(room, -RIM_WEBS * plot.smallestWeb);
  const least = 1.6 * plot.smallestHole ** 2;
  return hollows
    .map((hollow) => rounded(intersect(hollow, inner), 0.53 * plot.smallestHole))
    .flatMap((hole) => components(hole).slice(0, 1))
    .filter((hole) => regionArea(hole) > least);
}

/** Places tried for foam in every so many holes of a row's length. */
const PLACES = 4;
/** Half a fleck's height in holes, and how many times as long as high it is. */
const FLECK = { half: [0.53, 0.62], long: [1, 4.5] } as const;

/** Less of a fleck than this is rounding. */
const NOTHING_MM2 = 1e-3;

/** Flecks of foam under a row's crest, strewn unevenly, each lying along the slope over it. */
export function flecksOf(
  plot: Plot,
  row: Row,
  crest: (x: number) => number,
  room: Region,
  amount: number,
  random: Random,
): Region[] {
  const { smallestHole, smallestWeb } = plot;
  const rim = RIM_WEBS * smallestWeb;
  const inner = offset(room, -rim);
  const tries = Math.round((PLACES * (row.right - row.left)) / (smallestHole + smallestWeb));
  const flecks: Region[] = [];
  let taken: Region = EMPTY_REGION;
  for (let i = 0; i < tries; i++) {
    const luck = random.branch(i);
    const half = smallestHole * luck.between(...FLECK.half);
    const run = half * (luck.between(...FLECK.long) - 1);
    const x = row.left + luck.next() * (row.right - row.left);
    const deep = half + rim + luck.next() ** 2 * 0.3 * plot.height;
    const at = (dx: number): Point => ({ x: x + dx, y: crest(x + dx) + deep });
    const spine = [-1, 0, 1].map((k) => at(k * run));
    if (!luck.chance(amount)) continue;
    if (!spine.every((p) => clearOf(p, half, inner))) continue;
    const fleck = stroke([smoothLine(spine)], 2 * half);
    // On a steep back it may come out between its ends, which are in.
    if (regionArea(subtract(fleck, [inner])) > NOTHING_MM2) continue;
    if (regionArea(intersect(offset(fleck, rim), taken)) > 0) continue;
    flecks.push(fleck);
    taken = union([taken, fleck]);
  }
  return flecks;
}

/** Whether a disc at the place lies within the region. */
const clearOf = (at: Point, radius: number, region: Region): boolean =>
  [0, 60, 120, 180, 240, 300].every((deg) => {
    const a = (deg * Math.PI) / 180;
    return containsPoint(region, {
      x: at.x + radius * Math.cos(a),
      y: at.y + radius * Math.sin(a),
    });
  });

/** Where a row shows over the nearer ones. */
export const shownOf = (row: Region, nearer: readonly Region[]): Region =>
  nearer.length > 0 ? subtract(row, nearer) : row;
