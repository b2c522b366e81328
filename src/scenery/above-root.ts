import { subtract } from '../geometry/boolean/boolean.js';
import { components } from '../geometry/components.js';
import { regionBounds } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import type { Region } from '../geometry/types.js';

/** Left over below the root, so that what ends on it stays as it is drawn, mm. */
const HAIR_MM = 0.3;

/** The card without what droops lower than its root, which the frame would hide; as it is if nothing does. */
export function aboveRoot(card: Region, rootMm: number): Region {
  const { minX, maxX, maxY } = regionBounds(card);
  if (maxY <= rootMm + HAIR_MM) return card;
  const low = rectangle(minX - 1, rootMm + HAIR_MM, maxX - minX + 2, maxY - rootMm);
  return components(subtract(card, [low]))[0];
}
