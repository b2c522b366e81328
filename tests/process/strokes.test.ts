import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { distanceTo } from '../../src/geometry/components.js';
import { lineLength, perimeter, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import type { Line } from '../../src/geometry/types.js';
import { hatchLines, ringContours } from '../../src/process/strokes.js';

const ends = ({ cubics: c }: Line) => [
  { x: c[0], y: c[1] },
  { x: c[c.length - 2], y: c[c.length - 1] },
];

const RING = subtract(circle(30, 30, 12), [circle(30, 30, 5)]);

describe('hatchLines', () => {
  it('covers an area: length times distance is what it is', () => {
    for (const angle of [0, 30, 45, 90, 135]) {
      const total = hatchLines(RING, angle, 0.25).reduce((sum, l) => sum + lineLength(l), 0);
      expect(total * 0.25).toBeGreaterThan(regionArea(RING) * 0.99);
      expect(total * 0.25).toBeLessThan(regionArea(RING) * 1.01);
    }
  });

  it('runs anticlockwise from the width by its angle, each line back from the one before', () => {
    const lines = hatchLines(rectangle(0, 0, 30, 20), 30, 2);
    expect(lines.length).toBeGreaterThan(10);
    const headings = lines.map((line) => {
      const [a, b] = ends(line);
      // y runs down.
      return (Math.atan2(a.y - b.y, b.x - a.x) * 180) / Math.PI;
    });
    headings.forEach((deg, k) => {
      expect(deg).toBeCloseTo(k % 2 === 0 ? 30 : -150, 6);
    });
  });

  it('ends exactly on the edge', () => {
    for (const line of hatchLines(RING, 45, 0.7)) {
      for (const end of ends(line)) expect(distanceTo(RING, end)?.distanceMm).toBeLessThan(1e-5);
    }
  });

  it('has a line even for a strip narrower than the distance, and one for each part', () => {
    const strips = { contours: [0, 1, 2].flatMap((k) => rectangle(0, 3 * k, 9, 0.2).contours) };
    const lines = hatchLines(strips, 0, 0.4);
    expect(lines.map(({ cubics }) => cubics[1]).toSorted((a, b) => a - b)).toEqual(
      [0.1, 3.1, 6.1].map((y) => expect.closeTo(y, 9)),
    );
  });
});

describe('ringContours', () => {
  it('goes inward from the edge until nothing is left', () => {
    const rings = ringContours(rectangle(0, 0, 20, 10), 1.5);
    // Widths 10, 7, 4, 1 and then none.
    const heights = rings.map((c) => {
      const { minY, maxY } = regionBounds({ contours: [c] });
      return maxY - minY;
    });
    expect(heights.map((h) => Math.round(h * 1000) / 1000)).toEqual([10, 7, 4, 1]);
    expect(perimeter({ contours: rings })).toBeCloseTo(60 + 48 + 36 + 24, 3);
  });

  it('meets in the middle of a ring from both its edges', () => {
    // 7 mm wide: rings at 0, 1, 2 and 3 mm from each edge.
    expect(ringContours(RING, 1)).toHaveLength(8);
  });
});
