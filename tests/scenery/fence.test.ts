import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { holeCount } from '../../src/geometry/components.js';
import { regionArea } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { STYLES } from '../../src/scenery/fence/plan.js';
import { fence } from '../../src/scenery/fence.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const plot = plotWith('rectangle', { height: 32 });

describe('fence', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(fence, 50, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(fence, plot);
  });

  it('can be seen through in every style, and differs with it', () => {
    const holes = STYLES.map((style) => {
      const card = cardWith(plot, grown(fence, plot, { style, wear: 0, gaps: 0.8 }));
      return holeCount(card);
    });
    expect(Math.min(...holes)).toBeGreaterThan(3);
    expect(new Set(holes).size).toBe(STYLES.length);
  });

  it('is more open with wider gaps', () => {
    for (const style of STYLES) {
      const card = (gaps: number) =>
        regionArea(cardWith(plot, grown(fence, plot, { style, wear: 0, gaps })));
      expect(card(1), style).toBeLessThan(card(0) - 10);
    }
  });

  it('has a gate of its own where there is room, and none where there is not', () => {
    const gate = (width: number) =>
      regionArea(grown(fence, { ...plot, width }, { gate: true }).parts!.gate);
    expect(gate(96)).toBeGreaterThan(100);
    expect(gate(16)).toBe(0);
    expect(regionArea(grown(fence, plot).parts!.gate)).toBe(0);
  });

  it('loses a board when it is old', () => {
    const card = (wear: number) => {
      const { body } = grown(fence, plot, { wear });
      return regionArea(intersect(body, rectangle(-48, -32, 96, 32)));
    };
    expect(card(1)).toBeLessThan(card(0) - 60);
  });

  it('scores what it cannot cut apart', () => {
    // Three millimetre webs and gaps in a fence 12 mm wide: common practice, no source.
    const coarse = { ...plot, width: 12, smallestWeb: 3, smallestHole: 3 };
    const growth = grown(fence, coarse, { style: 'picket' });
    expect(growth.scores.length).toBeGreaterThan(0);
    expect(holeCount(growth.body)).toBe(0);
  });
});
