import { union } from '../../geometry/boolean/boolean.js';
import type { Point, Region } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Joint } from './branches.js';
import { type CrownFrame, crownPoint, sizeOf, standOf } from './crown-frame.js';
import { leader } from './leader.js';
import { type LeafyPlan, leafForm } from './leafy.js';
import type { TreeValues } from './parameters.js';
import {
  type Clumps,
  halfWidth,
  type Outline,
  type Strand,
  slitBeside,
  strandTuft,
} from './strands.js';
import type { Tuft } from './tufts.js';

/** A poplar is at most this wide for its height. */
const SLENDER = 0.3;
const TRUNK = 0.095;

/** ... unless that is too narrow for its trunk and a leaf to each side, in smallest webs. */
const LEAST_WEBS = 6;

/** The part of a plot that a poplar takes up. */
export const poplarPlot = (plot: Plot): Plot => ({
  ...plot,
  width: Math.min(plot.width, Math.max(SLENDER * plot.height, LEAST_WEBS * plot.smallestWeb)),
});

/** Half width of the flame over its height, in widths of the crown. */
const OUTLINE: Outline = [
  [0.02, 0.24],
  [0.14, 0.42],
  [0.3, 0.48],
  [0.5, 0.44],
  [0.72, 0.32],
  [0.9, 0.18],
  [1.02, 0.08],
];

/** A plume is fullest below its middle and runs out to a point. */
const CLUMPS: Clumps = [
  [0.06, 0.62, 0.5],
  [0.3, 1, 0.62],
  [0.58, 0.86, 0.66],
  [0.82, 0.56, 0.6],
  [0.98, 0.3, 0.42],
];
const UP_DEG = -90;

/**
 * A flame: its boughs climb close to the trunk, so that its foliage is steep plumes and the light
 * between them slits along the boughs.
 */
export function poplarPlan(plot: Plot, values: TreeValues, random: Random): LeafyPlan {
  const wood = random.branch('wood');
  const lean = values.lean + 0.4 * wood.bell();
  const { foot, fork, frame } = standOf(plot, lean, values.trunk, plot.width);
  const plumes = plumesOf(random.branch('plumes'));
  const borne = plumes.map((plume) => ({
    base: crownPoint(frame, plume.path[1]),
    joint: (from: Point, bow: number) => plumeJoint(plume, from, frame, bow),
  }));
  return {
    foot,
    first: leader(fork, borne, { climb: 3, bow: 0.03 }, wood, foot),
    tufts: [...plumes.map((plume) => plumeTuft(plume, frame)), slitsOf(plumes, frame, plot)],
    trunkThickness: TRUNK * sizeOf(plot) * values.girth,
    leaf: leafForm(plot, { length: 0.085, width: 0.046, widest: 0.42 }),
  };
}

const plumeTuft = (plume: Strand, frame: CrownFrame): Tuft =>
  strandTuft(plume, frame, CLUMPS, UP_DEG, { x: 0, y: 0 });

/** Width of a slit for its plume's radius, at full openness. */
const SLIT = 2.4;

/** The light within the flame: slits between plumes and trunk, cut through all plumes at once. */
function slitsOf(plumes: readonly Strand[], frame: CrownFrame, plot: Plot): Tuft {
  const places = plumes.slice(0, -1).map((plume) => {
    const own = plume.random.branch('slit');
    const aside = -Math.sign(plume.path[2].x) * own.between(0.45, 0.75);
    const span = [own.between(0.14, 0.26), own.between(0.58, 0.72)] as const;
    const wide = SLIT * plume.r * frame.across * own.between(0.8, 1.2);
    return { plume, aside, span, wide };
  });
  const slit = (openness: number): Region =>
    union(
      places.map(({ plume, aside, span, wide }) => {
        const width = Math.max(wide * openness, 1.25 * plot.smallestHole);
        return slitBeside(plume, frame, aside, span, width);
      }),
    );
  const random = plumes[0].random.branch('slits');
  return { clumps: [], fill: [], shade: { x: 0, y: 0 }, slit, random };
}

/** Plumes by turns left and right up the trunk, and the topmost straight over it. */
function plumesOf(random: Random): Strand[] {
  const count = random.whole(8, 9);
  const first = random.chance(0.5) ? 1 : -1;
  const plumes = Array.from({ length: count }, (_, i): Strand => {
    const own = random.branch(i);
    const side = i % 2 ? -first : first;
    const y = 0.03 + 0.58 * (i / (count - 1)) + own.between(-0.02, 0.02);
    const long = own.between(0.34, 0.44);
    const out = own.between(0.94, 1.08);
    const r = 0.19 - 0.05 * y;
    const at = (up: number, share: number): Point => ({
      x: side * Math.max(0, halfWidth(OUTLINE, y + up * long) - share * r) * out,
      y: y + up * long,
    });
    return { path: [at(0, 0.9), at(0.35, 0.9), at(0.7, 0.72), at(1, 0.1)], r, random: own };
  });
  const own = random.branch('top');
  const nod = 0.03 * own.bell();
  const path = [0.5, 0.72, 0.9, 1.06].map((y, k) => ({ x: nod * k * 0.4, y }));
  return [...plumes, { path, r: 0.17, random: own }];
}

function plumeJoint({ path, r }: Strand, from: Point, frame: CrownFrame, bow: number): Joint {
  const at = path.map((p) => crownPoint(frame, p));
  const rise = { x: from.x + (0.7 + bow) * (at[1].x - from.x), y: (from.y + at[1].y) / 2 };
  return { ...at[3], load: r * r, way: [rise, at[1], at[2]], children: [] };
}
