import { regionBounds } from '../../geometry/measure.js';
import type { Line, Region } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { type Cell, cellsInside, type PlainWall, wallCells } from './cells.js';
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
  /** The plot's fineness: courses are finer towards the back. */
  readonly fineness: number;
}

/** Joints of a wall face, drawn in patches round the anchors; courses count from its foot. */
export function jointsOn(face: Region, facing: Facing, random: Random): Line[] {
  const { masonry, anchors, coverage } = facing;
  if (face.contours.length === 0) return [];
  const course = facing.courseMm * (1 - FINER_AT_BACK * facing.fineness);
  const { minX, maxX, minY, maxY } = regionBounds(face);
  const wall = {
    x0: minX,
    x1: maxX,
    foot: maxY,
    courses: Math.ceil((maxY - minY) / course),
    courseMm: course,
  };
  const cells =
    masonry === 'brick'
      ? wallCells('stretcher', wall, 3 * course)
      : stoneCells(wall, random.branch('stones'));
  const seen = cellsInside(cells, face, LEAST_SEEN);
  const shown = patches(seen, anchors, coverage, course, random.branch('patches'));
  return drawJoints(shown, face, random.branch('joints'));
}

/** Squared stones of any length, none jointed straight over a joint of the course below. */
function stoneCells({ x0, x1, foot, courses, courseMm }: PlainWall, random: Random): Cell[] {
  const cells: Cell[] = [];
  let below: readonly Cell[] = [];
  for (let course = 0; course < courses; course++) {
    const luck = random.branch(course);
    const row: Cell[] = [];
    let from = x0 - courseMm * luck.between(0, 2);
    for (let i = 0; from < x1; i++) {
      let to = from + courseMm * luck.branch(i).between(...STONE_LONG);
      const near = below.find((c) => Math.abs(c.x1 - to) < LAP * courseMm);
      if (near) to = near.x1 + LAP * courseMm;
      const y1 = foot - course * courseMm;
      row.push({ kind: 'stretcher', course, x0: from, x1: to, y0: y1 - courseMm, y1 });
      from = to;
    }
    cells.push(...row);
    below = row;
  }
  return cells;
}
