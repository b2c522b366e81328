import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import { radians } from './angles.js';
import type { Joint } from './branches.js';
import { type CrownFrame, crownPoint, inCrownFrame, sizeOf, standOf } from './crown-frame.js';
import { type LeafyPlan, leafForm } from './leafy.js';
import { bowed, fitted, type Lobe, type LobePlace, lobeAt, tuftsOf } from './lobes.js';
import type { TreeValues } from './parameters.js';

/** Trunk thickness as a share of the tree's size. */
const TRUNK = 0.098;

/** The lowest lobes hang to here in the crown's frame. */
const CROWN_FOOT = 0.02;

/** A round-headed tree: three boughs from one fork, six or seven lobes of leaves. */
export function broadleafPlan(plot: Plot, values: TreeValues, random: Random): LeafyPlan {
  const wood = random.branch('wood');
  const { foot, fork, frame } = standOf(
    plot,
    values.lean + 1.5 * wood.bell(),
    values.trunk,
    plot.width,
  );
  const from = inCrownFrame(frame, fork);
  const lobes = fitted(lobePlaces(random.branch('lobes')), CROWN_FOOT).map((place, i) =>
    lobeAt(place, from, [3, 4], random.branch(`lobe ${i}`)),
  );
  return {
    foot,
    first: {
      ...fork,
      load: 0,
      way: trunkWay(foot, fork, wood),
      children: boughs(fork, lobes, frame, wood),
    },
    tufts: tuftsOf(lobes, frame, random.branch('tufts')),
    trunkThickness: TRUNK * sizeOf(plot) * values.girth,
    leaf: leafForm(plot, { length: 0.076, width: 0.038, widest: 0.4 }),
  };
}

/** The trunk's way from root to fork: straight up to the ground, then with one sway. */
export const trunkWay = (foot: Point, fork: Point, random: Random): Point[] => [
  { x: foot.x, y: 0 },
  {
    x: foot.x + 0.35 * (fork.x - foot.x) + 0.012 * random.bell() * Math.abs(fork.y),
    y: fork.y / 2,
  },
];

/** Angle from the first lobe of the ring to the last, open below where the trunk comes in. */
const RING_DEG = 236;

/** A ring of lobes, large and small by turns, and one within it. */
function lobePlaces(random: Random): LobePlace[] {
  const count = random.whole(5, 6);
  const broad = random.between(0.92, 1.1);
  const turn = random.between(-12, 12);
  const largeFirst = random.whole(0, 1);
  const ring = Array.from({ length: count }, (_, i): LobePlace => {
    const deg = turn + (i - (count - 1) / 2) * (RING_DEG / (count - 1)) + 8 * random.bell();
    const a = radians(deg);
    const reach = random.between(0.3, 0.36);
    const r = 0.205 * ((i + largeFirst) % 2 ? 1.1 : 0.9) * random.between(0.88, 1.12);
    return { x: reach * broad * Math.sin(a), y: 0.53 + (1.15 * reach * Math.cos(a)) / broad, r };
  });
  const x = random.between(-0.08, 0.08);
  return [{ x, y: random.between(0.44, 0.6), r: random.between(0.16, 0.2) }, ...ring];
}

/** Three boughs, to the lobes on the left, in the middle and on the right. */
function boughs(fork: Point, lobes: readonly Lobe[], frame: CrownFrame, random: Random): Joint[] {
  const ends = lobes.map((lobe) => ({ lobe, at: crownPoint(frame, lobe.base) }));
  const angle = (p: Point): number => Math.atan2(p.x - fork.x, fork.y - p.y);
  ends.sort((a, b) => angle(a.at) - angle(b.at));
  const groups = [ends.slice(0, 2), ends.slice(2, -2), ends.slice(-2)];
  return groups.map((group): Joint => {
    const share = random.between(0.35, 0.5) / group.length;
    const at = {
      x: fork.x + share * group.reduce((sum, e) => sum + e.at.x - fork.x, 0),
      y: fork.y + share * group.reduce((sum, e) => sum + e.at.y - fork.y, 0),
    };
    const way = [bowed(fork, at, 0.08 * random.bell())];
    const children = group.map((e) => lobeJoint(e.lobe, at, frame, 0.1 * random.bell()));
    return { ...at, load: 0, way, children };
  });
}

/** The bough into a lobe and its twigs. A twig carries as its clump's leaves have area. */
export function lobeJoint(lobe: Lobe, from: Point, frame: CrownFrame, bow: number): Joint {
  const base = crownPoint(frame, lobe.base);
  return {
    ...base,
    load: 0,
    way: [bowed(from, base, bow)],
    children: lobe.twigs.map((twig) => ({
      ...crownPoint(frame, twig.at),
      load: twig.r ** 2,
      way: [crownPoint(frame, twig.way)],
      children: [],
    })),
  };
}
