import type { Cubics, Line, Point } from '../../geometry/types.js';
import { type Guide, guideOf } from '../edge.js';
import { type Arc, pointOn, ribbon, taper, wayOn } from '../grass/ribbon.js';
import { leaf } from '../leaf.js';
import type { Random } from '../random.js';
import type { Room } from './room.js';

/** Where something may grow out of the rim; headings are degrees, 0 = right, 90 = down. */
interface Place {
  /** Counted from the rim's middle: the same place keeps its key when the hedge grows. */
  readonly key: number;
  readonly at: Point;
  readonly outwardDeg: number;
}

/** Leaves and sprays keep off the foot: they grow on this share of the edge, about its middle. */
const LEAFY = 0.74;

/** Places on the rim at uneven distances, counted both ways from one near its middle. */
function rimPlaces(guide: Guide, spacing: readonly [number, number], random: Random): Place[] {
  const middle = guide.lengthMm / 2;
  const reach = (LEAFY * guide.lengthMm) / 2;
  const first = random.between(-0.5, 0.5) * spacing[1];
  const offsets = new Map([[0, first]]);
  for (const way of [-1, 1]) {
    const own = random.branch(way);
    let offset = first;
    for (let i = 1; i < 1000; i++) {
      offset += way * own.between(...spacing);
      if (Math.abs(offset) > reach) break;
      offsets.set(way * i, offset);
    }
  }
  return [...offsets].map(([key, offset]) => {
    const { at, inward } = guide.station(middle + offset);
    return { key, at, outwardDeg: degrees(Math.atan2(-inward.y, -inward.x)) };
  });
}

/** Common practice, no source: a rim leaf turns up to 35 degrees from the rim's normal, is 0.7 to
 * 1.3 of the mean size and is fused by about two fifths of its length. */
const LEAF_TURN_DEG = 35;
const LEAF_SIZES = [0.75, 1.3] as const;
const LEAF_FUSED = 0.38;
const LEAF_MM = 4.4;
/** Distances from leaf to leaf and from spray to spray along the rim. */
const LEAF_STEP_MM = [3, 11] as const;
const SPRAY_MM = [18, 48] as const;

/** Single leaves fused to the rim, and a few whole sprays that reach past it. */
export function rimGrowth(room: Room, line: Line, random: Random): Cubics[] {
  const guide = guideOf(line);
  const leaves = rimPlaces(guide, LEAF_STEP_MM, random.branch('leaves')).map((place) => {
    const own = random.branch(`leaf ${place.key}`);
    const heading = place.outwardDeg + own.between(-LEAF_TURN_DEG, LEAF_TURN_DEG);
    const length = LEAF_MM * room.grain * own.between(...LEAF_SIZES);
    return leaf(leafForm(length), along(place.at, heading, -LEAF_FUSED * length), heading);
  });
  const sprays = rimPlaces(guide, SPRAY_MM, random.branch('sprays')).flatMap((place) => {
    const own = random.branch(`spray ${place.key}`);
    return own.chance(0.7) ? spray(room, place, own) : [];
  });
  return [...leaves, ...sprays];
}

const leafForm = (length: number) => ({
  length,
  width: 0.52 * length,
  widest: 0.45,
  tipRadius: 0.3,
});

/** A shoot that bends toward the light, with alternate leaves and one at its end. */
function spray(room: Room, { at, outwardDeg }: Place, random: Random): Cubics[] {
  const size = Math.min(1.12 * LEAF_MM * room.grain, 0.13 * room.height) * random.between(0.9, 1.1);
  const count = random.whole(2, 4);
  const start = towardUp(outwardDeg, 0.35) + random.between(-30, 30);
  const end = start + random.pick([-1, 1]) * random.between(15, 40);
  const from = along(at, start, -0.9 * size);
  const control = along(at, start, 0.22 * size * count);
  const to = along(control, end, 0.28 * size * count);
  const arc = { from, control, to };
  const half = 0.52 * Math.max(room.plot.smallestWeb, 0.9);
  const parts = [ribbon(arc, taper(1.3 * half, half, 1))];
  let side = random.pick([-1, 1]);
  for (let i = 0; i < count; i++) {
    const t = 0.42 + (0.46 * i) / (count - 1);
    const heading = headingAt(arc, t) + side * random.between(38, 56);
    const length = size * random.between(0.85, 1.1) * (1 - 0.05 * i);
    // The foot lies past the twig's middle, so that the joint is as broad as the twig.
    parts.push(leaf(leafForm(length), along(pointOn(arc, t), heading, -half), heading));
    side = -side;
  }
  const tip = headingAt(arc, 1) + random.between(-12, 12);
  parts.push(leaf(leafForm(1.1 * size), along(to, tip, -0.3 * size), tip));
  return parts;
}

const degrees = (radians: number) => (radians * 180) / Math.PI;

function along(p: Point, headingDeg: number, mm: number): Point {
  const radians = (headingDeg * Math.PI) / 180;
  return { x: p.x + mm * Math.cos(radians), y: p.y + mm * Math.sin(radians) };
}

function headingAt(arc: Arc, t: number): number {
  const way = wayOn(arc, t);
  return degrees(Math.atan2(way.y, way.x));
}

/** A heading turned by a share of what it lacks to straight up. */
function towardUp(headingDeg: number, share: number): number {
  const lacking = ((-90 - headingDeg + 540) % 360) - 180;
  return headingDeg + share * lacking;
}
