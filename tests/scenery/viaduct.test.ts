import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { holeCount } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { randomFrom } from '../../src/scenery/random.js';
import { planOf } from '../../src/scenery/viaduct/plan.js';
import { viaduct } from '../../src/scenery/viaduct.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, grown, plotWith } from './plots.js';
import { expectClear, expectSeeded } from './standing.js';

const plot = plotWith('rectangle', { height: 50 });
const level = { valley: 0 };

describe('viaduct', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(viaduct, 50, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(viaduct, plot);
  });

  it('keeps its scores clear of the cut', () => {
    expectClear(grown(viaduct, plot), 1.5);
  });

  it('opens as many arches as are asked for, and fewer for coarse card', () => {
    const open = (arches: number, limits = {}) => {
      const room = { ...plot, ...limits };
      // One more hole than arches: the sky over it.
      return holeCount(cardWith(room, grown(viaduct, room, { ...level, arches }))) - 1;
    };
    expect([3, 5, 9].map((arches) => open(arches))).toEqual([3, 5, 9]);
    const coarse = open(9, { width: 60, smallestWeb: 3, smallestHole: 3 });
    expect(coarse).toBeLessThan(9);
  });

  it('turns its arches in true half circles where the piers are tall', () => {
    // Euclid, Elements I, definitions 15 and 18: every point of a semicircle is one radius off.
    const { bays } = planOf(plot, 5, 0.3, 0, false, randomFrom(1));
    const { soffit } = bays[0];
    const radius = (soffit.at(-1)!.x - soffit[0].x) / 2;
    const centre = { x: soffit[0].x + radius, y: soffit[0].y };
    for (const p of soffit) {
      expect(Math.hypot(p.x - centre.x, p.y - centre.y)).toBeCloseTo(radius, 6);
    }
  });

  it('is heavier with stout piers and with a deep valley', () => {
    const card = (given: object) => regionArea(cardWith(plot, grown(viaduct, plot, { ...given })));
    expect(card({ ...level, stout: 1 })).toBeGreaterThan(card({ ...level, stout: 0 }) + 100);
    expect(card({ valley: 1 })).toBeGreaterThan(card(level) + 100);
  });

  it('carries a train with lit windows over its parapet', () => {
    const window = plotWith('rectangle', { height: 60 });
    const lone = grown(viaduct, window, level);
    const train = grown(viaduct, window, { ...level, traffic: 'train' });
    const over = intersect(train.parts!.train, rectangle(-60, -60, 120, 14));
    expect(regionArea(over)).toBeGreaterThan(100);
    expect(train.holes.contours.length).toBeGreaterThan(lone.holes.contours.length);
    expect(regionBounds(train.parts!.train).minY).toBeLessThan(-57);
    expect(lone.parts!.train.contours).toEqual([]);
  });

  it('scores more joints with more coverage', () => {
    const lines = (coverage: number) => grown(viaduct, plot, { coverage }).scores.length;
    expect(lines(1)).toBeGreaterThan(lines(0));
  });
});
