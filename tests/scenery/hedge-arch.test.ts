import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { containsPoint } from '../../src/geometry/components.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { hedge } from '../../src/scenery/hedge.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const SLOW = 240_000;
const arched = {
  ...hedge,
  parameters: {
    ...hedge.parameters,
    form: { ...hedge.parameters.form, options: ['arch'], default: 'arch' },
  },
};
const plot = plotWith('rectangle', { width: 90, height: 46 });

describe('a hedge with an arch', () => {
  it('is fit to cut at any size', () => eachDraw(arched, 50, expectFitToCut), SLOW);

  it('draws the same bytes for one seed', () => expectSeeded(arched, plot), SLOW);

  it('is open from the ground to under its crest, and rises over the passage', () => {
    for (let seed = 0; seed < 8; seed++) {
      const { body, holes } = grown(hedge, plot, { form: 'arch', slits: 0 }, seed);
      expect(holes.contours).toHaveLength(1);
      const way = regionBounds(holes);
      expect(way.maxY).toBeGreaterThan(-2.5);
      expect(way.minY).toBeLessThan(-0.7 * 46);
      const card = subtract(body, [holes]);
      const middle = (way.minX + way.maxX) / 2;
      expect(containsPoint(card, { x: middle, y: -20 })).toBe(false);
      expect(containsPoint(card, { x: middle, y: -44 })).toBe(true);
      // Beside the arch the hedge is lower.
      expect(containsPoint(card, { x: -36, y: -44 })).toBe(false);
      expect(containsPoint(card, { x: -36, y: -26 })).toBe(true);
    }
  });
});
