import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { linesInside } from '../geometry/clip-lines.js';
import { contourArea } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { polygon, regionOf } from '../geometry/pen.js';
import { roundedRectangle } from '../geometry/primitives.js';
import { type Bounds, EMPTY_REGION, type Point, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { along, drawRing, type RingJoint, ringRegion } from './brick/arch.js';
import { type Cell, cellsInside } from './brick/cells.js';
import { BONDS, type Bond } from './brick/courses.js';
import { headOf } from './brick/head.js';
import { drawJoints } from './brick/joints.js';
import { type Opening, openingOf } from './brick/opening.js';
import { inPart, middleOf, PARTS, type Part, ringInPart } from './brick/parts.js';
import { type Anchor, patches } from './brick/patches.js';
import { setOut } from './brick/setting-out.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';

/** Joints keep this clear of every cut edge: nearer, the card tears along them. */
const CLEAR_MM = 1.75;
/** How much lower the backdrop's courses are than the front's. */
const FINER_AT_BACK = 0.28;
/** Reach of the patches at corners and along the window's plumb edges, in courses. */
const CORNER_REACH = 7;
const QUOIN_REACH = 3;
/** The least share of a brick's length in sight for it to count as part of the wall. */
const LEAST_SEEN = 0.2;
/** A ring's stones are drawn for this much more of it than the wall's bricks. */
const RING_DENSER = 0.38;
/** Chance that a run of drawn or bare stones ends at a stone: gaps and runs, not a sprinkle. */
const RUN_ENDS = 0.3;
/** Gap between two pressed bricks: less, and the card between them goes down with them. */
const PRESSED_JOINT_MM = 0.8;
const PRESSED_CORNER_MM = 0.35;
const PRESS_DEPTH_MM = 0.3;
/** The least of a brick worth pressing, in courses squared (a header is 1.5). */
const LEAST_LEFT_COURSES_SQ = 0.35;

const parameters = {
  part: {
    kind: 'choice',
    options: PARTS,
    default: 'all',
    says: 'Which part of the frame is built of brick.',
  },
  bond: {
    kind: 'choice',
    options: BONDS,
    default: 'english',
    says: 'How the bricks overlap from course to course.',
  },
  work: {
    kind: 'choice',
    options: ['score', 'raise', 'sink'],
    default: 'score',
    says: 'Joints as score lines, or each brick pressed up or down.',
  },
  course: {
    kind: 'length',
    default: 3.5,
    min: 2.4,
    max: 6,
    says: 'Height of a course on the front panel, joint included; finer towards the back.',
  },
  coverage: {
    kind: 'number',
    default: 0.5,
    min: 0.1,
    max: 1,
    says: 'Share of the wall whose joints are drawn; 0.4 to 0.6 suggests brick best.',
  },
} as const;

type Values = ValuesOf<typeof parameters>;

/** Brickwork on the card of the frame. */
export const brick = family({
  name: 'brick',
  says: 'Brickwork on the frame: true bonds, drawn in patches, with an arch over the window.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: {
    cut: null,
    scored: 'joints, in patches',
    embossed: 'single bricks, where asked',
  },
  parameters,
  stance: 'frame',
  grow,
});

