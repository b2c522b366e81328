import { subtract, union } from '../../geometry/boolean/boolean.js';
import { contourArea, regionArea, regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import type { Bounds, Region } from '../../geometry/types.js';
import type { Asked } from './asked.js';
import { LetteringError } from './fault.js';
import { fittedTo } from './fit.js';
import { alongContour, arched, type Guide, type SetLetter, setOn, straight } from './guide.js';
import { leastReadableMm, READING_DISTANCE_MM } from './legible.js';
import { type LineOfText, lineOfText } from './line-of-text.js';

/** Letters placed on the card of the frame. */
export interface OnFrame {
  readonly letters: readonly SetLetter[];
  readonly capHeightMm: number;
}

/** Letters keep this far from every edge of the card: scores too near to a cut tear it, mm. */
const MARGIN_MM = 1.5;
/** Each time letters do not fit their card they are made smaller by this factor. */
const SMALLER = 0.93;
const TRIES = 40;
/** Less of a letter than this over the edge is rounding, mm2. */
const CRUMB_MM2 = 0.005;

/**
 * The line in the middle of the card between the window's edge and the end of the panel, as large
 * as asked or as it has room.
 * @throws LetteringError where there is no room for letters that could be read.
 */
export function onFrame(asked: Asked, gapOf: (capHeightMm: number) => number): OnFrame {
  const margin = Math.max(MARGIN_MM, asked.limits.smallestWeb);
  const clear = offset(asked.view.card, -margin);
  const set = (capHeightMm: number): LineOfText =>
    lineOfText(asked.font, asked.text, {
      capHeightMm,
      gapMm: gapOf(capHeightMm),
      spacingMm: squeezed(asked, capHeightMm),
    });
  let { line, capHeightMm } = fittedTo(asked.lengthMm, asked.heightMm, set);
  for (let tries = 0; tries < TRIES; tries++) {
    const letters = placed(asked, line);
    const over = subtract(union(letters.map((l) => l.shape)), [clear]);
    if (regionArea(over) < CRUMB_MM2) return { letters, capHeightMm };
    capHeightMm *= SMALLER;
    if (capHeightMm < leastReadableMm(READING_DISTANCE_MM)) break;
    line = set(capHeightMm);
  }
  throw new LetteringError(
    `There is no room for "${asked.text}" on the card of the frame.`,
    'Give the window a wider sill or head, the text fewer letters, or the line another shape.',
  );
}

/** The middle of the card's strip, from the window's edge outward. */
const middleOut = ({ view }: Asked): number =>
  (Math.abs(view.endY) - view.liftMm) / 2 - view.liftMm;

function placed(asked: Asked, line: LineOfText): SetLetter[] {
  const { view } = asked;
  const outward = view.onHead ? -1 : 1;
  const middleY = outward * (middleOut(asked) + view.liftMm);
  const box = inkOf(line);
  const guide = asked.line === 'edge' ? edgeGuide(asked, box) : null;
  if (guide) return setOn(line, guide);
  if (asked.line !== 'arc') return setOn(line, straight(0, middleY - (box.minY + box.maxY) / 2));
  const at = (y: number): SetLetter[] => setOn(line, arched(0, y, line.widthMm, asked.riseMm));
  const { minY, maxY } = regionBounds(union(at(0).map((l) => l.shape)));
  return at(middleY - (minY + maxY) / 2);
}

const inkOf = ({ letters }: LineOfText): Bounds => regionBounds(union(letters.map((l) => l.shape)));

/** A baseline that follows the window, outside it. Null where there is no window. */
function edgeGuide(asked: Asked, ink: Bounds): Guide | null {
  const { onHead } = asked.view;
  const half = (ink.minY + ink.maxY) / 2;
  const out = middleOut(asked) + (onHead ? half : -half);
  const round = outermost(offset(asked.view.window, out));
  return round ? alongContour(round.contours[0], 0, !onHead) : null;
}

function outermost({ contours }: Region): Region | null {
  const [largest] = [...contours].sort((a, b) => contourArea(b) - contourArea(a));
  return largest ? { contours: [largest] } : null;
}

/** A letter's width in capital heights, about. */
const LETTER_WIDTH = 0.7;

/** What letters under a window lose at their heads, which lean together round its edge. */
export function squeezed({ line, view }: Asked, capHeightMm: number): number {
  if (line !== 'edge' || view.onHead || view.window.contours.length === 0) return 0;
  const { minX, maxX, minY, maxY } = regionBounds(view.window);
  const radius = (maxX - minX + maxY - minY) / 4;
  return (LETTER_WIDTH * capHeightMm ** 2) / Math.max(radius, capHeightMm);
}
