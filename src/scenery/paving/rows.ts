import type { Random } from '../random.js';

export const KINDS = ['setts', 'flags', 'cobbles'] as const;
export type Kind = (typeof KINDS)[number];

/** The ground as it is seen: rows of paving from the reader to the window. Lengths in mm. */
export interface Ground {
  /** From the nearest row (lowest) to the farthest; y0 is the far edge. */
  readonly rows: readonly { readonly y0: number; readonly y1: number }[];
  /** How much smaller things look at a level than in the nearest row: 1 there. */
  readonly scaleAt: (y: number) => number;
}

/** How much smaller things look at the window at most: shares of their size in front. */
const SMALLEST_SCALE = 0.5;
/** A row is never lower than this, mm: closer lines tear. */
const LEAST_ROW_MM = 1.8;

/**
 * Level ground from y = `frontMm` back to y = 0, in rows equally deep: `depth` 0 sees it from
 * straight above, 1 from low down. A row that looks s times as wide looks s squared times as high,
 * as both come from one eye (a plane seen in perspective).
 */
export function groundOf(frontMm: number, rowMm: number, depth: number): Ground {
  const wanted = 1 - (1 - SMALLEST_SCALE) * depth;
  const least = Math.min(1, Math.sqrt(LEAST_ROW_MM / rowMm));
  const farScale = Math.max(wanted, least);
  const rows: { y0: number; y1: number }[] = [];
  if (farScale > 0.99) {
    for (let y1 = frontMm; y1 > 0; y1 -= rowMm) rows.push({ y0: y1 - rowMm, y1 });
    return { rows, scaleAt: () => 1 };
  }
  // The horizon lies this far over the window's foot.
  const horizon = (frontMm * farScale) / (1 - farScale);
  const eye = frontMm + horizon;
  const step = rowMm / (eye - rowMm);
  const levelOf = (k: number) => eye / (1 + k * step) - horizon;
  for (let k = 0; levelOf(k) > 0; k++) rows.push({ y0: levelOf(k + 1), y1: levelOf(k) });
  return { rows, scaleAt: (y) => (y + horizon) / eye };
}

/** Lengths of stones in rows' depths. */
const LONG: Record<Kind, readonly [number, number]> = {
  setts: [1.35, 1.6],
  flags: [1.1, 2.3],
  cobbles: [0.9, 1.5],
};
/** Least lap of a joint over one of the row in front, in rows' depths. */
const LAP = 0.3;
const TRIES = 12;

/**
 * Joints between the stones of each row, as they would lie in the nearest row (mm from the
 * middle), none in line with one of the row before it.
 */
export function jointsOf(
  kind: Kind,
  rows: number,
  reachMm: number,
  rowMm: number,
  random: Random,
): number[][] {
  const found: number[][] = [];
  for (let row = 0; row < rows; row++) {
    const before = found[row - 1] ?? [];
    const luck = random.branch(row);
    const joints: number[] = [];
    let x = -reachMm - rowMm * luck.between(0, 2);
    for (let i = 0; x < reachMm; i++) {
      const stone = luck.branch(i);
      let next = x;
      for (let attempt = 0; attempt < TRIES; attempt++) {
        next = x + rowMm * stone.between(...LONG[kind]);
        if (before.every((b) => Math.abs(b - next) >= LAP * rowMm)) break;
      }
      x = clearOf(next, before, LAP * rowMm);
      joints.push(x);
    }
    found.push(joints);
  }
  return found;
}

/** The place, or the next one further on that laps. */
function clearOf(x: number, before: readonly number[], least: number): number {
  const near = before.find((b) => Math.abs(b - x) < least - 1e-9);
  return near === undefined ? x : clearOf(near + least, before, least);
}
