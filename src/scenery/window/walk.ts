import { cubicLength, placeAtLength, placeOn, subchain } from '../../geometry/chain.js';
import { jetAt } from '../../geometry/cubic.js';
import { chainLength } from '../../geometry/measure.js';
import type { Cubics, Point } from '../../geometry/types.js';

/** A place on a window's edge, with unit vectors along it (clockwise) and into the window. */
export interface Station {
  readonly at: Point;
  readonly along: Point;
  readonly inward: Point;
  /** In a corner, sharp or rounded, both vectors are those of its bisector. */
  readonly corner: boolean;
  /** How much further off than the edges' parallels a corner's mitre lies: 1 off corners. */
  readonly mitre: number;
}

/** The edge turns by more than this in a corner, degrees. */
const CORNER_DEG = 12;
/** An arc that turns by more than this within two pitches is a rounded corner. */
const ROUND_CORNER_DEG = 45;
/** Sides that differ by rounding alone are divided alike. */
const HAIR = 1e-3;
/** Fewer divisions round a smooth window are no pattern. */
const LEAST_ROUND = 6;

/** A smooth stretch of the edge from corner to corner, or all of it. */
interface Run {
  readonly chain: Cubics;
  readonly length: number;
}

/**
 * Stations round a window's edge, clockwise, `perPitch` to each pitch. Every run from corner to
 * corner is divided into whole pitches of its own, as near as may be to the pitch asked for, and
 * each corner is a station that starts a pitch: so nothing is broken where runs or ends meet. A
 * window without corners is divided as a whole, from the middle of its head.
 */
export function stationsRound(contour: Cubics, pitchMm: number, perPitch: number): Station[] {
  const { runs, whole } = runsOf(contour, pitchMm);
  return runs.flatMap(({ chain, length }, k) => {
    const count = Math.max(whole ? LEAST_ROUND : 1, Math.round(length / pitchMm - HAIR)) * perPitch;
    const before = runs[(k + runs.length - 1) % runs.length].chain;
    return Array.from({ length: count }, (_, i) =>
      i === 0 ? cornerStation(before, chain, !whole) : stationAt(chain, (i / count) * length),
    );
  });
}

/** The place at a length along an open chain. */
export function stationAt(chain: Cubics, lengthMm: number): Station {
  const { i, t } = placeOn(chain, placeAtLength(chain, lengthMm));
  const { x, y } = jetAt(chain, i, t);
  const along = direction(chain, i, t);
  return { at: { x, y }, along, inward: rightOf(along), corner: false, mitre: 1 };
}

function cornerStation(before: Cubics, after: Cubics, corner: boolean): Station {
  const incoming = direction(before, before.length - 8, 1);
  const outgoing = direction(after, 0, 0);
  const along = unit({ x: incoming.x + outgoing.x, y: incoming.y + outgoing.y });
  const mitre = 1 / Math.cos(((turnDeg(incoming, outgoing) / 2) * Math.PI) / 180);
  return { at: { x: after[0], y: after[1] }, along, inward: rightOf(along), corner, mitre };
}

function runsOf(contour: Cubics, pitchMm: number): { runs: Run[]; whole: boolean } {
  const splits = splitsOf(contour, pitchMm);
  const whole = splits.length === 0;
  const places = whole ? [topMiddle(contour)] : splits;
  const runs = places.map((from, k) => {
    const to = places[(k + 1) % places.length];
    const chain = from < to ? subchain(contour, from, to) : acrossStart(contour, from, to);
    return { chain, length: chainLength(chain) };
  });
  return { runs, whole };
}

function acrossStart(contour: Cubics, from: number, to: number): Cubics {
  const count = contour.length / 8;
  const tail = from < count ? [...subchain(contour, from, count)] : [];
  const head = to > 0 ? [...subchain(contour, 0, to)] : [];
  return Float64Array.from([...tail, ...head]);
}

