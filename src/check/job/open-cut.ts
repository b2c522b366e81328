import type { Finding } from '../finding.js';
import { type JobRule, onSheet, sayPlace, startOf } from './job-rule.js';

/** A cut whose ends do not meet frees nothing, unless it is open for a reason. */
export const openCut: JobRule = (job) =>
  job.faces.flatMap((face) =>
    face.steps
      .filter(({ operation }) => operation === 'cut')
      .flatMap(({ marks }) => marks)
      .filter(({ closed, kind }) => !closed && kind === undefined)
      .map((mark): Finding => {
        const at = startOf(mark);
        return {
          rule: 'open-cut',
          severity: 'error',
          where: onSheet(job, mark.piece, at),
          measured: 1,
          wanted: 0,
          unit: 'parts',
          message: `A cut of ${mark.piece} does not close, ${sayPlace(job, face, at)}: what it goes round stays in the sheet.`,
          cure: 'Close it, or say why it is open (nib, overcut, shared, perforation, slit); if you did not draw it, report it.',
        };
      }),
  );
