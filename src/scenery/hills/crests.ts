import { smoothLine } from '../../geometry/pen.js';
import type { Line, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { type Ground, groundOf, levelsOf } from '../land/ground.js';
import type { Random } from '../random.js';

/** One hill: its crest from left to right. */
export interface Hill {
  readonly crest: Line;
  readonly peak: Point;
  /** Level of the crest at x, mm. */
  readonly levelAt: (x: number) => number;
}

/** Height of each hill's top, farthest first, as a share of the plot's. */
const TOPS = [1, 0.74, 0.46] as const;
/** How far from the middle each top lies, in plot widths; sides change from hill to hill. */
const PLACES: readonly (readonly [number, number])[] = [
  [0.08, 0.22],
  [0.24, 0.38],
  [0.16, 0.34],
];
/** Level of a crest where it meets a jamb, as a share of its top: on its top's side and across. */
const NEAR_END = [0.52, 0.76] as const;
const FAR_END = [0.1, 0.34] as const;

/** The hills, farthest first: tops on alternate sides, each steeper towards another hand. */
export function hillsOf(plot: Plot, count: number, roll: number, random: Random): Hill[] {
  const ground = groundOf(plot);
  const side = random.chance(0.5) ? 1 : -1;
  return TOPS.slice(0, count).map((top, i) =>
    hillOf(plot, ground, { i, top, side: i % 2 === 0 ? side : -side }, roll, random.branch(i)),
  );
}

interface Place {
  readonly i: number;
  readonly top: number;
  readonly side: number;
}

function hillOf(plot: Plot, ground: Ground, place: Place, roll: number, random: Random): Hill {
  const { i, side } = place;
  const topMm = plot.height * place.top * (i === 0 ? 1 : random.between(0.92, 1.06));
  const peak = { x: side * random.between(...PLACES[i]) * plot.width, y: -topMm };
  const [near, far] = [random.between(...NEAR_END), random.between(...FAR_END)];
  const [left, right] = side < 0 ? [near, far] : [far, near];
  const from = { x: ground.left, y: ground.freeLeft ? 0 : -topMm * left };
  const to = { x: ground.right, y: ground.freeRight ? 0 : -topMm * right };
  const crest = smoothLine([
    from,
    ...flank(from, peak, roll, random.branch('left')),
    peak,
    ...flank(to, peak, roll, random.branch('right')).reverse(),
    to,
  ]);
  return { crest, peak, levelAt: levelsOf(crest) };
}

/** Two places between an end and the top: a foot that lingers and a shoulder, more so with roll. */
function flank(end: Point, peak: Point, roll: number, random: Random): Point[] {
  const [low, high] = [random.between(0.26, 0.4), random.between(0.6, 0.74)];
  const [dip, shoulder] = [random.between(-0.5, 1), random.between(-0.35, 1)];
  const at = (along: number, rise: number): Point => ({
    x: mix(end.x, peak.x, along),
    y: mix(end.y, peak.y, Math.max(0, Math.min(1, rise))),
  });
  return [at(low, 0.24 - 0.2 * roll * dip), at(high, 0.74 + 0.17 * roll * shoulder)];
}
