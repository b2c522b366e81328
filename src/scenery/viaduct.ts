import { subtract, union } from '../geometry/boolean/boolean.js';
import { linesInside } from '../geometry/clip-lines.js';
import { offset } from '../geometry/offset/offset.js';
import { pen, polygon, smoothLine } from '../geometry/pen.js';
import { rectangle } from '../geometry/primitives.js';
import type { Line, Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { drawRing, radiatingJoints, ringRegion } from './brick/arch.js';
import { handCut, handDrawn, mix, shapeOf } from './brick/craft.js';
import { jointsOn } from './brick/facing.js';
import { finished, levelOf, NOTHING } from './built/finish.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';
import { type Bay, type Plan, planOf } from './viaduct/plan.js';
import { trainOf } from './viaduct/train.js';

const WANDER_MM = 0.15;
const JOINT_CLEAR_MM = 1.75;
/** Courses of a great work seen from afar, mm. */
const COURSE_MM = 2.8;
/** Least depth of an arch ring whose stones can be scored, mm. */
const LEAST_RING_MM = 2.1;
/** Rings keep this far from the middle of a pier. */
const MEETING_MM = 0.6;

const parameters = {
  traffic: {
    kind: 'choice',
    options: ['none', 'train'],
    default: 'none',
    says: 'What crosses it: nothing, or a steam train.',
  },
  arches: {
    kind: 'number',
    default: 5,
    min: 3,
    max: 9,
    whole: true,
    says: 'Number of arches; fewer where piers would become too thin to cut.',
  },
  stout: {
    kind: 'number',
    default: 0.3,
    min: 0,
    max: 1,
    says: 'How stout the piers are: 0 slender, 1 massive.',
  },
  valley: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How far the ground rises to both sides: 0 level, 1 a deep valley.',
  },
  coverage: {
    kind: 'number',
    default: 0.35,
    min: 0,
    max: 1,
    says: 'Share of the wall whose joints are drawn.',
  },
} as const;

type Values = ValuesOf<typeof parameters>;

