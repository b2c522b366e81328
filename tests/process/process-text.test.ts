import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { z } from 'zod';
import type { LaserProcess, Process } from '../../src/process/process.js';
import { processJsonSchema } from '../../src/process/process-schema.js';
import { processText } from '../../src/process/process-text.js';
import { readProcess } from '../../src/process/read-process.js';
import { STARTING } from '../../src/process/starting.js';

const back = (process: Process) => readProcess(processText(process), `${process.name}.yaml`);

/** A laser of which nothing is as we have it. */
const THIN: LaserProcess = {
  kind: 'laser',
  name: 'thin-card',
  limits: { smallestWeb: 0.7, smallestSlot: 0.3, smallestHole: 0.8, scoreClearance: 1.25 },
  bed: { widthMm: 812.8, heightMm: 508, marginMm: 0, origin: 'bottom right' },
  faces: ['back'],
  order: ['detail', 'fold', 'emboss', 'cut'],
  operations: {
    emboss: { passes: 2, speedMmS: 300, stroke: '#123456' },
    fold: { passes: 3, speedMmS: 81.5, stroke: '#00ff00' },
    detail: { passes: 4, speedMmS: 90, stroke: null },
    cut: { passes: 5, speedMmS: 12.25, stroke: '#ff0000' },
  },
  motion: { travelMmS: 250, accelerationMmS2: 999, liftS: 0.5, cornerMm: 0.05, stopS: 10 },
  folds: { how: 'perforation', cutMm: 2.5, tieMm: 0.75 },
  nibs: { count: 0, widthMm: 0.35 },
  rates: { currency: 'no "1"', setUp: 5, hour: 40.5, sheet: 1.2, quantities: [2] },
  kerfMm: 0.17,
  sharedEdges: true,
  faceDown: true,
  relief: { how: 'none', angleDeg: 22.5, apartMm: 0.33 },
  heat: { apartMm: 0, densestPerMm: 2.5 },
};

describe('processText', () => {
  it.each(['knife', 'laser', 'press'] as const)('%s: what is written is read back', (kind) => {
    expect(back(STARTING[kind])).toEqual(STARTING[kind]);
  });

  it('what is nowhere as we have it is read back too', () => {
    expect(back(THIN)).toEqual(THIN);
  });

  it('no setting is left out: another value of each makes another text', () => {
    const texts = new Set<string>();
    const visit = (value: unknown, replace: (other: unknown) => Process): void => {
      if (typeof value === 'number') texts.add(processText(replace(value + 0.25)));
      else if (typeof value === 'boolean') texts.add(processText(replace(!value)));
      else if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
        for (const [key, inner] of Object.entries(value)) {
          visit(inner, (other) => replace({ ...value, [key]: other }));
        }
      } else return;
      visited += typeof value === 'object' ? 0 : 1;
    };
    let visited = 0;
    visit(THIN, (process) => process as Process);
    expect(visited).toBeGreaterThan(30);
    expect(texts.size).toBe(visited);
    expect(texts).not.toContain(processText(THIN));
  });

  it('marks what is ours until it is measured, and nothing else', () => {
    const marks = (process: Process) =>
      processText(process)
        .split('\n')
        .filter((line) => /# starting value; common practice, no source$/.test(line))
        .map((line) => line.trim().split(':')[0]);
    expect(marks(THIN)).toEqual([]);
    expect(marks({ ...STARTING.laser, kerfMm: 0.16 })).not.toContain('kerf');
    expect(marks(STARTING.laser)).toContain('kerf');
    expect(marks(STARTING.laser)).not.toContain('hour');
    expect(marks(STARTING.knife)).toEqual(expect.arrayContaining(['offset', 'overcut', 'web']));
  });

  it('says of every key what it means, in lines that fit a page', () => {
    const lines = processText(STARTING.laser).split('\n');
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(100);
    expect(lines).toContain('# Full width of what the beam burns away.');
  });
});

describe('processJsonSchema', () => {
  const schema = processJsonSchema() as z.core.JSONSchema.JSONSchema;
  const validator = z.fromJSONSchema(schema);
  const passes = (text: string): boolean => validator.safeParse(parse(text)).success;

  it.each(['knife', 'laser', 'press'] as const)('passes our own %s', (kind) => {
    expect(passes(processText(STARTING[kind]))).toBe(true);
    expect(passes(`kind: ${kind}`)).toBe(true);
  });

  it.each([
    '{}',
    'kind: scissors',
    'kind: knife\nkerf: 0.2',
    'kind: press\nnibs: {}',
    'kind: laser\nkref: 1',
  ])('fails a wrong file: %j', (text) => {
    expect(passes(text)).toBe(false);
  });
});
