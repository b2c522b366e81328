import { subtract, union } from '../../geometry/boolean/boolean.js';
import type { Point } from '../../geometry/types.js';
import type { Growth, Plot } from '../family.js';
import type { Random } from '../random.js';
import { radians } from './angles.js';
import { type Branch, branchTable, type Joint, WOOD_SPARE, wood } from './branches.js';
import { trunkWay } from './broadleaf.js';
import { sizeOf } from './crown-frame.js';
import { cutSafe } from './finish.js';
import { bowed } from './lobes.js';
import type { TreeValues } from './parameters.js';
import { partsOf } from './parts.js';
import { scoresOn } from './scores.js';
import { barkLines, collarAt } from './trunk.js';

/** A bare tree before it is drawn. Lengths in mm. */
export interface WinterPlan {
  readonly foot: Point;
  readonly first: Joint;
  readonly trunkThickness: number;
}

const TRUNK = 0.105;
/** A bare tree is at most this wide for its height. */
const SPREAD = 1.05;

/** The part of a plot that a bare tree takes up. */
export const winterPlot = (plot: Plot): Plot => ({
  ...plot,
  width: Math.min(plot.width, SPREAD * plot.height),
});

/** A narrow tree leans no further than this share of its width. */
const MOST_ASIDE = 0.4;

/** The lowest boughs reach this far round from straight up. */
const FAN_DEG: readonly [number, number] = [78, 92];

/** Where boughs part and how far they reach, seen from the trunk's fork. */
interface Dome {
  readonly fork: Point;
  /** Distance (mm) from the fork to the crown's rim, by the angle from straight up in radians. */
  reach(angle: number): number;
  /** Twigs that end closer together than this (mm) at the rim would run into one. */
  readonly pitch: number;
}

/**
 * A crown planned as a fan: each bough has a sector of it to itself, which it parts between the two
 * that it forks into, so that no two ever cross. Forking ends where a sector grows too narrow for
 * two twigs and the light between them.
 */
export function winterPlan(plot: Plot, values: TreeValues, random: Random): WinterPlan {
  const own = random.branch('wood');
  const lean = radians(values.lean + 2 * own.bell());
  const rise = values.trunk * plot.height;
  const most = MOST_ASIDE * plot.width;
  const leant = Math.tan(lean) * (rise + 0.25 * plot.height);
  const aside = Math.max(-most, Math.min(most, leant));
  const foot = { x: -aside / 2, y: plot.root };
  const fork = { x: aside / 4, y: -rise };
  const dome = domeOver(plot, values, fork, aside / 2, own);
  const left = -radians(own.between(...FAN_DEG));
  const right = radians(own.between(...FAN_DEG));
  const children = boughs(dome, left, right, random.branch('boughs'));
  return {
    foot,
    first: { ...fork, load: 0, way: trunkWay(foot, fork, own), children },
    trunkThickness: TRUNK * sizeOf(plot) * values.girth,
  };
}

/** Room for a twig in smallest webs, and for light in smallest holes: least, and by the light. */
const PITCH = { webs: 1.2, holes: 0.7, holesForLight: 2.5, share: 0.042 };

function domeOver(
  plot: Plot,
  values: TreeValues,
  fork: Point,
  shift: number,
  random: Random,
): Dome {
  const { width, height, smallestWeb, smallestHole } = plot;
  const up = height + fork.y;
  const low = random.between(0.28, 0.36) * up;
  const middle = { x: shift - fork.x, y: -low };
  const rx = width / 2 - Math.abs(shift);
  const ry = up - low;
  const holes = PITCH.holes + PITCH.holesForLight * values.light;
  return {
    fork,
    reach: (angle) => {
      // The far crossing of a ray with an ellipse round `middle`.
      const [dx, dy] = [Math.sin(angle) / rx, -Math.cos(angle) / ry];
      const [mx, my] = [middle.x / rx, middle.y / ry];
      const [a, b, c] = [dx * dx + dy * dy, dx * mx + dy * my, mx * mx + my * my - 1];
      return (b + Math.sqrt(Math.max(0, b * b - a * c))) / a;
    },
    pitch: Math.max(
      PITCH.webs * smallestWeb + holes * smallestHole,
      PITCH.share * (0.6 + 2 * values.light) * Math.sqrt(width * height),
    ),
  };
}

