import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { holeCount } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { scallops } from '../../src/scenery/scallops.js';
import { stationsRound } from '../../src/scenery/window/walk.js';
import { eachFrame, expectFrameFitToCut } from './each-frame.js';
import { frameDrawOf, frameFaultsOf, framePlot } from './frames.js';
import { cardWith, grown } from './plots.js';
import { expectSeeded } from './standing.js';

const plot = framePlot('rectangle', 100, 80);
const opening = (given: Record<string, number | string | boolean>) => {
  const { body } = grown(scallops, plot, given);
  return subtract(plot.frame.window, [body]);
};

describe('scallops', () => {
  it('is fit to cut whatever is drawn', () => {
    eachFrame(scallops, 50, expectFrameFitToCut);
  }, 600000);

  it('leaves card round the holes of flat lobes and of deep corners', () => {
    for (const n of [211, 236, 271, 293, 313]) {
      const draw = frameDrawOf(scallops, n);
      expect(frameFaultsOf(draw), draw.label).toEqual([]);
    }
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(scallops, plot);
  });

  it('reaches in by hem and depth', () => {
    const { minX, maxX } = regionBounds(opening({ edge: 'point', hem: 3, depth: 5 }));
    // Between the teeth the opening reaches to the hem, save for what a notch's floor rounds off.
    expect(maxX - minX).toBeGreaterThan(100 - 2 * 3 - 1.5);
    expect(maxX - minX).toBeLessThanOrEqual(100 - 2 * 3 + 0.01);
    const shallow = regionArea(opening({ depth: 2 }));
    expect(regionArea(opening({ depth: 5 }))).toBeLessThan(shallow - 2 * 180);
  });

  it('pierces lace alone, and finer lace more often', () => {
    const holes = (given: Record<string, number | string>, fineness: number) => {
      const fine = framePlot('rectangle', 100, 80, { fineness, smallestWeb: 1, smallestHole: 1 });
      return holeCount(cardWith(fine, grown(scallops, fine, given)));
    };
    const lace = { edge: 'lace', pitch: 12, depth: 7 };
    // One hole is the window itself.
    expect(holes({ ...lace, edge: 'scallop' }, 1)).toBe(1);
    const teeth = 2 * (Math.round(98 / 12) + Math.round(77.9 / 12));
    expect(holes(lace, 0)).toBe(1 + teeth);
    expect(holes(lace, 1)).toBeGreaterThan(1 + 3 * (teeth - 4));
  });

  it('echoes the edge on the frame where asked', () => {
    expect(grown(scallops, plot, { echo: true }).scores.length).toBe(1);
    expect(grown(scallops, plot, { echo: false }).scores).toEqual([]);
  });
});

describe('stations round a window', () => {
  it('divide each side evenly, with one in each corner', () => {
    const stations = stationsRound(plot.frame.window.contours[0], 9, 1);
    expect(stations.length).toBe(2 * Math.round(100 / 9) + 2 * Math.round(80 / 9));
    expect(stations.filter((s) => s.corner).length).toBe(4);
    stations.forEach((s, i) => {
      const { at } = stations[(i + 1) % stations.length];
      const gap = Math.hypot(at.x - s.at.x, at.y - s.at.y);
      expect(Math.min(Math.abs(gap - 100 / 11), Math.abs(gap - 80 / 9))).toBeLessThan(1e-6);
    });
  });

  it('go round a circle evenly, first and last like any two', () => {
    const { window } = framePlot('circle', 90, 90).frame;
    const stations = stationsRound(window.contours[0], 8, 1);
    // Chord of a regular polygon, 2 r sin(pi / n): any handbook of geometry.
    const chord = 2 * 45 * Math.sin(Math.PI / stations.length);
    stations.forEach((s, i) => {
      const { at } = stations[(i + 1) % stations.length];
      expect(Math.hypot(at.x - s.at.x, at.y - s.at.y)).toBeCloseTo(chord, 1);
      expect(s.corner).toBe(false);
    });
  });

  it('take a tightly rounded corner for a corner', () => {
    const { window } = framePlot('rounded', 100, 80).frame;
    const stations = stationsRound(window.contours[0], 8, 2);
    expect(stations.filter((s) => s.corner).length).toBe(4);
  });
});
