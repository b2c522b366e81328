import { stroke } from '../../geometry/offset/offset.js';
import { pen } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Region } from '../../geometry/types.js';
import { handCut, shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

export const ENDS = ['ogee', 'plain', 'round'] as const;
export type End = (typeof ENDS)[number];

const WANDER_MM = 0.12;

/** Sizes of the timber, mm; none under what the process can leave. */
export interface Sizes {
  readonly post: number;
  readonly beam: number;
  readonly rafter: number;
  readonly overhang: number;
}

export function sizesOf({ width, height, smallestWeb }: Plot): Sizes {
  return {
    post: Math.max(1.4 * smallestWeb, 0.06 * height),
    beam: Math.max(1.25 * smallestWeb, 0.065 * height),
    rafter: Math.max(1.2 * smallestWeb, 0.045 * height),
    overhang: Math.min(0.13 * height, 0.14 * width),
  };
}

/** A level beam whose ends past `overhang` are shaped below; y is its top. */
export function beamOf(
  from: number,
  to: number,
  y: number,
  thick: number,
  overhang: number,
  end: End,
): Region {
  const foot = y + thick;
  const run = Math.max(thick * 0.8, overhang * 0.75);
  const p = pen(from, y).lineTo(to, y);
  tail(p, to, -1, y, foot, run, end, true);
  p.lineTo(from + run, foot);
  tail(p, from, 1, y, foot, run, end, false);
  return shapeOf(p.close());
}

/** One shaped end; `inward` is the way to the beam's middle, and `down` from its top to its foot. */
function tail(
  p: ReturnType<typeof pen>,
  x: number,
  inward: number,
  top: number,
  foot: number,
  run: number,
  end: End,
  down: boolean,
): void {
  const nose = top + (foot - top) * 0.42;
  const inner = x + inward * run;
  const middle = x + inward * run * 0.5;
  const bend = (foot - nose) * 0.5 + nose;
  if (!down) p.lineTo(inner, foot);
  const steps: readonly (() => void)[] =
    end === 'plain'
      ? [() => p.lineTo(x, nose), () => p.lineTo(inner, foot)]
      : end === 'round'
        ? [() => p.lineTo(x, nose), () => p.quadTo(x + inward * run * 0.1, foot, inner, foot)]
        : [
            () => p.lineTo(x, nose),
            () => p.quadTo(x + inward * run * 0.3, nose, middle, bend),
            () => p.quadTo(x + inward * run * 0.7, foot, inner, foot),
          ];
  if (down) {
    for (const step of steps) step();
    return;
  }
  // The same end drawn from the foot up.
  if (end === 'plain') p.lineTo(x, nose);
  else if (end === 'round') p.quadTo(x + inward * run * 0.1, foot, x, nose);
  else {
    p.quadTo(x + inward * run * 0.7, foot, middle, bend);
    p.quadTo(x + inward * run * 0.3, nose, x, nose);
  }
}

/** A post on its block, from y = `foot` up to `top`. */
export function postOf(
  x: number,
  foot: number,
  top: number,
  wide: number,
  random: Random,
): Region[] {
  const half = wide / 2;
  const block = Math.min(0.09 * (foot - top), 2 * wide);
  const shaft = handCut(
    [
      { x: x - half * 0.94, y: top },
      { x: x + half * 0.94, y: top },
      { x: x + half, y: foot + 0.5 },
      { x: x - half, y: foot + 0.5 },
    ],
    WANDER_MM,
    random,
  );
  return [shaft, rectangle(x - half * 1.45, foot - block, wide * 1.45, block + 0.5)];
}

/** A bent brace from a post up to a beam; `reach` along the beam and down the post. */
export function braceOf(x: number, y: number, hand: number, reach: number, thick: number): Region {
  return stroke(
    [
      pen(x, y + reach)
        .quadTo(x + hand * reach * 0.3, y + reach * 0.3, x + hand * reach, y)
        .line(),
    ],
    thick,
  );
}
