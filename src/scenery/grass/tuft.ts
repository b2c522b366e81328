import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import { arcOfHeight, distanceTo, hangingFrom, lengthOf, placed, topOf, within } from './arc.js';
import type { Habit } from './kinds.js';
import { type Arc, pointOn, subArc } from './ribbon.js';

/** One blade as planned: where it runs, how broad it is, and what became of it. */
export interface Blade {
  readonly arc: Arc;
  /** Its highest point, were it whole. */
  readonly heightMm: number;
  readonly footHalfMm: number;
  /** Its upper part has folded down to the side it leans to. */
  readonly broken: boolean;
  /** The side it leans to: -1 or 1. */
  readonly side: -1 | 1;
  readonly head: 'ear' | 'cigar' | null;
  readonly ribbed: boolean;
}

/** Blades from one foot. */
export interface Tuft {
  /** Counted from the middle of the plot: the same tuft keeps its key when the plot grows. */
  readonly key: number;
  readonly x: number;
  readonly blades: readonly Blade[];
}

/** What all tufts of a plot share. */
interface Stand {
  readonly plot: Plot;
  readonly habit: Habit;
  readonly windDeg: number;
  readonly grain: number;
  /** The breadth of a middling blade at its foot. */
  readonly widthMm: number;
}

/** Common practice, no source: one blade in six is 1.6 times as tall. */
const TALL = { chance: 1 / 6, times: 1.6 } as const;
/**
 * Common practice, no source: one blade in ten is broken at 60 %. The chance is higher, because a
 * blade that would fall on another stays whole.
 */
export const BROKEN = { chance: 0.16, at: 0.6 } as const;
/** A blade strays from its place in the fan by up to this share of it. */
const STRAY = 0.13;
/** Spread of the logarithm of the heights. */
const SIGMA = 0.17;
/** Detail of the last panel against that of the first. */
const BACK_GRAIN = 0.62;
/** Lower grass than this has narrower blades. */
const FULL_MM = 26;
/** A blade that would be longer than this many plot heights stays lower. */
const LONGEST = 1.2;
/** A blade's foot in smallest webs: it keeps a web's breadth for most of its taper. */
const LEAST_FOOT = 1.3;
/** Only blades taller than this share of the plot are scored: the others lie behind. */
const RIBBED_SHARE = 0.6;
/** No blade hangs over further than this from upright, or its tip would reach the ground. */
const MOST_TURN_DEG = 112;

export const grainOf = (plot: Plot): number => BACK_GRAIN + (1 - BACK_GRAIN) * (1 - plot.fineness);

/**
 * The tufts of a plot, left to right. Feet are counted from the middle outward and each tuft has
 * its own random stream, so that a wider or higher plot carries the same tufts.
 */
export function tuftsOf(plot: Plot, habit: Habit, windDeg: number, random: Random): Tuft[] {
  const grain = grainOf(plot);
  const widthMm = Math.max(
    habit.widthMm * grain * Math.min(1, Math.sqrt(plot.height / FULL_MM)),
    LEAST_FOOT * plot.smallestWeb,
    habit.slender * habit.median * plot.height,
  );
  const stand: Stand = { plot, habit, windDeg, grain, widthMm };
  const step = habit.spacing * breadth(stand, mean(habit.fanDeg), mean(habit.blades));
  const first = random.between(-0.5, 0.5) * step;
  const places = new Map([[0, first]]);
  for (const way of [-1, 1]) {
    const own = random.branch(way);
    let x = first;
    for (let i = 1; i < 1000; i++) {
      x += way * step * unevenGap(own);
      if (Math.abs(x) > plot.width / 2) break;
      places.set(way * i, x);
    }
  }
  const tufts = [...places]
    .sort((a, b) => a[1] - b[1])
    .map(([key, x]) => ({ key, x, blades: bladesAt(x, stand, random.branch(`tuft ${key}`)) }));
  return tipsParted(tufts, habit.slender);
}

const mean = ([low, high]: readonly [number, number]) => (low + high) / 2;