/** A sector of the fan, the share of its reach where its bough begins, and how often it parted. */
interface Sector {
  readonly left: number;
  readonly right: number;
  readonly from: number;
  readonly level: number;
}

/** Hard bound on forking: no card holds finer. */
const MOST_LEVELS = 9;
/** Share of what is left to the rim that a bough runs before it forks. */
const RUN: readonly [number, number] = [0.24, 0.36];
/** How a bough parts: the larger share goes on, by turns to the left and to the right. */
const LARGER: readonly [number, number] = [0.56, 0.68];
/** A side twig ends at this share of what is left to the rim, the last of a bough further out. */
const SIDE_TIP: readonly [number, number] = [0.5, 0.8];
const LAST_TIP: readonly [number, number] = [0.82, 1];

/** The trunk parts in three: a leader, and a bough to each side. */
function boughs(dome: Dome, left: number, right: number, random: Random): Joint[] {
  const near = left + (right - left) * random.between(0.29, 0.38);
  const far = right - (right - left) * random.between(0.29, 0.38);
  return [
    [left, near],
    [near, far],
    [far, right],
  ].map(([l, r], i) =>
    bough(dome, { left: l, right: r, from: 0, level: 0 }, dome.fork, false, random.branch(i)),
  );
}

/** What grows in a sector from `at` on: a bough that parts again, or a twig. */
function bough(dome: Dome, sector: Sector, at: Point, isSide: boolean, random: Random): Joint {
  const { left, right, from, level } = sector;
  const angle = (left + right) / 2;
  const reach = dome.reach(angle);
  const run = random.between(...RUN);
  const lift = random.between(0.03, 0.07) * Math.sin(angle);
  const bow = (0.02 * random.bell() + lift) * (level === 0 ? 1.4 : 0.8);
  const tip = random.between(...(isSide ? SIDE_TIP : LAST_TIP));
  const larger = random.between(...LARGER);
  const room = (right - left) * reach;
  if (level >= MOST_LEVELS || room < 2 * dome.pitch) {
    const end = onFan(dome, angle, from + tip * (1 - from));
    return { ...end, load: room, way: [bowed(at, end, bow)], children: [] };
  }
  const next = from + run * (1 - from);
  const end = onFan(dome, angle, next);
  const goesRight = (level % 2 === 0) === angle > 0;
  const middle = left + (goesRight ? 1 - larger : larger) * (right - left);
  const onward = { from: next, level: level + 1 };
  const children = [
    bough(dome, { ...onward, left, right: middle }, end, goesRight, random.branch('left')),
    bough(dome, { ...onward, left: middle, right }, end, !goesRight, random.branch('right')),
  ];
  return { ...end, load: 0, way: [bowed(at, end, bow)], children };
}

function onFan({ fork, reach }: Dome, angle: number, share: number): Point {
  const r = share * reach(angle);
  return { x: fork.x + r * Math.sin(angle), y: fork.y - r * Math.cos(angle) };
}

export const winterBranches = (plan: WinterPlan, plot: Plot, exponent: number): Branch[] =>
  branchTable(plan.foot, plan.first, plan.trunkThickness, exponent, plot.smallestWeb * WOOD_SPARE);

export function drawWinter(
  plan: WinterPlan,
  plot: Plot,
  values: TreeValues,
  random: Random,
): Growth {
  const table = winterBranches(plan, plot, values.exponent);
  const collar = collarAt(table[0], plot, random.branch('collar'));
  const drawn = union([wood(table), { contours: [collar] }]);
  const { body, holes } = cutSafe(drawn, plot, plan.foot);
  const bark = barkLines(table[0], random.branch('bark'));
  const parts = partsOf(subtract(body, [holes]), table[0], collar);
  return { body, holes, scores: scoresOn(body, holes, bark), reliefs: [], parts };
}
