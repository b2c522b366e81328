import { isClosed } from '../geometry/chain.js';
import { chainLength } from '../geometry/measure.js';
import { partsWithoutDoubles } from '../geometry/tidy/overlaps.js';
import type { Line } from '../geometry/types.js';
import type { Mark } from './layers.js';

/** Lines this near (mm) are one to a beam or a blade: a tenth of the kerf. */
const NEAR_MM = 0.02;

/**
 * Groups of marks without what lies on `first`, on a mark of an earlier group or on an earlier one
 * of the same: what is gone over twice is cut deeper than it should be. Of a mark that lies on
 * another in part the rest is kept, open, but for crumbs.
 */
export function undoubled(
  first: readonly Line[],
  groups: readonly (readonly Mark[])[],
): readonly Mark[][] {
  const marks = groups.flat();
  const { parts } = partsWithoutDoubles(
    [...first, ...marks.map(({ cubics }) => ({ cubics }))],
    NEAR_MM,
  );
  let next = first.length;
  return groups.map((group) =>
    group.flatMap((mark): Mark[] => {
      const left = parts[next++];
      if (left.length === 1 && left[0].cubics === mark.cubics) return [mark];
      const worth = left.filter(({ cubics }) => chainLength(cubics) > NEAR_MM);
      return worth.map(({ cubics }) => ({
        ...mark,
        cubics,
        closed: mark.closed && isClosed(cubics),
      }));
    }),
  );
}
