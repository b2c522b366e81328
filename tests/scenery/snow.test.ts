import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { lineBounds, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { snow } from '../../src/scenery/snow.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const fine = { smallestWeb: 1, smallestHole: 1 };
const head = (changes = {}) => plotWith('rectangle', { side: 'head', ...fine, ...changes });
const sill = (changes = {}) => plotWith('rectangle', { side: 'sill', ...fine, ...changes });

describe('snow', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(snow, 50, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(snow, head());
  });

  it('hangs icicles from the head that reach almost as deep as asked', () => {
    for (let seed = 0; seed < 8; seed++) {
      const ice = grown(snow, head(), { form: 'icicles' }, seed).body;
      const soft = grown(snow, head(), { form: 'drift' }, seed).body;
      expect(regionBounds(ice).minY).toBeGreaterThan(-40.1);
      expect(regionBounds(ice).minY).toBeLessThan(-24);
      expect(regionArea(ice)).toBeLessThan(0.8 * regionArea(soft));
    }
  });

  it('opens bays with icicles under a ledge on the sill, but not on a backdrop', () => {
    const holes = (form: string, window: 'rectangle' | 'none' = 'rectangle') =>
      grown(snow, plotWith(window, { side: 'sill', ...fine }), { form }).holes.contours.length;
    expect(holes('icicles')).toBeGreaterThan(1);
    expect(holes('drift')).toBe(0);
    expect(holes('icicles', 'none')).toBe(0);
  });

  it('lies in more lobes when lumpier', () => {
    const turns = (lumps: number) =>
      grown(snow, sill({ height: 20 }), { lumps, sparkle: 0, shade: true }).scores.length;
    expect(turns(1)).toBeGreaterThan(turns(0));
  });

  it('scores crystals and shade only when asked, clear of the cut', () => {
    const draw = (given: object) => grown(snow, head(), { sparkle: 0, shade: false, ...given });
    expect(draw({}).scores).toHaveLength(0);
    expect(draw({ shade: true }).scores.length).toBeGreaterThan(0);
    const { scores, body, holes } = draw({ sparkle: 1 });
    expect(scores.length).toBeGreaterThan(20);
    expect(clearance(scores, subtract(body, [holes]))).toBeGreaterThanOrEqual(1.48);
    for (const line of scores) {
      const { minX, maxX } = lineBounds(line);
      expect(maxX - minX).toBeLessThan(3);
    }
  });
});
