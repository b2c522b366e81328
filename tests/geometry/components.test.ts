import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../src/geometry/boolean/boolean.js';
import { components, containsPoint, distanceTo, holeCount } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { polygon, regionOf } from '../../src/geometry/pen.js';
import { circle, ellipse, rectangle } from '../../src/geometry/primitives.js';
import { reversed } from '../../src/geometry/transform.js';
import type { Point, Region } from '../../src/geometry/types.js';
import { randomFrom } from '../../src/scenery/random.js';
import { anywhere, blobs, jtsBoundary, jtsContains, jtsDistance, jtsRegion } from './reference.js';

const regionFrom = (points: readonly (readonly [number, number])[]): Region =>
  regionOf(polygon(points.map(([x, y]) => ({ x, y }))));

/** Counts lattice points inside and on the outline of a region within 20 mm of the origin. */
function lattice(region: Region): { within: number; on: number } {
  let [within, on] = [0, 0];
  for (let x = -20; x <= 20; x++) {
    for (let y = -20; y <= 20; y++) {
      if (distanceTo(region, { x, y })!.distanceMm < 1e-9) on++;
      else if (containsPoint(region, { x, y })) within++;
    }
  }
  return { within, on };
}

describe('points in a region', () => {
  // Pick's theorem with h holes, A = I + B/2 - 1 + h: G. Pick 1899 (from memory).
  it('are counted as Pick counts them', () => {
    const pentagon = regionFrom([
      [0, 0],
      [6, 0],
      [8, 4],
      [3, 7],
      [-1, 3],
    ]);
    expect(lattice(pentagon)).toEqual({ within: 36, on: 14 });
    expect(regionArea(pentagon)).toBeCloseTo(36 + 14 / 2 - 1, 9);
    const framed = subtract(rectangle(0, 0, 6, 6), [rectangle(2, 2, 2, 2)]);
    expect(lattice(framed)).toEqual({ within: 16, on: 32 });
    expect(regionArea(framed)).toBeCloseTo(16 + 32 / 2 - 1 + holeCount(framed), 9);
  });

  it('are on card in outers and off it in holes', () => {
    const ring = subtract(circle(0, 0, 10), [circle(0, 0, 6)]);
    expect(containsPoint(ring, { x: 8, y: 0 })).toBe(true);
    expect(containsPoint(ring, { x: 0, y: 0 })).toBe(false);
    expect(containsPoint(ring, { x: 0, y: 11 })).toBe(false);
    expect(containsPoint({ contours: [] }, { x: 0, y: 0 })).toBe(false);
  });

  it('are told apart next to a curve', () => {
    const disc = ellipse(0, 0, 30, 20);
    for (let k = 0; k < 36; k++) {
      const p = distanceTo(disc, { x: 50 * Math.cos(k / 5), y: 50 * Math.sin(k / 5) })!.point;
      const length = Math.hypot(p.x, p.y);
      const at = (mm: number): Point => ({
        x: p.x * (1 + mm / length),
        y: p.y * (1 + mm / length),
      });
      expect(containsPoint(disc, at(-0.002))).toBe(true);
      expect(containsPoint(disc, at(0.002))).toBe(false);
      expect(containsPoint(disc, at(0.0001))).toBe(true);
    }
  });

  it('are those that JSTS covers', () => {
    for (let k = 0; k < 12; k++) {
      const random = randomFrom(30, 'points', k);
      const region = blobs(random);
      const reference = jtsRegion(region);
      const edge = jtsBoundary(reference);
      for (let n = 0; n < 40; n++) {
        const p = anywhere(random);
        const where = `${k}: ${p.x}, ${p.y}`;
        expect(containsPoint(region, p), where).toBe(jtsContains(reference, p));
        const distance = distanceTo(region, p)!.distanceMm;
        expect(Math.abs(distance - jtsDistance(edge, p)), where).toBeLessThan(0.002);
      }
    }
  });
});

describe('the nearest point of an outline', () => {
  it('is the foot on the curve', () => {
    const disc = circle(10, 10, 5);
    const { distanceMm, point } = distanceTo(disc, { x: 22, y: 26 })!;
    expect(distanceMm).toBeCloseTo(20 - 5, 2);
    expect(Math.hypot(point.x - 10 - 3, point.y - 10 - 4)).toBeLessThan(0.005);
    expect(distanceTo(disc, { x: 10, y: 10 })!.distanceMm).toBeCloseTo(5, 2);
  });

  it('is found from far away and is nothing without an outline', () => {
    expect(distanceTo(rectangle(0, 0, 2, 2), { x: 1, y: -5000 })!.distanceMm).toBeCloseTo(5000, 9);
    expect(distanceTo(rectangle(0, 0, 2, 2), { x: 9000, y: 1 })!.distanceMm).toBeCloseTo(8998, 9);
    expect(distanceTo({ contours: [] }, { x: 1, y: 1 })).toBeNull();
  });
});

