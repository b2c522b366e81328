import { circle } from '../../geometry/primitives.js';
import {
  inOrder,
  moveCubics,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../geometry/transform.js';
import type { Point, Region } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import { ribbon, taper } from '../grass/ribbon.js';
import type { Random } from '../random.js';
import type { Grain, HeadDrawing, HeadPlace } from './head.js';
import { floretsWithin, GOLDEN_DEG } from './spiral.js';

/** Golden-angle petals lie evenly where their number is of Fibonacci's. */
const PETALS = [13, 8, 5] as const;
/** A petal's breadth in smallest webs and the notch beside it in smallest holes, at the rim. */
const ROOM = { petal: 1.25, notch: 0.6 };
/** Coarse panels have petals this much broader. */
const COARSER = 1.35;
/** The disc's radius as a share of the head's. */
const DISC = 0.42;
/** Fewer holes than this look like a button's. */
const LEAST_HOLES = 5;
/** Pressed florets, mm. */
const BOSS = { radius: 0.6, apart: 2.1, rim: 0.4 };

/** How many petals there is room for round a head of this radius; 0 for a plain button. */
export function petalCount(radius: number, grain: Grain): number {
  const { smallestWeb, smallestHole, fineness } = grain;
  const each = ROOM.petal * smallestWeb + ROOM.notch * smallestHole;
  const room = (2 * Math.PI * radius) / (each * mix(COARSER, 1, fineness));
  return PETALS.find((n) => n <= room) ?? 0;
}

/** Directions of the petals in degrees, in the order in which they open. */
export const petalAngles = (count: number): number[] =>
  Array.from({ length: count }, (_, n) => ((n + 1) * GOLDEN_DEG) % 360);

/** Petals round a disc of florets, seen a little from the side. */
export function daisy(place: HeadPlace, grain: Grain, random: Random): HeadDrawing {
  const { neck, headingDeg, half: radius, length } = place;
  const squash = Math.min(1, length / (2 * radius));
  const toPlace = inOrder(
    rotation(random.between(0, 360)),
    translation(radius, 0),
    scaling(squash, 1),
    rotation(headingDeg),
    translation(neck.x, neck.y),
  );
  const count = petalCount(radius, grain);
  const petals = petalAngles(count).map((deg) =>
    petal(radius, deg, count, grain, random.branch(deg)),
  );
  const disc = circle(0, 0, count > 0 ? DISC * radius : radius).contours[0];
  const centre = count > 0 ? DISC * radius : 0.6 * radius;
  const holes = holesIn(count > 0 ? 0.56 * radius : 0.7 * radius, grain);
  const put = (r: Region) => moveRegion(r, toPlace);
  return {
    card: [...petals, disc].map((c) => moveCubics(c, toPlace)),
    holes: holes.map(put),
    scores: [],
    bosses: holes.length > 0 ? [] : bossesIn(centre).map(put),
  };
}

function petal(radius: number, deg: number, count: number, grain: Grain, luck: Random) {
  const pitch = (2 * Math.PI * radius) / count;
  const half = Math.max(0.57 * grain.smallestWeb, 0.34 * pitch);
  const reach = radius * luck.between(0.93, 1.05) - half;
  const a = (deg * Math.PI) / 180;
  const at = (r: number): Point => ({ x: r * Math.cos(a), y: r * Math.sin(a) });
  const foot = 0.2 * radius;
  const arc = { from: at(foot), control: at((foot + reach) / 2), to: at(reach) };
  return ribbon(arc, taper(Math.max(0.57 * grain.smallestWeb, 0.6 * half), half, 1), 'round');
}

/** Florets cut right through, where the head has room for enough of them. */
function holesIn(radius: number, { smallestWeb, smallestHole, fineness }: Grain): Region[] {
  const hole = 0.62 * smallestHole;
  const apart = (2 * hole + 1.06 * smallestWeb) * mix(1.15, 1, fineness);
  const florets = floretsWithin(radius - hole - smallestWeb, apart);
  return florets.length < LEAST_HOLES ? [] : florets.map(({ x, y }) => circle(x, y, hole));
}

/** Florets to press, or the whole eye as one where there are too few. */
function bossesIn(radius: number): Region[] {
  const florets = floretsWithin(radius - BOSS.rim, BOSS.apart);
  if (florets.length < LEAST_HOLES) return [circle(0, 0, 0.7 * radius)];
  return florets.map(({ x, y }) => circle(x, y, BOSS.radius));
}
