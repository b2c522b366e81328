import { containsPoint } from '../../geometry/components.js';
import type { Point, Region } from '../../geometry/types.js';
import { type LeafForm, leaf } from '../leaf.js';
import type { Random } from '../random.js';
import { degrees, radians, turnBetween } from './angles.js';
import type { Clump, TuftLayer } from './tufts.js';

/** A leaf that may be drawn at an edge of the foliage. */
interface Spot {
  readonly foot: Point;
  readonly tip: Point;
  readonly headingDeg: number;
  readonly size: number;
}

/** A place on a clump's rim and the leaf drawn for it, in an order that its size does not change. */
interface Draw {
  readonly at: Point;
  readonly normalDeg: number;
  readonly size: number;
  readonly turnDeg: number;
  /** Share of its length that shows. */
  readonly out: number;
  /** Evenly spread in 0 <= x < 1: whether the foliage across a gap has a leaf here too. */
  readonly far: number;
}

/** Leaves stand within this of the rim's normal: beyond it an edge looks torn. */
const MOST_LEAN_DEG = 35;
/** How far a leaf turns from the normal to the way its twig grows. */
const COMBING = 0.5;
/** Tips nearer than this share of a leaf's width would merge into one blunt tooth. */
const TIP_ROOM = 0.75;
/** Tries a clump: many more than there is room for. */
const TRIES = 60;
const GOLDEN = 0.6180339887498949;

/**
 * Leaves along every edge of the foliage `mass`: on the rims that face outward, and, sparser, on
 * the far side of the gaps, so that a gap has leaves on both lips.
 */
export function edgeLeaves(
  mass: Region,
  layers: readonly TuftLayer[],
  openness: number,
  form: LeafForm,
  smallestHole: number,
): Region {
  const spots: Spot[] = [];
  const add = (spot: Spot): void => {
    const room = TIP_ROOM * form.width;
    if (!containsPoint(mass, spot.foot) || containsPoint(mass, spot.tip)) return;
    if (nearlyTouches(mass, spot.tip, spot.headingDeg, smallestHole)) {
      if (spot.size > SMALL) add(smaller(spot));
      return;
    }
    if (spots.some((s) => Math.hypot(s.tip.x - spot.tip.x, s.tip.y - spot.tip.y) < room)) return;
    spots.push(spot);
  };
  layers.forEach(({ tuft }, i) => {
    const later = layers.slice(i + 1);
    tuft.clumps.forEach((clump, k) => {
      for (const draw of draws(clump, form, tuft.random.branch(`rim ${k}`))) {
        const spot = rimSpot(draw, clump, form);
        add(later.some((l) => l.isInGap(spot.tip, openness)) ? smaller(spot) : spot);
      }
    });
  });
  for (const { tuft } of layers) {
    tuft.clumps.forEach((clump, k) => {
      for (const draw of draws(clump, form, tuft.random.branch(`far ${k}`))) {
        const spot = farSpot(draw, mass, form);
        if (spot) add(spot);
      }
    });
  }
  return {
    contours: spots.map(({ foot, headingDeg, size }) =>
      leaf(
        { ...form, length: form.length * size, width: form.width * (0.65 + 0.35 * size) },
        foot,
        headingDeg,
      ),
    ),
  };
}

/** A leaf that would crowd a gap is tried once more between these shares of its length. */
const SHRUNK: readonly [number, number] = [0.25, 0.8];
/** Leaves below this size have been shrunk already. */
const SMALL = 0.72;

function smaller({ foot, tip, headingDeg, size }: Spot): Spot {
  const at = (share: number): Point => ({
    x: foot.x + share * (tip.x - foot.x),
    y: foot.y + share * (tip.y - foot.y),
  });
  const [from, to] = SHRUNK;
  return { foot: at(from), tip: at(to), headingDeg, size: size * (to - from) };
}

/** Whether a tip would leave less than a hole's width to the foliage that it points at. */
export function nearlyTouches(mass: Region, tip: Point, headingDeg: number, gap: number): boolean {
  const [c, s] = [Math.cos(radians(headingDeg)), Math.sin(radians(headingDeg))];
  return [0.4, 0.8, 1.2].some((f) =>
    containsPoint(mass, { x: tip.x + f * gap * c, y: tip.y + f * gap * s }),
  );
}

function draws(clump: Clump, form: LeafForm, random: Random): Draw[] {
  const around = Math.PI * (clump.rx + clump.ry);
  const taken: number[] = [];
  const start = random.next();
  const found: Draw[] = [];
  for (let k = 0; k < TRIES; k++) {
    const size = random.between(0.7, 1.3);
    const turnDeg = 11 * random.bell();
    const out = random.between(0.35, 0.62);
    const room = (form.width * random.between(0.8, 1.25)) / around;
    const far = random.next();
    const s = (start + k * GOLDEN) % 1;
    if (taken.some((t) => Math.min(Math.abs(t - s), 1 - Math.abs(t - s)) < room)) continue;
    taken.push(s);
    const a = 2 * Math.PI * s;
    const at = { x: clump.x + clump.rx * Math.cos(a), y: clump.y + clump.ry * Math.sin(a) };
    const normalDeg = degrees(Math.atan2(Math.sin(a) / clump.ry, Math.cos(a) / clump.rx));
    found.push({ at, normalDeg, size, turnDeg, out, far });
  }
  return found;
}

function rimSpot(draw: Draw, clump: Clump, form: LeafForm): Spot {
  const lean = COMBING * turnBetween(draw.normalDeg, clump.headingDeg) + draw.turnDeg;
  return spotAt(
    draw.at,
    draw.normalDeg + held(lean),
    draw.out * form.length * draw.size,
    draw.size,
    form,
  );
}

/** How far out a far lip is looked for, in leaf lengths. */
const FAR_REACH = 1.7;
/** Share of the places across a gap that have a leaf. */
const FAR_SHARE = 0.6;

/** A leaf on the foliage across the gap from a rim, pointing back at it. */
function farSpot(draw: Draw, mass: Region, form: LeafForm): Spot | null {
  if (draw.far > FAR_SHARE) return null;
  const n = radians(draw.normalDeg);
  const at = (d: number): Point => ({
    x: draw.at.x + d * Math.cos(n),
    y: draw.at.y + d * Math.sin(n),
  });
  const step = form.length * 0.06;
  let d = form.length * 0.25;
  if (containsPoint(mass, at(d))) return null;
  while (!containsPoint(mass, at(d))) {
    d += step;
    if (d > FAR_REACH * form.length) return null;
  }
  const back = draw.normalDeg + 180;
  const lean = COMBING * turnBetween(back, UP_DEG) + draw.turnDeg;
  const out = Math.min(0.45 * form.length * draw.size, 0.5 * d);
  return spotAt(at(d), back + held(lean), out, draw.size, form);
}

const UP_DEG = -90;

function spotAt(rim: Point, headingDeg: number, out: number, size: number, form: LeafForm): Spot {
  const c = Math.cos(radians(headingDeg));
  const s = Math.sin(radians(headingDeg));
  const inset = form.length * size - out;
  return {
    foot: { x: rim.x - inset * c, y: rim.y - inset * s },
    tip: { x: rim.x + out * c, y: rim.y + out * s },
    headingDeg,
    size,
  };
}

const held = (lean: number): number => Math.max(-MOST_LEAN_DEG, Math.min(MOST_LEAN_DEG, lean));
