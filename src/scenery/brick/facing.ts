import { regionBounds } from '../../geometry/measure.js';
import type { Line, Region } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { type Cell, cellsInside, courseCells, evenGauge } from './cells.js';
import { fittingQuarters } from './courses.js';
import { drawJoints } from './joints.js';
import { type Anchor, patches } from './patches.js';

export const MASONRY = ['stone', 'brick'] as const;
export type Masonry = (typeof MASONRY)[number];

/** Height of a course on the front panel, mm, and how much lower the backdrop's are. */
export const COURSE_MM: Record<Masonry, number> = { stone: 3.9, brick: 3.2 };
const FINER_AT_BACK = 0.28;
/** A stone's length in course heights, and the least lap over the joint below. */
const STONE_LONG = [1.3, 2.9] as const;
const LAP = 0.35;
/** The least of a brick in sight for its joints to be drawn. */
const LEAST_SEEN = 0.45;

/** How a face is jointed. */
export interface Facing {
  readonly masonry: Masonry;
  /** On the front panel, mm. */
  readonly courseMm: number;
  readonly anchors: readonly Anchor[];
  /** Share of the face whose joints are drawn, 0..1. */
  readonly coverage: number;
  /** The plot's distance: courses are finer towards the back. */
  readonly distance: number;
}

/** Joints of a wall face, drawn in patches round the anchors; courses count from its foot. */
export function jointsOn(face: Region, facing: Facing, random: Random): Line[] {
  const { masonry, anchors, coverage } = facing;
  if (face.contours.length === 0) return [];
  const course = facing.courseMm * (1 - FINER_AT_BACK * facing.distance);
  const { minX, maxX, minY, maxY } = regionBounds(face);
  const count = Math.ceil((maxY - minY) / course);
  const gauge = evenGauge(
    minX,
    maxX,
    fittingQuarters('stretcher', (maxX - minX) / (course * 0.75)),
  );
  const cells: Cell[] = [];
  let below: readonly Cell[] = [];
  for (let i = 0; i < count; i++) {
    const beds = { top: maxY - (i + 1) * course, bottom: maxY - i * course };
    below =
      masonry === 'brick'
        ? courseCells('stretcher', gauge, i, beds)
        : stoneCourse(minX, maxX, i, beds, below, random.branch(`course ${i}`));
    cells.push(...below);
  }
  const seen = cellsInside(cells, face, LEAST_SEEN);
  const shown = patches(seen, anchors, coverage, course, random.branch('patches'));
  return drawJoints(shown, face, random.branch('joints'));
}

/** Squared stones of any length, none jointed straight over a joint of the course below. */
function stoneCourse(
  from: number,
  to: number,
  course: number,
  { top, bottom }: { top: number; bottom: number },
  below: readonly Cell[],
  random: Random,
): Cell[] {
  const height = bottom - top;
  const cells: Cell[] = [];
  let x0 = from - height * random.between(0, 2);
  for (let i = 0; x0 < to; i++) {
    let x1 = x0 + height * random.branch(i).between(...STONE_LONG);
    const near = below.find((c) => Math.abs(c.x1 - x1) < LAP * height);
    if (near) x1 = near.x1 + LAP * height;
    cells.push({ kind: 'stretcher', course, x0, x1, y0: top, y1: bottom });
    x0 = x1;
  }
  return cells;
}
