import { joined, placeAtLength, subchain } from '../../geometry/chain.js';
import { chainLength } from '../../geometry/measure.js';
import { startOnStraightRun } from '../../geometry/tidy/start.js';
import type { Cubics } from '../../geometry/types.js';
import type { Mark } from '../layers.js';
import type { Blade } from '../process.js';
import { pivotPath } from './pivot-path.js';

/**
 * How much further a compensated cut goes, in offsets. A blade set down askew needs travel to come
 * in line: with the lead-in and an overcut of two offsets that makes five, after which one set down
 * 170 degrees off its run is within a fifth of the offset of it (tan(phi/2) = tan(a/2) exp(-s/r):
 * tractrix in curve tables, from memory), and all that it cut amiss is cut again.
 */
const INTO_LINE_OFFSETS = 2;
/** An overcut never goes further round than this share of its contour. */
const MOST_SHARE = 0.5;

/**
 * A cut as a drag knife runs it. A closed one starts in the middle of a straight run and goes on past
 * its start by the overcut, over the very curves that it began with. Where the file compensates, the
 * path is the pivot's: a closed cut leads in from its start, where the blade may point anywhere, and
 * goes on two offsets further; open cuts are taken to find the blade in line.
 */
export function bladeMark(mark: Mark, { offsetMm, overcutMm, compensate }: Blade): Mark {
  if (!mark.closed) {
    return compensate ? { ...mark, cubics: pivotPath(mark.cubics, offsetMm, false) } : mark;
  }
  const contour = startOnStraightRun(mark.cubics);
  const overMm = overcutMm + (compensate ? INTO_LINE_OFFSETS * offsetMm : 0);
  if (overMm === 0) return { ...mark, cubics: contour };
  const tip = overcut(contour, overMm);
  const cubics = compensate ? pivotPath(tip, offsetMm, true) : tip;
  return { ...mark, closed: false, kind: 'overcut', cubics };
}

/** A closed contour that goes on past its start. */
function overcut(contour: Cubics, overMm: number): Cubics {
  const mm = Math.min(overMm, MOST_SHARE * chainLength(contour));
  return mm > 0 ? joined(contour, subchain(contour, 0, placeAtLength(contour, mm))) : contour;
}
