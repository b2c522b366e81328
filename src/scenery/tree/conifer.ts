import { subtract, union } from '../../geometry/boolean/boolean.js';
import { linesOutside } from '../../geometry/clip-lines.js';
import { containsPoint } from '../../geometry/components.js';
import type { Cubics, Point } from '../../geometry/types.js';
import type { Growth, Plot } from '../family.js';
import { type LeafForm, TIP_RADIUS_MM } from '../leaf.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';
import { radians } from './angles.js';
import { type Branch, branchTable, type Joint, WOOD_SPARE, wood } from './branches.js';
import { sizeOf } from './crown-frame.js';
import { cutSafe } from './finish.js';
import { nearlyTouches } from './foliage.js';
import { opennessFor, shown } from './layers.js';
import type { TreeValues } from './parameters.js';
import { partsOf } from './parts.js';
import { scoresOn } from './scores.js';
import { barkLines, collarAt } from './trunk.js';
import { type Wing, wing } from './wing.js';

/** A conifer before it is drawn. Lengths in mm. */
export interface ConiferPlan {
  readonly foot: Point;
  readonly first: Joint;
  /** In laying order: the lowest first. */
  readonly wings: readonly Wing[];
  /** The top shoot, which stands alone. */
  readonly leader: Cubics;
  readonly trunkThickness: number;
}

/** The trunk's middle line, by height as a share of the tree's. */
type Axis = (share: number) => Point;

/** A wing, and where on the trunk it is. */
interface Placed {
  readonly wing: Wing;
  readonly share: number;
  readonly reach: number;
}

/** Trunk thickness as a share of the tree's size. */
const TRUNK = 0.075;
/** Height at which the leader stands alone, as a share of the tree's. */
const LEADER_FROM = 0.92;

export function coniferPlan(plot: Plot, values: TreeValues, random: Random): ConiferPlan {
  const aside = Math.tan(radians(values.lean)) * plot.height * 0.6;
  const axis: Axis = (share) => ({ x: aside * (share - 0.5), y: -share * plot.height });
  const wings = placeWings(plot, values, axis, plot.width - Math.abs(aside), random);
  return {
    foot: { x: axis(0).x, y: plot.root },
    first: trunkOf(wings, axis),
    wings: wings.map((w) => w.wing),
    leader: leaderOn(plot, axis),
    trunkThickness: TRUNK * sizeOf(plot) * values.girth,
  };
}

/** Each tier is this much lower than the one beneath it. */
const TIER_RATIO = 0.88;
const TIERS: readonly [number, number] = [8, 9];
const LEAST_TIERS = 3;
/** A tier lower than this many smallest webs could only be cut as a comb. */
const LEAST_TIER = 3.2;
/** How deep wings hang at the trunk, in tiers: the more light is asked for, the less. */
const DEPTH = { full: 1.82, lessForLight: 3.5 };

/** The wings tier by tier, those of a tier on different heights. */
function placeWings(
  plot: Plot,
  values: TreeValues,
  axis: Axis,
  width: number,
  random: Random,
): Placed[] {
  const from = values.trunk;
  const rise = LEADER_FROM - from;
  const room = Math.floor((rise * plot.height) / (LEAST_TIER * plot.smallestWeb));
  const tiers = Math.max(LEAST_TIERS, Math.min(random.branch('tiers').whole(...TIERS), room));
  const whole = (1 - TIER_RATIO ** tiers) / (1 - TIER_RATIO);
  const habit = random.branch('habit');
  const droopBelow = habit.between(0.22, 0.4);
  const riseAbove = habit.between(0.35, 0.6);
  const depth = DEPTH.full - DEPTH.lessForLight * values.light;
  const placed: Placed[] = [];
  let tierAt = from;
  for (let i = 0; i < tiers; i++) {
    const step = (rise / whole) * TIER_RATIO ** i;
    const up = (tierAt - from) / (1 - from);
    const skew = random.branch(`skew ${i}`).between(-0.4, 0.4);
    for (const side of [-1, 1] as const) {
      const r = random.branch(`wing ${i} ${side}`);
      const share = tierAt + step * (side * skew + r.between(-0.08, 0.08));
      const reach = 0.49 * width * (1 - 0.96 * up) ** 0.92 * r.between(0.82, 1.05);
      const droop = (droopBelow - (droopBelow + riseAbove) * up) * r.between(0.75, 1.2);
      const spacing = step * plot.height;
      const shape = { at: axis(share), side, reach, droop, spacing, depth };
      const own = wing({ ...shape, random: r.branch('shape') }, sprayFor(plot, spacing), plot);
      placed.push({ wing: own, share, reach });
    }
    tierAt += step;
  }
  return placed;
}

