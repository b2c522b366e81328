import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { holeCount } from '../../src/geometry/components.js';
import { regionArea } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { ENDS } from '../../src/scenery/pergola/timber.js';
import { pergola } from '../../src/scenery/pergola.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, grown, plotWith } from './plots.js';
import { expectClear, expectSeeded } from './standing.js';

const plot = plotWith('rectangle', { width: 80, height: 60, smallestWeb: 1, smallestHole: 1 });
const bare = { climber: 0 };

describe('pergola', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(pergola, 25, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(pergola, plot);
  });

  it('keeps its scores clear of the cut', () => {
    expectClear(grown(pergola, plot, { form: 'path' }), 1.5);
  });

  it('has as many bays as are asked for, and fewer for coarse card', () => {
    const open = (bays: number, changes = {}) => {
      const { body, holes } = grown(pergola, { ...plot, ...changes }, { ...bare, bays });
      // Daylight at breast height, where neither braces nor blocks are.
      const slice = intersect(subtract(body, [holes]), rectangle(-60, -25, 120, 0.5));
      return slice.contours.length - 1;
    };
    expect([2, 4, 6].map((bays) => open(bays))).toEqual([2, 4, 6]);
    expect(open(6, { smallestWeb: 3, smallestHole: 3, width: 40 })).toBeLessThan(6);
  });

  it('shows frame behind frame along a path, as far as there is room', () => {
    const holes = (form: string, bays: number) =>
      holeCount(cardWith(plot, grown(pergola, plot, { ...bare, form, bays })));
    for (const form of ['path', 'hoops']) {
      expect(holes(form, 3), form).toBeGreaterThan(holes(form, 2));
    }
  });

  it('is overgrown as far as is asked for', () => {
    for (const form of ['row', 'path', 'hoops']) {
      const leaves = (climber: number) =>
        regionArea(grown(pergola, plot, { form, climber }).parts!.climber);
      expect(leaves(0)).toBe(0);
      expect(leaves(1), form).toBeGreaterThan(leaves(0.2) + 20);
    }
  });

  it('shapes the ends of its beams', () => {
    const areas = ENDS.map((ends) => regionArea(grown(pergola, plot, { ...bare, ends }).body));
    expect(new Set(areas.map((a) => a.toFixed(1))).size).toBe(ENDS.length);
  });
});
