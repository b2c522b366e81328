import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { components } from '../geometry/components.js';
import { regionArea, regionBounds } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import type { Point, Region } from '../geometry/types.js';
import { narrowWebs, smallHoles } from '../geometry/width/webs.js';
import { keptClear } from './brick/craft.js';
import type { Growth, Plot } from './family.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM } from './land/ground.js';

/** What is measured again on curves drawn anew may differ by this much, mm. */
const SLACK_MM = 0.02;
/** Height over the ground at which what stands on it is looked for, y down. */
const HELD_MM = -0.5;

/**
 * The last net under a drawing that holds by construction save in rare rooms, very small or very
 * slim ones: as it is where it is sound, else fitted to what the process can cut.
 */
export function caught(growth: Growth, plot: Plot): Growth {
  const card = subtract(growth.body, [growth.holes]);
  if (isSound(card, plot)) return growth;
  const { body, holes } = fitToCut(card, plot, heldAt(card));
  if (body.contours.length === 0) return growth;
  const left = subtract(body, [holes]);
  // A drawing whose body has its own openings goes on so.
  const isOpen = growth.holes.contours.length === 0;
  return {
    ...growth,
    body: isOpen ? left : body,
    holes: isOpen ? growth.holes : holes,
    scores: keptClear(growth.scores, onAndBelow(left, plot), CLEAR_MM),
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
function heldAt(card: Region): Point {
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
