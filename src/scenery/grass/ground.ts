import { pen } from '../../geometry/pen.js';
import type { Cubics, Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import { grainOf, type Tuft } from './tuft.js';

/** Common practice, no source: the foot line wanders by up to 3 mm. */
export const WANDER_MM = 3;

/** Its ends lie this deep in the frame, so that a plot narrower than the window shows no step. */
const SUNK_MM = 0.5;

/** The ground covers the frame's edge by this much wherever it is lowest. */
const LEAST_MM = 0.25;
/** The hollows take up this share of what the mounds leave of the wandering. */
const FLATTER = 0.6;
/** Tufts closer than this have no hollow between them. */
const ROOM_MM = 3;

/** The ground that tufts stand on: mounded under each, low between. */
export interface Ground {
  readonly contour: Cubics;
  /** The ground line's y at each tuft. */
  readonly footY: readonly number[];
}

/** Each tuft brings its mound and the hollow to its left, so that they move with it. */
export function groundUnder(
  plot: Plot,
  tufts: readonly Tuft[],
  moundMm: number,
  random: Random,
): Ground {
  const half = plot.width / 2;
  const grain = grainOf(plot);
  const low = (own: Random) => -LEAST_MM - own.between(0, WANDER_MM - moundMm) * FLATTER * grain;
  const points: Point[] = [{ x: -half, y: SUNK_MM }];
  const footY: number[] = [];
  let before = -half;
  for (const tuft of tufts) {
    const own = random.branch(tuft.key);
    const gap = tuft.x - before;
    const hollow = { x: before + gap * own.between(0.4, 0.6), y: low(own) };
    if (gap > ROOM_MM) points.push(hollow);
    const y = Math.max(-WANDER_MM, low(own) - moundMm * grain * own.between(0.6, 1));
    if (Math.abs(tuft.x) < half - SUNK_MM) points.push({ x: tuft.x, y });
    footY.push(y);
    before = tuft.x;
  }
  if (half - before > ROOM_MM)
    points.push({ x: (before + half) / 2, y: low(random.branch('end')) });
  points.push({ x: half, y: SUNK_MM });
  const contour = pen(points[0].x, points[0].y)
    .smoothTo(points.slice(1))
    .lineTo(half, plot.root)
    .lineTo(-half, plot.root)
    .close();
  return { contour, footY };
}
