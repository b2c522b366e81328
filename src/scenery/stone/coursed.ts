import type { Bounds } from '../../geometry/types.js';
import type { Cell } from '../brick/cells.js';
import type { Opening } from '../brick/opening.js';
import type { Random } from '../random.js';

/** A squared stone with half of each joint round it, mm. */
export interface Stone extends Cell {
  /** It ends the wall, at the opening or at the card's edge. */
  readonly at: 'opening' | 'edge' | 'wall';
  /** Where two thin stones take the place of one, the level joint between them, y in mm. */
  readonly split: number | null;
}

/**
 * The least lap of a cross joint over one in the course below, in courses: EN 1996-1-1, 8.1.4.1
 * (0.4 of the unit's height), from memory.
 */
export const LEAST_LAP = 0.4;
/** A stone's length, in courses; quoins are long and short by turns. */
const LONG = [1.2, 2.7] as const;
const QUOIN = { long: 2.2, short: 1.35 } as const;
/** A pier narrower than this, in courses, is one stone. */
const LEAST_PAIR = 2.2;
/** A stone is longer than this many laps. */
const SHORTEST = 1.5;
/** Courses differ in height by up to this much. */
const UNEVEN = 0.22;
/** Sets of stones tried for a course until every joint laps. */
const TRIES = 40;
/** Chance that a stone shorter than this many courses is two thin ones. */
const SPLIT_CHANCE = 0.28;
const SPLIT_BELOW = 1.9;
/** Thin stones are no thinner than this, mm. */
const LEAST_THIN_MM = 1.7;

/** The squared stones of a frame, set out round its opening from the sill up. */
export function coursedStones(
  card: Bounds,
  opening: Opening | null,
  courseMm: number,
  random: Random,
): Stone[] {
  const stones: Stone[] = [];
  let below: readonly number[] = [];
  for (const bed of beds(card, opening, courseMm, random.branch('beds'))) {
    const middle = (bed.top + bed.bottom) / 2;
    const beside = opening !== null && opening.form !== 'round' && middle > opening.springing;
    const split = beside && middle < opening.bounds.maxY;
    const walls: Stretch[] = split
      ? [
          { x0: card.minX, x1: opening.bounds.minX, left: 'edge', right: 'opening' },
          { x0: opening.bounds.maxX, x1: card.maxX, left: 'opening', right: 'edge' },
        ]
      : [{ x0: card.minX, x1: card.maxX, left: 'edge', right: 'edge' }];
    const luck = random.branch(`course ${bed.course}`);
    const row = walls.map((w, i) => stonesOf(w, bed, courseMm, below, luck.branch(i)));
    stones.push(...row.flat());
    below = row.flatMap((wall) => wall.slice(1).map((s) => s.x0));
  }
  return stones;
}

interface Bed {
  readonly course: number;
  readonly top: number;
  readonly bottom: number;
}

/** Courses from the foot of the card up, uneven, but gauged with the opening's sill and head. */
function beds(card: Bounds, opening: Opening | null, courseMm: number, random: Random): Bed[] {
  const sill = opening ? opening.bounds.maxY : card.maxY;
  const head = opening ? opening.bounds.minY : card.minY;
  const heightOf = (course: number) =>
    courseMm * random.branch(course).between(1 - UNEVEN, 1 + UNEVEN);
  const count = Math.max(1, Math.round((sill - head) / courseMm));
  const wanted = Array.from({ length: count }, (_, i) => heightOf(i));
  const scale = (sill - head) / wanted.reduce((a, b) => a + b, 0);
  const found: Bed[] = [];
  for (let bottom = sill, course = 0; bottom > card.minY + 1e-6; course++) {
    const top = bottom - (course < count ? wanted[course] * scale : heightOf(course));
    found.push({ course, top, bottom });
    bottom = top;
  }
  for (let top = sill, course = -1; top < card.maxY - 1e-6; course--) {
    const bottom = top + heightOf(course);
    found.unshift({ course, top, bottom });
    top = bottom;
  }
  return found;
}