function grow(plot: Plot, values: Values, random: Random): Growth {
  const { card, bounds } = plot.frame;
  const opening = openingOf(plot.frame.window);
  const window = opening?.bounds ?? middleOf(bounds);
  const courseMm = values.course * (1 - FINER_AT_BACK * plot.fineness);
  const part = values.part as Part;

  const ring = opening ? headOf(opening, bounds, courseMm) : [];
  const clear = offset(card, -CLEAR_MM);
  const wall = ring.length > 0 ? subtract(clear, [ringRegion(ring)]) : clear;
  const laid = setOut(bounds, opening, values.bond as Bond, courseMm).filter((c) =>
    inPart(part, c, bounds, window, courseMm),
  );
  const cells = cellsInside(laid, wall, LEAST_SEEN);
  const anchors = anchorsOf(bounds, opening, courseMm);
  const shown = patches(cells, anchors, values.coverage, courseMm, random.branch('patches'));
  const stones = voussoirsShown(ring, values.coverage, random.branch('stones')).filter((i) =>
    ringInPart(part, ring[i].foot.x, ring[i + 1].foot.x, window),
  );

  if (values.work === 'score') {
    const scores = [
      ...drawJoints(shown, wall, random.branch('joints')),
      ...linesInside(drawRing(ring, new Set(stones), CLEAR_MM, random.branch('ring')), clear),
    ];
    return { body: EMPTY_REGION, holes: EMPTY_REGION, scores, reliefs: [] };
  }
  const faces = [
    intersect(union(shown.map(brickFace)), wall),
    intersect(union(stones.map((i) => stoneFace(ring[i], ring[i + 1]))), clear),
  ];
  const side = values.work === 'raise' ? 'raised' : 'sunk';
  const reliefs = faces
    .map(withoutSlivers(courseMm))
    .filter((region) => region.contours.length > 0)
    .map((region) => ({ region, side, depthMm: PRESS_DEPTH_MM }) as const);
  return { body: EMPTY_REGION, holes: EMPTY_REGION, scores: [], reliefs };
}

/** Joints gather at the card's corners and along the edges that a bricklayer sets out first. */
function anchorsOf(card: Bounds, opening: Opening | null, courseMm: number): Anchor[] {
  const at = (x: number, y: number, pull: number): Anchor => ({
    x0: x,
    y0: y,
    x1: x,
    y1: y,
    reach: CORNER_REACH * courseMm,
    pull,
  });
  const corners = (b: Bounds, pull: number) => [
    at(b.minX, b.minY, pull),
    at(b.maxX, b.minY, pull),
    at(b.minX, b.maxY, pull),
    at(b.maxX, b.maxY, pull),
  ];
  if (!opening) return corners(card, 0.6);
  const { bounds, springing } = opening;
  const quoin = (x: number): Anchor => ({
    x0: x,
    y0: springing,
    x1: x,
    y1: bounds.maxY,
    reach: QUOIN_REACH * courseMm,
    pull: 0.4,
  });
  return [...corners(card, 0.55), ...corners(bounds, 0.7), quoin(bounds.minX), quoin(bounds.maxX)];
}

/** Most of a ring is drawn even where the wall is only suggested: it is what makes it an arch. */
function voussoirsShown(ring: readonly RingJoint[], coverage: number, random: Random): number[] {
  const count = ring.length - 1;
  const share = Math.min(1, RING_DENSER + coverage);
  const shown: number[] = [];
  let drawn = true;
  for (let i = 0; i < count; i++) {
    const luck = random.branch(i);
    if (luck.chance(RUN_ENDS)) drawn = luck.chance(share);
    const atEnd = Math.min(i, count - 1 - i) < 2;
    if (drawn || atEnd) shown.push(i);
  }
  return shown;
}

function brickFace(c: Cell): Region {
  const gap = PRESSED_JOINT_MM / 2;
  return roundedRectangle(
    c.x0 + gap,
    c.y0 + gap,
    c.x1 - c.x0 - 2 * gap,
    c.y1 - c.y0 - 2 * gap,
    PRESSED_CORNER_MM,
  );
}

function stoneFace(a: RingJoint, b: RingJoint): Region {
  const between = (p: Point, q: Point, t: number) => ({
    x: p.x + (q.x - p.x) * t,
    y: p.y + (q.y - p.y) * t,
  });
  const gap = PRESSED_JOINT_MM / 2;
  const corners = (mm: number): [Point, Point] => {
    const [p, q] = [along(a, mm), along(b, mm)];
    const t = gap / Math.hypot(q.x - p.x, q.y - p.y);
    return [between(p, q, t), between(p, q, 1 - t)];
  };
  const [footA, footB] = corners(CLEAR_MM);
  const [headA, headB] = corners(-gap);
  return regionOf(polygon([headA, headB, footB, footA]));
}

/** Drops the crumbs that an edge leaves of bricks it cuts. */
const withoutSlivers =
  (courseMm: number) =>
  (region: Region): Region => ({
    contours: region.contours.filter(
      (c) => Math.abs(contourArea(c)) > LEAST_LEFT_COURSES_SQ * courseMm * courseMm,
    ),
  });
