import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { bushPlan } from '../../src/scenery/bush/plan.js';
import { bush } from '../../src/scenery/bush.js';
import { randomFrom } from '../../src/scenery/random.js';
import { eachDraw, expectDrawFitToCut, expectFitToCut } from './each-draw.js';
import { grown, plotWith, valuesOf } from './plots.js';
import { expectSeeded } from './standing.js';

const SLOW = 240_000;
const PLOT = plotWith('rectangle', { width: 60, height: 46, smallestWeb: 1, smallestHole: 1 });
const cardArea = (given = {}) => {
  const { body, holes } = grown(bush, PLOT, given, 3);
  return regionArea(subtract(body, [holes]));
};
type BushGiven = Parameters<typeof bushPlan>[1];
const planned = (given = {}) =>
  bushPlan(PLOT, valuesOf(bush, given) as unknown as BushGiven, randomFrom(3));

describe('a bush', () => {
  it('is fit to cut at any size', () => eachDraw(bush, 30, expectFitToCut), SLOW);

  it.each([387, 407, 772])(
    'has no necks left however long and low it is: draw %d',
    (n) => {
      expectDrawFitToCut(bush, n);
    },
    SLOW,
  );

  it('draws the same bytes for one seed', () => expectSeeded(bush, PLOT), SLOW);

  it('shows as many stems as it is told, side by side at its foot', () => {
    for (const stems of [2, 4]) {
      const feet = planned({ stems }).stems.map(({ points }) => points[0].x);
      expect(feet).toHaveLength(stems);
      for (let i = 1; i < feet.length; i++) expect(feet[i] - feet[i - 1]).toBeGreaterThan(1.5);
    }
  });

  it('begins its leaves where it is told', () => {
    const lowest = (clear: number) =>
      Math.max(...planned({ clear }).tufts.flatMap((t) => t.clumps.map((c) => c.y + c.ry)));
    expect(lowest(0.4)).toBeLessThan(lowest(0.1) - 6);
  });

  it('lets light through when asked', () => {
    expect(cardArea({ light: 0.2 })).toBeLessThan(cardArea({ light: 0 }) - 20);
  });

  it('bears nothing, berries or blossom, scored or raised', () => {
    const lines = (given: object) => grown(bush, PLOT, given as Record<string, string>, 3);
    expect(lines({ fruit: 'none' }).parts!.fruit.contours).toEqual([]);
    const berries = lines({ fruit: 'berries' });
    const blossom = lines({ fruit: 'blossom' });
    expect(berries.scores.length).toBeGreaterThan(3);
    expect(blossom.scores.length).toBeGreaterThan(2);
    expect(berries.scores.length).toBeGreaterThan(blossom.scores.length);
    const raised = lines({ fruit: 'berries', raised: true });
    expect(raised.scores).toEqual([]);
    expect(raised.reliefs).toHaveLength(berries.scores.length);
    const { minY, maxY } = regionBounds(berries.parts!.fruit);
    expect(minY).toBeGreaterThan(-46);
    expect(maxY).toBeLessThan(0);
  });
});
