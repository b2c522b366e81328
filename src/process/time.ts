import { chainLength, flatten } from '../geometry/measure.js';
import type { Cubics, Point } from '../geometry/types.js';
import type { PlacedMark } from './layers.js';
import { endOf, startOf } from './order/runs.js';
import type { Motion, Process, WorkedOperation } from './process.js';

/** One operation in running order. */
export interface TimedStep {
  readonly operation: WorkedOperation;
  readonly marks: readonly PlacedMark[];
}

/** What a machine does in one step. */
export interface StepTime {
  readonly operation: WorkedOperation;
  /** Worked length, gone over once. */
  readonly lengthMm: number;
  /** How often all of it is gone over, each time from the first path to the last. */
  readonly passes: number;
  /** Moves without work in one pass, from where the head waits to the last path's start. */
  readonly travelMm: number;
  readonly paths: number;
  /** Places where the head turns by more than 15 degrees at once. */
  readonly corners: number;
  /** All passes with their lifts and travel; not the stop before the step. */
  readonly seconds: number;
}

/**
 * What each step takes when the head comes from `from` (mm, where it waits before each pass) and
 * stands still at both ends of each path. Speed rises and falls with the one acceleration; at
 * corners the head slows so that it need round them by no more than `cornerMm`, and in curves so
 * that it is pulled aside no harder than it is sped up. A controller that looks less far ahead
 * takes longer.
 */
export function timeOf(
  steps: readonly TimedStep[],
  process: Process,
  from: Point,
): readonly StepTime[] {
  const { motion } = process;
  return steps.map(({ operation, marks }): StepTime => {
    const { passes, speedMmS } = process.operations[operation];
    let [lengthMm, travelMm, corners, seconds] = [0, 0, 0, 0];
    let at = from;
    for (const mark of marks) {
      const gapMm = distance(at, startOf(mark));
      const path = pathTime(mark, speedMmS, motion);
      lengthMm += chainLength(mark.cubics);
      travelMm += gapMm;
      corners += path.corners;
      seconds += moveTime(gapMm, motion.travelMmS, motion.accelerationMmS2);
      seconds += path.seconds + motion.liftS;
      at = endOf(mark);
    }
    const paths = marks.length;
    return { operation, lengthMm, passes, travelMm, paths, corners, seconds: passes * seconds };
  });
}

/** Seconds of a straight move from standstill to standstill, by uniform acceleration. */
export const moveTime = (mm: number, speedMmS: number, accelerationMmS2: number): number =>
  stretchTime(mm, 0, 0, speedMmS, accelerationMmS2);

/** Chords are far nearer to their curves than a head follows them. */
const CHORD_MM = 0.002;
/** A turn at one place that counts as a corner. */
const CORNER_RAD = Math.PI / 12;

/** Seconds along one path from standstill to standstill, and its corners. */
export function pathTime(
  { cubics }: Pick<PlacedMark, 'cubics'>,
  speedMmS: number,
  { accelerationMmS2, cornerMm }: Motion,
): { seconds: number; corners: number } {
  const chords = chordsOf(cubics);
  // The speed at which each chord begins; the last one ends at a standstill.
  const speeds = chords.map(({ turn, startRadiusMm }, k) =>
    k === 0
      ? 0
      : Math.min(
          speedMmS,
          cornerSpeed(turn, accelerationMmS2, cornerMm),
          Math.sqrt(accelerationMmS2 * startRadiusMm),
        ),
  );
  speeds.push(0);
  const reach = (mmS: number, mm: number): number =>
    Math.sqrt(mmS ** 2 + 2 * accelerationMmS2 * mm);
  chords.forEach(({ mm }, k) => {
    speeds[k + 1] = Math.min(speeds[k + 1], reach(speeds[k], mm));
  });
  for (let k = chords.length - 1; k >= 0; k--) {
    speeds[k] = Math.min(speeds[k], reach(speeds[k + 1], chords[k].mm));
  }
  let seconds = 0;
  chords.forEach(({ mm, radiusMm }, k) => {
    const most = Math.min(speedMmS, Math.sqrt(accelerationMmS2 * radiusMm));
    const top = Math.max(most, speeds[k], speeds[k + 1]);
    seconds += stretchTime(mm, speeds[k], speeds[k + 1], top, accelerationMmS2);
  });
  return { seconds, corners: chords.filter(({ turn }, k) => k > 0 && turn > CORNER_RAD).length };
}

