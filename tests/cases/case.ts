import {
  type Checked,
  cleanChecked,
  intersectChecked,
  subtractChecked,
  unionChecked,
  xorChecked,
} from '../../src/geometry/boolean/boolean.js';
import { type Join, offsetChecked } from '../../src/geometry/offset/offset.js';
import type { Cubics, Region } from '../../src/geometry/types.js';

/**
 * What is asked of the shapes. `subtract` takes all others from the first; `nonzero` and `even-odd`
 * take all contours together as they come, crossing or not, and fill them by that rule.
 */
export type Task =
  | { readonly operation: 'union' | 'subtract' | 'intersect' | 'xor' | 'nonzero' | 'even-odd' }
  | { readonly operation: 'offset'; readonly distanceMm: number; readonly join: Join };

export type Case = Task & { readonly shapes: readonly Region[] };

export const contoursOf = (shapes: readonly Region[]): Cubics[] =>
  shapes.flatMap((shape) => [...shape.contours]);

/** What our own engine makes of a case. */
export function solved(c: Case): Checked {
  const [first, ...others] = c.shapes;
  switch (c.operation) {
    case 'union':
      return unionChecked(c.shapes);
    case 'subtract':
      return subtractChecked(first, others);
    case 'intersect':
      return intersectChecked(first, others[0]);
    case 'xor':
      return xorChecked(first, others[0]);
    case 'offset':
      return offsetChecked(first, c.distanceMm, c.join);
    default:
      return cleanChecked(contoursOf(c.shapes), c.operation);
  }
}
