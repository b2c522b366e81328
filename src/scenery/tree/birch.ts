import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Joint } from './branches.js';
import { type CrownFrame, crownPoint, sizeOf, standOf } from './crown-frame.js';
import { leader } from './leader.js';
import { type LeafyPlan, leafForm } from './leafy.js';
import type { TreeValues } from './parameters.js';
import { type Clumps, halfWidth, type Outline, type Strand, strandTuft } from './strands.js';

/** A birch is at most this wide for its height. */
const SLENDER = 0.62;
const TRUNK = 0.08;

/** The part of a plot that a birch takes up. */
export const birchPlot = (plot: Plot): Plot => ({
  ...plot,
  width: Math.min(plot.width, SLENDER * plot.height),
});

/** Half width of the crown where its boughs turn over, over its height, in widths of the crown. */
const OUTLINE: Outline = [
  [0.3, 0.41],
  [0.5, 0.42],
  [0.72, 0.3],
  [0.9, 0.19],
  [1, 0.1],
];

/** A lock is fullest where its twig turns over, and thins down to its tip. */
const CLUMPS: Clumps = [
  [0.1, 1, 0.75],
  [0.38, 0.85, 0.9],
  [0.68, 0.58, 0.95],
  [0.95, 0.36, 0.75],
];
const DOWN_DEG = 90;

/** A slender tree whose boughs climb, turn over and hang in open locks of fine twigs. */
export function birchPlan(plot: Plot, values: TreeValues, random: Random): LeafyPlan {
  const wood = random.branch('wood');
  const lean = values.lean + 1.2 * wood.bell();
  const { foot, fork, frame } = standOf(plot, lean, values.trunk, plot.width);
  const locks = locksOf(random.branch('locks'));
  const borne = locks.map((lock) => ({
    base: crownPoint(frame, lock.path[0]),
    joint: (from: Point, bow: number) => lockJoint(lock, from, frame, bow),
  }));
  return {
    foot,
    first: leader(fork, borne, { climb: 1.1, bow: 0.03 }, wood, foot),
    // The upper locks hang over the lower ones; their light falls beneath them, toward the trunk.
    tufts: [...locks]
      .sort((a, b) => a.path[0].y - b.path[0].y)
      .map((lock) => {
        const inward = lock.path[0].x > 0 ? -1 : 1;
        const own = lock.random.branch('shade');
        const shade = {
          x: inward * lock.r * own.between(0.7, 1.3),
          y: -lock.r * own.between(0.5, 1),
        };
        return strandTuft(lock, frame, CLUMPS, DOWN_DEG, shade);
      }),
    trunkThickness: TRUNK * sizeOf(plot) * values.girth,
    leaf: leafForm(plot, { length: 0.07, width: 0.036, widest: 0.4 }),
    bark: 'dashes',
  };
}

/** Locks by turns left and right, longest low down, and the top shoot that nods to one side. */
function locksOf(random: Random): Strand[] {
  const count = random.whole(9, 11);
  const first = random.chance(0.5) ? 1 : -1;
  const locks = Array.from({ length: count }, (_, i): Strand => {
    const own = random.branch(i);
    const side = i % 2 ? -first : first;
    const y = 0.34 + 0.62 * (i / (count - 1)) ** 1.05 + own.between(-0.03, 0.03);
    const isInner = i % 4 === 2 && i < count - 3;
    const reach = halfWidth(OUTLINE, y) * own.between(0.86, 1.05) * (isInner ? 0.5 : 1);
    const head = { x: side * reach * 0.8, y };
    const fall = (0.44 - 0.26 * y) * own.between(0.7, 1.25);
    return lockAt(head, side, reach * 0.2, fall, 0.075 + 0.045 * (1 - y), own);
  });
  const own = random.branch('top');
  const top = lockAt({ x: own.between(-0.02, 0.02), y: 1.02 }, first, 0.05, 0.13, 0.075, own);
  return [...locks, top];
}

function lockAt(
  head: Point,
  side: number,
  out: number,
  fall: number,
  r: number,
  random: Random,
): Strand {
  const sway = 0.02 * random.bell();
  const path = [
    head,
    { x: head.x + side * out * 0.75, y: head.y - 0.16 * fall },
    { x: head.x + side * out * 1.05, y: head.y - 0.5 * fall },
    { x: head.x + side * out + sway, y: head.y - fall },
  ];
  return { path, r: r * random.between(0.9, 1.12), random };
}

/** The bough to a lock's head and on down its strand. */
function lockJoint({ path, r }: Strand, from: Point, frame: CrownFrame, bow: number): Joint {
  const at = path.map((p) => crownPoint(frame, p));
  const end = at[0];
  const rise = { x: from.x + (0.42 + bow) * (end.x - from.x), y: from.y + 0.62 * (end.y - from.y) };
  return { ...at[3], load: r * r, way: [rise, end, at[1], at[2]], children: [] };
}
