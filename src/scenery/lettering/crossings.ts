import { linesInside } from '../../geometry/clip-lines.js';
import { containsPoint } from '../../geometry/components.js';
import { polyline } from '../../geometry/pen.js';
import type { Point, Region } from '../../geometry/types.js';

/** A straight line across letters: its point at `mm` is origin + mm * along. */
export interface Axis {
  readonly origin: Point;
  /** Of length 1. */
  readonly along: Point;
}

export const pointOn = ({ origin, along }: Axis, mm: number): Point => ({
  x: origin.x + mm * along.x,
  y: origin.y + mm * along.y,
});

/** The axis moved to its right, looking along it, y down. */
export const beside = ({ origin, along }: Axis, mm: number): Axis => ({
  origin: { x: origin.x - mm * along.y, y: origin.y + mm * along.x },
  along,
});

/** A stretch of an axis that runs through a stroke, from edge to edge, mm along it. */
export interface Crossing {
  readonly from: number;
  readonly to: number;
}

/** Where the axis runs through the region within `reachMm` of its origin, in order. */
export function crossings(axis: Axis, region: Region, reachMm: number): Crossing[] {
  const line = polyline([pointOn(axis, -reachMm), pointOn(axis, reachMm)]);
  const along = (x: number, y: number): number =>
    (x - axis.origin.x) * axis.along.x + (y - axis.origin.y) * axis.along.y;
  return linesInside([line], region)
    .map(({ cubics: c }) => ({
      from: along(c[0], c[1]),
      to: along(c[c.length - 2], c[c.length - 1]),
    }))
    .sort((a, b) => a.from - b.from);
}

/** Crossings that lead from the island onto other card, the way the axis runs and against it. */
export function waysOut(
  axis: Axis,
  all: readonly Crossing[],
  island: Region,
): { ahead: Crossing[]; back: Crossing[] } {
  const isIsland = all.slice(1).map((next, i) => {
    const middle = (all[i].to + next.from) / 2;
    return containsPoint(island, pointOn(axis, middle));
  });
  const before = (i: number): boolean => i > 0 && isIsland[i - 1];
  const after = (i: number): boolean => i < isIsland.length && isIsland[i];
  return {
    ahead: all.filter((_, i) => before(i) && !after(i)),
    back: all.filter((_, i) => after(i) && !before(i)),
  };
}
