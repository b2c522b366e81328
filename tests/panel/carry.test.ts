import { describe, expect, it } from 'vitest';
import { carriedLength, carriedShare, carriedValues } from '../../src/panel/carry.js';
import type { SceneElement } from '../../src/scene/scene.js';

const element = (panels: number[], values: SceneElement['values'] = {}): SceneElement => ({
  id: 'hedge-1',
  element: 'hedge',
  panels,
  side: 'sill',
  at: { from: { share: 0.5 }, to: { share: 0.5 } },
  width: { from: { mm: 60 }, to: { mm: 40 } },
  height: { from: { mm: 30 }, to: { share: 0.2 } },
  lift: { from: { mm: 0 }, to: { mm: 0 } },
  mirror: false,
  seed: 0,
  frame: 'score',
  heal: 'error',
  values,
});

describe('an element carried through panels 2 to 5', () => {
  const hedge = element([2, 3, 4, 5], { wind: { from: 0, to: 9 }, form: 'loose', blossom: true });

  it('goes evenly from the first panel to the last', () => {
    expect([2, 3, 4, 5].map((panel) => carriedShare(hedge, panel))).toEqual([0, 1 / 3, 2 / 3, 1]);
    expect(carriedLength(hedge.width, 0.5, 100)).toBe(50);
  });

  it('goes from a length to a share of each panel’s own window', () => {
    expect(carriedLength(hedge.height, 0, 90)).toBe(30);
    expect(carriedLength(hedge.height, 1, 90)).toBeCloseTo(18, 9);
  });

  it('carries numbers and keeps words and flags', () => {
    expect(carriedValues(hedge, 1 / 3)).toEqual({ wind: 3, form: 'loose', blossom: true });
  });

  it('skips panels by their place in the book, not in the list', () => {
    expect(carriedShare(element([1, 2, 5]), 2)).toBe(0.25);
  });

  it('stays at its front value in a single panel', () => {
    expect(carriedShare(element([3]), 3)).toBe(0);
  });
});
