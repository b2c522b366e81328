import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import { describe, expect, it } from 'vitest';
import { intersect, subtract, union } from '../../../src/geometry/boolean/boolean.js';
import { flatten, regionArea, regionBounds } from '../../../src/geometry/measure.js';
import { offset, offsetChecked } from '../../../src/geometry/offset/offset.js';
import { polygon, regionOf } from '../../../src/geometry/pen.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import { moveRegion, rotation } from '../../../src/geometry/transform.js';
import { EMPTY_REGION, type Point, type Region } from '../../../src/geometry/types.js';
import { chainFaults, jstsRegion, outlineLength, overlapArea } from '../overlays.js';
import { fineCircle, fineEllipse, leaf, seeded, shapes, strewnLeaves } from '../shapes.js';
import { offsetCase, offsetFault } from './random-offsets.js';

const FINE_MM = 5e-4;
const SLIVER_MM2 = 2e-3;

const segments = (region: Region): number =>
  region.contours.reduce((sum, c) => sum + c.length / 8, 0);

const triangle = regionOf(
  polygon([
    { x: 0, y: 0 },
    { x: 4, y: 0 },
    { x: 0, y: 3 },
  ]),
);

// Steiner's formula for convex shapes: area A + P r + pi r2, outline P + 2 pi r.
// Convex geometry, J. Steiner 1840 (from memory).
describe('Steiner formula', () => {
  it.each([
    {
      name: '40 x 30 by 5',
      shape: rectangle(0, 0, 40, 30),
      r: 5,
      area: 1978.539816,
      p: 171.415927,
    },
    { name: '3-4-5 by 1', shape: triangle, r: 1, area: 21.141593, p: 18.283185 },
  ])('$name', ({ shape, r, area, p }) => {
    const grown = offset(shape, r);
    // A quarter arc of one cubic is up to 0.0273 % of its radius out.
    expect(Math.abs(regionArea(grown) - area)).toBeLessThan(3e-4 * 2 * Math.PI * r * r);
    expect(Math.abs(outlineLength(grown) - p)).toBeLessThan(3e-4 * 2 * Math.PI * r);
  });

  it.each([2, 7, 25])('ellipse 30, 20 by %d', (r) => {
    // Circumference by S. Ramanujan 1914 (from memory).
    const [area, p] = [1884.955592, 158.654396];
    const grown = offset(fineEllipse(30, 20), r);
    const expected = area + p * r + Math.PI * r * r;
    expect(Math.abs(regionArea(grown) - expected)).toBeLessThan(0.002 * (p + 2 * Math.PI * r));
    expect(outlineLength(grown)).toBeCloseTo(p + 2 * Math.PI * r, 1);
  });

  it('random convex shapes', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = seeded(seed);
      const turned = moveRegion(
        leaf(10 + 20 * random(), 2 + 4 * random()),
        rotation(360 * random()),
      );
      const cut = rectangle(-60 + 50 * random(), -50, 60, 100);
      const shape = seed % 2 === 0 ? turned : intersect(turned, cut);
      if (shape.contours.length === 0) continue;
      const r = 0.1 + 5 * random();
      const { region, exact } = offsetChecked(shape, r);
      const p = outlineLength(shape);
      const expected = regionArea(shape) + p * r + Math.PI * r * r;
      expect({ seed, exact }).toEqual({ seed, exact: true });
      expect(Math.abs(regionArea(region) - expected), `seed ${seed}`).toBeLessThan(
        0.002 * (p + 20 * r),
      );
    }
  });
});