/** How broad a tuft is where its blades part, at half their height. */
function breadth({ plot, habit, widthMm }: Stand, fanDeg: number, blades: number): number {
  const spread = 2 * Math.tan((fanDeg * Math.PI) / 180) * 0.5 * habit.median * plot.height;
  return spread + habit.footing * widthMm * (blades - 1) + widthMm;
}

/** Tufts stand close in twos and threes with clearings between. */
const unevenGap = (random: Random): number =>
  random.chance(0.3) ? random.between(1.3, 1.9) : random.between(0.6, 1.05);

function bladesAt(x: number, stand: Stand, random: Random): Blade[] {
  const { habit } = stand;
  const fanDeg = random.between(...habit.fanDeg);
  const wanted = random.whole(...habit.blades);
  const vigour = random.between(0.84, 1.14);
  // As many as part from each other below the tips; in a low plot that is fewer.
  const room = breadth(stand, fanDeg, wanted) / (1.35 * stand.widthMm);
  const most = Math.max(habit.blades[0], Math.min(wanted, Math.round(room)));
  const own = random.branch('head');
  const headed = own.chance(habit.heads);
  // A stem takes the middle place, so an even number of blades stands about it.
  const count = headed && most % 2 === 1 ? Math.max(4, most - 1) : most;
  const blades = Array.from({ length: count }, (_, i) => {
    const place = (2 * i) / (count - 1) - 1;
    const footX = x + (place * habit.footing * stand.widthMm * (count - 1)) / 2;
    return plainBlade({ footX, place, fanDeg, vigour }, stand, random.branch(i));
  });
  return headed ? [...blades, headedStem(x, stand, own)] : blades;
}

/** Where a blade stands in its tuft. */
interface Stance {
  readonly footX: number;
  /** From -1, the leftmost blade of its tuft, to 1, the rightmost. */
  readonly place: number;
  /** What the tuft's blades share: the lean of the outermost, and how well it grows. */
  readonly fanDeg: number;
  readonly vigour: number;
}

function plainBlade({ footX, place, fanDeg, vigour }: Stance, stand: Stand, random: Random): Blade {
  const { plot, habit, windDeg, widthMm } = stand;
  const tall = random.chance(TALL.chance);
  const broken = random.chance(BROKEN.chance);
  const spread = Math.exp(SIGMA * random.bell()) * vigour * (1 - 0.12 * place * place);
  const wanted = Math.min(1, habit.median * spread * (tall ? TALL.times : 1)) * plot.height;
  const lean = place * fanDeg + random.between(-STRAY, STRAY) * fanDeg + 0.5 * windDeg;
  const side = lean + 0.5 * windDeg >= 0 ? 1 : -1;
  const [least, most] = habit.bendDeg;
  // Outer blades turn over further, so that blades of one tuft part and only those of two cross.
  const share = 0.8 * Math.abs(place) + random.between(0, 0.35);
  const turn = lean + side * (least + (most - least) * share) + 0.6 * windDeg;
  const tipDeg = Math.max(-MOST_TURN_DEG, Math.min(MOST_TURN_DEG, turn));
  const breadthShare = random.between(0.85, 1.2);
  const ribbed = random.chance(habit.ribs) && wanted > RIBBED_SHARE * plot.height && !broken;
  const foot = { x: withinPlot(footX, stand), y: 0 };
  const arc = within(arcOfHeight(foot, lean, tipDeg, wanted, LONGEST * plot.height), plot);
  return {
    arc,
    heightMm: topOf(arc),
    footHalfMm:
      Math.max(
        widthMm * breadthShare,
        LEAST_FOOT * plot.smallestWeb,
        habit.slender * lengthOf(arc),
      ) / 2,
    broken,
    side,
    head: null,
    ribbed,
  };
}

/** No foot stands so near the plot's end that it would miss the ground. */
function withinPlot(x: number, { plot, widthMm }: Stand): number {
  const half = Math.max(0, plot.width / 2 - widthMm);
  return Math.max(-half, Math.min(half, x));
}

