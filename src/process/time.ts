import { chainLength, flatten } from '../geometry/measure.js';
import type { Point } from '../geometry/types.js';
import { endOf, startOf } from './order/runs.js';
import type { PlacedMark } from './order.js';
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
  const points = distinct(flatten(cubics, CHORD_MM));
  const lengths = points.slice(1).map((p, k) => distance(points[k], p));
  const speeds = points.map(() => 0);
  let corners = 0;
  for (let k = 1; k + 1 < points.length; k++) {
    const turn = turnAt(points[k - 1], points[k], points[k + 1]);
    if (turn > CORNER_RAD) corners++;
    const radius = circleThrough(points[k - 1], points[k], points[k + 1]);
    speeds[k] = Math.min(
      speedMmS,
      cornerSpeed(turn, accelerationMmS2, cornerMm),
      Math.sqrt(accelerationMmS2 * radius),
    );
  }
  // No faster at a place than the places before and after it allow.
  for (let k = 1; k < points.length; k++) {
    speeds[k] = Math.min(
      speeds[k],
      Math.sqrt(speeds[k - 1] ** 2 + 2 * accelerationMmS2 * lengths[k - 1]),
    );
  }
  for (let k = points.length - 2; k >= 0; k--) {
    speeds[k] = Math.min(
      speeds[k],
      Math.sqrt(speeds[k + 1] ** 2 + 2 * accelerationMmS2 * lengths[k]),
    );
  }
  const seconds = lengths.reduce(
    (sum, mm, k) => sum + stretchTime(mm, speeds[k], speeds[k + 1], speedMmS, accelerationMmS2),
    0,
  );
  return { seconds, corners };
}

/**
 * The speed (mm/s) at a corner that turns by `turn` radians if it may be rounded by `cornerMm`: the
 * circle that touches both sides and passes the corner at that distance has the radius
 * d s / (1 - s), with s the sine of half the inside angle, and v^2 = a r holds on it. A general
 * formula of motion control, from memory.
 */
export function cornerSpeed(turn: number, accelerationMmS2: number, cornerMm: number): number {
  const sine = Math.cos(turn / 2);
  return Math.sqrt((accelerationMmS2 * cornerMm * sine) / Math.max(1 - sine, Number.MIN_VALUE));
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

/** How far the direction turns at b, in radians from 0 to pi. */
function turnAt(a: Point, b: Point, c: Point): number {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, c.x - b.x, c.y - b.y];
  return Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
}

/** The radius of the circle through three points; infinite where they lie on a line. */
function circleThrough(a: Point, b: Point, c: Point): number {
  const cross = Math.abs((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x));
  return cross === 0 ? Infinity : (distance(a, b) * distance(b, c) * distance(a, c)) / (2 * cross);
}

/** Points without those that lie on the one before them, which have no direction. */
const distinct = (points: readonly Point[]): Point[] =>
  points.filter((p, k) => k === 0 || distance(points[k - 1], p) > 1e-9);

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);
