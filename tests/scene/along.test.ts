import { describe, expect, it } from 'vitest';
import { ALONG_PATTERN, readAlong } from '../../src/scene/along.js';

describe('readAlong', () => {
  it.each([
    ['left to 40%', { share: 0 }, { share: 0.4 }],
    ['20 mm to middle', { mm: 20 }, { share: 0.5 }],
    ['2 cm to 1 1/2 in', { mm: 20 }, { mm: 1.5 * 25.4 }],
    ['top to bottom', { share: 0 }, { share: 1 }],
  ])('reads %s', (said, from, to) => {
    expect(readAlong(said, 'mm')).toEqual({ value: { from, to } });
    expect(said).toMatch(new RegExp(ALONG_PATTERN));
  });

  it.each([
    ['40%', 'is no stretch of a side'],
    ['left to nowhere', 'nowhere'],
    ['right to 20%', 'runs backwards; say "20% to right"'],
  ])('says what is wrong with %s', (said, message) => {
    const reading = readAlong(said, 'mm');
    expect('problem' in reading && reading.problem).toContain(message);
  });
});
