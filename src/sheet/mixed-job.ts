import type { PlacedMark } from '../process/layers.js';
import type { Means } from '../process/prepare.js';
import { type SheetJob, sheetJob } from './job.js';
import type { Placement, Sheet } from './sheet.js';

/** How one piece is run among others that are run otherwise. */
export interface OwnMeans extends Means {
  /** How often each of its folds is gone over. */
  readonly foldPasses: number;
}

/**
 * The job of a sheet whose pieces each have means of their own, such as trial cards: pieces of the
 * same means are prepared together, and their marks joined step by step.
 * @param order which operation comes first, which last.
 */
export function mixedJob(
  sheet: Sheet,
  order: Means['process']['order'],
  meansOf: (piece: string) => OwnMeans,
): SheetJob {
  const jobs = byMeans(sheet.placements, meansOf).map(([means, placements]) =>
    foldedAgain(sheetJob({ ...sheet, placements }, means), means.foldPasses),
  );
  const faces = jobs[0].faces.map((first, i) => {
    const same = jobs.map(({ faces }) => faces[i]);
    const steps = same.flatMap((face) => face.steps);
    return {
      ...first,
      steps: order.flatMap((operation) => {
        const marks = steps.flatMap((step) => (step.operation === operation ? step.marks : []));
        return marks.length > 0 ? [{ operation, marks }] : [];
      }),
      guides: same.flatMap(({ guides }) => guides),
    };
  });
  return { ...jobs[0], sheet, faces };
}

function byMeans(
  placements: readonly Placement[],
  meansOf: (piece: string) => OwnMeans,
): (readonly [OwnMeans, Placement[]])[] {
  const groups = new Map<OwnMeans, Placement[]>();
  for (const placement of placements) {
    const means = meansOf(placement.piece.name);
    const group = groups.get(means);
    if (group) group.push(placement);
    else groups.set(means, [placement]);
  }
  return [...groups];
}

/** Folds that are gone over several times stand in the file as often. */
function foldedAgain(job: SheetJob, times: number): SheetJob {
  const repeated = (marks: readonly PlacedMark[]) =>
    marks.flatMap((mark) => Array.from({ length: times }, () => mark));
  return {
    ...job,
    faces: job.faces.map((face) => ({
      ...face,
      steps: face.steps.map((step) =>
        step.operation === 'fold' ? { ...step, marks: repeated(step.marks) } : step,
      ),
    })),
  };
}