// Sum over the corners of cot(angle / 2): 4 for a rectangle, 6 for the 3-4-5 triangle; derived.
describe('mitred offset of a convex polygon: A + P r + r2 sum of cot(angle / 2)', () => {
  it.each([
    { name: '40 x 30 out 5', shape: rectangle(0, 0, 40, 30), r: 5, area: 2000 },
    { name: '40 x 30 in 5', shape: rectangle(0, 0, 40, 30), r: -5, area: 600 },
    { name: '3-4-5 in 0.5', shape: triangle, r: -0.5, area: 1.5 },
    { name: '3-4-5 out 0.5', shape: triangle, r: 0.5, area: 6 + 12 * 0.5 + 6 * 0.25 },
  ])('$name', ({ shape, r, area }) => {
    const grown = offset(shape, r, 'mitre');
    expect(regionArea(grown)).toBeCloseTo(area, 6);
    expect(segments(grown)).toBe(segments(shape));
  });

  it('random convex polygons, out', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { shape, turns } = convexPolygon(seed);
      const r = 0.1 + 4 * seeded(seed)();
      const longest = Math.max(...turns.map((turn) => 1 / Math.cos(turn / 2)));
      const area = regionArea(shape) + outlineLength(shape) * r;
      const mitred = turns.reduce((sum, turn) => sum + r * r * Math.tan(turn / 2), area);
      const bevelled = turns.reduce((sum, turn) => sum + (r * r * Math.sin(turn)) / 2, area);
      expect(regionArea(offset(shape, r, 'mitre', longest + 1e-9))).toBeCloseTo(mitred, 5);
      expect(regionArea(offset(shape, r, 'bevel'))).toBeCloseTo(bevelled, 5);
      expect(regionArea(offset(shape, r, 'mitre', 1))).toBeCloseTo(bevelled, 5);
      const round = area + Math.PI * r * r;
      expect(Math.abs(regionArea(offset(shape, r)) - round)).toBeLessThan(5e-4 * 2 * Math.PI * r);
    }
  });

  it('random convex polygons, in: what is cut off is a mitred offset of what is left', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { shape } = convexPolygon(seed);
      const inner = offset(shape, -0.3);
      const back = offset(inner, 0.3, 'mitre', 100);
      // Edges that vanished make the difference, never outside.
      expect(regionArea(subtract(back, [offset(shape, 1e-3)]))).toBeLessThan(1e-3);
      if (segments(inner) === segments(shape)) {
        expect(regionArea(back)).toBeCloseTo(regionArea(shape), 4);
      }
    }
  });

  // The rule of SVG 2, section 13.5.5: miter length over stroke width is 1 / sin(angle / 2).
  it('bevels what reaches further than the limit', () => {
    const needle = regionOf(
      polygon([
        { x: 0, y: 0 },
        { x: 40, y: -1 },
        { x: 40, y: 1 },
      ]),
    );
    const minX = (limit: number): number => regionBounds(offset(needle, 1, 'mitre', limit)).minX;
    const reach = 1 / Math.sin(Math.atan(1 / 40));
    expect(minX(4)).toBeCloseTo(-Math.sin(Math.atan(1 / 40)), 6);
    expect(minX(reach + 1e-6)).toBeCloseTo(-reach, 6);
    expect(minX(reach - 1e-6)).toBeCloseTo(-Math.sin(Math.atan(1 / 40)), 6);
  });
});

/** A polygon with its corners on an ellipse, and the angles that it turns by. */
function convexPolygon(seed: number): { shape: Region; turns: number[] } {
  const random = seeded(3000 + seed);
  const count = 3 + Math.floor(6 * random());
  const [rx, ry] = [8 + 20 * random(), 8 + 20 * random()];
  const points = Array.from({ length: count }, (_, k) => {
    const a = ((k + 0.7 * random()) / count) * 2 * Math.PI;
    return { x: rx * Math.cos(a), y: ry * Math.sin(a) };
  });
  const turns = points.map((p, k) => {
    const [before, after] = [points[(k + count - 1) % count], points[(k + 1) % count]];
    const [ux, uy, vx, vy] = [p.x - before.x, p.y - before.y, after.x - p.x, after.y - p.y];
    return Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
  });
  return { shape: regionOf(polygon(points)), turns };
}

describe('circles', () => {
  it('stay circles', () => {
    for (const r of [0.05, 3, -4]) {
      const grown = offset(fineCircle(5, 5, 10), r);
      expect(segments(grown)).toBeLessThanOrEqual(16);
      for (const p of flatten(grown.contours[0], 1e-4)) {
        expect(Math.abs(Math.hypot(p.x - 5, p.y - 5) - 10 - r)).toBeLessThan(2e-4);
      }
    }
  });

  it('shrink to nothing', () => {
    expect(offset(circle(0, 0, 3), -3.01)).toEqual(EMPTY_REGION);
    expect(offset(circle(0, 0, 3), -30)).toEqual(EMPTY_REGION);
    expect(offset(EMPTY_REGION, 3)).toEqual(EMPTY_REGION);
  });

  it('as holes fill up when the card grows', () => {
    const plate = subtract(rectangle(0, 0, 30, 20), [circle(10, 10, 2), circle(20, 10, 4)]);
    expect(offset(plate, 1).contours.length).toBe(3);
    expect(offset(plate, 2.5).contours.length).toBe(2);
    expect(offset(plate, 5).contours.length).toBe(1);
  });
});

