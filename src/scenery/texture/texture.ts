import { linesInside } from '../../geometry/clip-lines.js';
import { lineLength, regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import type { Bounds, Line, Region } from '../../geometry/types.js';
import type { TextureName } from '../../scene/scene.js';
import type { Random } from '../random.js';
import { keptApart } from './apart.js';
import { bark } from './bark.js';
import { brick } from './brick.js';
import { linen } from './linen.js';
import { stipple } from './stipple.js';
import { water } from './water.js';

/** A pattern's strokes over a box; those that come too near to others or the edge are left out. */
export type Pattern = (box: Bounds, spacingMm: number, random: Random) => Line[];

const PATTERNS: Readonly<Record<TextureName, Pattern>> = { stipple, brick, bark, water, linen };

/** Shorter strokes than this many spacings are specks that an edge cut off. */
const SHORTEST = 0.6;

/**
 * Strokes for an embossing ball that fill a region with a texture: leaves, courses of brick, bark,
 * water or woven linen. Different strokes keep at least `spacingMm` (the ball's diameter) from one
 * another, so that the card between them stays up, and from the region's edge, within 0.01 mm. A
 * stroke's place follows from the seed and from where it lies, so that a larger region keeps most
 * strokes of a smaller one; only water is laid out anew for the region's own height. A region too
 * narrow for a stroke gives none.
 */
export function textureLines(
  region: Region,
  texture: TextureName,
  spacingMm: number,
  random: Random,
): Line[] {
  const room = offset(region, -spacingMm);
  if (room.contours.length === 0) return [];
  const strokes = PATTERNS[texture](regionBounds(room), spacingMm, random.branch(texture));
  const inside = linesInside(strokes, room).filter((l) => lineLength(l) >= SHORTEST * spacingMm);
  return keptApart(inside, spacingMm);
}
