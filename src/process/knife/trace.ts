import { chordsOf } from '../../geometry/chain.js';
import type { Cubics, Point } from '../../geometry/types.js';
import { angleAfter } from './tractrix.js';

/** Chords of the pivot's path stray this little from it, mm. */
const CHORD_MM = 1e-5;
/** A blade that swings is looked at every so many offsets of travel. */
const STEP_OFFSETS = 1 / 40;
/** A blade so little off its run (radians) runs straight behind its pivot. */
const SETTLED_RAD = 1e-6;
/** A blade cannot be pushed: straight ahead of its pivot it swings out to one side. */
const MOST_RAD = (179 * Math.PI) / 180;

/**
 * The virtual cut: where the tip of a dragged blade goes while its pivot follows a path. Each chord
 * of the path draws the tip along an exact tractrix.
 * @param pivot the pivot's path, open or closed.
 * @param heading the direction, as a unit vector, in which the blade points when it is set down: from
 *   its tip to its pivot.
 * @returns the tip's places; chords between them are within about 0.001 mm of its path.
 */
export function tipTrace(pivot: Cubics, offsetMm: number, heading: Point): Point[] {
  const { x, y } = chordsOf(pivot, CHORD_MM);
  if (x.length === 0) return [];
  let blade = Math.atan2(heading.y, heading.x);
  const tips: Point[] = [];
  const put = (px: number, py: number): void => {
    tips.push({ x: px - offsetMm * Math.cos(blade), y: py - offsetMm * Math.sin(blade) });
  };
  put(x[0], y[0]);
  for (let k = 1; k < x.length; k++) {
    const [dx, dy] = [x[k] - x[k - 1], y[k] - y[k - 1]];
    const length = Math.hypot(dx, dy);
    if (length === 0) continue;
    const run = Math.atan2(dy, dx);
    const off = within(Math.atan2(Math.sin(blade - run), Math.cos(blade - run)), MOST_RAD);
    const isSettled = Math.abs(off) < SETTLED_RAD;
    const steps = isSettled ? 1 : Math.ceil(length / (STEP_OFFSETS * offsetMm));
    for (let step = 1; step <= steps; step++) {
      const share = step / steps;
      blade = run + angleAfter(off, share * length, offsetMm);
      put(x[k - 1] + share * dx, y[k - 1] + share * dy);
    }
  }
  return tips;
}

const within = (value: number, most: number): number => Math.max(-most, Math.min(most, value));
