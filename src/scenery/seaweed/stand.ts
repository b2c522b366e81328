import type { Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

/** Where one plant is rooted and how high it stands; lengths in mm. */
export interface Holdfast {
  readonly key: string;
  readonly x: number;
  readonly heightMm: number;
}

/** A plant is at most this many times as high as its plot is wide. */
const TALLEST = 3.2;
/** One in so many plants stays low. */
const LOW = 0.25;

/** How high the tallest weed may stand in a plot that may be narrow, mm. */
export const weedHeight = (plot: Plot): number => Math.min(plot.height, TALLEST * plot.width);

/**
 * Plants about `stepMm` apart, counted from the middle so that a wider plot keeps them; nearer the
 * ends than `marginMm` none is rooted but the middle one.
 */
export function holdfasts(
  plot: Plot,
  stepMm: number,
  marginMm: number,
  random: Random,
): Holdfast[] {
  const height = weedHeight(plot);
  const reach = Math.max(0, plot.width / 2 - marginMm);
  const most = Math.ceil(reach / stepMm);
  const list: Holdfast[] = [];
  for (let i = -most; i <= most; i++) {
    const own = random.branch(i);
    const wanted = (i + own.between(-0.24, 0.24)) * stepMm;
    const share = own.chance(LOW) && i !== 0 ? own.between(0.45, 0.65) : own.between(0.74, 1);
    if (Math.abs(wanted) > reach && i !== 0) continue;
    const x = Math.max(-reach, Math.min(reach, wanted));
    list.push({ key: `${i}`, x, heightMm: share * height });
  }
  return list;
}

/**
 * The sway that all weed in a pool has in common: how far what stands at a height is carried along
 * the edge, mm. One slow wave runs up the water, the same at all places, growing with the height.
 */
export function current(
  swayDeg: number,
  heightMm: number,
  random: Random,
): (upMm: number) => number {
  const push = Math.tan((swayDeg * Math.PI) / 180);
  const phase = random.between(-0.5, 0.5);
  const wave = 0.07 * heightMm;
  return (upMm) => {
    const t = upMm / heightMm;
    const swell = Math.sin(2 * Math.PI * (1.05 * t + phase)) - Math.sin(2 * Math.PI * phase);
    return push * heightMm * mix(0.35, 1, t) * t + wave * swell * Math.min(1, 2 * t);
  };
}

/** A place in the weed's own upright frame, carried by the current. */
export const carried = (flow: (upMm: number) => number, x: number, upMm: number): Point => ({
  x: x + flow(Math.max(0, upMm)),
  y: -upMm,
});

/** One of the shoots of a plant: which way it leans from its neighbours, how long, its key. */
export interface Shoot {
  readonly leanDeg: number;
  readonly heightMm: number;
  readonly key: string;
}

/** The shoots of a plant from its one foot: the longest in the middle, the others to its sides. */
export function shootsOf(at: Holdfast, leanDeg: number, count: number, random: Random): Shoot[] {
  return Array.from({ length: count }, (_, i) => {
    const own = random.branch(`shoot ${i}`);
    const side = i === 0 ? 0 : i % 2 === 1 ? 1 : -1;
    return {
      key: `${i}`,
      leanDeg: side * leanDeg * own.between(0.85, 1.15) + own.between(-6, 6),
      heightMm: at.heightMm * (side === 0 ? 1 : own.between(0.5, 0.76)),
    };
  });
}
