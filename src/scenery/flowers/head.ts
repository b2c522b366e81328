import type { Cubics, Line, Point, Region } from '../../geometry/types.js';

export const HEADS = ['umbel', 'spike', 'daisy', 'tulip'] as const;
export type HeadKind = (typeof HEADS)[number];

/** What one head is drawn of: overlapping pieces of card, holes, scores and pressed bosses. */
export interface HeadDrawing {
  readonly card: readonly Cubics[];
  readonly holes: readonly Region[];
  readonly scores: readonly Line[];
  readonly bosses: readonly Region[];
}

/** Room for a head: where its stem ends, which way it looks (0 = right, 90 = down), how large. */
export interface HeadPlace {
  readonly neck: Point;
  readonly headingDeg: number;
  /** Half its breadth, mm. */
  readonly half: number;
  /** From its neck to its top, mm. */
  readonly length: number;
}

/** How fine the process and the depth of the panel let it be. Lengths in mm. */
export interface Grain {
  readonly smallestWeb: number;
  readonly smallestHole: number;
  readonly fineness: number;
}

/** Points in a head's own frame, `along` its axis from the neck and `across` it, put in place. */
export function placedIn({
  neck,
  headingDeg,
}: HeadPlace): (along: number, across: number) => Point {
  const a = (headingDeg * Math.PI) / 180;
  const [ux, uy] = [Math.cos(a), Math.sin(a)];
  return (along, across) => ({
    x: neck.x + along * ux - across * uy,
    y: neck.y + along * uy + across * ux,
  });
}