/** Length of a spray as a share of the tree's size, on a tier that is this share of it or more. */
const SPRAY = { length: 0.085, fullTier: 0.09 };

/** Sprays are shorter on the low tiers at the top. */
function sprayFor(plot: Plot, spacing: number): LeafForm {
  const size = sizeOf(plot);
  const web = plot.smallestWeb;
  const scale = Math.min(1, 0.55 + (0.45 * spacing) / (SPRAY.fullTier * size));
  const length = Math.max(SPRAY.length * scale * size, 2.6 * web);
  return { length, width: 1.7 * web, widest: 0.4, tipRadius: TIP_RADIUS_MM };
}

/** The leader by height: its thickness as a share of the size, and in smallest webs at least. */
const LEADER: readonly [up: number, share: number, webs: number][] = [
  [0.82, 0.034, 1.9],
  [0.9, 0.028, 1.6],
  [0.96, 0.021, 1.25],
  [0.988, 0.015, 1.02],
];

const leaderOn = (plot: Plot, axis: Axis): Cubics =>
  limb(
    LEADER.map(([up, share, webs]) => ({
      ...axis(up),
      thickness: Math.max(share * sizeOf(plot), webs * plot.smallestWeb),
    })),
  );

/** The trunk as a chain of joints, one to a bough; a bough carries as the square of its reach. */
function trunkOf(wings: readonly Placed[], axis: Axis): Joint {
  const falling = [...wings].sort((a, b) => b.share - a.share);
  const least = Math.min(...wings.map((w) => w.reach));
  let next: Joint = { ...axis(LEADER_FROM), load: least ** 2, way: [], children: [] };
  for (const { wing: own, share, reach } of falling) {
    const end = own.spine[own.spine.length - 1];
    const bough = { ...end, load: reach ** 2, way: own.spine.slice(1, -1), children: [] };
    next = { ...axis(share), load: 0, way: [], children: [next, bough] };
  }
  return { ...next, way: [axis(0)] };
}

export const coniferBranches = (plan: ConiferPlan, plot: Plot, exponent: number): Branch[] =>
  branchTable(plan.foot, plan.first, plan.trunkThickness, exponent, plot.smallestWeb * WOOD_SPARE);

/** From wedges a third of a tier deep to wedges as deep as a tier. */
const OPENNESS: readonly [number, number] = [0.3, 1];
/** Share of the boughs that are drawn as a score on their wing. */
const RIBBED = 0.6;

export function drawConifer(
  plan: ConiferPlan,
  plot: Plot,
  values: TreeValues,
  random: Random,
): Growth {
  const table = coniferBranches(plan, plot, values.exponent);
  const timber = wood(table);
  const openness = opennessFor(plan.wings, timber, sizeOf(plot), values.light, OPENNESS);
  const mass = shown(plan.wings, openness);
  const sprays = plan.wings
    .flatMap((w) => w.sprays)
    .filter(
      ({ tip, headingDeg }) =>
        containsPoint(mass, tip) || !nearlyTouches(mass, tip, headingDeg, plot.smallestHole),
    )
    .map((s) => s.outline);
  const collar = collarAt(table[0], plot, random.branch('collar'));
  const drawn = union([mass, timber, { contours: [...sprays, plan.leader, collar] }]);
  const { body, holes } = cutSafe(drawn, plot, plan.foot);
  const crown = union(plan.wings.map((w) => w.body));
  const bark = linesOutside(barkLines(table[0], random.branch('bark')), crown);
  const ribs = plan.wings.filter((_, i) => random.branch(`rib ${i}`).chance(RIBBED));
  const lines = [...bark, ...ribs.map((w) => w.rib)];
  const parts = partsOf(subtract(body, [holes]), table[0], collar);
  return { body, holes, scores: scoresOn(body, holes, lines), reliefs: [], parts };
}
