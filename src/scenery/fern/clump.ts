import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { arcOfHeight, within } from '../grass/arc.js';
import type { Arc } from '../grass/ribbon.js';
import type { Random } from '../random.js';
import { canCoil, coilRadius } from './crozier.js';
import { halfBreadth, type Kind } from './frond.js';

/** Fronds and croziers that rise from one foot. */
export interface Clump {
  readonly key: string;
  readonly x: number;
  readonly fronds: readonly { readonly key: string; readonly arc: Arc }[];
  readonly croziers: readonly Shoot[];
}

export interface Shoot {
  readonly x: number;
  readonly heightMm: number;
  readonly side: 1 | -1;
}

/** From clump to clump in heights, and a clump's height at most in widths of the plot. */
const STEP = 1.75;
const TALLEST = 2.6;
/** The outermost fronds leave the foot at this from upright, and point this way at their tips. */
const LEAN_DEG = [22, 40] as const;
const TIP_DEG = [48, 128] as const;
/** The outermost fronds reach this much of the height of the middle ones. */
const OUTER = [0.72, 0.5] as const;

/** What all clumps have in common. */
export interface Habit {
  readonly kind: Kind;
  readonly arch: number;
  readonly full: number;
  readonly croziers: number;
}

/** How high the young fronds stand, as shares of their clump. */
const YOUNG = [0.72, 0.56, 0.64] as const;
/** On a jamb a clump turns up to the light by this, degrees. */
const LIGHT_DEG = 14;
/** Length of the arc that a clump's fronds share half way up, in heights, thin and full. */
const ROOM = [0.9, 1.8] as const;

/** How high a clump stands in a plot that may be narrow, mm. */
export const clumpHeight = (plot: Plot): number => Math.min(plot.height, TALLEST * plot.width);

/** Clumps counted from the middle, so that a wider plot keeps them. */
export function clumpsOf(plot: Plot, habit: Habit, random: Random): Clump[] {
  const height = clumpHeight(plot);
  const step = Math.max(STEP * height, 12 * plot.smallestWeb);
  const reach = Math.max(0, plot.width / 2 - 0.45 * height);
  const most = Math.ceil(reach / step);
  const clumps: Clump[] = [];
  for (let i = -most; i <= most; i++) {
    const own = random.branch(i);
    const wanted = (i + own.between(-0.16, 0.16)) * step;
    const size = own.between(0.82, 1);
    if (Math.abs(wanted) > reach && i !== 0) continue;
    const x = Math.max(-reach, Math.min(reach, wanted));
    clumps.push(clumpAt(plot, `${i}`, x, size * height, habit, own));
  }
  return clumps;
}

function clumpAt(
  plot: Plot,
  key: string,
  x: number,
  height: number,
  habit: Habit,
  random: Random,
): Clump {
  const { arch } = habit;
  const croziers = canCoil(YOUNG[0] * height, plot) ? habit.croziers : 0;
  const coilMm = croziers > 0 ? 2 * coilRadius(YOUNG[0] * height, plot) : 0;
  const pairs = pairsOf(plot, habit, height, coilMm);
  const turn = random.between(-0.1, 0.1);
  const light = plot.side === 'left' ? -1 : plot.side === 'right' ? 1 : 0;
  const inner = croziers > 1 ? 0.56 : croziers > 0 ? 0.46 : pairs > 1 ? 0.5 : 0.7;
  const outer = pairs > 1 ? 1 : 0.62;
  const sides = [-1, 1].flatMap((side) =>
    Array.from({ length: pairs }, (_, k) => side * mix(outer, inner, k / Math.max(1, pairs - 1))),
  );
  const places = croziers > 0 ? sides : [...sides, 0];
  const fronds = places.map((even, k) => {
    const own = random.branch(`frond ${k}`);
    const fan = even + turn + own.between(-0.22, 0.22) / pairs;
    const lean = fan * mix(...LEAN_DEG, arch) * own.between(0.9, 1.1) + LIGHT_DEG * light;
    const tip = fan * mix(...TIP_DEG, arch) + Math.sign(fan) * 16 * arch + own.between(-8, 8);
    const high = height * mix(1, mix(...OUTER, arch), Math.min(1, Math.abs(fan)) ** 1.3);
    const foot = { x: x + 0.05 * height * even, y: 0.8 };
    const arc = arcOfHeight(foot, lean, tip, high * own.between(0.88, 1), 1.25 * height);
    return { key: `${key} ${k}`, arc: within(arc, plot) };
  });
  // Young fronds unroll in the middle of a clump.
  const shoots = Array.from({ length: croziers }, (_, k): Shoot => {
    const own = random.branch(`crozier ${k}`);
    const place = k - (croziers - 1) / 2;
    const side = place === 0 ? (own.chance(0.5) ? 1 : -1) : place > 0 ? 1 : -1;
    const heightMm = height * YOUNG[k % YOUNG.length] * own.between(0.9, 1.08);
    return { x: x + 0.15 * place * height, heightMm, side };
  });
  return { key, x, fronds, croziers: shoots };
}

/** Pairs of fronds as asked for, as far as they show the sky between them half way up. */
function pairsOf(plot: Plot, { kind, full }: Habit, height: number, coilMm: number): number {
  const each = 2 * halfBreadth(kind, height, plot.smallestWeb) + plot.smallestHole;
  const arc = mix(...ROOM, full) * Math.min(height, plot.width) - coilMm;
  const room = Math.floor(arc / each / 2);
  return Math.max(1, Math.min(1 + Math.round(2 * full), room));
}
