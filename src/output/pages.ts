import type { Piece } from '../panel/piece.js';
import {
  type Face,
  isPressedFrom,
  moveLayers,
  OPERATIONS,
  type PlacedMark,
  pieceLayers,
  turnedOver,
} from '../process/layers.js';
import type { Process, WorkedOperation } from '../process/process.js';
import type { FaceJob } from '../sheet/job.js';
import { registerMarks } from '../sheet/register-marks.js';
import type { Sheet } from '../sheet/sheet.js';
import { withCheckLine } from './check-line.js';
import type { Page, PageLayer, Run } from './page.js';

/**
 * A piece as designed, whatever the process. The front always holds the cut; the back, mirrored
 * left to right, only what is worked from there. Where there is a back, both carry register marks.
 */
export function piecePage(piece: Piece, face: Face): Page {
  const { width, height } = piece;
  const layers = pieceLayers(piece, [face]);
  const seen = face === 'back' ? moveLayers(layers, turnedOver(width)) : layers;
  const register = isPressedFrom(piece, 'back') ? registerMarks(width, height, 0) : [];
  const whole = { ...seen, guide: [...seen.guide, ...register] };
  const pageLayers = OPERATIONS.map(
    (operation): PageLayer => ({ operation, runs: [{ marks: whole[operation] }] }),
  );
  return withCheckLine({ width, height, face, layers: pageLayers });
}

/**
 * What a machine runs on one face of a sheet, operation by operation in running order: all of
 * them, or one alone for machines that are set up for one tool at a time.
 */
export function sheetPage(
  { width, height }: Sheet,
  { face, steps, guides, register }: FaceJob,
  { operations }: Process,
  only?: WorkedOperation,
): Page {
  const worked = steps
    .filter(({ operation }) => only === undefined || operation === only)
    .map(
      ({ operation, marks }): PageLayer => ({
        operation,
        passes: operations[operation].passes,
        runs: runsOf(marks),
      }),
    );
  // A step that is run by itself has to be laid up by itself.
  const guide: PageLayer = {
    operation: 'guide',
    runs: [...(only === undefined ? runsOf(guides) : []), { marks: register }],
  };
  return withCheckLine({ width, height, face, layers: [...worked, guide] });
}

/** Marks of one piece that follow one another go together. */
function runsOf(marks: readonly PlacedMark[]): Run[] {
  const runs: { piece: string; copy: number; marks: PlacedMark[] }[] = [];
  for (const mark of marks) {
    const run = runs.at(-1);
    if (run?.piece === mark.piece && run.copy === mark.copy) run.marks.push(mark);
    else runs.push({ piece: mark.piece, copy: mark.copy, marks: [mark] });
  }
  return runs;
}
