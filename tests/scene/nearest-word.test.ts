import { describe, expect, it } from 'vitest';
import { nearestWord, slipsBetween } from '../../src/scene/nearest-word.js';

describe('slipsBetween', () => {
  // Levenshtein's own textbook pairs: kitten/sitting 3, Saturday/Sunday 3 (Navarro, A guided tour
  // to approximate string matching, ACM Computing Surveys 33 (2001); from memory).
  it('counts letters added, left out and changed', () => {
    expect(slipsBetween('kitten', 'sitting')).toBe(3);
    expect(slipsBetween('saturday', 'sunday')).toBe(3);
    expect(slipsBetween('', 'reed')).toBe(4);
    expect(slipsBetween('reed', 'reed')).toBe(0);
  });

  it('counts two neighbours swapped as one slip', () => {
    expect(slipsBetween('hegde', 'hedge')).toBe(1);
    // Optimal string alignment edits no letter twice, so this is 3, not 2.
    expect(slipsBetween('ca', 'abc')).toBe(3);
  });

  it('is the same both ways', () => {
    for (const [a, b] of [
      ['window', 'widnows'],
      ['arch', 'march'],
      ['pointed', 'pinted'],
    ] as const) {
      expect(slipsBetween(a, b)).toBe(slipsBetween(b, a));
    }
  });
});

describe('nearestWord', () => {
  const known = ['title', 'panel', 'panels', 'spacing', 'window'];

  it.each([
    ['titel', 'title'],
    ['Title', 'title'],
    ['panles', 'panels'],
    ['windows', 'window'],
    ['spaceing', 'spacing'],
  ])('%s means %s', (word, meant) => {
    expect(nearestWord(word, known)).toBe(meant);
  });

  it('suggests nothing far-fetched', () => {
    expect(nearestWord('foliage', known)).toBeUndefined();
    expect(nearestWord('x', ['y', 'z'])).toBeUndefined();
    expect(nearestWord('', known)).toBeUndefined();
    expect(nearestWord('p'.repeat(100_000), known)).toBeUndefined();
  });
});
