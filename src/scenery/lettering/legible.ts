import { subtract } from '../../geometry/boolean/boolean.js';
import { components } from '../../geometry/components.js';
import { contourArea, regionArea } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { reversed } from '../../geometry/transform.js';
import type { Region } from '../../geometry/types.js';
import type { SetLetter } from './guide.js';
import { trimmed } from './openings.js';
import type { StencilLimits } from './stencil.js';

/** A page in the hand is read from here, mm. */
export const READING_DISTANCE_MM = 400;
/** The least visual angle of a character, in minutes of arc: ISO 9241-3. */
const LEAST_MINUTES = 16;

/** The least height of a letter that can be read from so far: 2 D tan(a / 2), a as ISO 9241-3. */
export const leastReadableMm = (distanceMm: number, minutes = LEAST_MINUTES): number =>
  2 * distanceMm * Math.tan(((minutes / 60) * Math.PI) / 360);

/** Larger letters are tried in strides, and the last one is halved: to about 5 %. */
const STRIDE = 1.5;
const MOST_STRIDES = 8;
const HALVINGS = 3;

/**
 * The least height (of the capitals) at which letters drawn `capHeightMm` high can be cut as a
 * stencil: trimmed to the process's webs and slots, every letter keeps its counters, its mouths and
 * its strokes. The same height where they can be cut as they are.
 */
export const leastStencilHeightMm = (
  letters: readonly SetLetter[],
  capHeightMm: number,
  { smallestHole, smallestSlot, smallestWeb }: StencilLimits,
): number =>
  leastHeightMm(letters, capHeightMm, (shape, share) => {
    // Trimming takes long on letters that are much too small: their counters tell sooner.
    if (!countersHold(shape, share * smallestWeb)) return false;
    const fit = trimmed(shape, share * smallestWeb, share * smallestSlot);
    const leastMm2 = (Math.PI / 4) * (share * smallestHole) ** 2;
    const takesTool = components(fit).every((piece) => regionArea(piece) >= leastMm2);
    return takesTool && isKept(shape, fit, share * smallestWeb);
  });

/** The least height at which letters of card keep their openings, those below `holeMm` closed. */
export const leastOpenHeightMm = (
  letters: readonly SetLetter[],
  capHeightMm: number,
  holeMm: number,
): number =>
  leastHeightMm(letters, capHeightMm, (shape, share) => {
    const half = (share * holeMm) / 2;
    const closed = offset(offset(shape, half), -half);
    return isKept(shape, closed, STANDING_EASE * share * holeMm);
  });

/** Larger letters are the same to limits that are a smaller share of what they are. */
function leastHeightMm(
  letters: readonly SetLetter[],
  capHeightMm: number,
  holds: (shape: Region, share: number) => boolean,
): number {
  const failingAt = (shapes: readonly Region[], larger: number): Region[] =>
    shapes.filter((shape) => !holds(shape, 1 / larger));
  let failing = failingAt(
    letters.map((l) => l.shape),
    1,
  );
  if (failing.length === 0) return capHeightMm;
  let [low, high] = [1, STRIDE];
  for (let stride = 0; stride < MOST_STRIDES; stride++) {
    const left = failingAt(failing, high);
    if (left.length === 0) break;
    failing = left;
    [low, high] = [high, high * STRIDE];
  }
  for (let i = 0; i < HALVINGS; i++) {
    const half = Math.sqrt(low * high);
    if (failing.every((shape) => holds(shape, 1 / half))) high = half;
    else low = half;
  }
  return capHeightMm * high;
}

/** Letters of card read with chinks closed that a stencil would lose: so much wider ones. */
const STANDING_EASE = 1.6;

/** Crotches round off; what closes beyond so many squares of the width is a mouth or a counter. */
const CLOSED_SQUARES = 1.2;
/** A letter may lose so much of its strokes to wider openings before it is another letter. */
const LOST_SHARE = 0.12;
/** A counter smaller than this share of its letter is a chink where strokes cross. */
const LEAST_COUNTER = 0.03;

/** Whether a letter made fit for the tool is still that letter. */
function isKept(drawn: Region, fit: Region, leastMm: number): boolean {
  const area = regionArea(drawn);
  if (components(fit).length < components(drawn).length) return false;
  const closed = components(subtract(fit, [drawn]));
  if (closed.some((piece) => regionArea(piece) > CLOSED_SQUARES * leastMm ** 2)) return false;
  if (regionArea(subtract(drawn, [fit])) > LOST_SHARE * area) return false;
  return countersOf(drawn).every((counter) => regionArea(subtract(counter, [fit])) > 0);
}

/** Whether a disc of this diameter goes into every counter. */
const countersHold = (letter: Region, discMm: number): boolean =>
  countersOf(letter).every((counter) => regionArea(offset(counter, -discMm / 2)) > 0);

function countersOf(letter: Region): Region[] {
  const leastMm2 = LEAST_COUNTER * regionArea(letter);
  return letter.contours
    .filter((c) => -contourArea(c) > leastMm2)
    .map((c) => ({ contours: [reversed(c)] }));
}
