import { lineBounds, middleOfBox } from '../../geometry/measure.js';
import type { Point } from '../../geometry/types.js';
import type { PlacedMark } from '../../process/layers.js';
import type { Process } from '../../process/process.js';
import type { FaceJob, SheetJob } from '../../sheet/job.js';
import { type Finding, type Place, rounded } from '../finding.js';

/** A rule over what a machine does to one sheet. */
export type JobRule = (job: SheetJob, process: Process) => Finding[];

/** A rule over all sheets together: what lies on several of them is told once. */
export type JobsRule = (jobs: readonly SheetJob[], process: Process) => Finding[];

/** A place on a sheet, as its file with that face up shows it. */
export const onSheet = ({ sheet }: SheetJob, piece: string, { x, y }: Point): Place => ({
  piece,
  sheet: sheet.name,
  x: rounded(x),
  y: rounded(y),
});

/** The same for a maker, such as "on sheet-01, 20 mm from its left and 31.5 mm from its top". */
export function sayPlace({ sheet }: SheetJob, { face }: FaceJob, { x, y }: Point): string {
  const turned = face === 'back' && !sheet.mirrored ? ' turned over' : '';
  return `on ${sheet.name}${turned}, ${rounded(x)} mm from its left and ${rounded(y)} mm from its top`;
}

export const startOf = ({ cubics }: PlacedMark): Point => ({ x: cubics[0], y: cubics[1] });

export const middleOf = (mark: PlacedMark): Point => middleOfBox(lineBounds(mark));

/** What belongs to each piece, in the order of the first of each. */
export function byPiece<T>(all: readonly T[], pieceOf: (one: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const group = groups.get(pieceOf(one));
    if (group) group.push(one);
    else groups.set(pieceOf(one), [one]);
  }
  return groups;
}
