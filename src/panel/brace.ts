import { intersect, union } from '../geometry/boolean/boolean.js';
import type { Region } from '../geometry/types.js';
import { stripAlong } from '../geometry/width/strip.js';
import { type NarrowPlace, narrowWebs } from '../geometry/width/webs.js';
import type { ProcessLimits } from '../scene/scene.js';

/** Bracing one web can leave another beside it; what is left after this many rounds is reported. */
const ROUNDS = 4;

/** Card whose webs have been thickened, and the webs as they were. */
export interface Braced {
  readonly card: Region;
  readonly braces: readonly NarrowPlace[];
}

/**
 * Thickens webs in the window that came out narrower than the process allows. Elements keep to the
 * smallest web themselves; where two of them, or an element and the frame, barely meet, only the
 * finished card shows it. A good hand would leave a little more card there, and so does this.
 */
export function braceWebs(
  card: Region,
  window: Region,
  limits: Pick<ProcessLimits, 'smallestWeb'>,
): Braced {
  const braces: NarrowPlace[] = [];
  let braced = card;
  for (let round = 0; round < ROUNDS; round++) {
    const webs = narrowWebs(braced, limits.smallestWeb).filter((web) => web.kind === 'neck');
    if (webs.length === 0) break;
    const strips = webs.map((web) => stripAlong(web, limits.smallestWeb));
    braced = union([braced, intersect(union(strips), window)]);
    if (round === 0) braces.push(...webs);
  }
  return { card: braced, braces };
}
