import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { lineLength, regionArea } from '../../src/geometry/measure.js';
import { randomFrom } from '../../src/scenery/random.js';
import { rowsOf } from '../../src/scenery/waves/rows.js';
import { waves } from '../../src/scenery/waves.js';
import { eachDraw, expectDrawFitToCut, expectFitToCut } from './each-draw.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const fine = { smallestWeb: 1, smallestHole: 1 };

describe('waves', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(waves, 50, expectFitToCut);
  }, 240000);

  it.each([415, 901])('keeps its flecks of foam inside on the steepest backs: draw %d', (n) => {
    expectDrawFitToCut(waves, n);
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(waves, plotWith('rectangle'));
  });

  // A wave of height H and length L breaks when H/L exceeds about 1/7 (A. G. Michell, The highest
  // waves in water, Philosophical Magazine 36, 1893: 0.142; from memory).
  it('makes breakers steeper than a wave can be, and swell less steep', () => {
    const steepness = (form: 'swell' | 'breakers') => {
      const all = [1, 2, 3].flatMap((seed) =>
        rowsOf(plotWith('rectangle', fine), form, 2, randomFrom(seed)).flatMap((row) => row.waves),
      );
      const inside = all.filter((w) => w.from > -48 && w.to < 48);
      return inside.reduce((sum, w) => sum + w.rise / (w.to - w.from), 0) / inside.length;
    };
    expect(steepness('breakers')).toBeGreaterThan(0.142);
    expect(steepness('swell')).toBeLessThan(0.142 * 1.4);
    expect(steepness('swell')).toBeLessThan(0.6 * steepness('breakers'));
  });

  it('scores a nearer row over a farther one', () => {
    const drawn = (rows: number) =>
      grown(waves, plotWith('rectangle', fine), { rows, foam: 0, streaks: false }).scores.reduce(
        (sum, line) => sum + lineLength(line),
        0,
      );
    expect(drawn(1)).toBe(0);
    expect(drawn(2)).toBeGreaterThan(50);
    expect(drawn(4)).toBeGreaterThan(1.5 * drawn(2));
  });

  it('cuts foam and hollows only when asked and never on a backdrop', () => {
    for (const form of ['swell', 'breakers', 'surf']) {
      const holes = (foam: number, window: 'rectangle' | 'none' = 'rectangle') =>
        grown(waves, plotWith(window, fine), { form, foam }).holes.contours.length;
      expect(holes(0)).toBe(0);
      expect(holes(1)).toBeGreaterThan(holes(0.3));
      expect(holes(1, 'none')).toBe(0);
    }
  });

  it('runs the other way when its heading is turned', () => {
    const body = (heading: string) =>
      grown(waves, plotWith('rectangle', fine), { form: 'breakers', rows: 1, heading }).body;
    const [right, left] = [body('right'), body('left')];
    expect(regionArea(subtract(right, [left]))).toBeGreaterThan(20);
    expect(regionArea(left) / regionArea(right)).toBeCloseTo(1, 1);
  });

  it('keeps its scores clear of the cut', () => {
    const { scores, body, holes } = grown(waves, plotWith('rectangle', fine));
    expect(scores.length).toBeGreaterThan(0);
    expect(clearance(scores, subtract(body, [holes]))).toBeGreaterThanOrEqual(1.48);
  });
});
