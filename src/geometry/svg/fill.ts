import { type Checked, cleanChecked } from '../boolean/boolean.js';
import { isClosed } from '../chain.js';
import { straightCubic } from '../cubic.js';
import { type Affine, moveCubics } from '../transform.js';
import type { Cubics } from '../types.js';
import type { Chains } from './basic-shapes.js';
import type { Budget } from './drawing.js';
import type { Element } from './element.js';
import { nameOf, SvgImportError } from './error.js';
import { MAX_REACH_MM } from './limits.js';

/** What an element's chains enclose, in mm of the page; open ones are closed straight. */
export function filled(
  budget: Budget,
  element: Element,
  { closed, open }: Chains,
  matrix: Affine,
  rule: 'nonzero' | 'even-odd',
): Checked {
  const contours = [...closed, ...open.map(closedStraight)];
  const moved = onPage(element, contours, matrix);
  budget.cross(element, moved);
  return cleanChecked(moved, rule);
}

function closedStraight(c: Cubics): Cubics {
  if (isClosed(c)) return c;
  const n = c.length;
  return Float64Array.from([...c, ...straightCubic(c[n - 2], c[n - 1], c[0], c[1])]);
}

/** Chains moved to the page. @throws SvgImportError where they lie far beyond any page. */
export function onPage(element: Element, chains: readonly Cubics[], matrix: Affine): Cubics[] {
  const moved = chains.map((c) => moveCubics(c, matrix));
  for (const chain of moved) {
    for (const at of chain) {
      if (Math.abs(at) <= MAX_REACH_MM) continue;
      throw new SvgImportError(
        `${nameOf(element)} reaches ${at.toPrecision(3)} mm from the corner of the page; at most ` +
          `${MAX_REACH_MM} mm is possible. Check its numbers, and the width, height and viewBox.`,
      );
    }
  }
  return moved;
}
