import { describe, expect, it } from 'vitest';
import { holeCount } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { HEADS } from '../../src/scenery/railings/heads.js';
import { planOf } from '../../src/scenery/railings/plan.js';
import { railings } from '../../src/scenery/railings.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, grown, plotWith } from './plots.js';
import { expectClear, expectSeeded } from './standing.js';

const plot = plotWith('rectangle', { height: 44 });
const holes = (changes: object, given: Record<string, number | string | boolean> = {}) => {
  const room = { ...plot, ...changes };
  return holeCount(cardWith(room, grown(railings, room, given)));
};

describe('railings', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(railings, 50, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(railings, plot);
  });

  it('keeps its scores clear of the cut', () => {
    expectClear(grown(railings, plot), 1.5);
  });

  it('has fewer, stouter bars where the process asks for them', () => {
    const plain = { scrolls: false, spacing: 0 };
    const laser = holes({ smallestWeb: 1, smallestHole: 1 }, plain);
    const knife = holes({}, plain);
    const press = holes({ smallestWeb: 3, smallestHole: 3 }, plain);
    expect(laser).toBeGreaterThan(knife);
    expect(knife).toBeGreaterThan(press);
    const bar = (smallestWeb: number) =>
      planOf({ ...plot, smallestWeb }, 'spear', false, 0.3, 0).bar;
    expect(bar(3)).toBeGreaterThan(3);
    expect(bar(1)).toBeLessThan(1.6);
  });

  it('fills its band with scrolls, or with rings, or with nothing, as there is room', () => {
    const filling = (height: number, smallestWeb: number, smallestHole: number) =>
      planOf({ ...plot, height, smallestWeb, smallestHole }, 'spear', true, 0.3, 0.3).filling;
    expect(filling(60, 1, 1)).toBe('scrolls');
    expect(filling(26, 1.2, 1.2)).toBe('rings');
    expect(filling(14, 3, 3)).toBe(null);
    expect(holes({}, { scrolls: true })).not.toBe(holes({}, { scrolls: false }));
  });

  it('ends its bars in the heads that are asked for', () => {
    const areas = HEADS.map((heads) =>
      regionArea(grown(railings, plot, { heads, scrolls: false, wall: 0 }).body),
    );
    expect(new Set(areas.map((a) => Math.round(a))).size).toBe(HEADS.length);
  });

  it('stands wider apart with spacing and higher on a higher wall', () => {
    expect(holes({}, { spacing: 1 })).toBeLessThan(holes({}, { spacing: 0 }));
    const top = (wall: number) => regionBounds(grown(railings, plot, { wall }).parts!.wall).minY;
    expect(top(0)).toBeCloseTo(0, 1);
    expect(top(1)).toBeLessThan(-10);
  });
});
