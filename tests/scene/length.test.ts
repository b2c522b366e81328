import { describe, expect, it } from 'vitest';
import { readExtent, readLength, sayExtent, sayInUnit } from '../../src/scene/length.js';
import type { Unit } from '../../src/scene/scene.js';

const mm = (said: number | string, unit: Unit = 'mm'): number => {
  const reading = readLength(said, unit);
  if ('problem' in reading) throw new Error(reading.problem);
  return reading.value;
};

const problem = (said: string): string => {
  const reading = readLength(said, 'mm');
  if ('value' in reading) throw new Error(`read as ${reading.value} mm`);
  return reading.problem;
};

describe('readLength', () => {
  // International yard and pound agreement, 1959: one inch is 25.4 mm exactly.
  it('takes the inch as exactly 25.4 mm', () => {
    expect(mm('1 in')).toBe(25.4);
    expect(mm(1, 'in')).toBe(25.4);
    expect(mm('12 in')).toBeCloseTo(304.8, 12);
    expect(mm('8.5 in')).toBeCloseTo(215.9, 12);
  });

  it('reads a bare number in the file unit', () => {
    expect(mm(14)).toBe(14);
    expect(mm(14, 'cm')).toBe(140);
    expect(mm(5.5, 'in')).toBeCloseTo(139.7, 12);
  });

  it('lets a length carry its own unit, whatever the file unit', () => {
    for (const unit of ['mm', 'cm', 'in'] as const) {
      expect(mm('14 cm', unit)).toBe(140);
      expect(mm('140mm', unit)).toBe(140);
      expect(mm('5.5in', unit)).toBeCloseTo(139.7, 12);
    }
  });

  it('reads fractions and the inch sign', () => {
    expect(mm('5 1/2 in')).toBeCloseTo(139.7, 12);
    expect(mm('3/8 in')).toBeCloseTo(9.525, 12);
    expect(mm('5 1/2"')).toBeCloseTo(139.7, 12);
    expect(mm('5\u2033')).toBeCloseTo(127, 12);
    expect(mm('5 1/2', 'in')).toBeCloseTo(139.7, 12);
    expect(mm('.5 cm')).toBe(5);
  });

  it('applies a sign to the whole of a mixed number', () => {
    expect(mm('-5 1/2 in')).toBeCloseTo(-139.7, 12);
    expect(mm('+3 mm')).toBe(3);
  });

  it('says what is wrong', () => {
    expect(problem('14 furlongs')).toBe(
      '"14 furlongs": "furlongs" is not a unit; use mm, cm or in',
    );
    expect(problem('5,5 cm')).toMatch(/point, not a comma/);
    expect(problem('30%')).toMatch(/share is not possible here/);
    expect(problem('3/0 in')).toMatch(/divides by nothing/);
    expect(problem('wide')).toMatch(/"wide" is not a length such as 60/);
    expect(problem('')).toMatch(/is not a length/);
    expect(problem('1e3 mm')).toMatch(/is not a unit/);
  });

  it('answers long nonsense quickly and briefly', () => {
    expect(problem('1 '.repeat(50_000)).length).toBeLessThan(200);
    expect(problem(`${'1'.repeat(50_000)}/`).length).toBeLessThan(200);
  });
});

describe('readExtent', () => {
  it('tells shares from lengths', () => {
    expect(readExtent('30%', 'mm')).toEqual({ value: { share: 0.3 } });
    expect(readExtent('-12.5 %', 'mm')).toEqual({ value: { share: -0.125 } });
    expect(readExtent(60, 'cm')).toEqual({ value: { mm: 600 } });
    expect(readExtent('2 in', 'mm')).toEqual({ value: { mm: 50.8 } });
  });

  it('reads back what sayExtent writes, in any unit', () => {
    for (const extent of [
      { mm: 34 },
      { mm: 0.5 },
      { share: 0.29 },
      { share: 1 },
      { share: -0.07 },
    ]) {
      for (const unit of ['mm', 'cm', 'in'] as const) {
        expect(readExtent(sayExtent(extent), unit)).toEqual({ value: extent });
      }
    }
  });
});

describe('sayInUnit', () => {
  it('rounds a bound so that the figure shown is within it', () => {
    for (const unit of ['mm', 'cm', 'in'] as const) {
      for (const bound of [2, 5, 40, 190, 1200, 25.4]) {
        expect(mm(Number(sayInUnit(bound, unit, 'up')), unit)).toBeGreaterThanOrEqual(bound - 1e-9);
        expect(mm(Number(sayInUnit(bound, unit, 'down')), unit)).toBeLessThanOrEqual(bound + 1e-9);
      }
    }
    expect(sayInUnit(25.4, 'in', 'up')).toBe('1');
    expect(sayInUnit(40, 'mm', 'up')).toBe('40');
  });
});