interface Stretch {
  readonly x0: number;
  readonly x1: number;
  readonly left: Stone['at'];
  readonly right: Stone['at'];
}

function stonesOf(
  wall: Stretch,
  bed: Bed,
  courseMm: number,
  below: readonly number[],
  random: Random,
): Stone[] {
  const height = bed.bottom - bed.top;
  const inner = crossJoints(wall, bed, courseMm, below, random);
  const xs = [wall.x0, ...inner, wall.x1];
  return xs.slice(1).map((x1, i) => {
    const luck = random.branch(`stone ${i}`);
    const [first, last] = [i === 0, i === xs.length - 2];
    const thin = height * luck.between(0.42, 0.58);
    const isSplit =
      luck.chance(SPLIT_CHANCE) &&
      !first &&
      !last &&
      x1 - xs[i] < SPLIT_BELOW * height &&
      Math.min(thin, height - thin) > LEAST_THIN_MM;
    // Where a whole pier is one stone, it is the opening's.
    const at = first && last ? 'opening' : first ? wall.left : last ? wall.right : 'wall';
    return {
      kind: 'stretcher' as const,
      course: bed.course,
      x0: xs[i],
      x1,
      y0: bed.top,
      y1: bed.bottom,
      at,
      split: isSplit ? bed.top + thin : null,
    };
  });
}

/** Where a course's stones meet: both quoins first, then what laps best over the joints below. */
function crossJoints(
  { x0, x1 }: Stretch,
  bed: Bed,
  courseMm: number,
  below: readonly number[],
  random: Random,
): number[] {
  // Long on one side where the other is short, so that both quoins are toothed.
  const [left, right] = (
    bed.course % 2 === 0 ? [QUOIN.long, QUOIN.short] : [QUOIN.short, QUOIN.long]
  ).map((courses) => courses * courseMm);
  const least = LEAST_LAP * (bed.bottom - bed.top);
  const room = x1 - x0 - left - right;
  if (x1 - x0 < LEAST_PAIR * courseMm) return [];
  if (room < LONG[0] * courseMm) {
    return lapped([x0 + ((x1 - x0) * left) / (left + right)], below, least);
  }
  let best: number[] = [];
  let bestLap = -Infinity;
  for (let attempt = 0; attempt < TRIES && bestLap < least; attempt++) {
    const joints = filled(x0 + left, x1 - right, courseMm, random.branch(attempt));
    const lap = lapOver(joints, below);
    if (lap > bestLap) [best, bestLap] = [joints, lap];
  }
  return lapped(best, below, least);
}

/** From one quoin to the other in stones of any length. */
function filled(from: number, to: number, courseMm: number, random: Random): number[] {
  const lengths: number[] = [];
  let sum = 0;
  while (sum < to - from) {
    const length = random.between(...LONG) * courseMm;
    lengths.push(length);
    sum += length;
  }
  // The last stone is left out where less than half of it is wanted.
  if (lengths.length > 1 && sum - (to - from) > lengths.at(-1)! / 2) sum -= lengths.pop()!;
  const scale = (to - from) / sum;
  const joints = [from];
  for (const length of lengths) joints.push(joints.at(-1)! + length * scale);
  return joints;
}

function lapOver(joints: readonly number[], below: readonly number[]): number {
  return Math.min(...joints.map((x) => Math.min(...below.map((b) => Math.abs(b - x)))));
}

/** Joints that still stand too near over one below are moved off it to the nearer side. */
function lapped(joints: readonly number[], below: readonly number[], least: number): number[] {
  const moved = [...joints];
  joints.forEach((x, i) => {
    const isFree = (p: number) =>
      below.every((b) => Math.abs(b - p) >= least - 1e-9) &&
      p - (moved[i - 1] ?? -Infinity) > least * SHORTEST &&
      (moved[i + 1] ?? Infinity) - p > least * SHORTEST;
    const places = [x, ...below.flatMap((b) => [b - least, b + least])].filter(isFree);
    places.sort((a, b) => Math.abs(a - x) - Math.abs(b - x));
    moved[i] = places[0] ?? x;
  });
  return moved;
}