interface Chord {
  readonly mm: number;
  /** Of the curve that it stands for; infinite where that is straight. */
  readonly radiusMm: number;
  /** What is left of the direction's change at its start when the curves' own is taken off. */
  readonly turn: number;
  /** Of the circle through its start and the points before and after. */
  readonly startRadiusMm: number;
}

function chordsOf(cubics: Cubics): Chord[] {
  const chords: Chord[] = [];
  let before: Point | null = null;
  let heading: Point | null = null;
  for (let i = 0; i < cubics.length; i += 8) {
    const points = distinct(flatten(cubics.subarray(i, i + 8), CHORD_MM));
    const last = points.length - 1;
    if (last < 1) continue;
    const radii = points.map((p, k) =>
      k === 0 || k === last ? 0 : circleThrough(points[k - 1], p, points[k + 1]),
    );
    for (let k = 0; k < last; k++) {
      const [a, b] = [points[k], points[k + 1]];
      const joint = k === 0 && heading ? turnBetween(heading, directionAt(cubics, i, 0)) : 0;
      const startRadiusMm = k > 0 ? radii[k] : before ? circleThrough(before, a, b) : Infinity;
      const radiusMm = last === 1 ? Infinity : Math.max(radii[k], radii[k + 1]);
      chords.push({ mm: distance(a, b), radiusMm, turn: joint, startRadiusMm });
      before = a;
    }
    heading = directionAt(cubics, i, 1);
  }
  return chords;
}

/** Where a cubic heads at its start (t = 0) or its end (t = 1), of any length. */
function directionAt(c: Cubics, i: number, t: 0 | 1): Point {
  const at = t === 0 ? 0 : 6;
  const others = t === 0 ? [2, 4, 6] : [4, 2, 0];
  const sign = t === 0 ? 1 : -1;
  for (const k of others) {
    const x = sign * (c[i + k] - c[i + at]);
    const y = sign * (c[i + k + 1] - c[i + at + 1]);
    if (Math.hypot(x, y) > 1e-6) return { x, y };
  }
  return { x: 0, y: 0 };
}

/** Curves that meet at less than this (1 degree) are taken to run on smoothly. */
const SMOOTH_RAD = Math.PI / 180;

/**
 * The speed (mm/s) at a corner that turns by `turn` radians if it may be rounded by `cornerMm`: the
 * circle that touches both sides and passes the corner at that distance has the radius
 * d s / (1 - s), with s the sine of half the inside angle, and v^2 = a r holds on it. A general
 * formula of motion control, from memory.
 */
export function cornerSpeed(turn: number, accelerationMmS2: number, cornerMm: number): number {
  if (turn < SMOOTH_RAD) return Infinity;
  const sine = Math.cos(turn / 2);
  return Math.sqrt((accelerationMmS2 * cornerMm * sine) / (1 - sine));
}

/** Seconds for a straight stretch entered and left at the given speeds, never above `mostMmS`. */
function stretchTime(
  mm: number,
  enterMmS: number,
  leaveMmS: number,
  mostMmS: number,
  accelerationMmS2: number,
): number {
  const peakSq = accelerationMmS2 * mm + (enterMmS ** 2 + leaveMmS ** 2) / 2;
  const top = Math.min(mostMmS, Math.sqrt(peakSq));
  const changing = (2 * top - enterMmS - leaveMmS) / accelerationMmS2;
  const evenMm = mm - (2 * top ** 2 - enterMmS ** 2 - leaveMmS ** 2) / (2 * accelerationMmS2);
  return changing + (top > 0 ? Math.max(0, evenMm) / top : 0);
}

/** How far the direction turns from u to v, in radians from 0 to pi. */
const turnBetween = (u: Point, v: Point): number =>
  Math.abs(Math.atan2(u.x * v.y - u.y * v.x, u.x * v.x + u.y * v.y));

/** The radius of the circle through three points; infinite where they lie on a line. */
function circleThrough(a: Point, b: Point, c: Point): number {
  const cross = Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  return cross === 0 ? Infinity : (distance(a, b) * distance(b, c) * distance(a, c)) / (2 * cross);
}

/** Points without those that lie on the one before them, which have no direction. */
const distinct = (points: readonly Point[]): Point[] =>
  points.filter((p, k) => k === 0 || distance(points[k - 1], p) > 1e-9);

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
