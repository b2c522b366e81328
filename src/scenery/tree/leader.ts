import type { Point } from '../../geometry/types.js';
import type { Random } from '../random.js';
import type { Joint } from './branches.js';
import { trunkWay } from './broadleaf.js';

/** What a trunk bears on its way up: where its bough ends, and the bough grown from the trunk. */
export interface Borne {
  /** In mm. */
  readonly base: Point;
  /** The bough from a place on the trunk; `bow` is its bend as a share of its length. */
  joint(from: Point, bow: number): Joint;
}

/** How boughs leave a trunk that runs straight to the top. */
export interface Leaving {
  /** How much lower than it arrives a bough leaves the trunk, as a multiple of its reach. */
  readonly climb: number;
  /** Spread of the boughs' bends. */
  readonly bow: number;
}

/** The trunk as a chain of joints, one to a bough, thinning as each takes its share. */
export function leader(
  fork: Point,
  borne: readonly Borne[],
  leaving: Leaving,
  random: Random,
  foot: Point,
): Joint {
  const rising = [...borne].sort((a, b) => b.base.y - a.base.y);
  const top = rising[rising.length - 1];
  const onAxis = (y: number): Point => {
    const f = (y - fork.y) / (top.base.y - fork.y);
    return { x: fork.x + f * (top.base.x - fork.x), y };
  };
  let next: Joint = top.joint(onAxis(rising[rising.length - 2].base.y), 0);
  for (const { base, joint } of rising.slice(0, -1).reverse()) {
    const lower = leaving.climb * Math.abs(base.x - onAxis(base.y).x);
    const at = onAxis(Math.min(fork.y, base.y + lower));
    const bough = joint(at, leaving.bow * random.bell());
    next = { ...at, load: 0, way: [], children: [next, bough] };
  }
  return { ...next, way: trunkWay(foot, next, random) };
}
