import { describe, expect, it } from 'vitest';
import { regionBounds } from '../../src/geometry/measure.js';
import { mountains } from '../../src/scenery/mountains.js';
import { eachDraw, expectDrawFitToCut, expectFitToCut } from './each-draw.js';
import { grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

describe('mountains', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(mountains, 50, expectFitToCut);
  }, 60000);

  it('stands where its land is high when it is flat over the middle', () => {
    expectDrawFitToCut(mountains, 715);
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(mountains, plotWith('rectangle', { side: mountains.defaultSide }));
  });

  it('cuts snow out only when asked and never on a backdrop', () => {
    const plot = (window: 'rectangle' | 'none') => plotWith(window, { height: 60 });
    const caps = (window: 'rectangle' | 'none', snow: string) =>
      grown(mountains, plot(window), { snow }).holes.contours.length;
    expect(caps('rectangle', 'cut')).toBeGreaterThan(0);
    expect(caps('rectangle', 'scored')).toBe(0);
    expect(caps('none', 'cut')).toBe(0);
  });

  it('scores ridges and snow only when asked', () => {
    const lines = (given: object) => grown(mountains, plotWith('rectangle'), { ...given }).scores;
    expect(lines({ ridges: 0, snow: 'none' })).toHaveLength(0);
    expect(lines({ ridges: 0, snow: 'scored' }).length).toBeGreaterThan(0);
    expect(lines({ ridges: 1 }).length).toBeGreaterThan(lines({ ridges: 0.3 }).length);
  });

  it('reaches the top of its plot with its highest peak, blunted by less than 3 mm', () => {
    for (let seed = 0; seed < 10; seed++) {
      const { minY } = regionBounds(grown(mountains, plotWith('rectangle'), {}, seed).body);
      expect(minY).toBeGreaterThan(-40.1);
      expect(minY).toBeLessThan(-37);
    }
  });
});
