import { subtract, union } from '../../geometry/boolean/boolean.js';
import { containsPoint } from '../../geometry/components.js';
import type { Cubics, Point, Region } from '../../geometry/types.js';
import type { Growth, Plot } from '../family.js';
import { type LeafForm, leaf, TIP_RADIUS_MM } from '../leaf.js';
import { alongSmooth, limb } from '../limb.js';
import type { Random } from '../random.js';
import { degrees, radians, turnBetween } from './angles.js';
import { type Branch, branchTable, wood } from './branches.js';
import { sizeOf } from './crown-frame.js';
import { cutSafe } from './finish.js';
import { nearlyTouches } from './foliage.js';
import type { TreeValues } from './parameters.js';
import { partsOf } from './parts.js';
import { scoresOn } from './scores.js';
import { barkLines, collarAt } from './trunk.js';
import type { WillowPlan, Withy } from './willow.js';

/** A withy hangs free: it must be stouter than a web that is held at both ends. */
const WITHY_SPARE = 1.3;

export const willowBranches = (plan: WillowPlan, plot: Plot, exponent: number): Branch[] =>
  branchTable(plan.foot, plan.first, plan.trunkThickness, exponent, plot.smallestWeb * WITHY_SPARE);

export function drawWillow(
  plan: WillowPlan,
  plot: Plot,
  values: TreeValues,
  random: Random,
): Growth {
  const table = willowBranches(plan, plot, values.exponent);
  const web = plot.smallestWeb;
  const length = Math.max(0.13 * sizeOf(plot) * (1 - 0.2 * plot.fineness), 6.5 * web);
  const form = {
    length,
    width: Math.max(length / 6.5, 1.1 * web),
    widest: 0.4,
    tipRadius: TIP_RADIUS_MM,
  };
  const timber = wood(table);
  const leaves = plan.locks.flatMap((lock) => [
    ...lock.flatMap((w) => leavesOn(w, form, values.light, timber, plot.smallestHole)),
    ...tiesOf(lock, form, web * WITHY_SPARE),
  ]);
  const collar = collarAt(table[0], plot, random.branch('collar'));
  const heads = plan.heads.flatMap((h) => headOf(h, form, web));
  const drawn = union([timber, { contours: [...leaves, collar, ...heads] }]);
  const { body, holes } = cutSafe(drawn, plot, plan.foot);
  const bark = barkLines(table[0], random.branch('bark'));
  const parts = partsOf(subtract(body, [holes]), table[0], collar);
  return { body, holes, scores: scoresOn(body, holes, bark), reliefs: [], parts };
}

/** Thickness of the arch over a lock at its ends and its middle, in smallest webs. */
const ARCH: readonly [number, number] = [1.4, 2.4];

/** The arch over a lock, with leaves lying along its upper side away from its crest. */
function headOf({ path, random }: Withy, form: LeafForm, web: number): Cubics[] {
  const crest = (path.length - 1) / 2;
  const thickness = (i: number): number =>
    web * (ARCH[1] - ((ARCH[1] - ARCH[0]) * Math.abs(i - crest)) / crest);
  const arch = limb(path.map((p, i) => ({ ...p, thickness: thickness(i) })));
  const line = alongSmooth(path, 5);
  const leaves: Cubics[] = [];
  for (let i = 1; i + 1 < line.length; i += 2) {
    const after = i > (line.length - 1) / 2;
    const heading = headingAt(line, i) + (after ? 0 : 180);
    const lift = (after ? -1 : 1) * random.between(6, 14);
    const size = random.between(0.5, 0.7);
    if (random.chance(0.85))
      leaves.push(leaf({ ...form, length: form.length * size }, line[i], heading + lift));
  }
  return [arch, ...leaves];
}

/** From one leaf to the next along a withy, in leaf lengths. */
const LEAF_STEP: readonly [number, number] = [0.5, 0.75];
/** Leaves stand closer the less light is asked for: this share of the step at none. */
const DENSEST = 0.2;
/** ... and that of the step at this much light. */
const LEAF_STEP_LIGHT = 0.2;
/** Leaves stand off their withy by this, by turns to either side. */
const STAND_OFF_DEG: readonly [number, number] = [8, 16];
const DOWN_DEG = 90;

