import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { components } from '../geometry/components.js';
import { regionArea, regionBounds } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import type { Point, Region } from '../geometry/types.js';
import { narrowWebs, smallHoles } from '../geometry/width/webs.js';
import { bodyAndHoles } from './body-and-holes.js';
import { keptClear } from './brick/craft.js';
import type { Growth, Plot } from './family.js';
import { tied } from './grass/tidy.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';

/** What is measured again on curves drawn anew may differ by this much, mm. */
const SLACK_MM = 0.02;
/** Height over the ground at which what stands on it is looked for, y down. */
const HELD_MM = -0.5;

/**
 * The last net under a drawing that holds by construction save in rare rooms, very small or very
 * slim ones: as it is where it is sound, else with its necks filled out, else fitted to what the
 * process can cut.
 */
export function caught(growth: Growth, plot: Plot): Growth {
  const card = subtract(growth.body, [growth.holes]);
  if (isSound(card, plot)) return growth;
  const stouter = filledOut(card, plot);
  if (isSound(stouter, plot)) return withCard(growth, stouter, plot);
  const { body, holes } = fitToCut(card, plot, heldAt(card));
  return body.contours.length === 0 ? growth : withCard(growth, subtract(body, [holes]), plot);
}

/** The same for what is all fine tips, which fitting would blunt: only its necks are filled out. */
export function tiedUp(growth: Growth, plot: Plot): Growth {
  const card = subtract(growth.body, [growth.holes]);
  return isSound(card, plot) ? growth : withCard(growth, filledOut(card, plot), plot);
}

/** Drops of card on every neck that it has by itself or where it meets its frame. */
function filledOut(card: Region, plot: Plot): Region {
  const { smallestWeb, smallestHole } = plot;
  const { window, card: frame } = plot.frame;
  const fineness = { smallestWeb, smallestHole, eyelet: smallestHole };
  const alone = tied(card, fineness);
  if (window.contours.length === 0) return alone;
  const whole = tied(union([frame, intersect(alone, window)]), fineness);
  return union([subtract(alone, [window]), intersect(whole, window)]);
}

function withCard(growth: Growth, card: Region, plot: Plot): Growth {
  // A drawing whose body has its own openings goes on so.
  const isOpen = growth.holes.contours.length === 0;
  return {
    ...growth,
    ...(isOpen ? { body: card } : bodyAndHoles(card)),
    scores: keptClear(growth.scores, onAndBelow(card, plot), CLEAR_MM),
  };
}

/** Whether the card is one piece with no web, part or hole too small, in its frame as well. */
function isSound(card: Region, plot: Plot): boolean {
  if (components(card).length !== 1) return false;
  const { window, card: frame } = plot.frame;
  const whole = window.contours.length > 0 ? union([frame, intersect(card, window)]) : card;
  return (
    components(whole).length === 1 &&
    narrowWebs(whole, plot.smallestWeb - SLACK_MM).every(({ kind }) => kind === 'tip') &&
    smallHoles(whole, plot.smallestHole - SLACK_MM).length === 0
  );
}

/** The middle of the broadest foot just over the ground. */
export function heldAt(card: Region): Point {
  const { minX, maxX } = regionBounds(card);
  const slice = intersect(card, rectangle(minX, HELD_MM - 0.1, maxX - minX, 0.2));
  const [broadest] = components(slice).sort((a, b) => regionArea(b) - regionArea(a));
  if (broadest === undefined) return { x: 0, y: HELD_MM };
  const foot = regionBounds(broadest);
  return { x: (foot.minX + foot.maxX) / 2, y: HELD_MM };
}

/** Scores may run on where the foot goes over into the frame. */
const onAndBelow = (card: Region, { root }: Plot): Region => {
  const { minX, maxX } = regionBounds(card);
  return union([card, rectangle(minX, root - CLEAR_MM, maxX - minX, 2 * CLEAR_MM)]);
};
