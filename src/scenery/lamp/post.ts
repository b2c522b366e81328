import { union } from '../../geometry/boolean/boolean.js';
import { circle, rectangle, roundedRectangle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import { handCut, shape, shapeOf } from '../brick/craft.js';
import { type Drawing, joinDrawings } from '../built/finish.js';
import type { Plot } from '../family.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';
import { LANTERN_WIDE, lanternOf, ROOFS, type Room } from './lantern.js';

/** A lamp as it stands: what is cut, and where its lanterns are. */
export interface Lamp {
  readonly drawing: Drawing;
  readonly lanterns: readonly Room[];
  /** Middle of its foot. */
  readonly foot: number;
}

const WANDER_MM = 0.08;
/** A lantern's height as a share of the lamp's, by itself and on arms. */
const LANTERN = { none: 0.32, single: 0.3, double: 0.28 } as const;
/** Least width of a lantern in webs, and most of the height that one may take. */
const LEAST_LANTERN = 3.2;
const MOST_LANTERN = { none: 0.48, single: 0.36, double: 0.34 } as const;
/** Least width in webs of a lantern that hangs: narrower ones would clog. */
const LEAST_HUNG = { none: 0, single: 2.6, double: 3.4 } as const;
/** A lantern's height is at most this many widths. */
const SLIMMEST = 2;
/** Half of the column's width at its foot and head. */
const COLUMN = [0.028, 0.017] as const;
const LADDER_AT = 0.6;
const LADDER = 0.13;

export type Arms = keyof typeof LANTERN;

/** A cast post with a lantern on it, or with arms from which one or two hang. */
export function postLamp(plot: Plot, arms: Arms, ladder: boolean, random: Random): Lamp {
  const { width, height, smallestWeb, smallestHole } = plot;
  const least = 0.6 * smallestWeb;
  const half = COLUMN.map((share) => Math.max(least, share * height)) as [number, number];
  const usual = LANTERN[arms] * height * random.branch('lantern').between(0.92, 1.06);
  const leastTall = (LEAST_LANTERN * smallestWeb) / LANTERN_WIDE;
  const most = Math.min(MOST_LANTERN[arms] * height, Math.max(usual, leastTall));
  const gap = half[1] + Math.max(1.3 * smallestHole, 0.05 * height);
  const room =
    arms === 'none'
      ? width / 1.15
      : arms === 'single'
        ? (1.15 * width - gap - 3 * half[0]) / 1.22
        : (1.15 * width - 2 * gap) / 2.44;
  const wide = Math.min(LANTERN_WIDE * most, room);
  // A narrow lantern is a low one: drawn out it would look like a bottle.
  const tall = Math.min(most, SLIMMEST * wide);
  // Under a swan neck a round cap would clog the gap between them.
  const roof = arms === 'none' ? random.branch('roof').pick(ROOFS) : 'swept';
  const reach = 0.62 * wide + gap;
  // Where two lanterns find no room there is one, and where that does not, it stands on the post.
  if (wide < LEAST_HUNG[arms] * smallestWeb) {
    return postLamp(plot, arms === 'double' ? 'single' : 'none', ladder, random);
  }
  const hand = random.branch('hand').chance(0.5) ? -1 : 1;
  const foot = arms === 'single' ? (-hand * reach) / 2 : 0;
  const hands = arms === 'double' ? [-1, 1] : [hand];
  const top = arms === 'none' ? height - tall + 0.01 * height : 0.9 * height;
  const column = columnOf(plot, foot, half, top, random.branch('column'));
  const rooms =
    arms === 'none'
      ? [{ x: foot, foot: -(height - tall), width: wide, height: tall }]
      : hands.map((h) => ({
          x: foot + h * reach,
          foot: -(0.93 * height - tall),
          width: wide,
          height: tall,
        }));
  const lanterns = rooms.map((room) => lanternOf(plot, room, arms !== 'none', roof));
  const crooks = arms === 'none' ? [] : hands.map((h) => crook(plot, foot, h, reach, half[1]));
  const finial = arms === 'none' ? cradle(plot, foot, tall, wide, half[1]) : knob(plot, foot, half);
  const bars = ladder ? ladderBar(plot, foot, arms === 'none' ? tall : 0.36 * height) : [];
  const solids = [...column, ...crooks, ...finial, ...bars];
  return {
    drawing: joinDrawings([{ solids, cuts: [], lines: [] }, ...lanterns]),
    lanterns: rooms,
    foot,
  };
}

/** Base, tapering column and its rings. */
function columnOf(
  { height, root, width }: Plot,
  x: number,
  [low, high]: [number, number],
  top: number,
  random: Random,
): Region[] {
  const side = Math.min(1, (0.42 * width) / (low * 2.6));
  const tall = random.branch('base').between(0.85, 1.2);
  const outline: [number, number][] = [
    [2.6 * side, -root],
    [2.6 * side, 0.045],
    [2.25 * side, 0.055],
    [2.05 * side, 0.1],
    [1.75 * side, 0.16],
    [1.3, 0.19],
    [1.62 * side, 0.205],
    [1.62 * side, 0.225],
    [1.05, 0.245],
  ];
  const point = (hand: number, [w, up]: [number, number]): Point => ({
    x: x + hand * Math.max(1, w) * low,
    y: up === -root ? root : -up * tall * height,
  });
  const head = [
    { x: x - high, y: -top },
    { x: x + high, y: -top },
  ];
  const left = outline.map((p) => point(-1, p));
  const right = outline.map((p) => point(1, p)).reverse();
  const rings = [random.branch('ring').between(0.4, 0.5), 0.7].map((share) => {
    const y = -share * top;
    const half = (low + (high - low) * share) * 1.4;
    return roundedRectangle(x - half, y - 0.008 * height, 2 * half, 0.022 * height, 0.4);
  });
  return [handCut([...left, ...head, ...right], WANDER_MM, random), ...rings];
}

/** What a standing lantern rests on. */
function cradle(plot: Plot, x: number, tall: number, wide: number, half: number): Region[] {
  const y = -(plot.height - tall);
  const out = Math.max(half * 1.5, wide * 0.3);
  return [
    shape([
      { x: x - out, y: y - 0.05 * tall },
      { x: x + out, y: y - 0.05 * tall },
      { x: x + half, y: y + 0.13 * tall },
      { x: x - half, y: y + 0.13 * tall },
    ]),
  ];
}

function knob({ height }: Plot, x: number, [, half]: [number, number]): Region[] {
  const ball = half * 1.55;
  return [
    circle(x, -height + ball, ball),
    rectangle(x - half, -height + ball, 2 * half, 0.12 * height),
  ];
}

/** A swan-necked arm from the post up, out and over to the lantern's rod. */
function crook(
  { height, smallestWeb }: Plot,
  x: number,
  hand: number,
  reach: number,
  half: number,
) {
  const thick = Math.max(1.2 * smallestWeb, 0.02 * height);
  const point = (share: number, up: number, swell: number) => ({
    x: x + hand * share * reach,
    y: -up * height,
    thickness: thick * swell,
  });
  const arm = shapeOf(
    limb([
      point(0, 0.74, 1.3),
      point(0.14, 0.83, 1.15),
      point(0.38, 0.915, 1.05),
      point(0.7, 0.945, 1),
      point(0.93, 0.93, 1),
      point(1, 0.885, 1),
    ]),
  );
  return union([arm, circle(x + hand * half, -0.74 * height, thick * 0.8)]);
}

/** The bar that a lamplighter's ladder leans on. */
function ladderBar(plot: Plot, x: number, taken: number): Region[] {
  const { height, width, smallestWeb, smallestHole } = plot;
  const thick = Math.max(1.15 * smallestWeb, 0.016 * height);
  const reach = Math.min(LADDER * height, width / 2 - Math.abs(x) - thick);
  const y = -Math.min(LADDER_AT * height, height - taken - 1.3 * smallestHole - thick);
  if (reach < 2 * thick || -y < 0.3 * height) return [];
  return [
    roundedRectangle(x - reach, y - thick / 2, 2 * reach, thick, thick / 2),
    ...[-1, 1].map((hand) => circle(x + hand * (reach - thick * 0.4), y, thick * 0.8)),
  ];
}
