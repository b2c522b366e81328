import { joined, subchain } from '../../geometry/chain.js';
import { boundsOf, contourArea, middleOfBox } from '../../geometry/measure.js';
import type { Cubics, Point } from '../../geometry/types.js';
import type { Piece } from '../../panel/piece.js';
import type { Mark } from '../layers.js';
import type { Nibs } from '../process.js';
import { placeAt, type Way, wayRound } from '../way.js';
import { edgeOf } from './edges.js';
import { LOOK_STEP_MM, type Look, looksRound } from './looks.js';

/** An uncut bit that holds a part in its sheet. */
export interface Nib {
  /** In the middle of its gap in the path. */
  readonly at: Point;
  /** It stands on an edge that is seen: a rest of it shows where it is torn or cut. */
  readonly shows: boolean;
}

/** One contour of the path with the nibs on it. */
export interface Held {
  readonly contour: Cubics;
  readonly nibs: readonly Nib[];
  /** The path without its gaps: the closed contour itself where there are none. */
  readonly parts: readonly Cubics[];
  /** It should have nibs, but all its edges are scenery or too bent. */
  readonly loose: boolean;
}

/**
 * Waste out of holes smaller than this on their longer side (mm) cannot tip up far enough to meet
 * the head. Common practice, no source.
 */
const SMALL_HOLE_MM = 15;
/** A nib keeps this far (mm) from corners and bends, or it takes a bit of them along. */
const CLEAR_MM = 1;
/** Nibs of one contour stand at least this far apart (mm), or one hinge is made of them. */
const LEAST_APART_MM = 8;
/** A run that turns less than this (radians, half a degree) is straight. */
const STRAIGHT_RAD = (0.5 * Math.PI) / 180;
/** A frame without straight runs is used where it turns no more than this (radians, 4 degrees). */
const GENTLE_RAD = (4 * Math.PI) / 180;
/** Of a bent edge places that turn by up to this much (radians) more than its flattest are flat. */
const FLAT_RAD = (6 * Math.PI) / 180;

/**
 * The path of a piece's cut with its nibs, contour by contour. Each outer contour and each hole too
 * large to be left to itself has up to `count` of them, as far apart round it as can be, on the best
 * edges that it has: straight or flat ones that nobody looks at; else straight or gently bent ones
 * of the frame, though they show. None stands on an edge of scenery.
 */
export function heldContours(
  piece: Piece,
  contours: readonly Cubics[],
  nibs: Nibs,
  kerfMm: number,
): Held[] {
  // The beam takes half the kerf off both ends of what it leaves.
  const gapMm = nibs.widthMm + kerfMm;
  return contours.map((contour): Held => {
    if (nibs.count === 0 || !wantsNibs(contour)) {
      return { contour, nibs: [], parts: [contour], loose: false };
    }
    const way = wayRound(contour);
    const all = looksRound(way, gapMm / 2 + CLEAR_MM);
    const { looks, shows } = bestLooks(all, edgeOf(piece, contour, kerfMm / 2));
    const chosen = spread(looks, way.roundMm, nibs.count, Math.max(LEAST_APART_MM, 2 * gapMm));
    return {
      contour,
      nibs: chosen.map(({ point }) => ({ at: point, shows })),
      parts: parted(contour, way, chosen, gapMm),
      loose: chosen.length === 0,
    };
  });
}

/**
 * Cuts with their nibs, the parts of one contour one after the other.
 * @param cut closed cuts, in running order.
 * @param kerfMm width of what the tool takes away.
 */
export const heldMarks = (piece: Piece, cut: readonly Mark[], nibs: Nibs, kerfMm: number): Mark[] =>
  heldContours(
    piece,
    cut.map(({ cubics }) => cubics),
    nibs,
    kerfMm,
  ).flatMap((held) =>
    held.parts.map(
      (cubics): Mark =>
        held.nibs.length === 0 ? { cubics, closed: true } : { cubics, closed: false, kind: 'nib' },
    ),
  );

/** Where nibs of a piece stand, in its own front coordinates, and parts that nothing holds. */
export interface Holding {
  readonly nibs: readonly Nib[];
  readonly loose: readonly Point[];
}

