import { pen, smoothContour } from '../geometry/pen.js';
import {
  inOrder,
  moveCubics,
  reversed,
  rotation,
  scaling,
  translation,
} from '../geometry/transform.js';
import type { Cubics, Point } from '../geometry/types.js';

/** Kinds of lobed leaf. */
export type LobedKind = 'ivy' | 'vine';

/** Half of a leaf from its stalk to its tip, in its length: along it and aside of it. */
type Half = readonly (readonly [along: number, aside: number])[];

/** Ivy: five blunt lobes, the middle one longest. */
const IVY: Half = [
  [0.04, 0.02],
  [-0.09, 0.2],
  [-0.02, 0.4],
  [0.16, 0.36],
  [0.36, 0.52],
  [0.46, 0.5],
  [0.54, 0.27],
  [0.8, 0.16],
];

/** Vine: five lobes with coarse teeth, as broad as long. */
const VINE: Half = [
  [0.06, 0.02],
  [-0.14, 0.16],
  [-0.1, 0.4],
  [0.06, 0.42],
  [0.16, 0.62],
  [0.32, 0.54],
  [0.5, 0.6],
  [0.54, 0.34],
  [0.72, 0.34],
  [0.84, 0.14],
];

/** Where a small leaf of either kind bends: three lobes are all that its size shows. */
const THREE: Half = [
  [0.03, 0.02],
  [-0.08, 0.26],
  [0.1, 0.46],
  [0.34, 0.44],
  [0.52, 0.26],
];

/** A leaf shorter than this many smallest webs shows three lobes only. */
const FULL_WEBS = 5;

/**
 * One lobed leaf, `lengthMm` from its stalk to its tip, as a closed contour. It hangs from `foot`
 * along `headingDeg` (0 = right, 90 = down); `breadth` stretches it across.
 */
export function lobedLeaf(
  kind: LobedKind,
  lengthMm: number,
  breadth: number,
  smallestWeb: number,
  foot: Point,
  headingDeg: number,
): Cubics {
  const full = kind === 'ivy' ? IVY : VINE;
  const isSmall = lengthMm < FULL_WEBS * smallestWeb;
  const half = isSmall ? THREE : full;
  const right = half.map(([x, y]) => ({ x, y }));
  const left = [...half].reverse().map(([x, y]) => ({ x, y: -y }));
  const points = [...right, { x: 1, y: 0 }, ...left];
  const outline = kind === 'vine' && !isSmall ? toothed(points) : smoothContour(points);
  const placed = inOrder(
    scaling(lengthMm, lengthMm * breadth),
    rotation(headingDeg),
    translation(foot.x, foot.y),
  );
  // Drawn from foot to tip below the rib and back above it, which is anticlockwise.
  return reversed(moveCubics(outline, placed));
}

/** Corners joined by edges that bow out a little, as between the teeth of a leaf. */
function toothed(points: readonly Point[]): Cubics {
  const p = pen(points[0].x, points[0].y);
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    p.quadTo((a.x + b.x) / 2 + 0.12 * dy, (a.y + b.y) / 2 - 0.12 * dx, b.x, b.y);
  });
  return p.close();
}
