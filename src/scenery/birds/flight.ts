import type { Point, Region } from '../../geometry/types.js';
import { mix, shapeOf } from '../brick/craft.js';
import { leaf } from '../leaf.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';
import { type Bird, flying, perched } from './bird.js';

/** The room that birds have, drawn from its left end or its jamb: x along it, y down, mm. */
export interface Air {
  readonly reach: number;
  /** Half of how far up and down they may go. */
  readonly half: number;
  /** How far a carrier runs back behind the jamb it starts from, and a stay into the head. */
  readonly root: number;
  readonly headRoot: number;
  readonly smallestWeb: number;
  /** The reach runs on into the far jamb. */
  readonly across: boolean;
  /** Ends that hang from the head by a stay. */
  readonly hung: { readonly start: boolean; readonly end: boolean };
}

/** Birds and what carries them. */
export interface Group {
  readonly birds: readonly Bird[];
  readonly carrier: readonly Region[];
  /** A place that is sure to be card, by the jamb. */
  readonly held: Point;
}

/** A flying bird needs so many webs from tip to tip, and a sitting one so many of the branch. */
const SPAN_WEBS = 16;
const SEAT_WEBS = 7.5;
/** How far a body hangs below its wing-tips, in spans. */
const LIFT = [0.1, 0.24] as const;
/** How far wings bow up over their tips, in spans. */
const BOW = [0.2, 0.3] as const;

/** A flock's wing-tips lie this far below the middle, and climb so far to each side, in halves. */
const LOW = 0.18;
const CLIMB = 0.55;

/** A flock in a line, each bird tied to the next wing-tip to wing-tip, the first to the jamb. */
export function flockOf(air: Air, count: number, rise: number, random: Random): Group {
  const { reach, half, smallestWeb } = air;
  const most = Math.max(1, Math.floor(reach / (SPAN_WEBS * smallestWeb)));
  const n = Math.min(count, most);
  const shares = Array.from({ length: n }, (_, i) => random.branch(`span ${i}`).between(0.8, 1.25));
  const whole = shares.reduce((a, b) => a + b, 0);
  const play = 0.34 * half;
  let x = 0;
  const tips: Point[] = [{ x: 0, y: LOW * half + (half - play) * rise * CLIMB }];
  shares.forEach((share, i) => {
    x += (share / whole) * reach;
    const level = LOW * half + (half - play) * rise * CLIMB * (1 - (2 * x) / reach);
    tips.push({ x, y: level + random.branch(`tip ${i}`).between(-1, 1) * play * 0.6 });
  });
  const birds = shares.map((_, i): Bird => {
    const luck = random.branch(`bird ${i}`);
    const span = tips[i + 1].x - tips[i].x;
    const lift = Math.min(span * luck.between(...LIFT), 0.4 * half);
    const bow = Math.min(span * luck.between(...BOW), 0.55 * half);
    return flying([tips[i], tips[i + 1]], lift, bow, 1, smallestWeb);
  });
  const [first, last] = [tips[0], tips[n]];
  const tie = (x0: number, x1: number, y: number): Region =>
    shapeOf(limb([0, 0.5, 1].map((t) => ({ x: mix(x0, x1, t), y, thickness: 1.6 * smallestWeb }))));
  const carrier = staysOf(air, first, last);
  if (!air.hung.start) carrier.push(tie(-air.root, 1, first.y));
  if (air.across) carrier.push(tie(last.x - 1, last.x + BEHIND_MM, last.y));
  return { birds, carrier, held: { x: 0.3, y: first.y } };
}

/** Stays from the ends that hang from the head, broader where they leave it. */
function staysOf(air: Air, first: Point, last: Point): Region[] {
  const { smallestWeb, half, headRoot } = air;
  const inset = 0.8 * smallestWeb;
  const stay = ({ y }: Point, x: number): Region =>
    shapeOf(
      limb([
        { x, y: -half - headRoot, thickness: 2.4 * smallestWeb },
        { x, y: -half, thickness: 2.2 * smallestWeb },
        { x, y: mix(-half, y, 0.35), thickness: 1.3 * smallestWeb },
        { x, y: y + 0.3, thickness: 1.3 * smallestWeb },
      ]),
    );
  return [
    ...(air.hung.start ? [stay(first, first.x + inset)] : []),
    ...(air.hung.end ? [stay(last, last.x - inset)] : []),
  ];
}

