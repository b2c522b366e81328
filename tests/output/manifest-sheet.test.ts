import { describe, expect, it } from 'vitest';
import { describeSheet } from '../../src/output/manifest.js';
import type { LaserProcess, Process } from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { estimateOf } from '../../src/sheet/estimate.js';
import { sheetJob } from '../../src/sheet/job.js';
import { sheetOf } from '../../src/sheet/sheet.js';
import { A4, plainPiece } from '../process/lock-pieces.js';

describe('a sheet in the manifest', () => {
  it('tells where each piece lies, which are turned, and what is left over', () => {
    const piece = plainPiece('quay', 198, 100);
    const placements = [
      { piece, dx: 6, dy: 6, copy: 1 },
      { piece, dx: 6, dy: 109, copy: 2, halfTurn: true },
    ];
    const sheet = sheetOf('sheet-01', A4, placements, STARTING.knife);
    const job = sheetJob(sheet, { process: STARTING.knife, ballMm: 1 });
    const estimate = estimateOf(job, STARTING.knife);
    expect(describeSheet(job, ['sheets/sheet-01.svg'], estimate)).toMatchObject({
      name: 'sheet-01',
      stock: A4.name,
      width: 210,
      height: 297,
      mirrored: false,
      files: ['sheets/sheet-01.svg'],
      pieces: [
        { name: 'quay', copy: 1, x: 6, y: 6 },
        { name: 'quay', copy: 2, x: 6, y: 109, turned: true },
      ],
      // Below 209 mm, less the millimetre that the edge touches.
      offcuts: [{ x: 0, y: 210, width: 210, height: 87 }],
    });
  });

  it('names the edges that two pieces have in common, and what that costs them', () => {
    const laser = { ...STARTING.laser, sharedEdges: true } as LaserProcess;
    const piece = plainPiece('quay', 198, 100);
    const placements = [
      { piece, dx: 6, dy: 6, copy: 1 },
      { piece, dx: 6, dy: 106, copy: 2 },
    ];
    const described = (process: Process) => {
      const job = sheetJob(sheetOf('sheet-01', A4, placements, process), { process, ballMm: 1 });
      return describeSheet(job, [], estimateOf(job, process)).sharedEdges;
    };
    const [edge, ...rest] = described(laser) ?? [];
    expect(rest).toEqual([]);
    expect(edge).toMatchObject({ pieces: ['quay (1)', 'quay (2)'], smallerMm: laser.kerfMm / 2 });
    expect(Math.abs(edge.lengthMm - 198)).toBeLessThan(2);
    expect(described({ ...laser, sharedEdges: false })).toBeUndefined();
  });
});
