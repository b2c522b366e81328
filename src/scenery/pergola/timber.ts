import { stroke } from '../../geometry/offset/offset.js';
import { pen } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
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

/**
 * An end's underside from its nose to the beam's foot, as curve, bend, curve ...: shares of the
 * shaped run inward and of the thickness down.
 */
const PROFILES: Record<End, readonly (readonly [number, number])[]> = {
  ogee: [
    [0, 0.42],
    [0.3, 0.42],
    [0.5, 0.71],
    [0.7, 1],
    [1, 1],
  ],
  plain: [
    [0, 0.42],
    [0.5, 0.71],
    [1, 1],
  ],
  round: [
    [0, 0.42],
    [0.1, 1],
    [1, 1],
  ],
};

/** A level beam whose ends past `overhang` are shaped below; y is its top. */
export function beamOf(
  from: number,
  to: number,
  y: number,
  thick: number,
  overhang: number,
  end: End,
): Region {
  const run = Math.max(thick * 0.8, overhang * 0.75);
  const endAt = (x: number, inward: number): Point[] =>
    PROFILES[end].map(([along, down]) => ({ x: x + inward * along * run, y: y + down * thick }));
  const p = pen(from, y).lineTo(to, y);
  for (const points of [endAt(to, -1), endAt(from, 1).reverse()]) {
    p.lineTo(points[0].x, points[0].y);
    for (let i = 1; i + 1 < points.length; i += 2) {
      p.quadTo(points[i].x, points[i].y, points[i + 1].x, points[i + 1].y);
    }
  }
  return shapeOf(p.close());
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
