import type { Point } from '../../geometry/types.js';
import { endsOf, mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

export interface Pier {
  readonly x: number;
  /** At the springing, mm. */
  readonly width: number;
  /** A pier with a refuge over it, where people step aside for a train. */
  readonly refuge: boolean;
}

export interface Bay {
  /** From the left foot over the crown to the right foot. */
  readonly outline: readonly Point[];
  /** The arch alone, springing to springing. */
  readonly soffit: readonly Point[];
  /** Too small to be cut: it is scored. */
  readonly blind: boolean;
}

/** Leading lines of a viaduct, mm in its plot: y negative upward. */
export interface Plan {
  readonly plot: Plot;
  readonly ends: { readonly left: number; readonly right: number };
  readonly piers: readonly Pier[];
  readonly bays: readonly Bay[];
  /** Top of the parapet, foot of it, and how far a train stands up over it. */
  readonly top: number;
  readonly road: number;
  readonly train: number;
  readonly ring: number;
  readonly springing: number;
  readonly ground: (x: number) => number;
}

/** Least width of a pier in webs and of an opening in smallest holes. */
const LEAST_PIER = 1.25;
const LEAST_OPENING = 1.6;
/** A pier's width as a share of the distance between piers: slender to stout. */
const PIER = [0.16, 0.36] as const;
/** A middle pier stands out among the others by so much. */
const KING = 1.3;
/** From the parapet's top to the crown, as a share of the height, and in webs at least. */
const OVER = 0.2;
const LEAST_OVER = 1.5;
/** How much an opening narrows down to its foot, as a share of its length, and at most of its width. */
const BATTER = 0.035;
const MOST_BATTER = 0.14;
const STEPS = 24;
/** A train's height as a share of the whole, and in webs where there is room. */
const TRAIN = 0.24;
const TRAIN_WEBS = 5;
const MOST_TRAIN = 0.38;

export function planOf(
  plot: Plot,
  arches: number,
  stout: number,
  valley: number,
  hasTrain: boolean,
  random: Random,
): Plan {
  const { width, height, smallestWeb, smallestHole } = plot;
  const wanted = Math.max(TRAIN * height, TRAIN_WEBS * smallestWeb);
  const train = hasTrain ? Math.min(wanted, MOST_TRAIN * height) : 0.035 * height;
  const high = height - train;
  const leastPier = LEAST_PIER * smallestWeb;
  const room = (width - leastPier) / (leastPier + LEAST_OPENING * smallestHole);
  const count = Math.max(1, Math.min(arches, Math.floor(room)));
  const pier = Math.max(leastPier, (mix(...PIER, stout) * width) / count);
  const king = random.branch('king').whole(1, Math.max(1, count - 1));
  const everySecond = random.branch('refuges').whole(0, 1);
  const pitch = (width - pier) / count;
  const piers = Array.from({ length: count + 1 }, (_, i) => {
    const wide = i === king && count > 3 ? KING : 1;
    const most = pitch - LEAST_OPENING * smallestHole;
    return {
      x: -width / 2 + pier / 2 + i * pitch,
      width: Math.max(pier, Math.min(pier * wide, most)),
      refuge: i === king || (i % 2 === everySecond && i > 0 && i < count),
    };
  });
  const ground = groundOf(plot, valley * high, random.branch('ground'));
  const over = Math.min(Math.max(OVER * high, LEAST_OVER * smallestWeb), 0.6 * high);
  const crown = -high + over;
  const rise = Math.min((pitch - pier) / 2, 0.62 * -crown);
  const frame = { plot, ends: endsOf(plot), piers, top: -high, train, ground };
  const bays = piers
    .slice(1)
    .map((right, i) => bayOf(plot, piers[i], right, crown + rise, rise, ground));
  return {
    ...frame,
    bays,
    road: -high + 0.36 * over,
    ring: Math.min(0.42 * over, 0.28 * pitch),
    springing: crown + rise,
  };
}

/** The valley's floor: on the sill in the middle, rising unevenly to both sides. */
function groundOf({ width }: Plot, fallMm: number, random: Random): (x: number) => number {
  const [a, b] = [random.between(0.4, 0.62), random.between(0.3, 0.5)];
  const middle = random.between(-0.12, 0.12) * width;
  const phase = random.between(0, 6);
  return (x) => {
    const t = (x - middle) / (width / 2);
    const share = (t < 0 ? a : b) * Math.abs(t) ** 2;
    const bump = 0.06 * Math.sin(phase + 5 * t) * Math.min(1, Math.abs(t));
    return -Math.max(0, fallMm * (share + bump));
  };
}

function bayOf(
  plot: Plot,
  left: Pier,
  right: Pier,
  springing: number,
  mostRise: number,
  ground: (x: number) => number,
): Bay {
  const from = left.x + left.width / 2;
  const to = right.x - right.width / 2;
  const half = (to - from) / 2;
  const middle = (from + to) / 2;
  const rise = Math.min(mostRise, half);
  const soffit = Array.from({ length: STEPS + 1 }, (_, i) => {
    const a = (Math.PI * i) / STEPS;
    return { x: middle - half * Math.cos(a), y: springing - rise * Math.sin(a) };
  });
  const narrower = Math.min(BATTER * -springing, MOST_BATTER * half);
  const outline = [{ x: from + narrower, y: 4 }, ...soffit, { x: to - narrower, y: 4 }];
  const clear = Math.min(ground(middle), 0) - (springing - rise);
  const { smallestHole } = plot;
  const blind = clear < 1.35 * smallestHole || 2 * (half - narrower) < 1.1 * smallestHole;
  return { outline, soffit, blind };
}
