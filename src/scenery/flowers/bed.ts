import type { Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { lengthOf } from '../grass/arc.js';
import type { Arc } from '../grass/ribbon.js';
import type { Random } from '../random.js';
import { HEADS, type HeadKind } from './head.js';

/** A stem with its head on top; lengths in mm. */
export interface Stem {
  readonly key: string;
  readonly kind: HeadKind;
  /** From the ground to the head's neck. */
  readonly arc: Arc;
  readonly widthMm: number;
  readonly half: number;
  readonly length: number;
  readonly isBud: boolean;
}

/** Stems that rise from one foot. */
export interface Tuft {
  readonly key: string;
  readonly kind: HeadKind;
  readonly x: number;
  /** Its tallest may reach this high. */
  readonly heightMm: number;
  readonly stems: readonly Stem[];
}

export interface BedValues {
  readonly kind: HeadKind | 'mixed';
  readonly bloom: number;
  readonly sway: number;
}

/**
 * Common practice, no source: a head sways and bows on a stem more than 15 times as long as it is
 * wide. Here stems stay a little under that.
 */
const SLENDER = 14;
/** Half the breadth and all the length of a head, as shares of the bed's height. */
const SHAPES: Record<HeadKind, Shape> = {
  daisy: { half: 0.165, length: 0.3, leastWebs: 1.5, step: 0.64, bud: 0.62 },
  tulip: { half: 0.125, length: 0.29, leastWebs: 1.5, step: 0.86, bud: 0.66 },
  umbel: { half: 0.27, length: 0.36, leastWebs: 2.4, step: 0.46, bud: 0.32 },
  spike: { half: 0.115, length: 0.55, leastWebs: 1.7, step: 0.9, bud: 0.66 },
};

interface Shape {
  readonly half: number;
  readonly length: number;
  /** The least half breadth, in smallest webs. */
  readonly leastWebs: number;
  /** From stem to stem in a full bed, in breadths. */
  readonly step: number;
  /** A bud's size as a share of a head's. */
  readonly bud: number;
}

/** A bed is at most this many times as high as wide. */
const TALLEST = 4.5;
/** Stems of a thin bed stand this much further apart than those of a full one. */
const THINNER = 1.8;
/** Places for stems in a tuft, and the chance that one of the outer ones is taken. */
const PLACES = [0, -1, 1] as const;
const TAKEN = 0.82;
/** How high the stems of a tuft stand, as shares; drawn in any order. */
const RANKS = [
  [1, 0.7, 0.86],
  [0.78, 1, 0.6],
  [0.92, 0.62, 1],
  [0.66, 0.88, 0.98],
] as const;
/** Heads nearer than this share of the sum of their sizes cover each other; nearer than 1 lean. */
const LEANING = 0.8;
/** Stems of a tuft stand at the foot at this share of their distances above. */
const FOOT = 0.5;
/** Heads lower than this share of the bed's height would lie on the ground. */
const LEAST_STEM = 0.17;
/** A stem that finds no room is tried again this much lower. */
const LOWER = [1, 0.85, 0.7, 0.56] as const;
/** Of the lower flowers, this many are still in bud. */
const BUDS = 0.3;

/** How high things stand in a plot that may be very narrow, mm. */
export const bedHeight = (plot: Plot): number => Math.min(plot.height, TALLEST * plot.width);

/** Up along the edge of a jamb in its own coordinates, where what grows turns to the light. */
export const lightward = (plot: Plot): number =>
  plot.side === 'left' ? -1 : plot.side === 'right' ? 1 : 0;

/** The tufts of a bed, counted from its middle so that a wider bed keeps them. */
export function tuftsOf(plot: Plot, values: BedValues, random: Random): Tuft[] {
  const height = bedHeight(plot);
  const usual = sizeOf(values.kind === 'mixed' ? 'daisy' : values.kind, plot, height);
  const closeness = mix(THINNER, 1, values.bloom) * mix(1, 0.85, plot.fineness);
  const stemStep = 2 * usual.half * usual.step * closeness;
  const step = PLACES.length * stemStep;
  const reach = plot.width / 2;
  const most = Math.ceil(reach / step);
  const order = Array.from({ length: 2 * most + 1 }, (_, i) => (i % 2 ? 1 : -1) * Math.ceil(i / 2));
  const placed: Stem[] = [];
  const tufts: Tuft[] = [];
  for (const i of order) {
    const own = random.branch(i);
    const x = (i + own.between(-0.24, 0.24)) * step;
    const kind = values.kind === 'mixed' ? own.pick(HEADS) : values.kind;
    const tall = height * own.between(0.8, 1);
    // The middle one is there however narrow the bed.
    const room = Math.max(0, reach - usual.half);
    const wanted = { key: `${i}`, kind, x: i === 0 ? held(x, room) : x, heightMm: tall };
    const stems = stemsOf(plot, wanted, stemStep, values.sway, placed, own);
    if (stems.length === 0) continue;
    placed.push(...stems);
    tufts.push({ ...wanted, stems });
  }
  return tufts;
}

const held = (x: number, limit: number): number => Math.max(-limit, Math.min(limit, x));

function stemsOf(
  plot: Plot,
  tuft: Omit<Tuft, 'stems'>,
  step: number,
  sway: number,
  placed: readonly Stem[],
  random: Random,
): Stem[] {
  const ranks = random.pick(RANKS);
  const stems: Stem[] = [];
  PLACES.forEach((place, k) => {
    const own = random.branch(`stem ${k}`);
    const isTaken = own.chance(TAKEN) || place === 0;
    const offset = (place + own.between(-0.2, 0.2)) * step;
    const isBud = own.chance(BUDS) && ranks[k] < 0.85;
    const lean = sway + own.between(-5, 5);
    const rank = ranks[k] * own.between(0.92, 1);
    const isFirst = placed.length + stems.length === 0;
    if (!isTaken || (Math.abs(tuft.x + offset) > plot.width / 2 && !isFirst)) return;
    const tries = LOWER.map((lower) =>
      stemTo(plot, tuft, offset, rank * lower, lean, isBud, `${tuft.key} ${k}`),
    );
    const free = tries.find(
      (s) =>
        -s.arc.to.y > LEAST_STEM * bedHeight(plot) &&
        [...placed, ...stems].every((other) => isApart(s, other)),
    );
    if (free) stems.push(free);
    else if (isFirst) stems.push(tries[0]);
  });
  return stems;
}

function stemTo(
  plot: Plot,
  tuft: Omit<Tuft, 'stems'>,
  offset: number,
  rank: number,
  leanDeg: number,
  isBud: boolean,
  key: string,
): Stem {
  const { kind } = tuft;
  const size = sizeOf(kind, plot, bedHeight(plot));
  const small = isBud ? SHAPES[kind].bud : mix(0.82, 1, rank);
  const half = Math.max(size.half * small, isBud ? plot.smallestWeb : size.least);
  const length = Math.max(size.length * small, 1.6 * half);
  const up = tuft.heightMm * rank - length;
  const foot = { x: tuft.x + FOOT * offset, y: 0.5 };
  const limit = Math.max(0, plot.width / 2 - 0.9 * half);
  const drift = Math.tan(((leanDeg + 30 * lightward(plot)) * Math.PI) / 180) * Math.max(0, up);
  const x = held(tuft.x + offset + drift, limit);
  const neck: Point = { x, y: -Math.max(up, 0.3 * half) };
  const arc: Arc = {
    from: foot,
    control: { x: mix(foot.x, x, lightward(plot) === 0 ? 0.7 : 0.1), y: mix(foot.y, neck.y, 0.55) },
    to: neck,
  };
  const widthMm = Math.max(1.24 * plot.smallestWeb, lengthOf(arc) / SLENDER);
  return { key, kind, arc, widthMm, half, length, isBud };
}

/** How large a head of the kind is in a bed of this height, and how small the process lets it be. */
function sizeOf(kind: HeadKind, plot: Plot, height: number) {
  const shape = SHAPES[kind];
  const least = shape.leastWebs * plot.smallestWeb;
  const half = Math.max(least, Math.min(shape.half * height, 0.45 * plot.width));
  const length = Math.max(shape.length * height, (0.9 * half * shape.length) / shape.half);
  return { half, length, least, step: shape.step };
}

/** Whether two heads keep enough apart, as ovals, to be told from each other. */
function isApart(a: Stem, b: Stem): boolean {
  const dx = (a.arc.to.x - b.arc.to.x) / (a.half + b.half);
  const dy =
    (a.arc.to.y - a.length / 2 - (b.arc.to.y - b.length / 2)) / ((a.length + b.length) / 2);
  return Math.hypot(dx, dy) > LEANING;
}