describe('shapes with nothing in them', () => {
  const chains: [string, Region][] = [
    ['no contour', { contours: [] }],
    ['an empty chain', { contours: [new Float64Array(0)] }],
    ['a point', { contours: [new Float64Array([5, 5, 5, 5, 5, 5, 5, 5])] }],
  ];

  it.each(chains)('have no outline, no card and no pieces: %s', (_, region) => {
    expect(distanceTo(region, { x: 0, y: 0 })).toBeNull();
    expect(containsPoint(region, { x: 5, y: 5 })).toBe(false);
    expect(components(region)).toEqual([]);
    expect(holeCount(region)).toBe(0);
  });

  it('have an outline but no card where they are folded flat', () => {
    const flat = regionFrom([
      [0, 0],
      [10, 0],
    ]);
    expect(distanceTo(flat, { x: 5, y: 3 })!.distanceMm).toBeCloseTo(3, 9);
    expect(containsPoint(flat, { x: 5, y: 0 })).toBe(true);
    expect(containsPoint(flat, { x: 5, y: 1 })).toBe(false);
    expect(components(flat)).toEqual([]);
  });

  it('are found at the scale of rounding, and places without a number are nowhere', () => {
    expect(distanceTo(circle(0, 0, 1e-4), { x: 1, y: 0 })!.distanceMm).toBeCloseTo(0.9999, 6);
    expect(containsPoint(rectangle(0, 0, 5, 5), { x: Number.NaN, y: 1 })).toBe(false);
    expect(distanceTo(rectangle(0, 0, 5, 5), { x: Number.NaN, y: 1 })).toBeNull();
    expect(containsPoint(rectangle(0, 0, 5, 5), { x: Infinity, y: 1 })).toBe(false);
  });
});

describe('pieces and holes', () => {
  const panel = subtract(rectangle(0, 0, 100, 60), [
    circle(20, 30, 12),
    circle(50, 30, 12),
    circle(80, 30, 12),
  ]);
  const eulerCharacteristic = (region: Region): number =>
    components(region).length - holeCount(region);

  // Euler characteristic of a flat sheet = pieces - holes: any topology text (from memory).
  it('have the Euler characteristic of the sheet', () => {
    expect(eulerCharacteristic(panel)).toBe(-2);
    const islands = union([circle(20, 30, 6), circle(50, 30, 6)]);
    expect(eulerCharacteristic({ contours: [...panel.contours, ...islands.contours] })).toBe(0);
  });

  it('come apart nested: a ring in a window, an island in the ring', () => {
    const ring = subtract(circle(50, 30, 10), [circle(50, 30, 5)]);
    const island = circle(50, 30, 2);
    const all = [...island.contours, ...ring.contours, ...panel.contours];
    const parts = components({ contours: all });
    expect(parts.map((p) => p.contours.length)).toEqual([4, 2, 1]);
    expect(parts.map(regionArea)).toEqual([panel, ring, island].map(regionArea));
  });

  it('come largest first and keep their area', () => {
    for (let k = 0; k < 25; k++) {
      const region = blobs(randomFrom(31, 'parts', k));
      const parts = components(region);
      const areas = parts.map(regionArea);
      expect(areas).toEqual([...areas].sort((a, b) => b - a));
      expect(areas.reduce((a, b) => a + b, 0)).toBeCloseTo(regionArea(region), 6);
      expect(parts.every((p) => p.contours.length === 1 + holeCount(p))).toBe(true);
    }
  });

  it('give a hole to the part whose box is not the only one round it', () => {
    // A sickle embraces a holed disc: both boxes hold the hole.
    const sickle = subtract(circle(0, 0, 30), [circle(8, 0, 25)]);
    const washer = subtract(circle(8, 0, 10), [circle(8, 0, 4)]);
    const [first, second] = components({ contours: [...sickle.contours, ...washer.contours] });
    expect(holeCount(first)).toBe(0);
    expect(holeCount(second)).toBe(1);
    expect(regionBounds(second).minX).toBeCloseTo(-2, 1);
  });

  it('leave out a hole that no card surrounds', () => {
    expect(components({ contours: [reversed(circle(0, 0, 5).contours[0])] })).toEqual([]);
  });
});

describe('the area by the shoelace', () => {
  // Shoelace formula: CRC Standard Mathematical Tables (from memory). Positive clockwise on screen.
  it('is 600 for the L and -600 the other way round', () => {
    const l = regionFrom([
      [0, 0],
      [40, 0],
      [40, 10],
      [10, 10],
      [10, 30],
      [0, 30],
    ]);
    expect(regionArea(l)).toBeCloseTo(600, 9);
    expect(regionArea({ contours: [reversed(l.contours[0])] })).toBeCloseTo(-600, 9);
  });
});