/** Places of the corners, sharp ones and the middles of rounded ones, in order. */
function splitsOf(contour: Cubics, pitchMm: number): number[] {
  const count = contour.length / 8;
  const splits: number[] = [];
  for (let k = 0; k < count; k++) {
    const before = ((k + count - 1) % count) * 8;
    if (turnDeg(direction(contour, before, 1), direction(contour, 8 * k, 0)) > CORNER_DEG) {
      splits.push(k);
    }
  }
  for (const bend of bendsOf(contour)) {
    const { turn, length, middle } = measured(contour, bend);
    if (turn > ROUND_CORNER_DEG && length < 2 * pitchMm) splits.push(middle % count);
  }
  return splits.sort((a, b) => a - b);
}

/** Runs of bent cubics between straight ones; none where all is bent. */
function bendsOf(contour: Cubics): number[][] {
  const count = contour.length / 8;
  const isBent = (k: number): boolean =>
    turnDeg(direction(contour, 8 * k, 0), direction(contour, 8 * k, 1)) > 1;
  const straight = Array.from({ length: count }, (_, k) => k).find((k) => !isBent(k));
  if (straight === undefined) return [];
  const bends: number[][] = [];
  for (let n = 1; n <= count; n++) {
    const k = straight + n;
    if (!isBent(k % count)) continue;
    const last = bends[bends.length - 1];
    if (last && last[last.length - 1] === k - 1) last.push(k);
    else bends.push([k]);
  }
  return bends;
}

/** How far a bend turns, its length, and the place of its middle (it may lie past the end). */
function measured(contour: Cubics, bend: readonly number[]) {
  const count = contour.length / 8;
  const lengths = bend.map((k) => cubicLength(contour, 8 * (k % count)));
  const length = lengths.reduce((sum, l) => sum + l, 0);
  const turn = bend.reduce((sum, k) => {
    const i = 8 * (k % count);
    return sum + turnDeg(direction(contour, i, 0), direction(contour, i, 1));
  }, 0);
  let left = length / 2;
  const at = lengths.findIndex((l) => {
    left -= l;
    return left <= SAME_MM;
  });
  const one = contour.slice(8 * (bend[at] % count), 8 * (bend[at] % count) + 8);
  const middle = bend[at] + placeAtLength(one, left + lengths[at]);
  return { turn, length, middle };
}

/** Lengths nearer to each other than this (mm) are one. */
const SAME_MM = 1e-6;

/** The place nearest to the middle of the window's head, halfway along a level one. */
function topMiddle(contour: Cubics): number {
  let [place, top] = [0, Infinity];
  for (let k = 0; k < contour.length / 8; k++) {
    for (const t of [0, 0.5]) {
      const { y } = jetAt(contour, 8 * k, t);
      const isLevelMiddle = t === 0.5 && Math.abs(direction(contour, 8 * k, t).y) < 1e-9;
      if (y < top - 1e-9 || (y < top + 1e-9 && isLevelMiddle)) [place, top] = [k + t, y];
    }
  }
  return place;
}

/** This near to a cubic's ends (in t) its direction is that a little further in. */
const END_T = 1e-6;

function direction(c: Cubics, i: number, t: number): Point {
  const { dx, dy } = jetAt(c, i, Math.max(END_T, Math.min(1 - END_T, t)));
  return unit({ x: dx, y: dy });
}

const turnDeg = (a: Point, b: Point): number =>
  (Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)) * 180) / Math.PI;

const rightOf = ({ x, y }: Point): Point => ({ x: -y, y: x });

function unit({ x, y }: Point): Point {
  const length = Math.max(1e-12, Math.hypot(x, y));
  return { x: x / length, y: y / length };
}

/** The point so far into the window, or out into the frame where negative, from a station. */
export const inset = ({ at, inward }: Station, mm: number): Point => ({
  x: at.x + inward.x * mm,
  y: at.y + inward.y * mm,
});
