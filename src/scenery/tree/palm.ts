import { subtract, union } from '../../geometry/boolean/boolean.js';
import { smoothLine } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Cubics, Line, Point } from '../../geometry/types.js';
import { keptClear } from '../brick/craft.js';
import type { Growth, Plot } from '../family.js';
import { alongSmooth } from '../limb.js';
import type { Random } from '../random.js';
import { radians } from './angles.js';
import { type Branch, WOOD_SPARE, wood } from './branches.js';
import { sizeOf } from './crown-frame.js';
import { cutSafe } from './finish.js';
import { type Frond, frondContours } from './frond.js';
import type { TreeValues } from './parameters.js';
import { partsOf } from './parts.js';
import { CLEARANCE_MM } from './scores.js';
import { collarAt } from './trunk.js';

/** A palm before it is drawn. Lengths in mm. */
export interface PalmPlan {
  readonly trunk: Branch;
  /** Where the fronds spring from. */
  readonly heart: Point;
  readonly fronds: readonly Frond[];
  readonly random: Random;
}

const TRUNK = 0.078;
/** A palm is at most this wide for its height. */
const SPREAD = 0.95;

/** The part of a plot that a palm takes up. */
export const palmPlot = (plot: Plot): Plot => ({
  ...plot,
  width: Math.min(plot.width, SPREAD * plot.height),
});

/** A palm's trunk bears nothing but its crown: it rises to this, and so much more for its trunk. */
const RISE = { least: 0.42, forTrunk: 0.72 };
/** A palm leans by nature, to one side or the other, and rights itself. */
const LEAN_DEG: readonly [number, number] = [5, 12];

export function palmPlan(plot: Plot, values: TreeValues, random: Random): PalmPlan {
  const { width, height } = plot;
  const own = random.branch('wood');
  const leanDeg = (own.chance(0.5) ? 1 : -1) * own.between(...LEAN_DEG) + values.lean;
  const rise = height * (RISE.least + RISE.forTrunk * values.trunk);
  const most = 0.3 * width;
  const aside = Math.max(-most, Math.min(most, Math.tan(radians(leanDeg)) * rise));
  const foot = { x: -0.6 * aside, y: plot.root };
  const heart = { x: 0.4 * aside, y: -rise };
  const thickness = Math.max(TRUNK * sizeOf(plot) * values.girth, 1.6 * plot.smallestWeb);
  const on = (across: number, up: number): Point => ({
    x: foot.x + across * aside,
    y: -up * rise,
  });
  return {
    trunk: {
      id: 0,
      parent: -1,
      thickness,
      held: false,
      points: [foot, on(0, 0), on(0.42, 0.3), on(0.82, 0.66), heart],
    },
    heart,
    fronds: frondsOf(plot, heart, random.branch('fronds')),
    random,
  };
}

/** Tips of the lowest fronds hang this far round from straight up. */
const FAN_DEG = 122;
/** Fronds spring from the heart steeper than their tips lie: by this much of their angle. */
const SPRING = 0.7;
/** ... and nod at the tip by so much more, the upright ones to either side. */
const NOD_DEG: readonly [number, number] = [12, 24];
/** A frond's tip has this much room to the next, in smallest webs and holes together, at least. */
const FROND_ROOM = 3.1;

/** Fronds left to right: the upper ones rise and nod, the lower ones arch over and hang. */
function frondsOf(plot: Plot, heart: Point, random: Random): Frond[] {
  const up = plot.height + heart.y;
  const drawn = random.whole(7, 11);
  const around = 2 * radians(FAN_DEG) * Math.sqrt(0.5 * plot.width * up);
  const room = Math.floor(around / (FROND_ROOM * (plot.smallestWeb + plot.smallestHole)));
  const count = Math.max(5, Math.min(drawn, room));
  const spread = (2 * FAN_DEG) / count;
  return Array.from({ length: count }, (_, i): Frond => {
    const own = random.branch(i);
    const a = radians(-FAN_DEG + (i + 0.5) * spread + 0.1 * spread * own.bell());
    const long = own.between(0.88, 1);
    const out = plot.width / 2 - Math.sign(a) * heart.x;
    const down = Math.min(1.05 * up, -0.8 * heart.y);
    const at = (angle: number, share: number): Point => ({
      x: heart.x + share * out * Math.sin(angle),
      y: heart.y - share * (Math.cos(angle) > 0 ? up : down) * Math.cos(angle),
    });
    const nod =
      (Math.abs(a) < 0.12 ? (own.chance(0.5) ? 1 : -1) : Math.sign(a)) *
      radians(own.between(...NOD_DEG));
    const path = [heart, at(SPRING * a, 0.36), at(0.9 * a, 0.74 * long), at(a + nod, 0.98 * long)];
    return { path, half: 0.5 * radians(spread), random: own };
  });
}

/** Radius of a fruit as a share of the size, and in smallest webs at least. */
const FRUIT = { share: 0.026, webs: 1 };

export function drawPalm(plan: PalmPlan, plot: Plot, values: TreeValues, random: Random): Growth {
  const { trunk, heart } = plan;
  const collar = collarAt(trunk, plot, random.branch('collar'));
  const pitchLight = values.light;
  const fronds = plan.fronds.flatMap((f) => frondContours(f, plot, sizeOf(plot), pitchLight));
  const drawn = union([
    wood([trunk]),
    { contours: [collar] },
    ...fronds.map((c: Cubics) => ({ contours: [c] })),
    ...fruit(plan, plot, random.branch('fruit')),
  ]);
  const { body, holes } = cutSafe(drawn, plot, trunk.points[0]);
  const card = subtract(body, [holes]);
  const parts = partsOf(card, { ...trunk, points: [...trunk.points.slice(0, -1), heart] }, collar);
  const rings = keptClear(ringsOn(trunk, random.branch('rings')), card, CLEARANCE_MM);
  return { body, holes, scores: rings, reliefs: [], parts };
}

/** Two or three fruits hang close under the heart. */
function fruit({ heart, trunk }: PalmPlan, plot: Plot, random: Random) {
  const r = Math.max(FRUIT.share * sizeOf(plot), FRUIT.webs * plot.smallestWeb * WOOD_SPARE);
  const spots = [-1, 1, random.chance(0.5) ? 0.2 : -0.2];
  return spots.map((share, i) => {
    const x = heart.x + share * (0.45 * trunk.thickness + 0.45 * r);
    return circle(x, heart.y + (i === 2 ? 1.1 : random.between(0.3, 0.9)) * r, r);
  });
}

/** Rings where fronds have fallen: strokes that sag across the trunk, closer toward the top. */
function ringsOn(trunk: Branch, random: Random): Line[] {
  const d = trunk.thickness;
  const axis = alongSmooth(trunk.points.slice(1), 6);
  const rings: Line[] = [];
  let since = 0.6 * d;
  for (let i = 1; i + 1 < axis.length; i++) {
    const [a, b] = [axis[i - 1], axis[i]];
    since += Math.hypot(b.x - a.x, b.y - a.y);
    const step = d * (0.62 - 0.2 * (i / axis.length)) * random.between(0.85, 1.15);
    if (since < step) continue;
    since = 0;
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    const way = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
    const at = (aside: number, down: number): Point => ({
      x: b.x - aside * way.y - down * way.x,
      y: b.y + aside * way.x - down * way.y,
    });
    const half = 0.5 * d;
    rings.push(smoothLine([at(-half, 0), at(0, 0.14 * d), at(half, 0)]));
  }
  return rings;
}
