import { regionBounds } from '../../geometry/measure.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Bounds, Region } from '../../geometry/types.js';
import type { Plot } from '../family.js';

/** The opening that a frame is drawn round. Lengths in mm. */
export interface Opening {
  readonly window: Region;
  readonly bounds: Bounds;
  /** False on a panel without a window: the opening is only drawn, and nothing can be cut. */
  readonly cut: boolean;
  /** The least width of card between the opening and the edge of what may be pressed. */
  readonly margin: number;
}

/** How much of the card a drawn opening takes up, sideways and upward from its foot. */
const DRAWN = { beside: 0.68, above: 0.8 };

/** The panel's window or, where there is none, a rectangle that stands in for it. */
export function openingFor({ frame }: Plot): Opening {
  const { bounds: card } = frame;
  const cut = frame.window.contours.length > 0;
  const half = DRAWN.beside * Math.min(-card.minX, card.maxX);
  const top = DRAWN.above * card.minY;
  const window = cut ? frame.window : rectangle(-half, top, 2 * half, -top);
  const bounds = regionBounds(window);
  const margin = Math.min(
    bounds.minX - card.minX,
    card.maxX - bounds.maxX,
    bounds.minY - card.minY,
    card.maxY - bounds.maxY,
  );
  return { window, bounds, cut, margin };
}