/** What runs into the far jamb runs on behind it by this, mm. */
export const BEHIND_MM = 5;

/** Birds that sit on a branch from the jamb, unevenly apart, most looking the same way. */
export function branchOf(
  air: Air,
  count: number,
  rise: number,
  leaves: number,
  random: Random,
): Group {
  const { reach, half, smallestWeb, root } = air;
  const seat = Math.max(SEAT_WEBS * smallestWeb, 0.9 * Math.min(half, reach / count));
  const n = Math.max(1, Math.min(count, Math.floor(reach / seat)));
  const size = Math.min(1.6 * half, (0.92 * reach) / n);
  const foot = 0.42 * half + 0.3 * half * rise;
  const bend = random.branch('branch');
  const [sag, sway] = [bend.between(0.05, 0.16) * half, bend.between(-0.08, 0.08) * half];
  const end = air.across ? reach + BEHIND_MM : reach;
  const levelAt = (x: number): number => {
    const t = x / reach;
    const wave = sag * Math.sin(Math.PI * t) + sway * Math.sin(2 * Math.PI * t);
    return foot - 0.6 * half * rise * t + wave;
  };
  const thick = Math.max(2 * smallestWeb, Math.min(3.4 * smallestWeb, 0.05 * reach));
  const thin = air.across || air.hung.end ? 1.6 * smallestWeb : 1.3 * smallestWeb;
  const nodes = Array.from({ length: 9 }, (_, k) => {
    const x = mix(0, end, k / 8);
    const knot = 1 + 0.12 * bend.between(-1, 1);
    return { x, y: levelAt(Math.min(x, reach)), thickness: mix(thick, thin, k / 8) * knot };
  });
  const start = { x: -root, y: nodes[0].y, thickness: thick };
  const branch = shapeOf(limb(air.hung.start ? nodes : [start, ...nodes]));
  const pitch = reach / n;
  // Those to the left look left and the others right: two that faced each other would grow together
  // at their beaks.
  const parting = random.pick([0, 0, n, n, random.whole(0, n)]);
  const birds = Array.from({ length: n }, (_, i): Bird => {
    const luck = random.branch(`bird ${i}`);
    const x = (i + 0.5 + luck.between(-0.14, 0.14)) * pitch;
    const hand = i < parting ? -1 : 1;
    const own = size * luck.between(0.84, 1.02);
    return perched({ x, y: levelAt(x) }, own, hand, luck.between(-14, 10), smallestWeb);
  });
  return {
    birds,
    carrier: [
      branch,
      ...staysOf(air, nodes[0], nodes[8]),
      ...leavesOn(air, levelAt, leaves, random.branch('leaves')),
    ],
    held: { x: 0.3, y: levelAt(0) },
  };
}

/** One leaf on so many webs of the branch at the fullest; they hang below, where no bird sits. */
const LEAF_WEBS = 7;

function leavesOn(
  air: Air,
  levelAt: (x: number) => number,
  amount: number,
  random: Random,
): Region[] {
  const { reach, half, smallestWeb } = air;
  const length = Math.min(0.7 * half, Math.max(5 * smallestWeb, 0.35 * half));
  if (length < 3.5 * smallestWeb) return [];
  const places = Math.floor((0.94 * reach) / (LEAF_WEBS * smallestWeb));
  return Array.from({ length: places }, (_, i): Region[] => {
    const luck = random.branch(i);
    if (!luck.chance(amount)) return [];
    const x = (i + 0.5 + luck.between(-0.25, 0.25)) * (reach / Math.max(1, places));
    const form = {
      length: length * luck.between(0.75, 1),
      width: Math.max(2.4 * smallestWeb, 0.42 * length),
      widest: 0.45,
      tipRadius: 0.6 * smallestWeb,
    };
    return [shapeOf(leaf(form, { x, y: levelAt(x) }, luck.between(38, 78)))];
  }).flat();
}
