import { linesInside } from '../geometry/clip-lines.js';
import type { ValuesOf } from '../scene/parameter.js';
import { branch, type Habit } from './branches/branch.js';
import { coursesOf } from './branches/course.js';
import { family, type Growth, type Plot } from './family.js';
import { TIP_RADIUS_MM } from './leaf.js';
import type { Random } from './random.js';
import { fitInWindow, inWindow } from './window/fit.js';
import { inOpening } from './window/growth.js';
import { openingFor } from './window/opening.js';

const parameters = {
  leaf: {
    kind: 'choice',
    options: ['oval', 'long', 'broad'],
    default: 'oval',
    says: 'Leaves oval as on a laurel, long as on a willow, or broad as on ivy.',
  },
  size: {
    kind: 'length',
    default: 8,
    min: 4,
    max: 20,
    says: 'Length of a leaf; longer where the process asks for it.',
  },
  leaves: {
    kind: 'number',
    default: 0.6,
    min: 0,
    max: 1,
    says: 'How close together leaves and shoots stand.',
  },
  meet: {
    kind: 'number',
    default: 0.9,
    min: 0.5,
    max: 1,
    says: 'How far the branches reach: 0.5 to the shoulders, 1 till they meet at the head.',
  },
  berries: { kind: 'flag', default: false, says: 'Berries in pairs among the leaves.' },
} as const;

/** Two branches that arch over the window. */
export const branches = family({
  name: 'branches',
  says: 'Two branches that rise along both sides of the window and arch over it, in leaf.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: { cut: 'stems, shoots and leaves', scored: 'ribs of large leaves', embossed: null },
  parameters,
  stance: 'frame',
  grow,
});

/** Width of each leaf in lengths, and where it is widest. */
const LEAVES = {
  oval: { width: 0.46, widest: 0.45 },
  long: { width: 0.24, widest: 0.4 },
  broad: { width: 0.74, widest: 0.36 },
} as const;
/** A leaf is at least so wide, in webs, and takes at most this share of the window's width. */
const LEAST_WIDTH = 1.9;
const MOST_SHARE = 0.13;
/** From leaf to leaf, in leaf lengths and in leaf widths, sparse and dense. */
const SPACING = { sparse: 1.25, dense: 0.42 };
/** The stem's foot: in webs at least, and as a share of the window's smaller side. */
const FOOT = { webs: 2, share: 0.03 };

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const opening = openingFor(plot);
  const { window, bounds } = opening;
  const { smallestWeb: web, smallestHole: hole, fineness } = plot;
  const [width, height] = [bounds.maxX - bounds.minX, bounds.maxY - bounds.minY];
  const side = Math.min(width, height);
  const shape = LEAVES[values.leaf as keyof typeof LEAVES];
  const least = (LEAST_WIDTH * web) / shape.width;
  const length = Math.max(least, Math.min(values.size, MOST_SHARE * width + 2));
  const spacing =
    (SPACING.sparse + (SPACING.dense - SPACING.sparse) * values.leaves) * length + 0.5 * hole;
  const foot = Math.max(FOOT.webs * web, FOOT.share * side);
  const habit: Habit = {
    form: {
      length,
      width: shape.width * length,
      widest: shape.widest,
      tipRadius: Math.max(TIP_RADIUS_MM, 0.53 * web),
    },
    spacing,
    thickness: [foot, 1.15 * web],
    sway: [0.4 * foot + 1.1 * hole, 0.5 * foot + 1.9 * hole],
    web,
    fineness,
    berries: values.berries,
  };
  const [left, right] = coursesOf(opening, 0.25 * web);
  const luck = random.branch('reach');
  const reach = (n: string): number => values.meet * (1 - 0.05 * luck.branch(n).next());
  const grown = [
    branch(left, reach('left') * left.lengthMm, -1, habit, random.branch('left')),
    branch(right, reach('right') * right.lengthMm, 1, habit, random.branch('right')),
  ];
  const shapes = grown.flatMap((b) => b.shapes);
  const card = fitInWindow(inWindow(shapes, window), window, plot);
  const ribs = linesInside(
    grown.flatMap((b) => b.ribs),
    window,
  );
  return inOpening(plot, opening, card, ribs);
}
