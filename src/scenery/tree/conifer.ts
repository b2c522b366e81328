import { union } from '../../geometry/boolean.js';
import { linesOutside } from '../../geometry/clip-lines.js';
import { containsPoint } from '../../geometry/components.js';
import { contourArea } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset.js';
import type { Cubics, Point, Region } from '../../geometry/types.js';
import type { Growth, Plot } from '../family.js';
import { type LeafForm, TIP_RADIUS_MM } from '../leaf.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';
import { type Branch, branchTable, type Joint, wood } from './branches.js';
import { sizeOf } from './crown-frame.js';
import { cutSafe } from './finish.js';
import { nearlyTouches } from './foliage.js';
import { opennessFor, shown } from './layers.js';
import type { TreeValues } from './parameters.js';
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
  readonly spray: LeafForm;
}

const TRUNK = 0.075;
/** Each tier is this much lower than the one beneath it. */
const TIER_RATIO = 0.88;
/** Height at which the leader stands alone, as a share of the tree's. */
const LEADER_FROM = 0.9;
/** How deep wings hang at the trunk, in tiers: the more light is asked for, the less. */
const DEPTH = { full: 1.7, lessForLight: 3.5 };
/** The leader's thickness in smallest webs, by height as a share of the tree's. */
const LEADER: readonly [up: number, webs: number][] = [
  [0.82, 1.9],
  [0.9, 1.6],
  [0.965, 1.15],
  [0.99, 0.6],
];
/** A tier lower than this many smallest webs could only be cut as a comb. */
const LEAST_TIER = 3.2;

export function coniferPlan(plot: Plot, values: TreeValues, random: Random): ConiferPlan {
  const { width, height, smallestWeb: web } = plot;
  const size = sizeOf(plot);
  const aside = Math.tan((values.lean * Math.PI) / 180) * height * 0.6;
  const axis = (share: number): Point => ({ x: aside * (share - 0.5), y: -share * height });
  const from = values.trunk;
  const room = Math.floor(((LEADER_FROM - from) * height) / (LEAST_TIER * web));
  const tiers = Math.max(3, Math.min(random.branch('tiers').whole(8, 9), room));
  const whole = (1 - TIER_RATIO ** tiers) / (1 - TIER_RATIO);
  const habit = random.branch('habit');
  const drop = habit.between(0.22, 0.4);
  const rise = habit.between(0.35, 0.6);
  const spray = {
    length: Math.max(0.085 * size, 3 * web),
    width: 1.7 * web,
    widest: 0.4,
    tipRadius: TIP_RADIUS_MM,
  };
  const wings: { wing: Wing; at: number; reach: number }[] = [];
  let share = from;
  for (let i = 0; i < tiers; i++) {
    const step = ((LEADER_FROM - from) / whole) * TIER_RATIO ** i;
    const up = (share - from) / (1 - from);
    const skew = random.branch(`skew ${i}`).between(-0.4, 0.4);
    for (const side of [-1, 1] as const) {
      const r = random.branch(`wing ${i} ${side}`);
      const at = share + step * (side * skew + r.between(-0.08, 0.08));
      const reach =
        0.49 * (width - Math.abs(aside)) * (1 - 0.96 * up) ** 0.92 * r.between(0.82, 1.05);
      const droop = (drop - (drop + rise) * up) * r.between(0.75, 1.2);
      const plan = {
        at: axis(at),
        side,
        reach,
        droop,
        spacing: step * height,
        depth: DEPTH.full - DEPTH.lessForLight * values.light,
        random: r.branch('shape'),
      };
      const scale = Math.min(1, 0.55 + (step * height) / (0.2 * size));
      const own = { ...spray, length: Math.max(2.6 * web, spray.length * scale) };
      wings.push({ wing: wing(plan, own, web), at, reach });
    }
    share += step;
  }
  return {
    foot: { x: axis(0).x, y: plot.root },
    first: trunkOf(wings, axis),
    wings: wings.map((w) => w.wing),
    leader: limb(LEADER.map(([up, webs]) => ({ ...axis(up), thickness: webs * web }))),
    trunkThickness: TRUNK * size * values.girth,
    spray,
  };
}

/** The trunk as a chain of joints, one to a bough; a bough carries as the square of its reach. */
function trunkOf(
  wings: readonly { wing: Wing; at: number; reach: number }[],
  axis: (share: number) => Point,
): Joint {
  const rising = [...wings].sort((a, b) => a.at - b.at);
  const least = Math.min(...wings.map((w) => w.reach));
  let next: Joint = { ...axis(LEADER_FROM), load: least ** 2, way: [], children: [] };
  for (const {
    wing: { spine },
    at,
    reach,
  } of rising.reverse()) {
    const end = spine[spine.length - 1];
    const bough = { ...end, load: reach ** 2, way: spine.slice(1, -1), children: [] };
    next = { ...axis(at), load: 0, way: [], children: [next, bough] };
  }
  return next;
}

export const coniferBranches = (plan: ConiferPlan, plot: Plot, exponent: number): Branch[] =>
  branchTable(plan.foot, plan.first, plan.trunkThickness, exponent, plot.smallestWeb * 1.1);

const BAY = 0.07;
const OPENNESS: readonly [number, number] = [0.1, 1];

export function drawConifer(
  plan: ConiferPlan,
  plot: Plot,
  values: TreeValues,
  random: Random,
): Growth {
  const size = sizeOf(plot);
  const table = coniferBranches(plan, plot, values.exponent);
  const timber = wood(table);
  const sprays = plan.wings.flatMap((w) => w.sprays);
  const crown = union(plan.wings.map((w) => w.body));
  const envelope = outersOf(offset(offset(crown, BAY * size), -BAY * size));
  const openness = opennessFor(plan.wings, timber, envelope, values.light, OPENNESS);
  const mass = shown(plan.wings, openness);
  const free = sprays
    .filter(
      (s) =>
        !nearlyTouches(mass, s.tip, s.headingDeg, plot.smallestHole) || containsPoint(mass, s.tip),
    )
    .map((s) => s.outline);
  const collar = collarAt(table[0], plot.root, random.branch('collar'));
  const drawn = union([mass, timber, { contours: [...free, plan.leader, collar] }]);
  const { body, holes } = cutSafe(drawn, plot, { x: plan.foot.x, y: plot.root / 2 });
  const ribs = plan.wings.filter((_, i) => random.branch(`rib ${i}`).chance(0.6)).map((w) => w.rib);
  const bark = barkLines(table[0], random.branch('bark'));
  return {
    body,
    holes,
    scores: scoresOn(body, holes, [...linesOutside(bark, crown), ...ribs]),
    reliefs: [],
  };
}

const outersOf = (region: Region): Region => ({
  contours: region.contours.filter((c) => contourArea(c) > 0),
});
