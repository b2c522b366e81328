import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { randomFrom } from '../../src/scenery/random.js';
import { forked } from '../../src/scenery/seaweed/fork.js';
import { forksFor } from '../../src/scenery/seaweed/lace.js';
import { carried, current, holdfasts } from '../../src/scenery/seaweed/stand.js';
import { KINDS } from '../../src/scenery/seaweed/weed.js';
import { seaweed } from '../../src/scenery/seaweed.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, grown, plotWith, sillPlot } from './plots.js';
import { expectSeeded } from './standing.js';

describe('seaweed', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(seaweed, 15, expectFitToCut);
  }, 900000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(seaweed, plotWith('rectangle'));
  });

  it.each(KINDS)('is one piece with any window: %s', (kind) => {
    for (const window of ['arch', 'pointed', 'circle', 'rounded'] as const) {
      const plot = plotWith(window, { height: 40, width: 70 });
      expect(components(cardWith(plot, grown(seaweed, plot, { kind })))).toHaveLength(1);
    }
  });

  it('sways together, further the higher it stands', () => {
    const flow = (sway: number) => current(sway, 40, randomFrom(1));
    const over = (sway: number, up: number) => flow(sway)(up) - flow(0)(up);
    expect(over(20, 40)).toBeCloseTo(40 * Math.tan(Math.PI / 9), 6);
    expect(over(20, 20)).toBeGreaterThan(0);
    expect(over(20, 20)).toBeLessThan(over(20, 40) / 2);
    expect(over(-20, 40)).toBeCloseTo(-over(20, 40), 6);
    // Two plants are carried alike at one height, wherever they are rooted.
    const shift = (x: number) => carried(flow(20), x, 30).x - x;
    expect(shift(-25)).toBeCloseTo(shift(25), 9);
    expect(flow(20)(0)).toBe(0);
  });

  it.each(KINDS)('leans with the sway: %s', (kind) => {
    const middle = (sway: number) => {
      const { body } = grown(seaweed, sillPlot({ height: 50, width: 40 }), { kind, sway });
      // What stands high: the rock that it is rooted on does not sway.
      const { minX, maxX } = regionBounds(intersect(body, rectangle(-100, -100, 200, 75)));
      return (minX + maxX) / 2;
    };
    expect(middle(30)).toBeGreaterThan(middle(-30) + 5);
  });

  it('stands closer when thick', () => {
    const area = (thick: number) =>
      regionArea(grown(seaweed, sillPlot({ height: 30 }), { thick, kind: 'kelp' }).body);
    expect(area(1)).toBeGreaterThan(1.2 * area(0));
  });

  it('roots its plants in the middle first, and keeps them when the plot grows wider', () => {
    const at = (width: number) => holdfasts(sillPlot({ width, height: 20 }), 12, 3, randomFrom(4));
    const wide = new Map(at(120).map((h) => [h.key, h.x]));
    for (const { key, x } of at(70)) expect(wide.get(key)).toBeCloseTo(x, 9);
    expect(at(8)).toHaveLength(1);
  });

  it('has floats on kelp and wrack, none on lace', () => {
    const floats = (kind: string) =>
      regionArea(
        grown(seaweed, sillPlot({ height: 50 }), { kind }).parts?.float ?? { contours: [] },
      );
    expect(floats('kelp')).toBeGreaterThan(5);
    expect(floats('wrack')).toBeGreaterThan(5);
    expect(floats('lace')).toBe(0);
  });

  // Common practice, no source: detail is coarser where the process cuts coarsely.
  it('forks more often the finer the process and the panel', () => {
    const forks = (web: number, fineness: number) =>
      forksFor(40, sillPlot({ smallestWeb: web, smallestHole: web, fineness }));
    expect(forks(1, 1)).toBeGreaterThan(forks(3, 1));
    expect(forks(1, 1)).toBeGreaterThanOrEqual(forks(1, 0));
    for (const web of [1, 1.5, 3]) expect(forks(web, 0.5)).toBeGreaterThanOrEqual(1);
  });

  // Common practice, no source: wrack forks in two at every fork (it is dichotomous).
  it('forks in two', () => {
    const forking = {
      levels: 3,
      openDeg: [20, 30] as const,
      firstMm: 10,
      shorter: 0.9,
      thickness: () => 2,
      again: 1,
      upright: 0.5,
    };
    const stretches = forked(forking, 0, randomFrom(1));
    const count = (level: number) => stretches.filter((s) => s.level === level).length;
    expect([0, 1, 2, 3].map(count)).toEqual([1, 2, 4, 8]);
    expect(stretches.filter((s) => s.isLast)).toHaveLength(8);
  });
});