/** The region as one of several pieces, some with a hole, grown by random shapes. */
function card(seed: number): Region {
  const random = seeded(400 + seed);
  const whole = union(shapes(random, (['grid', 'turned', 'free'] as const)[seed % 3], 4));
  return seed % 2 === 0 ? whole : subtract(whole, [moveRegion(leaf(40, 4), rotation(45))]);
}

const buffered = (geometry: unknown, distanceMm: number): number => {
  // A circle of 4 x 200 chords is 2.6e-5 short of its area: far below what is compared.
  const operation = new BufferOp(geometry);
  operation.setQuadrantSegments(200);
  return operation.getResultGeometry(distanceMm).getArea();
};

describe('random offsets', () => {
  it('agree with JSTS buffers', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const shape = card(seed);
      const d = [0.3, -0.3, 1, -1, 3, -3][seed % 6];
      const { region, exact } = offsetChecked(shape, d);
      const found = { seed, exact, faults: chainFaults(region) };
      expect(found).toEqual({ seed, exact: true, faults: [] });
      const slack = 0.02 + 0.002 * (outlineLength(region) + outlineLength(shape));
      const reference = buffered(jstsRegion(shape, 1e-2), d);
      expect(Math.abs(regionArea(region) - reference), `seed ${seed} by ${d}`).toBeLessThan(slack);
      expect(overlapArea(region, FINE_MM), `seed ${seed} by ${d}`).toBeLessThan(SLIVER_MM2);
    }
  });

  it('lie at their distance, within 0.005 mm', () => {
    for (let seed = 1; seed <= 12; seed++) {
      const shape = card(seed);
      const d = [0.5, -0.5, 2, -2][seed % 4];
      const outline = shape.contours.flatMap((c) => flatten(c, 1e-3));
      const edges = shape.contours.map((c) => flatten(c, 1e-3));
      expect(outline.length).toBeGreaterThan(0);
      for (const c of offset(shape, d).contours) {
        for (const p of flatten(c, 0.05)) {
          const off = Math.abs(distanceToEdges(edges, p) - Math.abs(d));
          expect(off, `seed ${seed} by ${d} at ${p.x} ${p.y}`).toBeLessThan(0.005);
        }
      }
    }
  });

  it('keep curves: few nodes where polygons need many', () => {
    const leaves = union(strewnLeaves(300, 3));
    const grown = offset(leaves, 0.1);
    const points = grown.contours.reduce((sum, c) => sum + flatten(c, 0.005).length, 0);
    expect(segments(grown)).toBeLessThan(points / 3);
    expect(segments(grown)).toBeLessThan(2.5 * segments(leaves));
  });

  it('open and close: shrinking and growing again takes no more than the corners', () => {
    const shape = rectangle(0, 0, 40, 30);
    const opened = offset(offset(shape, -2), 2);
    expect(regionArea(opened)).toBeCloseTo(1200 - (4 - Math.PI) * 4, 2);
    const closed = offset(offset(shape, 2), -2);
    expect(regionArea(closed)).toBeCloseTo(1200, 2);
  });
});

function distanceToEdges(edges: readonly Point[][], p: Point): number {
  let nearest = Infinity;
  for (const points of edges) {
    for (let k = 1; k < points.length; k++) {
      const [a, b] = [points[k - 1], points[k]];
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const along = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1);
      const f = Math.max(0, Math.min(1, along));
      nearest = Math.min(nearest, Math.hypot(a.x + f * dx - p.x, a.y + f * dy - p.y));
    }
  }
  return nearest;
}

it('random offsets of all joins are what Clipper2 makes of fine polygons', () => {
  for (let seed = 1; seed <= 200; seed++) {
    expect({ seed, fault: offsetFault(offsetCase(seed)) }).toEqual({ seed, fault: '' });
  }
});
