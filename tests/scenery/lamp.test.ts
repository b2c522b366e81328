import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { lamp } from '../../src/scenery/lamp.js';
import { plotAt } from './draws.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const plot = plotWith('rectangle', { width: 50, height: 70 });

describe('lamp', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(lamp, 50, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(lamp, plot);
  });

  it('hangs its lanterns from as many arms as are asked for', () => {
    const panes = (arms: string) => grown(lamp, plot, { arms }).holes.contours.length;
    expect(panes('double')).toBe(2 * panes('single'));
    const wide = (arms: string) => {
      const { minX, maxX } = regionBounds(grown(lamp, plot, { arms, ladder: false }).body);
      return maxX - minX;
    };
    expect(wide('double')).toBeGreaterThan(wide('single') + 5);
    expect(wide('single')).toBeGreaterThan(wide('none') + 2);
  });

  it('cuts more panes where the process can, and none where it cannot', () => {
    const panes = (smallestWeb: number, smallestHole: number, height = 70) =>
      grown(lamp, { ...plot, height, smallestWeb, smallestHole }).holes.contours.length;
    expect(panes(0.8, 0.8)).toBe(3);
    expect(panes(3, 3, 30)).toBe(0);
  });

  it('has a bar for the ladder when asked for', () => {
    const area = (ladder: boolean) => regionArea(grown(lamp, plot, { ladder }).body);
    expect(area(true)).toBeGreaterThan(area(false) + 10);
  });

  it('glows where card lies behind, and stays dark in the open', () => {
    const backdrop = plotWith('none', { width: 50, height: 70 });
    const rays = (glow: number) => grown(lamp, backdrop, { glow }).scores.length;
    expect(rays(0)).toBe(0);
    expect(rays(1)).toBeGreaterThan(6);
    expect(grown(lamp, plot, { glow: 1 }).scores.length).toBe(0);
  });

  it('reaches out of its own jamb on a bracket', () => {
    const open = rectangle(0, -60, 80, 60);
    const card = (side: 'left' | 'right', hand: number) => {
      const { body } = grown(lamp, plotAt(side, { width: 50, height: 40 }), { arms: 'single' });
      return regionArea(intersect(body, { contours: (hand > 0 ? open : shut).contours }));
    };
    const shut = rectangle(-80, -60, 80, 60);
    expect(card('left', 1)).toBeGreaterThan(card('left', -1));
    expect(card('right', -1)).toBeGreaterThan(card('right', 1));
  });
});
