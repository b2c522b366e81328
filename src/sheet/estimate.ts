import { regionArea } from '../geometry/measure.js';
import type { Face } from '../process/layers.js';
import { cornerOf } from '../process/order.js';
import { foldsThrough } from '../process/perforation.js';
import type { Process } from '../process/process.js';
import { type StepTime, timeOf } from '../process/time.js';
import type { SheetJob, Step } from './job.js';

/** What the machine does in one step, and from which face. */
export interface StepEstimate extends StepTime {
  readonly face: Face;
}

/** What one or more sheets come to. */
export interface Amounts {
  readonly sheets: number;
  /** Gone over once, all operations together. */
  readonly lengthMm: number;
  /** Of that, what is cut. */
  readonly cutMm: number;
  /** Moves without work, in one pass of each step. */
  readonly travelMm: number;
  readonly paths: number;
  readonly corners: number;
  /** Sheets laid up, sheets turned over and tools changed. */
  readonly stops: number;
  /** All passes, and the stops. */
  readonly seconds: number;
  readonly sheetMm2: number;
  /** The pieces' own card, and all other card of the sheets, windows too. */
  readonly usedMm2: number;
  readonly wastedMm2: number;
}

export interface SheetEstimate extends Amounts {
  readonly sheet: string;
  /** In working order. */
  readonly steps: readonly StepEstimate[];
}

/** Lengths, machine time and card of a sheet. */
export function estimateOf({ sheet, faces }: SheetJob, process: Process): SheetEstimate {
  const from = cornerOf(process.bed.origin, sheet.width, sheet.height);
  const steps = faces.flatMap((job) =>
    timeOf(job.steps, process, from).map((step): StepEstimate => ({ face: job.face, ...step })),
  );
  const sum = (of: (step: StepEstimate) => number) =>
    steps.reduce((all, step) => all + of(step), 0);
  const stops = stopsOf({ sheet, faces }, process);
  const sheetMm2 = sheet.width * sheet.height;
  const usedMm2 = sheet.placements.reduce((all, { piece }) => all + regionArea(piece.card), 0);
  return {
    sheet: sheet.name,
    steps,
    sheets: 1,
    lengthMm: sum((step) => step.lengthMm),
    cutMm: sum((step) => (step.operation === 'cut' ? step.lengthMm : 0)),
    travelMm: sum((step) => step.travelMm),
    paths: sum((step) => step.paths),
    corners: sum((step) => step.corners),
    stops,
    seconds: sum((step) => step.seconds) + stops * process.motion.stopS,
    sheetMm2,
    usedMm2,
    wastedMm2: sheetMm2 - usedMm2,
  };
}

/** All sheets together. */
export function totalOf(estimates: readonly Amounts[]): Amounts {
  const sum = (of: (amounts: Amounts) => number) => estimates.reduce((all, e) => all + of(e), 0);
  return {
    sheets: sum((e) => e.sheets),
    lengthMm: sum((e) => e.lengthMm),
    cutMm: sum((e) => e.cutMm),
    travelMm: sum((e) => e.travelMm),
    paths: sum((e) => e.paths),
    corners: sum((e) => e.corners),
    stops: sum((e) => e.stops),
    seconds: sum((e) => e.seconds),
    sheetMm2: sum((e) => e.sheetMm2),
    usedMm2: sum((e) => e.usedMm2),
    wastedMm2: sum((e) => e.wastedMm2),
  };
}

/** The sheet is laid up, turned over, and the tool changed wherever the next step wants another. */
function stopsOf({ faces }: SheetJob, process: Process): number {
  const worked = faces.filter(({ steps }) => steps.length > 0);
  const tools = worked.flatMap(({ steps }) => steps.map((step) => toolOf(step, process)));
  const changes = tools.filter((tool, k) => k > 0 && tool !== tools[k - 1]).length;
  return worked.length + changes;
}

/** Folds and details are scored with one tool; a laser needs no other than its beam. */
function toolOf({ operation }: Step, process: Process): string {
  if (process.kind === 'laser') return 'beam';
  if (operation === 'cut' || (operation === 'fold' && foldsThrough(process))) return 'blade';
  return operation === 'emboss' ? 'ball' : 'scorer';
}
