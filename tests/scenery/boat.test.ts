import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { KINDS } from '../../src/scenery/boat/kit.js';
import { boat } from '../../src/scenery/boat.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { grown, plotWith } from './plots.js';
import { expectClear, expectSeeded } from './standing.js';

const plot = plotWith('rectangle', { width: 80, height: 40 });

describe('boat', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(boat, 50, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(boat, plot);
  });

  it('keeps its scores clear of the cut', () => {
    expectClear(grown(boat, plot, { ripples: 0 }), 1.5);
  });

  it('is held all along its hull', () => {
    for (const kind of KINDS) {
      const { body, parts } = grown(boat, plot, { kind, ripples: 0 });
      const { minX, maxX } = regionBounds(parts!.hull);
      // The overhang of stem and stern is a quarter of her length at most: common practice, no
      // source.
      const foot = regionBounds(intersect(body, rectangle(-100, -0.3, 200, 0.6)));
      expect(foot.maxX - foot.minX, kind).toBeGreaterThan(0.7 * (maxX - minX));
    }
  });

  it('sets sails on a sloop only, high over a low hull', () => {
    const sails = (kind: string) => {
      const parts = grown(boat, { ...plot, height: 70 }, { kind }).parts!;
      return regionArea(parts.sails);
    };
    expect(KINDS.filter((kind) => sails(kind) > 0)).toEqual(['sailing']);
    expect(sails('sailing')).toBeGreaterThan(500);
  });

  it('lies deeper with a load', () => {
    for (const kind of KINDS) {
      const hull = (load: number) => {
        const { body } = grown(boat, plot, { kind, load, ripples: 0 });
        return regionArea(intersect(body, rectangle(-60, -60, 120, 60)));
      };
      expect(hull(1), kind).toBeLessThan(hull(0) - 10);
    }
  });

  it('takes somebody aboard', () => {
    const area = (crew: boolean) => regionArea(grown(boat, plot, { kind: 'rowing', crew }).body);
    expect(area(true)).toBeGreaterThan(area(false) + 20);
  });

  it('scores ripples on the frame', () => {
    const lines = (ripples: number) => grown(boat, plot, { ripples }).scores.length;
    expect(lines(1)).toBeGreaterThan(lines(0));
  });
});
