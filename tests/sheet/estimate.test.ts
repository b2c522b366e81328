import { describe, expect, it } from 'vitest';
import { regionArea } from '../../src/geometry/measure.js';
import type { Piece } from '../../src/panel/piece.js';
import type { Process } from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { moveTime } from '../../src/process/time.js';
import { estimateOf, totalOf } from '../../src/sheet/estimate.js';
import { sheetJob } from '../../src/sheet/job.js';
import { nest } from '../../src/sheet/nest.js';
import { estimatesFor, quoteOf } from '../../src/sheet/quote.js';
import { A4, bridge, gate, plainPiece, spine } from '../process/lock-pieces.js';

const { press } = STARTING;
const jobsOf = (pieces: readonly Piece[], process: Process) =>
  nest(pieces, process).sheets.map((sheet) => sheetJob(sheet, { process, ballMm: 3 }));
const estimatesOf = (pieces: readonly Piece[], process: Process) =>
  jobsOf(pieces, process).map((job) => estimateOf(job, process));

describe('estimateOf', () => {
  it('adds up one plain card to the last second', () => {
    // The margin is 6 mm, so the card's first corner lies at (6, 6).
    const [estimate] = estimatesOf([plainPiece('post', 50, 80)], {
      ...press,
      motion: { ...press.motion, cornerMm: 0 },
    });
    const { travelMmS, accelerationMmS2, liftS, stopS } = press.motion;
    const { speedMmS } = press.operations.cut;
    const side = (mm: number) => moveTime(mm, speedMmS, accelerationMmS2);
    const travel = moveTime(6 * Math.SQRT2, travelMmS, accelerationMmS2);
    expect(estimate).toMatchObject({ sheet: 'sheet-01', cutMm: 260, lengthMm: 260, corners: 3 });
    expect(estimate.travelMm).toBeCloseTo(6 * Math.SQRT2, 6);
    expect(estimate.stops).toBe(1);
    expect(estimate.seconds).toBeCloseTo(stopS + liftS + travel + 2 * (side(50) + side(80)), 6);
    expect(estimate.sheetMm2).toBe(A4.sheet.width * A4.sheet.height);
    expect(estimate.usedMm2).toBeCloseTo(50 * 80, 6);
    expect(estimate.wastedMm2).toBeCloseTo(210 * 297 - 50 * 80, 6);
  });

  it('counts a stop for the sheet, for turning it over and for each change of tool', () => {
    const [front] = estimatesOf([bridge], STARTING.knife);
    // Ball, scorer for folds and details alike, blade.
    expect(front.steps.map(({ operation }) => operation)).toEqual([
      'emboss',
      'fold',
      'detail',
      'cut',
    ]);
    expect(front.stops).toBe(1 + 2);
    const [both] = estimatesOf([spine('spine-left', 8)], STARTING.knife);
    // Scored from the back, turned over, scored from the front with the same tool, cut.
    expect(both.steps.map(({ face, operation }) => `${face} ${operation}`)).toEqual([
      'back fold',
      'front fold',
      'front cut',
    ]);
    expect(both.stops).toBe(1 + 1 + 1);
    expect(estimatesOf([bridge], STARTING.laser)[0].stops).toBe(1);
  });

  it('takes longer at a lower speed, and again as long for two passes', () => {
    const at = (speedMmS: number, passes: number): Process => ({
      ...STARTING.laser,
      operations: {
        ...STARTING.laser.operations,
        cut: { speedMmS, passes, stroke: null },
      },
    });
    const cut = (process: Process) =>
      estimatesOf([gate], process)[0].steps.find(({ operation }) => operation === 'cut')!;
    expect(cut(at(10, 1)).seconds).toBeGreaterThan(cut(at(20, 1)).seconds);
    expect(cut(at(20, 2)).seconds).toBeCloseTo(2 * cut(at(20, 1)).seconds, 9);
    expect(cut(at(20, 2)).lengthMm).toBe(cut(at(20, 1)).lengthMm);
  });
});

describe('totalOf', () => {
  it('adds up the sheets, and all card is either used or wasted', () => {
    const pieces = [bridge, gate, spine('spine-left', 8)];
    const estimates = estimatesOf(pieces, STARTING.knife);
    const total = totalOf(estimates);
    expect(total.sheets).toBe(estimates.length);
    expect(total.sheets).toBeGreaterThan(1);
    expect(total.seconds).toBeCloseTo(
      estimates.reduce((sum, e) => sum + e.seconds, 0),
      6,
    );
    expect(total.usedMm2).toBeCloseTo(
      pieces.reduce((sum, p) => sum + regionArea(p.card), 0),
      3,
    );
    expect(total.usedMm2 + total.wastedMm2).toBeCloseTo(total.sheetMm2, 6);
  });
});

describe('quoteOf', () => {
  const rates = { currency: 'EUR', setUp: 20, hour: 60, sheet: 0.5, quantities: [1, 2, 6, 7] };
  const means = { process: press, ballMm: 3 };
  // 90 x 90 mm: two beside each other and three in height on A4, so six on a sheet.
  const card = plainPiece('tile', 90, 90);
  const forCopies = (copies: number) => estimatesFor([card], copies, means);

  it('takes the sheets that so many copies need when nested together', () => {
    const rows = quoteOf(rates, forCopies);
    expect(rows.map(({ copies, sheets }) => [copies, sheets])).toEqual([[1, 1], [2, 1], [6, 1], [7, 2]]); // biome-ignore format: pairs
  });

  it('adds setting up, machine and card, and shares them out over the copies', () => {
    for (const { copies, sheets, minutes, price } of quoteOf(rates, forCopies)) {
      expect(price!.setUp).toBe(20);
      expect(price!.card).toBeCloseTo(0.5 * sheets, 9);
      // 60 an hour is 1 a minute.
      expect(price!.machine).toBeCloseTo(minutes, 9);
      expect(price!.total).toBeCloseTo(20 + 0.5 * sheets + minutes, 9);
      expect(price!.each * copies).toBeCloseTo(price!.total, 9);
    }
  });

  it('gives no price while no rate is set', () => {
    const free = { ...rates, setUp: 0, hour: 0, sheet: 0 };
    expect(quoteOf(free, forCopies).map(({ price }) => price)).toEqual([null, null, null, null]);
    expect(quoteOf({ ...free, sheet: 2 }, forCopies)[3].price).toMatchObject({
      total: 4,
      machine: 0,
    });
  });

  it('works out equal sheets once without a difference', () => {
    const twelve = forCopies(12);
    expect(twelve.map(({ sheet }) => sheet)).toEqual(['sheet-01', 'sheet-02']);
    const [first, second] = twelve;
    expect({ ...second, sheet: '' }).toEqual({ ...first, sheet: '' });
    const apart = estimatesOf([{ ...card, copies: 12 }], press);
    expect(twelve).toEqual(apart);
  });
});
