import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { clouds } from '../../src/scenery/clouds.js';
import { randomFrom } from '../../src/scenery/random.js';
import { billowOf } from '../../src/scenery/sky/billow.js';
import { eachDraw, expectDrawFitToCut, expectFitToCut } from './each-draw.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const head = (changes = {}) => plotWith('rectangle', { side: 'head', width: 80, ...changes });

describe('clouds', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(clouds, 50, expectFitToCut);
  }, 240000);

  it('drifts in from where its bank meets the jamb, not from the middle of its room', () => {
    expectDrawFitToCut(clouds, 811);
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(clouds, head());
  });

  // Cumulus: detached clouds with bulging tops and a nearly horizontal base (World Meteorological
  // Organization, International Cloud Atlas, definition of Cumulus; from memory).
  it('has a level base with rounds over it, the highest near the summit', () => {
    for (let seed = 0; seed < 20; seed++) {
      const heap = { left: 0, right: 60, base: 0, top: -20, summit: 0.5 };
      const { region, lobes } = billowOf(heap, 1.5, randomFrom(seed), 0.5);
      const { minX, maxX, minY, maxY } = regionBounds(region);
      expect(maxY).toBeCloseTo(0, 3);
      expect(minY).toBeGreaterThan(-20.1);
      expect(minY).toBeLessThan(-15);
      expect([minX, maxX].map(Math.round)).toEqual([0, 60]);
      const tops = lobes.map((l) => l.y - l.radius);
      const highest = lobes[tops.indexOf(Math.min(...tops))];
      expect(Math.abs(highest.x - 30)).toBeLessThan(15);
    }
  });

  it('has fewer and larger rounds when asked', () => {
    const count = (size: number) =>
      billowOf({ left: 0, right: 60, base: 0, top: -20 }, 1, randomFrom(3), size).lobes.length;
    expect(count(0)).toBeGreaterThan(1.3 * count(1));
  });

  it('hangs in more banks when asked, each lower than the last', () => {
    const depth = (banks: number) =>
      -regionBounds(grown(clouds, head({ height: 60 }), { form: 'drifting', banks }).body).minY;
    expect(depth(4)).toBeGreaterThan(55);
    const corners = (banks: number) =>
      grown(clouds, head({ height: 60 }), { form: 'drifting', banks, billows: 0.3 })
        .body.contours.map((c) => c.length)
        .reduce((a, b) => a + b, 0);
    expect(corners(4)).toBeGreaterThan(corners(1));
  });

  it('scores curls only when asked, clear of the cut', () => {
    const draw = (curls: number) => grown(clouds, head(), { banks: 1, billows: 1, curls });
    expect(draw(0).scores).toHaveLength(0);
    const { scores, body, holes } = draw(1);
    expect(scores.length).toBeGreaterThan(0);
    expect(clearance(scores, subtract(body, [holes]))).toBeGreaterThanOrEqual(1.48);
  });
});
