import type { Scene } from '../scene/scene.js';
import type { FoldKind, SpinePlan } from './book.js';
import type { Fault } from './fault.js';

/** The open angle aimed at when the scene names neither pitch nor angle. Common practice, no
 * source: 60 to 100 degrees; nearer 180 the strip goes slack, nearer 0 the book will not open. */
const USUAL_ANGLE_DEG = 80;
/** A pitch that we choose is a multiple of this, so that a maker can measure it. */
const PITCH_STEP_MM = 0.5;

/** Panel spacing of two faces of `pitch` at inside angle `angleDeg`: d = 2 p sin(angle / 2). */
export const cellDepth = (pitch: number, angleDeg: number): number =>
  2 * pitch * Math.sin(radians(angleDeg) / 2);

/** How far an outer fold stands out beyond the inner ones: h = p cos(angle / 2). */
export const foldReach = (pitch: number, angleDeg: number): number =>
  pitch * Math.cos(radians(angleDeg) / 2);

/** The angle that gives `spacing`; the caller sees to it that spacing <= 2 pitch. */
export const openAngle = (pitch: number, spacing: number): number =>
  (2 * Math.asin(Math.min(1, spacing / (2 * pitch))) * 180) / Math.PI;

/** Folds between `faces` faces, seen from outside, front to back: the outer ones are mountains. */
export const innerFolds = (faces: number): FoldKind[] =>
  Array.from({ length: faces - 1 }, (_, i) => (i % 2 === 0 ? 'mountain' : 'valley'));

/** The strip that M panels hang on: M - 1 cells of two faces each. */
export function planSpine(scene: Scene, faults: Fault[]): SpinePlan {
  const { spacing, spine } = scene;
  const pitchMm = spine.pitch ?? pitchFor(spacing, spine.angleDeg);
  if (spacing >= 2 * pitchMm) {
    faults.push({
      path: ['spine', 'pitch'],
      message:
        `A fold pitch of ${round(pitchMm)} mm cannot span a spacing of ${round(spacing)} mm: two faces ` +
        `pulled flat reach ${round(2 * pitchMm)} mm. Make the pitch at least ` +
        `${round(pitchFor(spacing, undefined))} mm, or the spacing smaller.`,
    });
  }
  const angleDeg = openAngle(pitchMm, spacing);
  const cells = scene.panels - 1;
  const faces = 2 * cells;
  return {
    pitchMm,
    angleDeg,
    cells,
    faces,
    tabMm: spine.tab,
    folds: innerFolds(faces),
    reachMm: foldReach(pitchMm, angleDeg),
    lengthMm: faces * pitchMm + 2 * spine.tab,
    scoring: spine.scoring,
    card: scene.spineCard,
  };
}

/** The pitch that spans `spacing` at an angle; without one, a handy pitch near the usual angle. */
export function pitchFor(spacing: number, angleDeg: number | undefined): number {
  if (angleDeg !== undefined) return spacing / (2 * Math.sin(radians(angleDeg) / 2));
  const exact = spacing / (2 * Math.sin(radians(USUAL_ANGLE_DEG) / 2));
  return Math.ceil(exact / PITCH_STEP_MM - 1e-9) * PITCH_STEP_MM;
}

const radians = (degrees: number): number => (degrees * Math.PI) / 180;
const round = (mm: number): number => Math.round(mm * 100) / 100;
