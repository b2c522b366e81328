import type { Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { LimbNode } from '../limb.js';
import type { Random } from '../random.js';

/** One stretch of a forking blade, from fork to fork. */
export interface Stretch {
  readonly nodes: readonly LimbNode[];
  /** How many forks lie before it. */
  readonly level: number;
  readonly isLast: boolean;
}

/** How a blade forks. Angles in degrees, lengths in mm. */
export interface Forking {
  readonly levels: number;
  /** Half the angle between the two arms of a fork. */
  readonly openDeg: readonly [number, number];
  /** Length of the first stretch, and of each next one as a share of the one before. */
  readonly firstMm: number;
  readonly shorter: number;
  readonly thickness: (level: number) => number;
  /** Chance that an arm forks again before the last level is reached. */
  readonly again: number;
  /** Arms turn back upright by this share of their slant from their foot to their end. */
  readonly upright: number;
}

/** A blade that forks in two again and again, in its own frame: foot at the origin, up is -y. */
export function forked(forking: Forking, leanDeg: number, random: Random): Stretch[] {
  return arm({ x: 0, y: 0 }, leanDeg, 0, forking.firstMm, forking, random);
}

function arm(
  from: Point,
  headingDeg: number,
  level: number,
  lengthMm: number,
  forking: Forking,
  random: Random,
): Stretch[] {
  const long = lengthMm * random.between(0.86, 1.12);
  const bent = headingDeg * (1 - forking.upright);
  const thick = forking.thickness(level);
  const step = (p: Point, deg: number): Point => ({
    x: p.x + (long / 3) * Math.sin((deg * Math.PI) / 180),
    y: p.y - (long / 3) * Math.cos((deg * Math.PI) / 180),
  });
  const points = [from];
  for (let k = 0; k < 3; k++) points.push(step(points[k], mix(headingDeg, bent, k / 2)));
  const isLast = level >= forking.levels || (level > 1 && !random.chance(forking.again));
  const own: Stretch = {
    nodes: points.map((p, k) => ({
      ...p,
      thickness: mix(thick, forking.thickness(level + 1), k / 3),
    })),
    level,
    isLast,
  };
  if (isLast) return [own];
  const open = random.between(...forking.openDeg);
  const turn = random.between(-0.2, 0.2) * open;
  const next = lengthMm * forking.shorter;
  const end = points[3];
  return [
    own,
    ...arm(end, bent + turn - open, level + 1, next, forking, random.branch('left')),
    ...arm(end, bent + turn + open, level + 1, next, forking, random.branch('right')),
  ];
}
