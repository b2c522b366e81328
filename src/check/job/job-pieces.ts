import type { Piece } from '../../panel/piece.js';
import type { SheetJob } from '../../sheet/job.js';

/** All pieces, each once. */
export const piecesOf = (jobs: readonly SheetJob[]): Piece[] =>
  jobs.flatMap(({ sheet }) =>
    sheet.placements.filter(({ copy }) => copy === 1).map(({ piece }) => piece),
  );

/** Such as "panel-01, panel-02 and 3 more". */
export function sayPieces(pieces: readonly Piece[]): string {
  const names = [...new Set(pieces.map(({ name }) => name))];
  if (names.length <= MOST_NAMED) return listed(names);
  return `${names.slice(0, MOST_NAMED).join(', ')} and ${names.length - MOST_NAMED} more`;
}

const MOST_NAMED = 3;

const listed = (names: readonly string[]): string =>
  names.length === 1 ? names[0] : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
