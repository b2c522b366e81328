import type { Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Ground } from '../land/ground.js';
import type { Random } from '../random.js';

/** A peak between the saddles (or ends) at its sides. */
export interface Peak extends Point {
  readonly left: Point;
  readonly right: Point;
}

export interface Massif {
  readonly skyline: readonly Point[];
  readonly peaks: readonly Peak[];
}

/** A peak needs this share of the plot's height in width, and this many smallest webs. */
const ROOM_HEIGHTS = 0.3;
const ROOM_WEBS = 6;
/** Peaks keep to this share of the width, so that the outermost have flanks. */
const SPREAD = 0.86;
/** Halvings of a flank into broken stretches. */
const BREAKS = 3;
/** How far a break strays from the straight flank, as a share of its length, at the most. */
const STRAY = 0.17;
/** Flanks are hollow: a break lies lower than the straight by this share. */
const HOLLOW = 0.045;

export function massifOf(
  plot: Plot,
  ground: Ground,
  wanted: number,
  jagged: number,
  random: Random,
): Massif {
  const { width, height } = plot;
  const room = Math.max(ROOM_HEIGHTS * height, ROOM_WEBS * plot.smallestWeb);
  const count = Math.max(1, Math.min(wanted, Math.floor(width / room)));
  const main = random.whole(0, 1) + Math.floor((count - 1) / 2);
  const tops = Array.from({ length: count }, (_, i): Point => {
    const luck = random.branch(`top ${i}`);
    const x = ((i + 0.5 + luck.between(-0.28, 0.28)) / count - 0.5) * SPREAD * width;
    const high = i === Math.min(main, count - 1) ? 1 : luck.between(0.5, 0.86);
    return { x, y: -height * high };
  });
  const ends = random.branch('ends');
  const [low, lower] = [ends.between(0.12, 0.36), ends.between(0.12, 0.36)];
  const valleys: Point[] = [{ x: ground.left, y: ground.freeLeft ? 0 : -low * height }];
  for (let i = 1; i < count; i++) {
    const luck = random.branch(`saddle ${i}`);
    const [a, b] = [tops[i - 1], tops[i]];
    const t = luck.between(0.4, 0.6);
    valleys.push({ x: mix(a.x, b.x, t), y: Math.max(a.y, b.y) * luck.between(0.42, 0.72) });
  }
  valleys.push({ x: ground.right, y: ground.freeRight ? 0 : -lower * height });
  const skyline: Point[] = [valleys[0]];
  tops.forEach((top, i) => {
    const luck = random.branch(`flanks ${i}`);
    skyline.push(...broken(valleys[i], top, jagged, BREAKS, luck.branch('up')), top);
    skyline.push(...broken(top, valleys[i + 1], jagged, BREAKS, luck.branch('down')));
    skyline.push(valleys[i + 1]);
  });
  const peaks = tops.map((top, i) => ({ ...top, left: valleys[i], right: valleys[i + 1] }));
  return { skyline, peaks };
}

/** The places where the way from a to b breaks, without its ends. */
function broken(a: Point, b: Point, jagged: number, halvings: number, luck: Random): Point[] {
  if (halvings === 0) return [];
  const t = luck.between(0.36, 0.64);
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const stray = (luck.between(-1, 1) * STRAY * jagged + HOLLOW) * length;
  // Never above the higher end nor below the lower, so that a peak stays the highest.
  const y = Math.min(Math.max(a.y, b.y), mix(a.y, b.y, t) + stray);
  const lowest = Math.max(Math.min(a.y, b.y), y);
  const middle = { x: mix(a.x, b.x, t), y: lowest };
  return [
    ...broken(a, middle, jagged, halvings - 1, luck.branch('a')),
    middle,
    ...broken(middle, b, jagged, halvings - 1, luck.branch('b')),
  ];
}