/** Narrow leaves by turns left and right, pointing down the withy and drawn to the plumb line. */
function leavesOn(
  { path, random }: Withy,
  form: LeafForm,
  light: number,
  timber: Region,
  smallestHole: number,
): Cubics[] {
  const r = random.branch('leaves');
  const line = alongSmooth(path, 6);
  const leaves: Cubics[] = [];
  let side = r.chance(0.5) ? 1 : -1;
  let since = 0;
  const spread = DENSEST + ((1 - DENSEST) * light) / LEAF_STEP_LIGHT;
  let step = form.length * spread * r.between(...LEAF_STEP);
  for (let i = 1; i + 1 < line.length; i++) {
    since += Math.hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
    if (since < step) continue;
    since = 0;
    step = form.length * spread * r.between(...LEAF_STEP);
    const size = r.between(0.75, 1.1);
    const off = r.between(...STAND_OFF_DEG);
    const heading = headingAt(line, i);
    const drawn = turnBetween(heading, DOWN_DEG);
    // On the arch leaves lie along it and a little under it; only hung withies carry them by turns.
    const turned = Math.abs(drawn) > 30 ? 0.5 * drawn : side * off + 0.3 * drawn;
    if (Math.abs(drawn) < 110) {
      const pointing = heading + turned;
      const length = tying(line[i], pointing, form.length * size, timber, smallestHole);
      leaves.push(leaf({ ...form, length }, line[i], pointing));
    }
    side = -side;
  }
  const end = line[line.length - 1];
  leaves.push(
    leaf(
      { ...form, width: form.width * 1.15 },
      { x: end.x, y: end.y - 0.45 * form.length },
      DOWN_DEG + 4 * r.bell(),
    ),
  );
  return leaves;
}

/** Neighbouring withies are tied at least this often, in their own widths. */
const TIE_STEP = 10;
/** A tie's slant off the plumb line. */
const TIE_DEG = 27;

/** Leaves that cross from each withy of a lock to the next, so that none hangs long by itself. */
function tiesOf(lock: readonly Withy[], form: LeafForm, withyWidth: number): Cubics[] {
  const lines = lock.map((w) => alongSmooth(w.path, 6));
  const leaves: Cubics[] = [];
  const slope = 1 / Math.tan(radians(TIE_DEG));
  for (let i = 0; i + 1 < lock.length; i++) {
    const r = lock[i].random.branch('ties');
    const step = TIE_STEP * withyWidth;
    const hem = Math.min(lines[i][lines[i].length - 1].y, lines[i + 1][lines[i + 1].length - 1].y);
    const top = Math.max(lock[i].path[3].y, lock[i + 1].path[3].y);
    for (let y = top + step * r.between(0.2, 0.7); y < hem; y += step * r.between(0.8, 1.1)) {
      const [from, to] = r.chance(0.5) ? [lines[i], lines[i + 1]] : [lines[i + 1], lines[i]];
      const across = xAt(to, y) - xAt(from, y);
      const drop = Math.abs(across) * slope;
      if (y + drop > hem) break;
      const length = Math.hypot(across, drop) + 0.4 * withyWidth;
      const heading = degrees(Math.atan2(drop, across));
      leaves.push(leaf({ ...form, length, widest: 0.5 }, { x: xAt(from, y), y }, heading));
    }
  }
  return leaves;
}

/** Where a withy is when it has fallen to y. */
function xAt(line: readonly Point[], y: number): number {
  const k = line.findLastIndex((p) => p.y <= y);
  const a = line[Math.max(0, k)];
  const b = line[Math.min(line.length - 1, k + 1)];
  return b.y > a.y ? a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x) : a.x;
}

/** A leaf that would stop just short of the next withy grows on to tie the two. */
const TIE = 1.35;

function tying(
  foot: Point,
  headingDeg: number,
  length: number,
  timber: Region,
  gap: number,
): number {
  const a = radians(headingDeg);
  const tip = { x: foot.x + length * Math.cos(a), y: foot.y + length * Math.sin(a) };
  const isShort = !containsPoint(timber, tip) && nearlyTouches(timber, tip, headingDeg, gap);
  return isShort ? length * TIE : length;
}

const headingAt = (line: readonly Point[], i: number): number =>
  degrees(Math.atan2(line[i + 1].y - line[i].y, line[i + 1].x - line[i].x));
