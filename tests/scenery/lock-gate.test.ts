import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { lockGate } from '../../src/scenery/lock-gate.js';
import { expectDrawFitToCut } from './each-draw.js';
import { grown, plotWith } from './plots.js';
import { type Case, itStandsSoundly, shareInPlace } from './standing.js';

const CASES: Case[] = [
  { plot: { width: 96, height: 40 } },
  { plot: { width: 112, height: 44 }, given: { beams: 1, bays: 1 } },
  { plot: { width: 80, height: 32 }, given: { sides: false, bays: 0.67 } },
  { plot: { width: 96, height: 36 }, given: { opening: 0.4 } },
  { plot: { width: 96, height: 36 }, given: { opening: 1, handrail: false } },
];

describe('lock gate', () => {
  itStandsSoundly(lockGate, CASES, 1);

  it('draws a sibling when a little larger', () => {
    const one = grown(lockGate, plotWith('rectangle', { width: 90, height: 40 }));
    const two = grown(lockGate, plotWith('rectangle', { width: 91, height: 40.4 }));
    expect(shareInPlace(one, two, 1.2)).toBeGreaterThan(0.75);
  });

  it('shuts the water off when closed and lets it through when open', () => {
    const water = rectangle(-30, -18, 60, 18);
    const shown = (opening: number, bays = 0) => {
      const growth = grown(lockGate, plotWith('rectangle'), { opening, bays });
      return 1 - regionArea(intersect(growth.body, water)) / regionArea(water);
    };
    expect(shown(0)).toBeLessThan(1e-6);
    const [a, b, c] = [shown(0.3), shown(0.6), shown(1)];
    expect(a).toBeGreaterThan(0.05);
    expect(b).toBeGreaterThan(a);
    expect(c).toBeGreaterThan(b);
  });

  it('shows its leaves broad enough to cut where a slim gate is swung right back', () => {
    for (const n of [253, 346, 514, 932]) {
      expectDrawFitToCut(lockGate, n);
    }
  });

  it('opens the bays from the top down', () => {
    const open = (bays: number) =>
      grown(lockGate, plotWith('rectangle'), { bays }).holes.contours.length;
    expect(open(0)).toBe(0);
    expect(open(0.34)).toBeGreaterThanOrEqual(4);
    expect(open(0.67)).toBeGreaterThan(open(0.34));
    expect(open(1)).toBeGreaterThan(open(0.67));
  });

  it('reaches out to the plot with its beams, thicker and higher than over the leaves', () => {
    for (const beams of [0.3, 0.6, 1]) {
      const plot = plotWith('rectangle', { width: 80, height: 40 });
      const { body } = grown(lockGate, plot, { beams, sides: false, handrail: false });
      const { minX, maxX } = regionBounds(body);
      expect(-minX).toBeGreaterThan(36);
      expect(maxX).toBeLessThanOrEqual(40.5);
      const slice = (x: number) => intersect(body, rectangle(x - 0.2, -36, 0.4, 12));
      const butt = slice(37);
      const middle = regionBounds(slice(1.2));
      expect(regionArea(butt) / 0.4).toBeGreaterThan(3.5);
      expect(regionBounds(butt).minY).toBeLessThan(middle.minY);
    }
  });

  it('runs on behind the jambs when it is as wide as the window', () => {
    const { body } = grown(lockGate, plotWith('rectangle', { width: 96 }));
    expect(regionBounds(body).minX).toBeLessThan(-50);
    expect(regionBounds(body).maxX).toBeGreaterThan(50);
  });

  it('has brick sides and a handrail only when asked', () => {
    const plot = plotWith('rectangle');
    const count = (given: object) => grown(lockGate, plot, { ...given }).scores.length;
    expect(count({ sides: false })).toBeLessThan(count({}) - 20);
    const top = (handrail: boolean) =>
      regionArea(intersect(grown(lockGate, plot, { handrail }).body, rectangle(-14, -40, 28, 8)));
    expect(top(false)).toBeLessThan(top(true));
  });
});
