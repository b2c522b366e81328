import type { Bounds } from '../../geometry/types.js';
import { flatArchJoints, type RingJoint, radiatingJoints } from './arch.js';
import type { Opening } from './opening.js';

/** A ring is a brick (215 + 10) or half a brick deep; a course is 75: three courses or 1.5. */
const RING_COURSES = [3, 1.5];
/** Lean of a flat arch's skewbacks off plumb. */
const SKEW_DEG = 30;

/** The arch over an opening, as deep as the card above it allows; empty where there is no room. */
export function headOf(opening: Opening, card: Bounds, courseMm: number): RingJoint[] {
  const room = roomRound(opening, card);
  const courses = RING_COURSES.find((n) => (n + 1) * courseMm <= room);
  if (!courses) return [];
  const depth = courses * courseMm;
  if (opening.form === 'flat') {
    const [left, right] = opening.soffit;
    return flatArchJoints(left, right, depth, courseMm, SKEW_DEG);
  }
  return radiatingJoints(opening.soffit, depth, courseMm);
}

function roomRound({ bounds, form }: Opening, card: Bounds): number {
  const above = bounds.minY - card.minY;
  if (form === 'flat') return above;
  const beside = Math.min(bounds.minX - card.minX, card.maxX - bounds.maxX);
  return Math.min(above, beside, form === 'round' ? card.maxY - bounds.maxY : Infinity);
}
