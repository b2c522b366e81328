import { union } from '../../geometry/boolean/boolean.js';
import { components, holeCount } from '../../geometry/components.js';
import type { Region } from '../../geometry/types.js';
import { narrowWebs } from '../../geometry/width/webs.js';
import type { SetLetter } from './guide.js';
import { type StencilLimits, withoutFineCard } from './stencil.js';

/** A page in the hand is read from here, mm. */
export const READING_DISTANCE_MM = 400;
/** The least visual angle of a character, in minutes of arc: ISO 9241-3. */
const LEAST_MINUTES = 16;

/** The least height of a letter that can be read from so far: 2 D tan(a / 2), a as ISO 9241-3. */
export const leastReadableMm = (distanceMm: number, minutes = LEAST_MINUTES): number =>
  2 * distanceMm * Math.tan(((minutes / 60) * Math.PI) / 360);

/**
 * The least height of letters that can be cut out whose stroke is this share of their height (ISO
 * 3098: 1/10 for type B, 1/14 for type A): the stroke must take the tool, and card as wide must hold.
 */
export const leastCutHeightMm = (strokeShare: number, slotMm: number, webMm: number): number =>
  Math.max(slotMm, webMm) / strokeShare;

/** Halvings when the finest card of letters is sought: to 2 % of the web. */
const HALVINGS = 7;
/** A least height is given this much higher: what just fits in theory is spoilt by a hair. */
const AMPLE = 1.03;

/**
 * The least height (of the capitals) at which letters drawn `capHeightMm` high can be cut as a
 * stencil: every stroke as wide as the narrowest slot, and every counter, mouth and gap as wide as
 * the smallest web, so that no letter loses one. The same height where they can be cut as they are.
 */
export function leastStencilHeightMm(
  letters: readonly SetLetter[],
  capHeightMm: number,
  limits: StencilLimits,
): number {
  const drawn = union(letters.map((l) => l.shape));
  const card = isKept(drawn, limits.smallestWeb)
    ? capHeightMm
    : (AMPLE * capHeightMm * limits.smallestWeb) / finestCardMm(drawn, limits.smallestWeb);
  const [neck] = narrowWebs(drawn, limits.smallestSlot).filter((p) => p.kind === 'neck');
  const stroke = neck
    ? (AMPLE * capHeightMm * limits.smallestSlot) / Math.max(0.05, neck.widthMm)
    : capHeightMm;
  return Math.max(card, stroke);
}

/** Whether letters keep their pieces, counters and mouths when card finer than a web is lost. */
function isKept(drawn: Region, webMm: number): boolean {
  const closed = withoutFineCard(drawn, webMm);
  return (
    holeCount(closed) === holeCount(drawn) && components(closed).length === components(drawn).length
  );
}

function finestCardMm(drawn: Region, webMm: number): number {
  let [kept, lost] = [0.02 * webMm, webMm];
  for (let i = 0; i < HALVINGS; i++) {
    const half = (kept + lost) / 2;
    if (isKept(drawn, half)) kept = half;
    else lost = half;
  }
  return kept;
}
