import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { describe, expect, it } from 'vitest';
import { union } from '../../src/geometry/boolean/boolean.js';
import { flatten, regionArea } from '../../src/geometry/measure.js';
import { polygon, regionOf } from '../../src/geometry/pen.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { moveRegion, rotation } from '../../src/geometry/transform.js';
import type { Point, Region } from '../../src/geometry/types.js';
import { randomFrom } from '../../src/scenery/random.js';
import { coarsened } from '../../src/sheet/coarsen.js';
import { blob, jtsRegion } from '../geometry/reference.js';

const points = ({ contours: [outer] }: Region, chordMm = 0.01): Point[] =>
  flatten(outer, chordMm).slice(1);

/** What of a shape its coarse ring leaves bare, mm2, by JSTS. */
function bare(shape: Region, ring: readonly Point[]): number {
  const cover = jtsRegion(union([regionOf(polygon(ring))]));
  return OverlayOp.difference(jtsRegion(shape), cover).getArea();
}

describe('a coarse ring', () => {
  it('draws a circle out to a polygon no further off than told', () => {
    const ring = coarsened(points(circle(0, 0, 10)), 0.4);
    expect(ring.length).toBeLessThan(20);
    const away = ring.map(({ x, y }) => Math.hypot(x, y));
    expect(Math.min(...away)).toBeGreaterThanOrEqual(10 - 0.01);
    expect(Math.max(...away)).toBeLessThan(10 + 2 * 0.4);
  });

  it('keeps straight edges and what is deeper than told', () => {
    const comb = union([rectangle(0, 0, 30, 5), rectangle(0, 0, 4, 20), rectangle(20, 0, 4, 20)]);
    const ring = coarsened(points(comb), 0.4);
    expect(regionArea(regionOf(polygon(ring)))).toBeCloseTo(regionArea(comb), 6);
  });

  it('keeps teeth with parallel sides, whatever way they point', () => {
    for (let degrees = 0; degrees < 360; degrees += 0.7) {
      const teeth = [0, 8, 16].map((x) => rectangle(x, 0, 4.123, 20));
      const comb = moveRegion(union([rectangle(0, 0, 24, 5), ...teeth]), rotation(degrees));
      const fine = points(comb).map(({ x, y }) => ({ x: x * 1e4, y: y * 1e4 }));
      const ring = coarsened(fine, 4000).map(({ x, y }) => ({ x: x / 1e4, y: y / 1e4 }));
      expect(regionArea(regionOf(polygon(ring)))).toBeCloseTo(regionArea(comb), 6);
    }
  });

  it('leaves nothing bare of any lump', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const lump: Region = { contours: [blob(randomFrom('lump', seed), { x: 0, y: 0 }, 20)] };
      const ring = coarsened(points(lump, 4e-4), 1);
      expect(ring.length).toBeLessThan(60);
      expect(bare(lump, ring)).toBeLessThan(1e-3);
    }
  });
});
