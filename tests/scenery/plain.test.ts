import { describe, expect, it } from 'vitest';
import { lineBounds, lineLength, regionBounds } from '../../src/geometry/measure.js';
import { EMPTY_REGION } from '../../src/geometry/types.js';
import { plain } from '../../src/scenery/plain.js';
import { eachFrame, expectFrameFitToCut } from './each-frame.js';
import { framePlot } from './frames.js';
import { clearance, grown, written } from './plots.js';

const plot = framePlot('rectangle', 100, 80);
const draw = (given: Record<string, number | string>, seed = 1) => grown(plain, plot, given, seed);

describe('plain', () => {
  it('cuts nothing and keeps clear of every cut whatever is drawn', () => {
    eachFrame(plain, 50, (growth, at, label) => {
      expectFrameFitToCut(growth, at, label);
      expect(growth.body).toEqual(EMPTY_REGION);
      expect(growth.scores.length + growth.reliefs.length, label).toBeGreaterThan(0);
    });
  }, 600000);

  it('draws one to three lines, a gap apart', () => {
    for (const lines of [1, 2, 3]) {
      const { scores } = draw({ lines, gap: 2, beside: 'window', corner: 'none' });
      const rings = scores.filter((s) => lineLength(s) > 100);
      const widths = rings
        .map((r) => lineBounds(r).maxX - lineBounds(r).minX)
        .sort((a, b) => a - b);
      expect(widths.length).toBe(lines);
      widths.slice(1).forEach((w, i) => {
        expect(w - widths[i]).toBeCloseTo(4, 3);
      });
      // A mitre in each corner joins the lines, at 45 degrees.
      const mitres = scores.filter((s) => lineLength(s) < 10);
      expect(mitres.length).toBe(lines === 1 ? 0 : 4);
      for (const mitre of mitres) {
        const { minX, maxX, minY, maxY } = lineBounds(mitre);
        expect(maxX - minX).toBeCloseTo(maxY - minY, 6);
      }
    }
  });

  it('follows window, edge or both', () => {
    const rings = (along: string) => draw({ beside: along, corner: 'none', lines: 1 }).scores;
    expect(rings('both').length).toBe(2);
    const widest = (along: string) =>
      Math.max(...rings(along).map((r) => lineBounds(r).maxX - lineBounds(r).minX));
    expect(widest('window')).toBeLessThan(106);
    expect(widest('edge')).toBeGreaterThan(130);
  });

  it('keeps lines and leaves clear of one another in a corner', () => {
    const { scores } = draw({ corner: 'leaf' });
    const rings = scores.filter((s) => lineLength(s) > 100);
    const leafy = scores.filter((s) => lineLength(s) > 4 && lineLength(s) < 50);
    expect(leafy.length).toBeGreaterThanOrEqual(12);
    const inked = { contours: rings.map((r) => r.cubics) };
    expect(clearance(leafy, inked)).toBeGreaterThan(0.3);
    expect(written(draw({ corner: 'leaf' }, 1))).not.toBe(written(draw({ corner: 'leaf' }, 2)));
    expect(written(draw({ corner: 'leaf' }, 1))).toBe(written(draw({ corner: 'leaf' }, 1)));
  });

  it('cuts quarter rounds out of the corners of the edge lines', () => {
    const inner = draw({ beside: 'edge', lines: 1, corner: 'quarter-round' }).scores;
    const square = draw({ beside: 'edge', lines: 1, corner: 'none' }).scores;
    // Each corner loses two radii of line and gains a quarter circle: shorter by (2 - pi / 2) r.
    const radius = 0.35 * 18;
    const shorter = 4 * (2 - Math.PI / 2) * radius;
    expect(lineLength(square[0]) - lineLength(inner[0])).toBeCloseTo(shorter, 1);
  });

  it('presses lines up or down instead', () => {
    const raised = draw({ work: 'raise', beside: 'edge', corner: 'none' });
    expect(raised.scores).toEqual([]);
    expect(raised.reliefs.every((r) => r.side === 'raised')).toBe(true);
    expect(draw({ work: 'sink' }).reliefs.every((r) => r.side === 'sunk')).toBe(true);
    const { minX } = regionBounds(raised.reliefs[0].region);
    expect(minX - plot.frame.bounds.minX).toBeGreaterThanOrEqual(1.5);
  });
});
