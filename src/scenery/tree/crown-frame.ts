import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import { radians } from './angles.js';

/**
 * Crowns are planned in their own frame: x across from the crown's middle, y upward from its foot,
 * both in widths of the crown. A crown as drawn is `CROWN_RATIO` high; it is stretched to its plot.
 */
export interface CrownFrame {
  /** The crown's foot in mm, y down. */
  readonly foot: Point;
  /** Millimetres to a unit across and up. */
  readonly across: number;
  readonly up: number;
}

/** Height of a planned crown in widths of it. */
export const CROWN_RATIO = 1.1;

export const crownPoint = (frame: CrownFrame, p: Point): Point => ({
  x: frame.foot.x + p.x * frame.across,
  y: frame.foot.y - p.y * frame.up,
});

export const inCrownFrame = (frame: CrownFrame, p: Point): Point => ({
  x: (p.x - frame.foot.x) / frame.across,
  y: (frame.foot.y - p.y) / frame.up,
});

/** Where a tree stands and leans: its foot to one side of the plot's middle, its crown to the other. */
export interface Stand {
  readonly foot: Point;
  /** Where the trunk's first fork is. */
  readonly fork: Point;
  readonly frame: CrownFrame;
}

/** How far a crown's foot hangs below the first fork, as a share of the trunk's height. */
const HANG = 0.2;

export function standOf(
  plot: Plot,
  leanDeg: number,
  trunkShare: number,
  crownWidth: number,
): Stand {
  const forkHeight = trunkShare * plot.height;
  const aside = Math.tan(radians(leanDeg)) * (forkHeight + 0.25 * plot.height);
  const crownFoot = forkHeight * (1 - HANG);
  const across = crownWidth - Math.abs(aside);
  return {
    foot: { x: -aside / 2, y: plot.root },
    fork: { x: aside / 4, y: -forkHeight },
    frame: {
      foot: { x: aside / 2, y: -crownFoot },
      across,
      up: (plot.height - crownFoot) / CROWN_RATIO,
    },
  };
}

/** The size of a tree: everything that does not follow its width or its height follows this. */
export const sizeOf = (plot: Plot): number => Math.sqrt(plot.width * plot.height);