/** What holds a piece whose cut runs along these contours, for checks. */
export function holdingOf(
  piece: Piece,
  contours: readonly Cubics[],
  nibs: Nibs,
  kerfMm: number,
): Holding {
  const held = heldContours(piece, contours, nibs, kerfMm);
  return {
    nibs: held.flatMap((one) => one.nibs),
    loose: held.filter(({ loose }) => loose).map(({ contour }) => middleOfBox(boundsOf([contour]))),
  };
}

function wantsNibs(contour: Cubics): boolean {
  const { minX, minY, maxX, maxY } = boundsOf([contour]);
  return contourArea(contour) > 0 || Math.max(maxX - minX, maxY - minY) >= SMALL_HOLE_MM;
}

/** Places for nibs, all of one rank, and whether nibs there show. */
function bestLooks(
  looks: readonly Look[],
  edge: ReturnType<typeof edgeOf>,
): { looks: readonly Look[]; shows: boolean } {
  const kinds = looks.map(({ point }) => edge(point));
  const plain = looks.filter((_, k) => kinds[k] === 'plain');
  if (plain.length > 0) return { looks: flattest(plain, Infinity), shows: false };
  const frame = looks.filter((_, k) => kinds[k] === 'frame');
  return { looks: flattest(frame, GENTLE_RAD), shows: true };
}

/** The straight ones; if there are none, those about as flat as the flattest, up to a limit. */
function flattest(looks: readonly Look[], mostRad: number): readonly Look[] {
  const least = Math.min(...looks.map(({ turning }) => turning));
  const most = least <= STRAIGHT_RAD ? STRAIGHT_RAD : Math.min(mostRad, least + FLAT_RAD);
  return looks.filter(({ turning }) => turning <= most);
}

/** Up to `count` of the looks: the middle of their longest run, then always the furthest off. */
function spread(looks: readonly Look[], roundMm: number, count: number, leastMm: number): Look[] {
  if (looks.length === 0) return [];
  const chosen = [middleOfLongestRun(looks, roundMm)];
  while (chosen.length < count) {
    const off = looks.map((look) =>
      Math.min(...chosen.map((other) => between(look, other, roundMm))),
    );
    const furthest = off.indexOf(Math.max(...off));
    if (off[furthest] < leastMm) break;
    chosen.push(looks[furthest]);
  }
  return chosen;
}

/** The shorter way round from one to the other. */
function between(a: Look, b: Look, roundMm: number): number {
  const way = Math.abs(a.atMm - b.atMm);
  return Math.min(way, roundMm - way);
}

function middleOfLongestRun(looks: readonly Look[], roundMm: number): Look {
  const follows = (k: number): boolean => {
    const before = looks[(k + looks.length - 1) % looks.length];
    return between(before, looks[k], roundMm) < 1.5 * LOOK_STEP_MM;
  };
  const start = looks.findIndex((_, k) => !follows(k));
  if (start < 0) return looks[0];
  let best = { first: start, size: 0 };
  for (let k = 0; k < looks.length; ) {
    const first = start + k;
    let size = 1;
    while (k + size < looks.length && follows((first + size) % looks.length)) size++;
    if (size > best.size) best = { first, size };
    k += size;
  }
  return looks[(best.first + Math.floor(best.size / 2)) % looks.length];
}

/** What is left of a closed contour between gaps round the given looks, in order round it. */
function parted(contour: Cubics, way: Way, looks: readonly Look[], gapMm: number): Cubics[] {
  if (looks.length === 0) return [contour];
  const inOrder = looks.toSorted((a, b) => a.atMm - b.atMm);
  return inOrder.map(({ atMm }, k) => {
    const next = inOrder[(k + 1) % inOrder.length].atMm;
    const from = placeAt(way, atMm + gapMm / 2);
    const to = placeAt(way, next - gapMm / 2);
    if (from < to) return subchain(contour, from, to);
    return joined(subchain(contour, from, contour.length / 8), subchain(contour, 0, to));
  });
}
