import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import { alongSmooth } from '../limb.js';
import type { Random } from '../random.js';
import { radians } from './angles.js';
import type { Joint } from './branches.js';
import { sizeOf } from './crown-frame.js';
import type { TreeValues } from './parameters.js';

/** A weeping willow before it is drawn. Lengths in mm. */
export interface WillowPlan {
  readonly foot: Point;
  readonly first: Joint;
  /** The locks and their withies, left to right, each from where it leaves its limb to its end. */
  readonly locks: readonly (readonly Withy[])[];
  /** The arching withies that close the dome over each lock, left to right. */
  readonly heads: readonly Withy[];
  readonly trunkThickness: number;
}

export interface Withy {
  readonly path: readonly Point[];
  readonly random: Random;
}

const TRUNK = 0.115;
/** A willow leans by nature, to one side or the other. */
const LEAN_DEG: readonly [number, number] = [5, 10];
/** Limbs arch to this share of the plot's width; withies hang beyond them. */
const LIMB_SPAN = 0.75;

export function willowPlan(plot: Plot, values: TreeValues, random: Random): WillowPlan {
  const { width, height } = plot;
  const wood = random.branch('wood');
  const leanDeg = (wood.chance(0.5) ? 1 : -1) * wood.between(...LEAN_DEG) + values.lean;
  const rise = 1.1 * values.trunk * height;
  const aside = Math.tan(radians(leanDeg)) * rise;
  const foot = { x: -0.6 * aside, y: plot.root };
  const fork = { x: 0.4 * aside, y: -rise };
  const dome = domeOver(plot, 0.3 * aside, wood);
  const limbs = limbsTo(fork, dome, width, wood.branch('limbs'));
  const locks = withiesOn(limbs, plot, values, dome, random.branch('locks'));
  const hanging = locks.hanging;
  return {
    foot,
    first: forkJoint(foot, fork, limbs, hanging),
    locks: locks.locks,
    heads: locks.heads,
    trunkThickness: TRUNK * sizeOf(plot) * values.girth,
  };
}

/** Height of the crown's top over the ground at x, as a negative y. */
type Dome = (x: number) => number;

function domeOver({ width, height }: Plot, crest: number, random: Random): Dome {
  const fall = random.between(0.3, 0.4);
  return (x) => {
    const far = Math.abs(x - crest) / (width / 2 - Math.sign(x - crest) * crest);
    return -height * (0.985 - fall * Math.min(1.2, far) ** 2.2);
  };
}

/** Limbs from the fork, up and then out, left to right. */
function limbsTo(fork: Point, dome: Dome, width: number, random: Random): Point[][] {
  const count = random.whole(5, 7);
  return Array.from({ length: count }, (_, i) => {
    const x =
      LIMB_SPAN *
      width *
      ((i + 0.5) / count - 0.5 + 0.025 * random.bell()) *
      (count / (count - 0.6));
    const end = { x, y: dome(x) * random.between(0.92, 0.96) };
    const out = random.between(0.4, 0.54);
    return alongSmooth(
      [fork, { x: fork.x + out * (x - fork.x), y: fork.y + 0.62 * (end.y - fork.y) }, end],
      8,
    );
  });
}

/** A withy as it is to hang. */
interface Hanging extends Withy {
  /** Share of the limb at which it leaves it. */
  readonly from: number;
}

/** Withies hang this far apart, as a share of the width. */
const PITCH = 0.053;
/** At the least there is room for a withy in smallest webs, and for leaves and light in holes. */
const LEAST_PITCH = { webs: 1.3, holes: 1, holesForLight: 2.5 };
/** Sky between locks in all, for each share of light asked for. */
const GAP_FOR_LIGHT = 1.6;

/** A withy hangs at least this far below the dome, as a share of the height. */
const SHORTEST = 0.34;

/** The withies of each limb. They hang in locks, with gaps between. */
function withiesOn(
  limbs: readonly Point[][],
  plot: Plot,
  values: TreeValues,
  dome: Dome,
  random: Random,
): { hanging: Hanging[][]; locks: Hanging[][]; heads: Withy[] } {
  const { width, height } = plot;
  const heads: Withy[] = [];
  const count = random.whole(4, 5);
  const span = 0.95 * width;
  const gapShares = shares(count - 1, [0.7, 1.3], random.branch('gaps'));
  const widths = shares(count, [0.8, 1.25], random.branch('widths'));
  const gap = GAP_FOR_LIGHT * values.light * span;
  const holes = LEAST_PITCH.holes + LEAST_PITCH.holesForLight * values.light;
  const least = LEAST_PITCH.webs * plot.smallestWeb + holes * plot.smallestHole;
  const pitch = Math.max(PITCH * width, least);
  const hanging: Hanging[][] = limbs.map(() => []);
  let x = -span / 2;
  const locks = widths.map((share, j) => {
    const r = random.branch(`lock ${j}`);
    const wide = (span - gap) * share;
    const withies = Math.max(2, Math.round(wide / pitch) + 1);
    const middle = Math.abs((2 * (x + wide / 2)) / width);
    const hem = 0.05 + 0.52 * Math.max(0, 1 - 1.1 * middle) + r.between(0, 0.07);
    const longest = r.between(0.2, 0.8);
    heads.push(
      headOver(x, x + wide, dome, height, r.branch('head'), {
        left: j === 0 ? 0 : (0.62 * gap) / (count - 1),
        right: j === count - 1 ? 0 : (0.62 * gap) / (count - 1),
      }),
    );
    const lock: Hanging[] = [];
    for (let i = 0; i < withies; i++) {
      const own = r.branch(`withy ${i}`);
      const f = i / (withies - 1);
      const at = x + wide * f + 0.1 * pitch * own.bell();
      const up = hem + 0.24 * Math.abs(f - longest) + 0.03 * own.bell();
      const k = limbFor(limbs, at);
      const y = Math.max(-height * Math.max(0.03, up), dome(at) + SHORTEST * height);
      const hung = withy(limbs[k], { x: at, y }, dome, plot, own);
      hanging[k].push(hung);
      lock.push(hung);
    }
    x += wide + gap * (gapShares[j] ?? 0);
    return lock;
  });
  for (const own of hanging) own.sort((a, b) => a.from - b.from);
  return { hanging, locks, heads };
}

