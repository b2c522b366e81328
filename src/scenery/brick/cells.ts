import { linesInside } from '../../geometry/clip-lines.js';
import { regionBounds } from '../../geometry/measure.js';
import { polyline } from '../../geometry/pen.js';
import type { Line, Region } from '../../geometry/types.js';
import {
  type Bond,
  type BrickKind,
  courseUnits,
  fittingQuarters,
  layCourses,
  UK_BRICK,
} from './courses.js';
import type { Box } from './patches.js';

/** One brick with half of each joint round it, mm: neighbours share their edges exactly. */
export interface Cell {
  readonly kind: BrickKind;
  readonly course: number;
  readonly x0: number;
  readonly x1: number;
  /** Top and bottom; y runs down, so y0 < y1. */
  readonly y0: number;
  readonly y1: number;
}

/** A wall's length in quarters and where each quarter lies in mm. */
export interface Gauge {
  readonly quarters: number;
  readonly at: (quarter: number) => number;
}

/** The cells of one course between its beds. */
export function courseCells(
  bond: Bond,
  gauge: Gauge,
  course: number,
  beds: { readonly top: number; readonly bottom: number },
  phase = 0,
): Cell[] {
  return courseUnits(bond, gauge.quarters, course + phase).map(({ kind, from, to }) => ({
    kind,
    course,
    x0: gauge.at(from),
    x1: gauge.at(to),
    y0: beds.top,
    y1: beds.bottom,
  }));
}

/** A wall to be laid: from x0 to x1, up from its foot (y), in courses of `courseMm`. */
export interface PlainWall {
  readonly x0: number;
  readonly x1: number;
  readonly foot: number;
  readonly courses: number;
  readonly courseMm: number;
}

/**
 * The cells of a plain wall of about `lengthMm` long bricks (joint included), set out so that the
 * bond fills it from quoin to quoin.
 */
export function wallCells(bond: Bond, wall: PlainWall, lengthMm: number): Cell[] {
  const { x0, x1, foot, courses, courseMm } = wall;
  const quarters = fittingQuarters(bond, (4 * (x1 - x0)) / lengthMm);
  // The wall is its quarters less one joint: share is that joint in quarters.
  const share = (4 * UK_BRICK.perpend) / (UK_BRICK.length + UK_BRICK.perpend);
  const quarter = (x1 - x0) / (quarters - share);
  const perpend = share * quarter;
  const bed = (courseMm * UK_BRICK.bed) / (UK_BRICK.height + UK_BRICK.bed);
  const format = {
    length: 4 * quarter - perpend,
    width: 2 * quarter - perpend,
    height: courseMm - bed,
    perpend,
    bed,
  };
  return layCourses({ bond, quarters, courses, format }).map((b) => ({
    kind: b.kind,
    course: b.course,
    x0: x0 + b.x - perpend / 2,
    x1: x0 + b.x + b.width + perpend / 2,
    y0: foot - (b.course + 1) * courseMm,
    y1: foot - b.course * courseMm,
  }));
}

/** Where in a cell's height its share in sight is measured. */
const LOOKS = [0.25, 0.75];

/** The cells that show at least `least` (0..1) of their length, both high and low in the course. */
export function cellsInside<C extends Box>(
  cells: readonly C[],
  region: Region,
  least: number,
): C[] {
  const { minX, maxX } = regionBounds(region);
  const rows = new Map<number, Span[]>();
  const spansAt = (y: number): Span[] => {
    const found = rows.get(y) ?? linesInside([level(minX - 1, maxX + 1, y)], region).map(extent);
    rows.set(y, found);
    return found;
  };
  return cells.filter((c) =>
    LOOKS.every((t) => {
      const spans = spansAt(c.y0 + t * (c.y1 - c.y0));
      const seen = spans.map((s) => Math.min(s.to, c.x1) - Math.max(s.from, c.x0));
      return seen.reduce((sum, s) => sum + Math.max(0, s), 0) >= least * (c.x1 - c.x0);
    }),
  );
}

/** A stretch of a level line, from left to right. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** A level line. */
export const level = (x0: number, x1: number, y: number): Line =>
  polyline([
    { x: x0, y },
    { x: x1, y },
  ]);

/** The x range of a level line. */
export const extent = ({ cubics }: Line): Span => ({
  from: Math.min(cubics[0], cubics.at(-2)!),
  to: Math.max(cubics[0], cubics.at(-2)!),
});
