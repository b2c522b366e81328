import { placeAtLength, subchain } from '../geometry/chain.js';
import { lineLength } from '../geometry/measure.js';
import type { Line } from '../geometry/types.js';
import type { Mark } from './layers.js';
import type { FoldStyle, Process } from './process.js';

/** A fold as short cuts with ties of card between them. */
export interface Perforation {
  readonly cutMm: number;
  readonly tieMm: number;
}

/**
 * The short cuts along a line, curves kept. A tie stands at each end, and all cuts are of one
 * length, all ties of another. Both are a little more or less than asked, so that they fit the
 * line, while the share of it that is cut is kept: 60 mm with cuts of 2 and ties of 1 mm becomes 20
 * cuts, 40 mm cut (common practice, no source). The shortest line gets one cut.
 */
export function perforated(line: Line, { cutMm, tieMm }: Perforation): Line[] {
  const length = lineLength(line);
  if (!(length > 0)) return [];
  const period = cutMm + tieMm;
  const count = Math.max(1, Math.round((length - tieMm) / period));
  const cut = (length * cutMm) / period / count;
  const tie = (length * tieMm) / period / (count + 1);
  return Array.from({ length: count }, (_, k) => {
    const from = tie + k * (cut + tie);
    const { cubics } = line;
    return {
      cubics: subchain(cubics, placeAtLength(cubics, from), placeAtLength(cubics, from + cut)),
    };
  });
}

/** Whether folds are short cuts through the card, and so the work of what cuts. */
export const foldsThrough = ({ kind, folds }: Process): boolean =>
  kind !== 'press' && folds.how === 'perforation';

/** A fold as the process makes it: one line, or short cuts through the card. */
export const foldMarks = (mark: Mark, folds: FoldStyle): Mark[] =>
  folds.how === 'line'
    ? [mark]
    : perforated(mark, folds).map(({ cubics }) => ({
        cubics,
        closed: false,
        kind: 'perforation',
      }));
