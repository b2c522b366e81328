import { union } from '../../geometry/boolean/boolean.js';
import { containsPoint, distanceTo } from '../../geometry/components.js';
import { regionBounds } from '../../geometry/measure.js';
import { smoothContour } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import { EMPTY_REGION, type Line, type Point, type Region } from '../../geometry/types.js';
import type { Plot, Relief } from '../family.js';
import type { Random } from '../random.js';
import { sizeOf } from '../tree/crown-frame.js';
import { CLEARANCE_MM } from '../tree/scores.js';
import type { BushValues } from './parameters.js';

interface Fruit {
  readonly scores: readonly Line[];
  readonly reliefs: readonly Relief[];
  readonly region: Region;
}

/** Radius as a share of the bush's size, and the least (mm) that a tool still draws as round. */
const BERRY = { share: 0.02, least: 0.7 };
const FLOWER = { share: 0.032, least: 1.1 };
const RELIEF_MM = 0.3;
/** Bunches looked for, and how many are kept: few, or the bush looks spotted. */
const TRIES = 50;
const BUNCHES = 7;

/** Bunches of berries or single flowers where the card has room for them, all within its leaves. */
export function fruitOn(card: Region, plot: Plot, values: BushValues, random: Random): Fruit {
  if (values.fruit === 'none') return { scores: [], reliefs: [], region: EMPTY_REGION };
  const kind = values.fruit === 'berries' ? BERRY : FLOWER;
  const r = Math.max(kind.share * sizeOf(plot), kind.least);
  const reach = values.fruit === 'berries' ? 2.3 * r : r;
  const spots = spotsOn(card, plot, reach, random.branch('spots'));
  const drawn = spots.flatMap((at, i) =>
    values.fruit === 'berries'
      ? bunch(at, r, random.branch(`bunch ${i}`))
      : [flower(at, r, random.branch(`flower ${i}`))],
  );
  const lines = drawn.flatMap(({ contours }) => contours.map((cubics) => ({ cubics })));
  return {
    scores: values.raised ? [] : lines,
    reliefs: values.raised
      ? drawn.map((region) => ({ region, side: 'raised' as const, depthMm: RELIEF_MM }))
      : [],
    region: union(drawn),
  };
}

function spotsOn(card: Region, plot: Plot, reach: number, random: Random): Point[] {
  const { minX, maxX, minY } = regionBounds(card);
  const spots: Point[] = [];
  for (let k = 0; k < TRIES && spots.length < BUNCHES; k++) {
    const at = {
      x: random.between(minX, maxX),
      y: random.between(minY, -0.25 * plot.height),
    };
    const isNear = spots.some((s) => Math.hypot(s.x - at.x, s.y - at.y) < 3.2 * reach);
    if (isNear || !containsPoint(card, at)) continue;
    if ((distanceTo(card, at)?.distanceMm ?? 0) > reach + CLEARANCE_MM) spots.push(at);
  }
  return spots;
}

/** Two or three berries that all but touch. */
function bunch({ x, y }: Point, r: number, random: Random): Region[] {
  const count = random.whole(2, 3);
  const turn = random.between(0, 2 * Math.PI);
  return Array.from({ length: count }, (_, i) => {
    const a = turn + (2 * Math.PI * i) / count;
    return circle(x + 1.25 * r * Math.cos(a), y + 1.25 * r * Math.sin(a), r);
  });
}

const PETALS = 5;

/** A flower seen from the front: five rounded petals. */
function flower({ x, y }: Point, r: number, random: Random): Region {
  const turn = random.between(0, 2 * Math.PI);
  const nodes = 4 * PETALS;
  const points = Array.from({ length: nodes }, (_, i) => {
    const a = turn + (2 * Math.PI * i) / nodes;
    const out = r * [0.58, 0.92, 1, 0.92][i % 4];
    return { x: x + out * Math.cos(a), y: y + out * Math.sin(a) };
  });
  return { contours: [smoothContour(points)] };
}
