import { describe, expect, it } from 'vitest';
import { nearestChord, outlineOf } from '../../src/geometry/outline.js';
import { polyline } from '../../src/geometry/pen.js';

describe('an outline of open chains', () => {
  it('is as near where its last point alone reaches', () => {
    const { cubics } = polyline([
      { x: 5, y: 5.01 },
      { x: 5, y: 5 },
      { x: 17, y: 5 },
    ]);
    const outline = outlineOf({ contours: [cubics] });
    for (const x of [5, 8, 12, 17]) {
      expect(nearestChord(outline, x, 5.02, 0.5)?.distanceMm).toBeLessThan(0.0201);
    }
  });
});
