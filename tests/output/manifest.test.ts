import { describe, expect, it } from 'vitest';
import { describeSheet, describeTotal, manifestSchema } from '../../src/output/manifest.js';
import { STARTING } from '../../src/process/starting.js';
import { estimateOf } from '../../src/sheet/estimate.js';
import { sheetJob } from '../../src/sheet/job.js';
import { nest } from '../../src/sheet/nest.js';
import { bridge, gate } from '../process/lock-pieces.js';

describe("the manifest's estimates", () => {
  const process = STARTING.knife;
  const jobs = nest([bridge, gate], process).sheets.map((sheet) =>
    sheetJob(sheet, { process, ballMm: 3 }),
  );
  const estimates = jobs.map((job) => estimateOf(job, process));
  const rows = jobs.map((job, k) => describeSheet(job, [], estimates[k]));

  it('say as much as the published schema, and nothing else', () => {
    const { sheets, estimate } = manifestSchema.shape;
    expect(sheets.parse(rows)).toEqual(rows);
    expect(estimate.parse(describeTotal(estimates))).toEqual(describeTotal(estimates));
  });

  it('add up: steps to sheets, sheets to the book', () => {
    const total = describeTotal(estimates);
    const near = (sum: number, whole: number) => expect(sum).toBeCloseTo(whole, 1);
    for (const { estimate } of rows) {
      expect(estimate.steps.length).toBeGreaterThan(1);
      near(
        estimate.steps.reduce((sum, step) => sum + step.lengthMm, 0),
        estimate.lengthMm,
      );
      near(
        estimate.steps.reduce((sum, step) => sum + step.seconds, 0) +
          estimate.stops * process.motion.stopS,
        estimate.seconds,
      );
      near(estimate.usedMm2 + estimate.wastedMm2, estimate.sheetMm2);
    }
    expect(total.sheets).toBe(rows.length);
    near(
      rows.reduce((sum, row) => sum + row.estimate.seconds, 0),
      total.seconds,
    );
    near(
      rows.reduce((sum, row) => sum + row.estimate.cutMm, 0),
      total.cutMm,
    );
  });
});
