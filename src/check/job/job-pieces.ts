import type { Piece } from '../../panel/piece.js';
import type { SheetJob } from '../../sheet/job.js';

/** The pieces of a sheet whose first copy lies on it: each is looked at once in all sheets. */
export const firstCopies = ({ sheet }: SheetJob): Piece[] =>
  sheet.placements.filter(({ copy }) => copy === 1).map(({ piece }) => piece);