/** A stem stands nearly upright among its blades and lifts its head over most of them. */
function headedStem(x: number, stand: Stand, random: Random): Blade {
  const { plot, habit, windDeg, widthMm } = stand;
  const lean = random.between(-7, 7) + 0.35 * windDeg;
  const side = lean >= 0 ? 1 : -1;
  const tipDeg = lean + side * random.between(0, 16) + 0.4 * windDeg;
  const foot = { x: withinPlot(x + random.between(-0.5, 0.5) * widthMm, stand), y: 0 };
  const heightMm = plot.height * random.between(0.74, 1);
  const arc = within(arcOfHeight(foot, lean, tipDeg, heightMm, LONGEST * plot.height), plot);
  return {
    arc,
    heightMm: topOf(arc),
    footHalfMm: widthMm / 2,
    broken: false,
    side,
    head: habit.head,
    ribbed: false,
  };
}

/** A tip's middle nearer to another blade's edge than this would grow into it. */
const TIP_CLEAR_MM = 1.3;
/** What a blade's size is tried at, in turn, until its tip stands free. */
const SIZES = [1, 0.88, 1.1, 0.78, 0.68];
/** A head takes the stem from here up; blades keep this far from its middle, or hide its shape. */
const HEAD_FROM = 0.5;
const HEAD_CLEAR_MM = 2.6;
/** Places on a blade that are held against heads. */
const UPPER = [0.5, 0.62, 0.75, 0.87, 1];
/** A tuft keeps this many blades even if their tips crowd. */
const FEWEST = 3;

/**
 * Blades may cross, but none may end on another: such a one is made a little shorter or longer, or
 * left out. One that would break on to another stays whole.
 */
function tipsParted(tufts: readonly Tuft[], slender: number): Tuft[] {
  const all = new Set(tufts.flatMap((tuft) => tuft.blades));
  return tufts.map((tuft) => {
    const blades: Blade[] = [];
    let spare = tuft.blades.filter((blade) => blade.head === null).length - FEWEST;
    for (const blade of tuft.blades) {
      all.delete(blade);
      const free = freeSize(blade, all);
      if (!free && blade.head === null && spare > 0) {
        spare--;
        continue;
      }
      const { arc, broken, side } = free ?? { ...blade, broken: false };
      const footHalfMm = Math.max(blade.footHalfMm, (slender * lengthOf(arc)) / 2);
      const parted = { ...blade, arc, broken, side, heightMm: topOf(arc), footHalfMm };
      all.add(parted);
      blades.push(parted);
    }
    return { ...tuft, blades };
  });
}

/** The blade at the first size at which it stands free of the others, if there is one. */
function freeSize(blade: Blade, others: ReadonlySet<Blade>): Freed | undefined {
  const list = [...others];
  const heads = list.filter((o) => o.head !== null).map((o) => subArc(o.arc, HEAD_FROM, 1));
  const stands = (tip: Point) =>
    list.every((o) => distanceTo(o.arc, tip) > 0.8 * o.footHalfMm + TIP_CLEAR_MM);
  const passesHeads = (arc: Arc) =>
    heads.every((head) => UPPER.every((t) => distanceTo(head, pointOn(arc, t)) > HEAD_CLEAR_MM));
  const sizes = SIZES.map((size) => placed(blade.arc, blade.arc.from, size)).filter(passesHeads);
  const { side } = blade;
  if (blade.broken) {
    const ways = ([side, -side] as (1 | -1)[]).flatMap((to) => sizes.map((arc) => ({ arc, to })));
    const free = ways.find(({ arc, to }) => stands(hangingFrom(arc, BROKEN.at, to).to));
    if (free) return { arc: free.arc, broken: true, side: free.to };
  }
  const whole = sizes.find((arc) => stands(arc.to));
  return whole && { arc: whole, broken: false, side };
}

type Freed = Pick<Blade, 'arc' | 'broken' | 'side'>;
