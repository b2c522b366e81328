import { describe, expect, it } from 'vitest';
import { cleanRegion, union } from '../../../src/geometry/boolean/boolean.js';
import { components, holeCount } from '../../../src/geometry/components.js';
import { flatten, regionArea } from '../../../src/geometry/measure.js';
import { polygon } from '../../../src/geometry/pen.js';
import { circle } from '../../../src/geometry/primitives.js';
import { simplifyRegion } from '../../../src/geometry/tidy/simplify.js';
import { reversed } from '../../../src/geometry/transform.js';
import type { Region } from '../../../src/geometry/types.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { blobs } from '../reference.js';
import { strewnLeaves } from '../shapes.js';
import { hausdorff } from './hausdorff.js';

const dense = (region: Region, toleranceMm: number): Region => ({
  contours: region.contours.map((c) => polygon(flatten(c, toleranceMm).slice(0, -1))),
});
const cubicCount = (region: Region): number =>
  region.contours.reduce((sum, c) => sum + c.length / 8, 0);

/** A proper region is its own union. */
function expectProper(region: Region, like: Region): void {
  const united = cleanRegion(region.contours);
  expect(Math.abs(regionArea(united) - regionArea(region))).toBeLessThan(1e-3);
  expect(components(region)).toHaveLength(components(like).length);
  expect(holeCount(region)).toBe(holeCount(like));
}

describe('simplifyRegion', () => {
  it('keeps regions proper and near', () => {
    const drawn = [
      ...Array.from({ length: 4 }, (_, k) => blobs(randomFrom(30, 'simplify', k))),
      union(strewnLeaves(80, 2)),
    ];
    for (const region of drawn) {
      const polygonal = dense(region, 0.003);
      const few = simplifyRegion(polygonal, 0.02);
      expectProper(few, polygonal);
      expect(cubicCount(few)).toBeLessThan(0.4 * cubicCount(polygonal));
      few.contours.forEach((c, k) => {
        expect(hausdorff(c, polygonal.contours[k])).toBeLessThanOrEqual(0.02);
      });
    }
  });

  it('keeps contours apart that lie nearer to each other than the tolerance', () => {
    // Rings of 0.01 mm at a tolerance of 0.1 mm.
    const ringed: Region = {
      contours: [
        ...dense(circle(0, 0, 20), 0.004).contours,
        ...dense(circle(0, 0, 19.99), 0.003).contours.map((c) => reversed(c)),
      ],
    };
    const few = simplifyRegion(ringed, 0.1);
    expectProper(few, ringed);
    expect(regionArea(few)).toBeGreaterThan(0);
  });

  it('does not let an edge jump over a hole smaller than the tolerance', () => {
    const speck = circle(19.93, 0, 0.01).contours.map((c) => reversed(c));
    const card: Region = { contours: [...dense(circle(0, 0, 20), 0.05).contours, ...speck] };
    for (const toleranceMm of [0.05, 0.1, 0.3, 1]) {
      expectProper(simplifyRegion(card, toleranceMm), card);
    }
  });

  it('takes an empty region', () => {
    expect(simplifyRegion({ contours: [] }, 0.02).contours).toEqual([]);
  });
});
