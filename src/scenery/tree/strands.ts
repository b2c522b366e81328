import type { Point, Region } from '../../geometry/types.js';
import { alongSmooth, limb } from '../limb.js';
import type { Random } from '../random.js';
import { type CrownFrame, crownPoint } from './crown-frame.js';
import type { Tuft } from './tufts.js';

/** A twig in leaf all along, from where its bough brings it to its tip. In the crown's frame. */
export interface Strand {
  readonly path: readonly Point[];
  /** Radius of its foliage where that is fullest. */
  readonly r: number;
  readonly random: Random;
}

/** Clumps along a strand: how far along it, and how wide and high for its radius. */
export type Clumps = readonly (readonly [along: number, wide: number, high: number])[];

/** A strand's leaves as one tuft; they point along `headingDeg`, its gap falls to `shade`. */
export function strandTuft(
  { path, r, random }: Strand,
  frame: CrownFrame,
  clumps: Clumps,
  headingDeg: number,
  shade: Point,
): Tuft {
  const line = alongSmooth(path, 8);
  return {
    clumps: clumps.map(([along, wide, high]) => ({
      ...crownPoint(frame, line[Math.round(along * (line.length - 1))]),
      rx: wide * r * frame.across * random.between(0.88, 1.12),
      ry: high * r * frame.up,
      headingDeg,
    })),
    fill: [],
    shade: { x: shade.x * frame.across, y: shade.y * frame.up },
    random: random.branch('tuft'),
  };
}

/** Thickness of a slit along its strand, from end to end. */
const SPINDLE = [0.5, 0.9, 1, 0.8, 0.5];

/** A slit `widthMm` wide beside a strand, `aside` of its radius to the right of it (y up). */
export function slitBeside(
  { path, r }: Strand,
  frame: CrownFrame,
  aside: number,
  [from, to]: readonly [number, number],
  widthMm: number,
): Region {
  const line = alongSmooth(path, 8);
  const nodes = SPINDLE.map((share, i) => {
    const f = from + (i / (SPINDLE.length - 1)) * (to - from);
    const p = line[Math.round(f * (line.length - 1))];
    const at = crownPoint(frame, { x: p.x + aside * r, y: p.y });
    return { ...at, thickness: share * widthMm };
  });
  return { contours: [limb(nodes)] };
}

/** Half width of a crown over its height, both in widths of the crown, from the foot up. */
export type Outline = readonly (readonly [up: number, half: number])[];

/** Half width of an outline at a height, held to its ends. */
export function halfWidth(outline: Outline, up: number): number {
  const k = outline.findIndex(([y]) => y >= up);
  if (k < 0) return outline[outline.length - 1][1];
  if (k === 0) return outline[0][1];
  const [[y0, w0], [y1, w1]] = [outline[k - 1], outline[k]];
  return w0 + ((up - y0) / (y1 - y0)) * (w1 - w0);
}
