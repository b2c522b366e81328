import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { holeCount } from '../../src/geometry/components.js';
import { regionArea } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { branches } from '../../src/scenery/branches.js';
import { eachFrame, expectFrameFitToCut } from './each-frame.js';
import { framePlot } from './frames.js';
import { cardWith, grown } from './plots.js';
import { expectSeeded } from './standing.js';

const plot = framePlot('arch', 90, 110, { smallestWeb: 1, smallestHole: 1 });
const draw = (given: Record<string, number | string | boolean>) => grown(branches, plot, given);
const cardIn = (given: Record<string, number | string | boolean>, seed = 1) =>
  regionArea(intersect(grown(branches, plot, given, seed).body, plot.frame.window));

describe('branches', () => {
  it('is fit to cut whatever is drawn', () => {
    eachFrame(branches, 25, expectFrameFitToCut);
  }, 600000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(branches, plot);
  });

  it('lies along the edge and is held there in many places', () => {
    // Each lens of light between stem and frame has a hold at both of its ends.
    expect(holeCount(cardWith(plot, draw({ leaves: 0 })))).toBeGreaterThan(6);
    const deep = subtract(plot.frame.window, [rectangle(-45 + 25, -80, 40, 80)]);
    const card = intersect(draw({}).body, plot.frame.window);
    expect(regionArea(subtract(card, [deep]))).toBeLessThan(0.03 * regionArea(card));
  });

  it('grows further over the head when asked to meet', () => {
    const head = rectangle(-8, -110, 16, 30);
    const inHead = (meet: number) =>
      regionArea(intersect(intersect(draw({ meet }).body, plot.frame.window), head));
    expect(inHead(1)).toBeGreaterThan(inHead(0.6) + 20);
  });

  it('grows denser, larger or broader leaves, and berries, when asked', () => {
    const mean = (given: Record<string, number | string | boolean>) =>
      [1, 2].reduce((sum, seed) => sum + cardIn(given, seed), 0) / 2;
    expect(mean({ leaves: 1 })).toBeGreaterThan(1.1 * mean({ leaves: 0 }));
    expect(mean({ leaf: 'broad' })).toBeGreaterThan(1.1 * mean({ leaf: 'long' }));
    expect(mean({ berries: true })).toBeGreaterThan(mean({ berries: false }));
    expect(mean({ size: 12 })).toBeGreaterThan(mean({ size: 5 }));
  }, 300000);
});
