import { stroke } from '../../geometry/offset/offset.js';
import { smoothLine } from '../../geometry/pen.js';
import type { Point, Region } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';

/** Threads are this many smallest webs broad: a little more than may hold a thing. */
const THREAD_WEBS = 1.12;

/** A thread of card from a to b that hangs through by a share of its length, away from the foot. */
export function thread(a: Point, b: Point, smallestWeb: number, sag = 0): Region {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const middle = { x: mix(a.x, b.x, 0.5), y: mix(a.y, b.y, 0.5) - sag * length };
  return stroke([smoothLine([a, middle, b])], THREAD_WEBS * smallestWeb);
}
