import { polyline } from '../../src/geometry/pen.js';
import { circle } from '../../src/geometry/primitives.js';
import type { PlacedMark } from '../../src/process/layers.js';
import { nearestFirst } from '../../src/process/order/construct.js';
import { clashesOf, type Field, travelOf } from '../../src/process/order/field.js';
import { cornerOf, shortTour, tourProblem } from '../../src/process/order.js';
import type { Process, WorkedOperation } from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { randomFrom } from '../../src/scenery/random.js';
import { sheetJob } from '../../src/sheet/job.js';
import { type Sheet, sheetOf } from '../../src/sheet/sheet.js';
import { designExample } from '../support/example-book.js';
import { type Timing, timed } from './measure.js';
import { referenceTour } from './reference-tour.js';
import { table } from './table.js';
import { travelBound } from './tour-bound.js';

/** One step of a sheet: our tour against a reference and a bound. */
export interface TourRow {
  readonly step: string;
  readonly runs: number;
  readonly travelMm: number;
  readonly referenceMm: number;
  readonly boundMm: number;
  /** Cuts that follow another nearer than heat allows. */
  readonly near: number;
  readonly referenceNear: number;
}

/** Fewer runs than this have next to no order to find. */
const FEWEST_RUNS = 8;
/** The reference's steps of annealing for each run, in each of its tries. */
const STEPS_EACH = 20_000;
const LEAST_STEPS = 500_000;
const MOST_STEPS = 8_000_000;
const SEEDS = 2;

/** Steps of the example books' sheets with some order to find; scores of a laser are a knife's. */
export async function tourRows(books: readonly string[]): Promise<TourRow[]> {
  const rows: TourRow[] = [];
  for (const name of books) {
    const { jobs } = await designExample(name);
    rows.push(
      ...rowsOf(
        name,
        jobs.map((job) => job.sheet),
      ),
    );
  }
  return rows;
}

export const rowsOf = (book: string, sheets: readonly Sheet[]): TourRow[] =>
  [STARTING.knife, STARTING.laser].flatMap((process) =>
    stepsOf(book, sheets, process)
      .filter(({ operation }) => process.kind === 'knife' || operation === 'cut')
      .map(({ label, marks, operation, from }) => ({
        label,
        field: tourProblem(marks, process, { operation, from }).field,
      }))
      .filter(({ field }) => field.count >= FEWEST_RUNS)
      .map(({ label, field }) => {
        console.error(`tour: ${label}`);
        return rowOf(label, field);
      }),
  );

function rowOf(step: string, field: Field): TourRow {
  const ours = shortTour(field);
  const steps = Math.max(LEAST_STEPS, Math.min(MOST_STEPS, STEPS_EACH * field.count));
  const reference = referenceTour(field, nearestFirst(field), steps, SEEDS);
  return {
    step,
    runs: field.count,
    travelMm: travelOf(field, ours),
    referenceMm: travelOf(field, reference),
    boundMm: travelBound(field),
    near: clashesOf(field, ours),
    referenceNear: clashesOf(field, reference),
  };
}

interface LabelledStep {
  readonly label: string;
  readonly marks: readonly PlacedMark[];
  readonly operation: WorkedOperation;
  readonly from: { readonly x: number; readonly y: number };
}

function stepsOf(book: string, sheets: readonly Sheet[], process: Process): LabelledStep[] {
  return sheets.flatMap(({ name, stock, placements }) => {
    const sheet = sheetOf(name, stock, placements, process);
    const from = cornerOf(process.bed.origin, sheet.width, sheet.height);
    return sheetJob(sheet, { process, ballMm: 3 }).faces.flatMap(({ face, steps }) =>
      steps.map(({ operation, marks }) => ({
        label: `${book} ${name} ${face}, ${process.name}: ${operation}`,
        marks,
        operation,
        from,
      })),
    );
  });
}

/** One large set of marks put in order. */
export interface LargeTour {
  readonly set: string;
  readonly runs: number;
  readonly timing: Timing;
  readonly travelMm: number;
  readonly near: number;
}

