import type { Bounds } from '../../geometry/types.js';
import { flatArchJoints, type RingJoint, radiatingJoints } from './arch.js';
import type { Opening } from './opening.js';

/** How an arch is built, in courses. */
export interface RingForm {
  /** Depths from the one that is wanted to the least that will do. */
  readonly depths: readonly number[];
  readonly voussoir: number;
}

/** A ring is a brick (215 + 10) or half a brick deep; a course is 75: three courses or 1.5. */
export const BRICK_RING: RingForm = { depths: [3, 1.5], voussoir: 1 };
/** Lean of a flat arch's skewbacks off plumb. */
const SKEW_DEG = 30;

/** The arch over an opening, as deep as the card above it allows; empty where there is no room. */
export function headOf(
  opening: Opening,
  card: Bounds,
  courseMm: number,
  form = BRICK_RING,
): RingJoint[] {
  const room = roomRound(opening, card);
  const courses = form.depths.find((n) => (n + 1) * courseMm <= room);
  if (!courses) return [];
  const depth = courses * courseMm;
  const voussoirMm = form.voussoir * courseMm;
  if (opening.form === 'flat') {
    const [left, right] = opening.soffit;
    return flatArchJoints(left, right, depth, voussoirMm, SKEW_DEG);
  }
  return radiatingJoints(opening.soffit, depth, voussoirMm);
}

function roomRound({ bounds, form }: Opening, card: Bounds): number {
  const above = bounds.minY - card.minY;
  if (form === 'flat') return above;
  const beside = Math.min(bounds.minX - card.minX, card.maxX - bounds.maxX);
  return Math.min(above, beside, form === 'round' ? card.maxY - bounds.maxY : Infinity);
}
