import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { lineBounds, lineLength, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { curtain } from '../../src/scenery/curtain.js';
import { eachFrame, expectFrameFitToCut } from './each-frame.js';
import { framePlot } from './frames.js';
import { grown } from './plots.js';
import { expectSeeded } from './standing.js';

const plot = framePlot('rectangle', 110, 90, { smallestWeb: 1, smallestHole: 1 });
const draw = (given: Record<string, number | string>) => grown(curtain, plot, given);

/** What is left open, as a box, within a band of the window. */
function openBetween(given: Record<string, number | string>, y0: number, y1: number) {
  const open = subtract(plot.frame.window, [draw(given).body]);
  return regionBounds(intersect(open, rectangle(-60, y0, 120, y1 - y0)));
}

describe('curtain', () => {
  it('is fit to cut whatever is drawn', () => {
    eachFrame(curtain, 50, expectFrameFitToCut);
  }, 600000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(curtain, plot);
  });

  it('opens as far as asked, tied back below', () => {
    for (const open of [0.4, 0.8]) {
      const under = openBetween({ open, form: 'drapes' }, -64, -62);
      const tied = openBetween({ open, form: 'drapes' }, -37, -33);
      expect((under.maxX - under.minX) / 110).toBeGreaterThan(open - 0.02);
      expect((under.maxX - under.minX) / 110).toBeLessThan(open + 0.1);
      expect(tied.maxX - tied.minX).toBeGreaterThan(under.maxX - under.minX);
    }
  });

  it('hangs as low as the drop asks', () => {
    for (const drop of [0.12, 0.3]) {
      const { minY } = openBetween({ drop, form: 'drapes', open: 0.9 }, -90, 0);
      expect(-90 + drop * 90 - minY).toBeLessThan(0.25 * drop * 90 + 0.5);
      expect(minY).toBeGreaterThan(-90 + 0.7 * drop * 90);
    }
  });

  it('hangs tassels between swags only', () => {
    const skirts = (swags: number) => {
      // Below the swags' hems only the tassels are left.
      const low = rectangle(-40, -90 + 0.215 * 90, 80, 3);
      const card = intersect(draw({ swags, open: 0.9, drop: 0.2 }).body, low);
      return card.contours.filter((c) => regionArea({ contours: [c] }) > 2).length;
    };
    expect(skirts(2)).toBe(1);
    expect(skirts(4)).toBe(3);
  });

  it('scores more folds when asked, and an arch on a proscenium', () => {
    const length = (given: Record<string, number | string>) =>
      draw(given).scores.reduce((sum, s) => sum + lineLength(s), 0);
    expect(length({ folds: 1 })).toBeGreaterThan(1.4 * length({ folds: 0 }));
    const wide = (form: string) =>
      draw({ form }).scores.filter((s) => lineBounds(s).maxX - lineBounds(s).minX > 80).length;
    expect(wide('swags')).toBe(0);
    expect(wide('proscenium')).toBeGreaterThan(0);
  });
});
