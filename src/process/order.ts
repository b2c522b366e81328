import type { Point } from '../geometry/types.js';
import type { PlacedMark } from './layers.js';
import { nearRuns } from './order/clashes.js';
import { nearestFirst } from './order/construct.js';
import { comesBefore } from './order/enclosure.js';
import { type Field, fieldOf, type Tour } from './order/field.js';
import { improved } from './order/improve.js';
import { marksInWay, type Run, type RunRules, runsOf } from './order/runs.js';
import type { Corner, Process, WorkedOperation } from './process.js';

/** What is run: one operation, with the head coming from `from` (mm, in the sheet's coordinates). */
export interface Work {
  readonly operation: WorkedOperation;
  readonly from: Point;
}

/** A tour to be found, with the runs that it is made of. */
export interface TourProblem {
  readonly runs: readonly Run[];
  readonly field: Field;
}

/**
 * The marks of one operation in the order, the direction and with the starting points in which they
 * are run, so that the head travels little without working.
 *
 * What a closed cut frees comes before it. A knife finishes the cuts of one piece before the next;
 * a laser spreads its heat: of two cuts one after the other, no two points are nearer than
 * `heat.apartMm` where that can be helped. Open marks are run in either direction unless a blade
 * forbids it, closed ones of a laser start anywhere. Within one contour or one perforated fold the
 * marks run on in sequence, and between those of one contour no heat is spread.
 */
export function runningOrder(
  marks: readonly PlacedMark[],
  process: Process,
  work: Work,
): readonly PlacedMark[] {
  const { runs, field } = tourProblem(marks, process, work);
  const { order, way } = shortTour(field);
  return order.flatMap((run, k) => marksInWay(runs[run], way[k] - field.firstWay[run]));
}

export const shortTour = (field: Field): Tour => improved(field, nearestFirst(field));

export function tourProblem(
  marks: readonly PlacedMark[],
  process: Process,
  { operation, from }: Work,
): TourProblem {
  const runs = runsOf(
    marks.filter((mark) => mark.cubics.length > 0),
    rulesOf(process),
  );
  if (operation !== 'cut') {
    const none = runs.map(() => 0);
    return {
      runs,
      field: fieldOf(runs, { from, group: none, after: runs.map(() => []), clash: () => false }),
    };
  }
  const after = comesBefore(runs);
  const group = process.kind === 'laser' ? runs.map(() => 0) : pieceGroups(runs, after);
  const clash = process.kind === 'laser' ? nearRuns(runs, process.heat.apartMm) : () => false;
  return { runs, field: fieldOf(runs, { from, group, after, clash }) };
}

/** The corner of a sheet that the head comes from: the sheet is laid up against it. */
export const cornerOf = (corner: Corner, width: number, height: number): Point => ({
  x: corner.endsWith('left') ? 0 : width,
  y: corner.startsWith('top') ? 0 : height,
});

/** Of a nib, what the beam burns away and what rounding adds. */
const NIB_SLACK_MM = 0.2;

function rulesOf(process: Process): RunRules {
  const { nibs, folds, kind } = process;
  const pivots = kind === 'knife' && process.blade.compensate;
  return {
    anyStart: kind === 'laser',
    // What a blade cuts on its pivot's path is drawn for one direction.
    eitherWay: ({ kind: mark }) =>
      mark !== 'overcut' &&
      !(pivots && (mark === 'nib' || mark === 'slit' || mark === 'perforation')),
    nibMm: nibs.widthMm + (kind === 'laser' ? process.kerfMm : 0) + NIB_SLACK_MM,
    tieMm: folds.how === 'perforation' ? 2 * folds.tieMm + NIB_SLACK_MM : 0,
  };
}

/**
 * One group for each copy of a piece. Two that each lie partly within the other, which no flat card
 * can, are run as one.
 */
function pieceGroups(runs: readonly Run[], after: readonly (readonly number[])[]): number[] {
  const names = new Map<string, number>();
  const group = runs.map(({ marks: [{ piece, copy }] }) => {
    const name = `${piece} ${copy}`;
    if (!names.has(name)) names.set(name, names.size);
    return names.get(name)!;
  });
  const pairs = new Set<string>();
  after.forEach((later, run) => {
    for (const other of later) pairs.add(`${group[run]} ${group[other]}`);
  });
  return group.map((own) => {
    for (let other = 0; other < own; other++) {
      if (pairs.has(`${own} ${other}`) && pairs.has(`${other} ${own}`)) return other;
    }
    return own;
  });
}