/** A withy arching over a lock and past it into the gaps, as far as `past` says. */
function headOver(
  left: number,
  right: number,
  dome: Dome,
  height: number,
  random: Random,
  past: { left: number; right: number },
): Withy {
  const middle = (left + right) / 2;
  const high = random.between(0.005, 0.03);
  const at = (x: number, below: number): Point => ({ x, y: dome(x) + below * height });
  const path = [
    at(left - past.left, 0.085),
    at(left + 0.12 * (right - left), high + 0.022),
    at(middle, high),
    at(right - 0.12 * (right - left), high + 0.022),
    at(right + past.right, 0.085),
  ];
  return { path, random };
}

function shares(count: number, range: readonly [number, number], random: Random): number[] {
  const drawn = Array.from({ length: count }, () => random.between(...range));
  const whole = drawn.reduce((a, b) => a + b, 0);
  return drawn.map((d) => d / whole);
}

/** The limb that ends nearest to where a withy hangs, a little toward the middle. */
function limbFor(limbs: readonly Point[][], x: number): number {
  const miss = (limb: readonly Point[]): number => Math.abs(limb[limb.length - 1].x - 0.84 * x);
  return limbs.reduce((best, limb, k) => (miss(limb) < miss(limbs[best]) ? k : best), 0);
}

/** A withy that hangs this near to where it starts, in widths, falls without rising first. */
const NEAR = 0.1;

/** A withy that rises from its limb, turns over beneath the dome and falls plumb to its hem. */
function withy(
  limb: readonly Point[],
  hem: Point,
  dome: Dome,
  plot: Plot,
  random: Random,
): Hanging {
  const { width, height } = plot;
  const from = random.between(0.7, 1);
  const start = limb[Math.round(from * (limb.length - 1))];
  const across = hem.x - start.x;
  const top = dome(hem.x) + height * random.between(0, 0.035);
  const sway = 0.008 * width * random.bell();
  if (Math.abs(across) < NEAR * width) {
    const falls = (share: number): number => start.y + share * (hem.y - start.y);
    const path = [
      start,
      { x: start.x + 0.8 * across, y: falls(0.07) },
      { x: hem.x, y: falls(0.2) },
      { x: hem.x, y: falls(0.35) },
      { x: hem.x + sway, y: falls(0.7) },
      { x: hem.x + 1.4 * sway, y: hem.y },
    ];
    return { path, random, from };
  }
  const middle = start.x + 0.55 * across;
  const path = [
    start,
    { x: middle, y: Math.min(dome(middle) + 0.02 * height, start.y) },
    { x: start.x + 0.94 * across, y: Math.max(top + 0.06 * height, dome(middle) + 0.05 * height) },
    { x: hem.x, y: top + 0.17 * height },
    { x: hem.x + sway, y: (top + 0.17 * height + hem.y) / 2 },
    { x: hem.x + 1.4 * sway, y: hem.y },
  ];
  return { path, random, from };
}

/** Two boughs, each to half the limbs; limbs give off their withies one after another. */
function forkJoint(
  foot: Point,
  fork: Point,
  limbs: readonly Point[][],
  hanging: readonly Hanging[][],
): Joint {
  const half = Math.ceil(limbs.length / 2);
  const children = [limbs.slice(0, half), limbs.slice(half)].map((group, g): Joint => {
    const middle = group[Math.floor(group.length / 2)];
    const at = middle[BOUGH_END];
    return {
      ...at,
      load: 0,
      way: middle.slice(1, BOUGH_END),
      children: group.map((limb, k) =>
        limbJoint([at, ...limb.slice(BOUGH_END + 2)], 0, hanging[g * half + k]),
      ),
    };
  });
  const way = [
    { x: foot.x, y: 0 },
    { x: foot.x + 0.3 * (fork.x - foot.x), y: fork.y / 2 },
  ];
  return { ...fork, load: 0, way, children };
}

/** Points of its middle limb that a bough runs along before it parts. */
const BOUGH_END = 2;

function limbJoint(limb: readonly Point[], start: number, hanging: readonly Hanging[]): Joint {
  const last = limb.length - 1;
  const [next, ...rest] = hanging;
  if (!next) {
    return { ...limb[last], load: 0.5, way: limb.slice(start + 1, last), children: [] };
  }
  const k = Math.round(next.from * last);
  const strand = strandOf(next);
  const at = { ...limb[k], load: 0, way: limb.slice(start + 1, k) };
  if (k >= last) return { ...at, children: [strand, ...rest.map(strandOf)] };
  if (rest.length > 0 && Math.round(rest[0].from * last) === k) {
    const others = limbJoint(limb, start, rest);
    return { ...others, children: [strand, ...others.children] };
  }
  return { ...at, children: [strand, limbJoint(limb, k, rest)] };
}

const strandOf = ({ path }: Hanging): Joint => ({
  ...path[path.length - 1],
  load: 1,
  way: path.slice(1, -1),
  children: [],
});
