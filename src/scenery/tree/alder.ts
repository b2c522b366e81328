import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import { lobeJoint } from './broadleaf.js';
import { crownPoint, inCrownFrame, sizeOf, standOf } from './crown-frame.js';
import { leader } from './leader.js';
import { type LeafyPlan, leafForm } from './leafy.js';
import { fitted, type LobePlace, lobeAt, tuftsOf } from './lobes.js';
import type { TreeValues } from './parameters.js';
import { halfWidth, type Outline } from './strands.js';

/** Trunk thickness as a share of the tree's size. */
const TRUNK = 0.08;
/** An alder is at most this wide for its height. */
const SLENDER = 0.58;

/** The part of a plot that an alder takes up. */
export const alderPlot = (plot: Plot): Plot => ({
  ...plot,
  width: Math.min(plot.width, SLENDER * plot.height),
});

/** The lowest lobes hang to here in the crown's frame. */
const CROWN_FOOT = 0.06;

/** Half width of the crown over its height, both in widths of the crown: a cone with a round foot. */
const OUTLINE: Outline = [
  [0.08, 0.3],
  [0.3, 0.42],
  [0.5, 0.38],
  [0.7, 0.28],
  [0.88, 0.15],
];

/** A slender tree: a trunk straight to the top, lobes by turns to its left and right. */
export function alderPlan(plot: Plot, values: TreeValues, random: Random): LeafyPlan {
  const wood = random.branch('wood');
  const { foot, fork, frame } = standOf(
    plot,
    values.lean + 0.8 * wood.bell(),
    values.trunk,
    plot.width,
  );
  const places = fitted(lobePlaces(random.branch('lobes')), CROWN_FOOT);
  const axis = inCrownFrame(frame, fork);
  const lobes = places.map((place, i) => {
    const from = { x: axis.x * (1 - place.y), y: place.y - 0.75 * Math.abs(place.x) - 0.08 };
    return lobeAt(place, from, [3, 3], random.branch(`lobe ${i}`));
  });
  const borne = lobes.map((lobe) => ({
    base: crownPoint(frame, lobe.base),
    joint: (from: Point, bow: number) => lobeJoint(lobe, from, frame, bow),
  }));
  const thickness = TRUNK * sizeOf(plot) * values.girth;
  return {
    foot,
    first: leader(fork, borne, { climb: 0.8, bow: 0.08 }, wood, foot),
    tufts: tuftsOf(lobes, frame, random.branch('tufts')),
    trunkThickness: thickness,
    leaf: leafForm(plot, { length: 0.062, width: 0.042, widest: 0.55 }),
  };
}

function lobePlaces(random: Random): LobePlace[] {
  const count = random.whole(8, 9);
  let side = random.chance(0.5) ? 1 : -1;
  const places = Array.from({ length: count }, (_, i): LobePlace => {
    const f = i / (count - 1);
    const y = 0.1 + 0.78 * f ** 1.05 + random.between(-0.03, 0.03);
    const half = halfWidth(OUTLINE, y);
    const r = Math.max(0.1, half * 0.44) * random.between(0.9, 1.15);
    side = -side;
    return { x: side * (half - r) * random.between(0.9, 1.25), y, r };
  });
  return [...places, { x: random.between(-0.03, 0.03), y: 0.98, r: 0.12 }];
}
