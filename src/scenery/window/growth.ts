import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { outlineLines } from '../../geometry/clip-lines.js';
import { EMPTY_REGION, type Line, type Region } from '../../geometry/types.js';
import { keptClear } from '../brick/craft.js';
import type { Growth, Plot } from '../family.js';
import { CLEAR_MM } from '../land/ground.js';
import type { Opening } from './opening.js';

/**
 * What a frame adds to the window, as it grows: its card is cut and its scores keep clear of every
 * cut. Where there is no window, the openings left in its card are drawn instead.
 */
export function inOpening(
  plot: Plot,
  { window, cut }: Opening,
  card: Region,
  scores: readonly Line[],
): Growth {
  if (!cut) {
    const edges = outlineLines(subtract(window, [card]));
    const drawn = keptClear([...edges, ...scores], plot.frame.card, CLEAR_MM);
    return { body: EMPTY_REGION, holes: EMPTY_REGION, scores: drawn, reliefs: [] };
  }
  const all = union([plot.frame.card, intersect(card, window)]);
  return {
    body: card,
    holes: EMPTY_REGION,
    scores: keptClear(scores, all, CLEAR_MM),
    reliefs: [],
  };
}
