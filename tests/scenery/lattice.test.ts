import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { narrowestWeb } from '../../src/geometry/width/webs.js';
import { lattice } from '../../src/scenery/lattice.js';
import { LIMITS } from './draws.js';
import { eachFrame, expectFrameFitToCut } from './each-frame.js';
import { type FrameShape, framePlot } from './frames.js';
import { cardWith, grown } from './plots.js';

const plot = framePlot('rectangle', 100, 80, { smallestWeb: 1, smallestHole: 1 });
type Given = Record<string, number | string | boolean>;
const panesOf = (given: Given, at = plot) =>
  components(subtract(at.frame.window, [grown(lattice, at, given).body]));

describe('lattice', () => {
  it('is fit to cut whatever is drawn', () => {
    eachFrame(lattice, 50, expectFrameFitToCut);
  }, 600000);

  it('fills the window with whole panes as wide as asked', () => {
    const panes = panesOf({ form: 'panes', pane: 20, bar: 2 });
    // 5 columns of 20 mm and, a third higher than wide, 3 rows.
    expect(panes.length).toBe(15);
    const widths = panes.map((p) => regionBounds(p).maxX - regionBounds(p).minX);
    expect(Math.min(...widths)).toBeGreaterThan(17.9);
    expect(Math.max(...widths)).toBeLessThan(19.1);
  });

  it('draws bars as wide as asked, and never finer than the process can', () => {
    for (const form of ['panes', 'diamonds', 'gothic', 'radial']) {
      const card = cardWith(plot, grown(lattice, plot, { form, bar: 3 }));
      expect(narrowestWeb(card, 2.95), form).toBe(null);
      expect(narrowestWeb(card, 3.1)?.widthMm, form).toBeCloseTo(3, 1);
      const coarse = framePlot('rectangle', 100, 80, { smallestWeb: 3, smallestHole: 3 });
      const pressed = cardWith(coarse, grown(lattice, coarse, { form, bar: 0.8 }));
      expect(narrowestWeb(pressed, 2.98), form).toBe(null);
    }
  });

  it('keeps its bars where they are as fine as the process cuts', () => {
    for (const [smallestWeb, smallestHole] of LIMITS) {
      for (const form of ['panes', 'diamonds', 'gothic', 'radial']) {
        const at = framePlot('rounded', 110, 100, { smallestWeb, smallestHole });
        const count = (bar: number) => panesOf({ form, bar, pane: 25 }, at).length;
        expect(count(0.8), form).toBeGreaterThan(5);
        expect(count(0.8), form).toBe(count(1.2 * smallestWeb));
      }
    }
  });

  it('fills the head alone when asked, closed by a bar', () => {
    const panes = panesOf({ form: 'panes', fill: 0.4, bar: 2 });
    const open = panes.map((p) => regionBounds(p)).filter((b) => b.maxY > -1);
    expect(open.length).toBe(1);
    expect(open[0].minY).toBeCloseTo(-80 + 0.4 * 80, 1);
    expect(open[0].maxX - open[0].minX).toBeCloseTo(100, 1);
  });

  it('crosses gothic mullions as the pointed arch of its window', () => {
    // An equilateral arch's sides are each struck from the other springing (from its geometry), so
    // the arc from the middle mullion over to the right meets the head half the span from its start.
    const at = framePlot('pointed', 80, 110, { smallestWeb: 1, smallestHole: 1 });
    const body = grown(lattice, at, { form: 'gothic', pane: 40, bar: 1.6 }).body;
    const springing = -110 + (Math.sqrt(3) / 2) * 80;
    for (const degrees of [10, 20, 25]) {
      const angle = (degrees * Math.PI) / 180;
      // Struck with 80 mm from a centre 80 mm to the right of the mullion at x = 0.
      const [x, y] = [80 - 80 * Math.cos(angle), springing - 80 * Math.sin(angle)];
      const probe = rectangle(x - 0.2, y - 0.2, 0.4, 0.4);
      expect(regionArea(intersect(body, probe))).toBeCloseTo(0.16, 3);
    }
  });

  it('gives a round window more rays for narrower panes', () => {
    const at = framePlot('circle', 90, 90, { smallestWeb: 1, smallestHole: 1 });
    const count = (pane: number) => panesOf({ form: 'radial', pane }, at).length;
    expect(count(12)).toBeGreaterThan(count(30));
  });

  it('scores a rim where asked', () => {
    for (const shape of ['rectangle', 'arch', 'circle'] as FrameShape[]) {
      const at = framePlot(shape, 80, 80);
      expect(grown(lattice, at, { rim: true }).scores.length).toBeGreaterThan(0);
      expect(grown(lattice, at, { rim: false }).scores).toEqual([]);
    }
  });
});
