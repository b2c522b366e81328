import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { cottage } from '../../src/scenery/cottage.js';
import { grown, plotWith } from './plots.js';
import { type Case, itStandsSoundly, shareInPlace } from './standing.js';

const CASES: Case[] = [
  { plot: { width: 45, height: 50 } },
  { plot: { width: 45, height: 50 }, given: { view: 'gable', sag: 1 } },
  { plot: { width: 60, height: 46 }, given: { hipped: true } },
  { plot: { width: 28, height: 34 } },
];

describe('cottage', () => {
  itStandsSoundly(cottage, CASES, 1);

  it('draws a sibling when a little larger', () => {
    const one = grown(cottage, plotWith('rectangle', { width: 45, height: 50 }));
    const two = grown(cottage, plotWith('rectangle', { width: 45.4, height: 50.5 }));
    expect(shareInPlace(one, two, 1.2)).toBeGreaterThan(0.7);
  });

  it('has more panes where finer bars can be cut', () => {
    const panes = (smallestWeb: number, smallestHole: number) => {
      const plot = plotWith('rectangle', { width: 45, height: 50, smallestWeb, smallestHole });
      return grown(cottage, plot).holes.contours.length;
    };
    expect(panes(1, 1)).toBeGreaterThan(panes(2, 3));
    // Two windows on each floor and one in the wing, at the least.
    expect(panes(2, 3)).toBeGreaterThanOrEqual(5);
  });

  it('lets its ridge sag', () => {
    const ridge = (sag: number) => {
      const plot = plotWith('rectangle', { width: 28, height: 40 });
      const { body } = grown(cottage, plot, { sag });
      return regionBounds(intersect(body, rectangle(-1.5, -34, 3, 34))).minY;
    };
    expect(ridge(1) - ridge(0)).toBeGreaterThan(0.6);
  });

  it('falls to its ends when hipped', () => {
    const roof = (hipped: boolean) => {
      const plot = plotWith('rectangle', { width: 28, height: 40 });
      const { body } = grown(cottage, plot, { hipped });
      return regionArea(intersect(body, rectangle(-14, -40, 28, 21)));
    };
    expect(roof(true)).toBeLessThan(0.9 * roof(false));
  });

  it('draws more joints with more coverage', () => {
    const plot = plotWith('rectangle', { width: 45, height: 50 });
    const scores = (coverage: number) => grown(cottage, plot, { coverage }).scores.length;
    expect(scores(0.8)).toBeGreaterThan(scores(0.4) + 10);
    expect(scores(0.4)).toBeGreaterThan(scores(0) + 10);
  });

  it('fills its plot', () => {
    for (const view of ['eaves', 'gable']) {
      const plot = plotWith('rectangle', { width: 45, height: 50 });
      const { minX, maxX, minY } = regionBounds(grown(cottage, plot, { view }).body);
      expect(maxX - minX).toBeGreaterThan(42);
      expect(maxX - minX).toBeLessThan(46.5);
      expect(minY).toBeCloseTo(-50, 0);
    }
  });
});