/** A row of tall arches across the valley. */
export const viaduct = family({
  name: 'viaduct',
  says: 'A railway viaduct on tall piers across a valley, with a train on it if asked for.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.5 } },
  made: {
    cut: 'arches, parapet and train, with the lit windows of its coaches',
    scored: 'arch rings, string course and joints of the stone',
    embossed: null,
  },
  parts: ['train', 'ground'],
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: Values, random: Random): Growth {
  const { arches, stout, valley } = values;
  const hasTrain = values.traffic === 'train';
  const plan = planOf(plot, arches, stout, valley, hasTrain, random.branch('plan'));
  const ground = groundRegion(plan);
  const wall = wallOf(plan, random.branch('wall'));
  const cuts = plan.bays.flatMap((bay) =>
    bay.blind ? [] : [subtract(shapeOf(polygon(bay.outline)), [ground])],
  );
  const train = hasTrain ? trainOf(plan, random.branch('train')) : NOTHING;
  // A train hides the refuges: they would read as part of it.
  const refuges = hasTrain ? [] : refugesOf(plan, random.branch('refuges'));
  const lines = [
    ...plan.bays.flatMap((bay, i) =>
      linesInside(ringLines(plan, bay, random.branch(`ring ${i}`)), bayRoom(plan, i)),
    ),
    ...bandLines(plan, random.branch('band')),
    ...jointLines(plan, wall, ground, cuts, values.coverage, random.branch('joints')),
  ];
  const drawing = {
    solids: [wall, ground, ...refuges, ...train.solids],
    cuts: [...cuts, ...train.cuts],
    lines,
    parts: { train: train.solids, ground: [ground] },
  };
  return finished(drawing, plot, { x: plan.piers[0].x, y: plot.root });
}

function groundRegion({ ends, ground, plot }: Plan): Region {
  const xs = Array.from({ length: 13 }, (_, i) => mix(ends.left, ends.right, i / 12));
  const points = xs.map((x) => ({ x, y: ground(x) }));
  return shapeOf(
    pen(points[0].x, points[0].y)
      .smoothTo(points.slice(1))
      .lineTo(ends.right, plot.root)
      .lineTo(ends.left, plot.root)
      .close(),
  );
}

/** All of the stone, arches not yet opened. */
function wallOf({ ends, top, plot }: Plan, random: Random): Region {
  const corners = [
    { x: ends.left, y: top },
    { x: ends.right, y: top },
    { x: ends.right, y: plot.root - 1 },
    { x: ends.left, y: plot.root - 1 },
  ];
  return handCut(corners, WANDER_MM, random);
}

/** Refuges stand up over the parapet above some of the piers. */
function refugesOf({ piers, top, road, plot }: Plan, random: Random): Region[] {
  const rise = Math.max(0.03 * plot.height, 0.3);
  return piers.flatMap(({ x, width, refuge }, i) => {
    if (!refuge) return [];
    const half = Math.max(width * 0.6, plot.smallestWeb);
    const corners = [
      { x: x - half, y: top - rise * 0.4 },
      { x: x - half * 0.8, y: top - rise },
      { x: x + half * 0.8, y: top - rise },
      { x: x + half, y: top - rise * 0.4 },
      { x: x + half, y: road },
      { x: x - half, y: road },
    ];
    return [handCut(corners, WANDER_MM / 2, random.branch(i))];
  });
}

/** Between the middles of a bay's piers: where neighbouring rings meet, neither runs on. */
function bayRoom({ piers, top }: Plan, i: number): Region {
  const from = piers[i].x + MEETING_MM;
  return rectangle(from, top, piers[i + 1].x - MEETING_MM - from, -top);
}

/** The ring's stones, or of an arch too small to cut its outline. */
function ringLines(plan: Plan, bay: Bay, random: Random): Line[] {
  const outline = bay.blind ? [smoothLine(bay.soffit)] : [];
  const level = levelOf(plan.plot);
  if (plan.ring < LEAST_RING_MM) return outline;
  if (level === 0 && plan.ring < 1.5 * LEAST_RING_MM) {
    const back = radiatingJoints(bay.soffit, plan.ring, 2).map((joint) => joint.head);
    return [...outline, smoothLine(back)];
  }
  const ring = radiatingJoints(bay.soffit, plan.ring, Math.max(2.4, plan.ring * 0.62));
  const stones = [...ring.slice(1).keys()].filter((i) => random.branch(i).chance(0.85));
  return [...outline, ...drawRing(ring, new Set(stones), 0.4, random.branch('stones'))];
}

/** The string course along the road, broken at the refuges, and imposts where the arches spring. */
function bandLines({ piers, road, springing, ends, plot }: Plan, random: Random): Line[] {
  const lines: Line[] = [];
  const thick = Math.max(1, 0.02 * plot.height);
  const stroke = (x0: number, x1: number, y: number, label: string) => {
    if (x1 - x0 < 2) return;
    const points = [
      { x: x0, y },
      { x: x1, y },
    ];
    lines.push(handDrawn(points, 0.1, random.branch(label)));
  };
  const xs = [ends.left, ...piers.slice(1, -1).map(({ x }) => x), ends.right];
  for (let i = 0; i + 1 < xs.length; i++) {
    // Each stretch ends somewhere short of the next pier, so that none makes a hinge of the deck.
    const luck = random.branch(`break ${i}`);
    const [from, to] = [xs[i] + luck.between(1, 2.5), xs[i + 1] - luck.between(1, 2.5)];
    stroke(from, to, road, `upper ${i}`);
    if (levelOf(plot) > 0) stroke(from + 0.6, mix(from, to, 0.8), road + thick, `lower ${i}`);
  }
  piers.forEach(({ x, width }, i) => {
    stroke(x - width / 2, x + width / 2, springing, `impost ${i}`);
  });
  return lines;
}

function jointLines(
  plan: Plan,
  wall: Region,
  ground: Region,
  cuts: readonly Region[],
  coverage: number,
  random: Random,
): Line[] {
  const { plot, ring, piers, road, springing, top } = plan;
  const rings = plan.bays.map(({ soffit }) => ringRegion(radiatingJoints(soffit, ring + 0.6, 2)));
  const band = rectangle(-1000, road - 0.9, 2000, 2.8);
  const imposts = rectangle(-1000, springing - 0.8, 2000, 1.6);
  const beneath = rectangle(-1000, 0, 2000, plot.root + 10);
  const stone = subtract(wall, [...cuts, ground, beneath]);
  const face = subtract(offset(stone, -JOINT_CLEAR_MM), [union(rings), band, imposts]);
  const anchors = piers.map(({ x }) => ({
    x0: x,
    y0: springing,
    x1: x,
    y1: mix(springing, top, 0.4),
    reach: plot.height / 9,
    pull: 0.5,
  }));
  const facing = { masonry: 'stone', courseMm: COURSE_MM, anchors, coverage } as const;
  return jointsOn(face, { ...facing, fineness: plot.fineness }, random);
}
