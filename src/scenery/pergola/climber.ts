import { circle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { leaf } from '../leaf.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';

/** Where a climber may hang from and what it may climb. */
export interface Support {
  /** Along beams: left end, right end and underside, mm. */
  readonly beams: readonly {
    readonly from: number;
    readonly to: number;
    readonly y: (x: number) => number;
    readonly thick: number;
  }[];
  readonly posts: readonly { readonly x: number; readonly top: number; readonly foot: number }[];
}

const LEAF = 0.075;
/** Least length of a leaf in webs, and its breadth for its length. */
const LEAST_LEAF = 2.6;
const BROAD = 0.62;
/** From one tuft on a beam to the next, in leaves. */
const STEP = 1.5;
/** Trails keep this many leaves away from posts, where they would clog. */
const APART = 1.1;
/** A trail hangs down this share of what is under it, at most. */
const TRAIL = 0.42;

/** Leaves over the beams, trails that hang from them, and shoots up the posts. */
export function climberOn(plot: Plot, support: Support, much: number, random: Random): Region[] {
  if (much === 0) return [];
  const long = Math.max(LEAST_LEAF * plot.smallestWeb, LEAF * plot.height);
  const grown: Region[] = [];
  support.beams.forEach((beam, b) => {
    const luck = random.branch(`beam ${b}`);
    // It has come up at one end and thins out toward the other.
    const rootAtLeft = luck.chance(0.5);
    const steps = Math.max(2, Math.round((beam.to - beam.from) / (STEP * long)));
    for (let i = 0; i <= steps; i++) {
      const own = luck.branch(i);
      const t = i / steps;
      const near = rootAtLeft ? 1 - t : t;
      if (own.next() > much * (0.55 + 0.75 * near)) continue;
      const x = beam.from + (beam.to - beam.from) * t + long * own.between(-0.3, 0.3);
      grown.push(
        ...tuft({ x, y: beam.y(x) - beam.thick * 0.8 }, long, -90, 95, 3, own.branch('up')),
      );
      const isFree = support.posts.every((post) => Math.abs(post.x - x) > APART * long);
      if (isFree && own.branch('hangs').chance(0.5 + 0.45 * much)) {
        const room = -beam.y(x);
        const length = Math.min(
          room * TRAIL,
          long * own.branch('length').between(1.4, 2.2 + 2.4 * near * much),
        );
        grown.push(
          ...trail({ x, y: beam.y(x) - 0.3 }, length, long, plot.smallestWeb, own.branch('trail')),
        );
      }
    }
  });
  support.posts.forEach(({ x, top, foot }, i) => {
    const luck = random.branch(`post ${i}`);
    if (!luck.chance(0.25 + 0.6 * much)) return;
    const reach = (foot - top) * luck.between(0.5, 1) * (0.4 + 0.6 * much);
    for (let up = long * 0.8, k = 0; up < reach; up += long * luck.between(0.4, 0.8), k++) {
      const heading = k % 2 ? -48 : -132;
      grown.push(
        leafAt({ x, y: foot - up }, long, heading + luck.between(-28, 28), luck.branch(k)),
      );
    }
  });
  return grown;
}

/** Leaves from one foot, spread to both sides of a heading. */
function tuft(
  at: Point,
  long: number,
  headingDeg: number,
  spreadDeg: number,
  count: number,
  random: Random,
): Region[] {
  const leaves = Array.from({ length: count }, (_, i) => {
    const t = i / (count - 1) - 0.5;
    const luck = random.branch(i);
    return leafAt(at, long, headingDeg + t * spreadDeg + luck.between(-12, 12), luck);
  });
  return [...leaves, circle(at.x, at.y, long * 0.34)];
}

/** A trail of leaves or blossom that hangs straight and ends in one leaf. */
function trail(
  at: Point,
  length: number,
  long: number,
  smallestWeb: number,
  random: Random,
): Region[] {
  const sway = random.between(-0.1, 0.1) * length;
  const stem = limb([
    { ...at, thickness: smallestWeb * 1.7 },
    { x: at.x + sway * 0.3, y: at.y + length * 0.5, thickness: smallestWeb * 1.3 },
    { x: at.x + sway, y: at.y + length, thickness: smallestWeb * 1.1 },
  ]);
  const leaves: Region[] = [];
  for (let down = long * 0.5, k = 0; down < length; down += long * 0.62, k++) {
    const t = down / length;
    const luck = random.branch(k);
    const size = long * (0.95 - 0.3 * t);
    const foot = { x: at.x + sway * t, y: at.y + down - long * 0.2 };
    leaves.push(leafAt(foot, size, 90 + (k % 2 ? -1 : 1) * luck.between(32, 48), luck));
  }
  const end = { x: at.x + sway, y: at.y + length - long * 0.4 };
  return [shapeOf(stem), ...leaves, leafAt(end, long * 0.8, 90, random.branch('end'))];
}

function leafAt(foot: Point, long: number, headingDeg: number, random: Random): Region {
  const length = long * random.between(0.85, 1.15);
  const form = { length, width: length * BROAD, widest: 0.42, tipRadius: length * 0.12 };
  return shapeOf(leaf(form, foot, headingDeg));
}