/** Short lines strewn at random, and a lace of holes in rows as knife and laser cut it. */
export function largeTours(count: number): LargeTour[] {
  const lines = strewnLines(count);
  const holes = laceOf(count);
  return [
    large('short lines, strewn', lines, STARTING.laser, 'detail'),
    large('holes 3 mm apart, knife', holes, STARTING.knife, 'cut'),
    large('holes 3 mm apart, laser', holes, STARTING.laser, 'cut'),
  ];
}

function large(
  set: string,
  marks: readonly PlacedMark[],
  process: Process,
  operation: WorkedOperation,
): LargeTour {
  console.error(`tour: ${marks.length} ${set}`);
  const work = { operation, from: { x: 0, y: 0 } };
  const { result, timing } = timed(() => {
    const { field } = tourProblem(marks, process, work);
    return { field, tour: shortTour(field) };
  }, 1);
  const { field, tour } = result;
  const travelMm = travelOf(field, tour);
  return { set, runs: field.count, timing, travelMm, near: clashesOf(field, tour) };
}

function strewnLines(count: number): PlacedMark[] {
  const random = randomFrom('strewn lines');
  const side = 4 * Math.sqrt(count);
  return Array.from({ length: count }, () => {
    const [x, y] = [random.between(0, side), random.between(0, side)];
    const [turn, mm] = [random.between(0, 2 * Math.PI), random.between(1, 4)];
    const { cubics } = polyline([
      { x, y },
      { x: x + mm * Math.cos(turn), y: y + mm * Math.sin(turn) },
    ]);
    return { cubics, closed: false, piece: 'panel', copy: 1 };
  });
}

function laceOf(count: number): PlacedMark[] {
  const random = randomFrom('lace');
  const columns = Math.round(Math.sqrt(count));
  return Array.from({ length: count }, (_, k) => {
    const x = 3 * (k % columns) + random.between(-0.2, 0.2);
    const y = 3 * Math.floor(k / columns) + random.between(-0.2, 0.2);
    const [cubics] = circle(x, y, random.between(0.6, 1)).contours;
    return { cubics, closed: true, piece: 'panel', copy: 1 };
  });
}

/** The section of the results. */
export const tourReport = (rows: readonly TourRow[], large: readonly LargeTour[]): string =>
  `## Tours of the example books' sheets

Travel of the head without work, in mm, for every step with some order to find, against the best of
${SEEDS} tours by simulated annealing with many times the effort, under the same rules: below 1 ours
is the shorter one. "Bound" is what no tour can be shorter than; it knows nothing of the rules (inner
before outer, piece by piece, heat), so it is far lower where those count. "Near" are cuts that
follow another nearer than heat allows.

${toursTable(rows)}

## Large tours

From marks to order and starting points, at one go.

${largeToursTable(large)}
`;

function toursTable(rows: readonly TourRow[]): string {
  const sum = (of: (row: TourRow) => number): number => rows.reduce((all, row) => all + of(row), 0);
  const all: TourRow = {
    step: 'all',
    runs: sum((row) => row.runs),
    travelMm: sum((row) => row.travelMm),
    referenceMm: sum((row) => row.referenceMm),
    boundMm: sum((row) => row.boundMm),
    near: sum((row) => row.near),
    referenceNear: sum((row) => row.referenceNear),
  };
  const worst = Math.max(...rows.map((row) => row.travelMm / row.referenceMm));
  const line = (row: TourRow) => [
    row.step,
    row.runs,
    row.travelMm.toFixed(0),
    row.referenceMm.toFixed(0),
    (row.travelMm / row.referenceMm).toFixed(3),
    row.boundMm.toFixed(0),
    row.near,
    row.referenceNear,
  ];
  const head = ['step', 'runs', 'ours', 'reference', 'x reference', 'bound', 'near', 'reference'];
  const text = table([head, ...rows.map(line), line(all)]);
  return `${text}\n\nThe worst is ${worst.toFixed(3)} x its reference (aim: at most 1.15).`;
}

const largeToursTable = (rows: readonly LargeTour[]): string =>
  table([
    ['set', 'runs', 'ms', 'CPU ms', 'travel mm', 'near'],
    ...rows.map(({ set, runs, timing, travelMm, near }) => [
      set,
      runs,
      timing.wallMs.toFixed(0),
      timing.cpuMs.toFixed(0),
      travelMm.toFixed(0),
      near,
    ]),
  ]);
