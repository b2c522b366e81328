import { describe, expect, it } from 'vitest';
import { makeTrial, type Trial, type TrialOptions } from '../../src/output/make-trial.js';
import { machineLayers } from '../../src/process/prepare.js';
import type { Process } from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { PROCESSES } from '../../src/scene/scene.js';
import { sheetSize } from '../../src/scene/sheet-size.js';
import { mixedJob } from '../../src/sheet/mixed-job.js';
import { sheetOf } from '../../src/sheet/sheet.js';
import { bridge, plainPiece } from '../process/lock-pieces.js';

const trialOf = (process: Process, changes: Partial<TrialOptions> = {}) =>
  makeTrial({
    process,
    processFile: null,
    sheet: sheetSize('A4')!,
    caliperMm: 0.3,
    ballMm: 1,
    ...changes,
  });

const text = (trial: Trial, file: string) => String(trial.files.get(file));

describe('makeTrial', () => {
  it.each(PROCESSES)('%s: all cards on one A4 sheet, each with a file of its own', async (kind) => {
    const trial = await trialOf(STARTING[kind]);
    expect(trial.problems).toEqual([]);
    expect(trial.sheets).toBe(1);
    const sheet = text(trial, 'sheets/sheet-01.svg');
    const pieces = [...trial.files.keys()].filter((file) => file.startsWith('trial/'));
    for (const file of pieces) expect(sheet).toContain(`data-piece="${file.slice(6, -4)}"`);
    expect(pieces).toContain('trial/square.svg');
    expect(Buffer.from(trial.files.get('sheets/sheet-01.pdf')!).toString('latin1')).toMatch(
      /^%PDF-/,
    );
  });

  it('the second strip is folded twice, the third three times, and the sheet itself once', async () => {
    const folds = text(await trialOf(STARTING.laser), 'sheets/by-step/sheet-01-2-fold.svg');
    const run = (name: string) => folds.match(new RegExp(`data-piece="${name}"[^]*?</g>`))![0];
    const count = (name: string) => run(name).match(/<path/g)!.length;
    expect([1, 2, 3].map((n) => count(`fold-${n}`))).toEqual([1, 2, 3]);
    const thrice = { ...STARTING.laser.operations.fold, passes: 3 };
    const operations = { ...STARTING.laser.operations, fold: thrice };
    const trial = await trialOf({ ...STARTING.laser, operations });
    expect(text(trial, 'sheets/sheet-01.svg')).not.toContain('data-passes');
  });

  it('says in trial.txt what each card is for, with care first, in lines that fit', async () => {
    const laser = await trialOf(STARTING.laser, { processFile: 'process/shed.yaml' });
    const said = text(laser, 'trial.txt');
    expect(said).toMatch(/CARE\n- The machine's manual, local law/);
    expect(said).toMatch(/Card burns\. Never leave a running laser/);
    expect(said).toContain('raree trial enter process/shed.yaml NAME=VALUE ...');
    expect(said).not.toContain('There is no settings file yet');
    for (const example of ['comb=98.4', 'web=1', 'fold=2', 'emboss=0.4', 'square=99.8']) {
      expect(said).toContain(example);
    }
    for (const line of said.split('\n')) expect(line.length).toBeLessThanOrEqual(92);
    const knife = text(await trialOf(STARTING.knife), 'trial.txt');
    expect(knife).toContain('There is no settings file yet');
    expect(knife).not.toContain('comb');
  });

  it('uses the colours of the process', async () => {
    const cut = { ...STARTING.laser.operations.cut, stroke: '#123456' };
    const operations = { ...STARTING.laser.operations, cut };
    const trial = await trialOf({ ...STARTING.laser, operations });
    expect(text(trial, 'sheets/sheet-01.svg')).toContain(
      'id="cut" fill="none" stroke-width="0.1" stroke="#123456"',
    );
    expect(text(trial, 'trial/comb.svg')).toContain('stroke="#123456"');
  });

  it('tells of cards that no sheet can hold', async () => {
    const { problems } = await trialOf(STARTING.knife, { sheet: sheetSize('A6')! });
    expect(problems.map(({ piece }) => piece)).toEqual(['square']);
  });
});

describe('mixedJob', () => {
  const lock = bridge;
  const gate = { ...plainPiece('gate', 40, 30), scores: bridge.scores };
  const sheet = sheetOf(
    'sheet-01',
    lock.stock,
    [
      { piece: lock, dx: 0, dy: 0, copy: 1 },
      { piece: gate, dx: 0, dy: 140, copy: 1 },
    ],
    STARTING.knife,
  );
  const order = STARTING.knife.order;
  const own = {
    'panel-01': { process: STARTING.knife, ballMm: 1, foldPasses: 1 },
    gate: { process: STARTING.laser, ballMm: 1, foldPasses: 3 },
  };
  const job = mixedJob(sheet, order, (name) => own[name as keyof typeof own]);

  it('joins the steps of all pieces in working order, each piece by means of its own', () => {
    const [{ steps }] = job.faces;
    expect(steps.map(({ operation }) => operation)).toEqual(['emboss', 'fold', 'detail', 'cut']);
    for (const { operation, marks } of steps) {
      for (const piece of [lock, gate]) {
        const means = own[piece.name as keyof typeof own];
        const expected = machineLayers(piece, ['front', 'back'], 'front', means)[operation].length;
        const times = operation === 'fold' ? means.foldPasses : 1;
        expect(marks.filter((mark) => mark.piece === piece.name)).toHaveLength(expected * times);
      }
    }
  });

  it('keeps the whole sheet', () => {
    expect(job.sheet).toBe(sheet);
    expect(job.faces[0].guides.length).toBe(lock.guides.length);
  });
});
