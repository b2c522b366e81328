import { describe, expect, it } from 'vitest';
import { lineLength } from '../../src/geometry/measure.js';
import { pen, polyline } from '../../src/geometry/pen.js';
import { perforated } from '../../src/process/perforation.js';

const level = (length: number) =>
  polyline([
    { x: 5, y: 7 },
    { x: 5 + length, y: 7 },
  ]);
const PLAIN = { cutMm: 2, tieMm: 1 };
const ends = (line: ReturnType<typeof level>) => [line.cubics[0], line.cubics.at(-2) as number];

describe('perforated', () => {
  it('cuts a fold of 60 mm 20 times, 40 mm in all', () => {
    // Cut 2.0, tie 1.0, ties at both ends, two thirds cut: common practice, no source.
    const cuts = perforated(level(60), PLAIN);
    expect(cuts).toHaveLength(20);
    expect(cuts.reduce((sum, cut) => sum + lineLength(cut), 0)).toBeCloseTo(40, 9);
    for (const cut of cuts) expect(lineLength(cut)).toBeCloseTo(2, 9);
  });

  it.each([0.5, 3, 4.6, 17, 60, 61.3, 135, 206.25])(
    'fits %d mm: ties at both ends, all alike, two thirds cut',
    (length) => {
      const cuts = perforated(level(length), PLAIN).map(ends);
      const stops = [5, ...cuts.flat(), 5 + length];
      const ties = cuts.map((_, k) => stops[2 * k + 1] - stops[2 * k]);
      ties.push(stops[stops.length - 1] - stops[stops.length - 2]);
      for (const tie of ties) {
        expect(tie).toBeGreaterThan(0);
        expect(tie).toBeCloseTo(ties[0], 9);
      }
      expect(cuts.reduce((sum, [a, b]) => sum + b - a, 0)).toBeCloseTo((2 / 3) * length, 9);
      // From three periods on both come within a quarter of what was asked.
      if (length < 9) return;
      expect(Math.abs(ties[0] - 1)).toBeLessThan(0.25);
      expect(Math.abs(cuts[0][1] - cuts[0][0] - 2)).toBeLessThan(0.5);
    },
  );

  it('keeps other measures and curves', () => {
    const arc = pen(20, 0).arcAround(0, 0, 120).line();
    const cuts = perforated(arc, { cutMm: 5, tieMm: 0.5 });
    const length = cuts.reduce((sum, cut) => sum + lineLength(cut), 0);
    expect(length / lineLength(arc)).toBeCloseTo(10 / 11, 6);
    for (const { cubics } of cuts) {
      for (let i = 0; i < cubics.length; i += 8) {
        expect(Math.hypot(cubics[i], cubics[i + 1])).toBeCloseTo(20, 2);
      }
    }
  });

  it('makes nothing of nothing', () => {
    expect(perforated({ cubics: new Float64Array() }, PLAIN)).toEqual([]);
  });
});
