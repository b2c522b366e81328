import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import {
  chainLength,
  flatten,
  lengthInside,
  lineBounds,
  lineLength,
  perimeter,
  regionArea,
  regionBounds,
} from '../../src/geometry/measure.js';
import { pen, polygon, polyline, regionOf } from '../../src/geometry/pen.js';
import { circle, ellipse, rectangle } from '../../src/geometry/primitives.js';
import { moveRegion, rotation } from '../../src/geometry/transform.js';
import type { Region } from '../../src/geometry/types.js';
import { randomFrom } from '../../src/scenery/random.js';
import { blobs, wanderer } from './reference.js';
import { fineCircle, fineEllipse, scribble, seeded } from './shapes.js';

/** An arch of span w whose sides are arcs of radius r round points on the springing line. */
function pointedArch(w: number, r: number): Region {
  const a = (Math.acos((r - w / 2) / r) * 180) / Math.PI;
  const p = pen(0, 0);
  for (let k = 0; k < 8; k++) p.arcAround(r, 0, a / 8);
  for (let k = 0; k < 8; k++) p.arcAround(w - r, 0, a / 8);
  return regionOf(p.close());
}

describe('area and length by closed forms', () => {
  // S. Ramanujan, Modular equations and approximations to pi, 1914 (from memory), for the
  // perimeter of an ellipse; his second formula is exact to the digits compared for 30 x 20.
  it('of an ellipse', () => {
    const [a, b] = [30, 20];
    const h = ((a - b) / (a + b)) ** 2;
    const ramanujan = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    expect(ramanujan).toBeCloseTo(158.654396, 6);
    expect(perimeter(fineEllipse(a, b))).toBeCloseTo(ramanujan, 4);
    expect(perimeter(fineEllipse(50, 10))).toBeCloseTo(210.100445, 4);
    expect(regionArea(fineEllipse(a, b))).toBeCloseTo(1884.955592, 3);
  });

  // Circular segment: CRC Standard Mathematical Tables (from memory).
  it('of a circular segment of radius 10 and 90 degrees', () => {
    const p = pen(10 * Math.SQRT1_2, -10 * Math.SQRT1_2);
    for (let k = 0; k < 8; k++) p.arcAround(0, 0, 90 / 8);
    const segment = regionOf(p.close());
    expect(regionArea(segment)).toBeCloseTo(28.539816, 5);
    expect(perimeter(segment)).toBeCloseTo(15.707963 + 14.142136, 5);
  });

  // Two-centre arches of span w, elementary geometry: h = sqrt(R w - w^2 / 4),
  // A = R^2 a - (R - w / 2) h, arcs 2 R a, with cos a = (R - w / 2) / R.
  it('of two-centre arches of span 40', () => {
    for (const [r, h, area] of [
      [20, 20, 628.318531],
      [30, 28.284271, 825.020763],
      [40, 34.641016, 982.695759],
      [50, 40, 1118.238045],
    ]) {
      const arch = pointedArch(40, r);
      const a = Math.acos((r - 20) / r);
      expect(regionArea(arch)).toBeCloseTo(area, 3);
      expect(perimeter(arch)).toBeCloseTo(2 * r * a + 40, 4);
      expect(-regionBounds(arch).minY).toBeCloseTo(h, 5);
    }
  });

  it('of a ring: the outline runs round the hole too', () => {
    const ring = subtract(fineCircle(0, 0, 10), [fineCircle(0, 0, 6)]);
    expect(perimeter(ring)).toBeCloseTo(2 * Math.PI * 16, 4);
    expect(perimeter({ contours: [] })).toBe(0);
  });

  it('agree with fine chords on curves of every kind', () => {
    for (let k = 0; k < 20; k++) {
      const chain = scribble(seeded(400 + k));
      const points = flatten(chain, 1e-6);
      const chords = points
        .slice(1)
        .reduce((sum, p, n) => sum + Math.hypot(p.x - points[n].x, p.y - points[n].y), 0);
      expect(Math.abs(chainLength(chain) - chords), `case ${k}`).toBeLessThan(1e-3 * chords);
    }
  });

  it('of a cusp are right to a thousandth', () => {
    // x = t^2, y = t^3 on -1..1 has its cusp at t = 0: length 2 (13 sqrt 13 - 8) / 27.
    const cusp = pen(1, -1)
      .curveTo(-1 / 3, 1, -1 / 3, -1, 1, 1)
      .line();
    expect(lineLength(cusp)).toBeCloseTo((2 * (13 * Math.sqrt(13) - 8)) / 27, 2);
  });
});

describe('bounds', () => {
  it('are the turns of the curve, not its handles', () => {
    // 3 t (1 - t) h between ends at 0 has its top at t = 1/2: 3/4 of the handles' height.
    const { minX, minY, maxX, maxY } = lineBounds(pen(0, 0).curveTo(0, -8, 10, -8, 10, 0).line());
    expect([minX, maxX, maxY]).toEqual([0, 10, 0]);
    expect(minY).toBeCloseTo(-6, 12);
    const turned = regionBounds(moveRegion(fineEllipse(30, 20), rotation(30)));
    // Half the width of a turned ellipse: sqrt(a^2 cos^2 + b^2 sin^2).
    expect(turned.maxX).toBeCloseTo(Math.sqrt(900 * 0.75 + 400 * 0.25), 4);
    expect(turned.maxY).toBeCloseTo(Math.sqrt(900 * 0.25 + 400 * 0.75), 4);
  });

  it('hold all of a curve and touch it on each side', () => {
    for (let k = 0; k < 40; k++) {
      const chain = scribble(seeded(500 + k));
      const { minX, minY, maxX, maxY } = lineBounds({ cubics: chain });
      const points = flatten(chain, 1e-7);
      const [xs, ys] = [points.map((p) => p.x), points.map((p) => p.y)];
      for (const [bound, value] of [
        [minX, Math.min(...xs)],
        [minY, Math.min(...ys)],
        [-maxX, -Math.max(...xs)],
        [-maxY, -Math.max(...ys)],
      ]) {
        expect(bound).toBeLessThanOrEqual(value + 1e-12);
        expect(bound).toBeGreaterThan(value - 1e-6);
      }
    }
  });

  it('are empty round nothing', () => {
    const { minX, maxX } = regionBounds({ contours: [] });
    expect(minX).toBeGreaterThan(maxX);
  });
});

describe('the length of a line inside a region', () => {
  it('is its chord in a circle, 2 sqrt(r^2 - d^2), less what a hole takes', () => {
    const line = polyline([
      { x: -30, y: 6 },
      { x: 30, y: 6 },
    ]);
    expect(lengthInside(line, fineCircle(0, 0, 10))).toBeCloseTo(16, 5);
    const ring = subtract(fineCircle(0, 0, 10), [fineCircle(0, 0, 7.5)]);
    expect(lengthInside(line, ring)).toBeCloseTo(16 - 9, 5);
    expect(lengthInside(line, rectangle(0, 6, 10, 10))).toBe(0);
    expect(lengthInside(line, { contours: [] })).toBe(0);
  });

  it('is all of a curve that lies inside, and an arc of one that does not', () => {
    const arc = pen(10, 0).arcAround(0, 0, 180).line();
    expect(lengthInside(arc, rectangle(-20, -20, 40, 40))).toBeCloseTo(lineLength(arc), 9);
    expect(lengthInside(arc, rectangle(0, 0, 40, 40))).toBeCloseTo(lineLength(arc) / 2, 6);
  });

  it('adds up to the line with what lies in the rest of a box', () => {
    const box = rectangle(-20, -20, 140, 140);
    for (let k = 0; k < 10; k++) {
      const random = randomFrom(82, 'inside', k);
      const region = blobs(random);
      const rest = subtract(box, [region]);
      const line = wanderer(random);
      const both = lengthInside(line, region) + lengthInside(line, rest);
      expect(both, `case ${k}`).toBeCloseTo(lengthInside(line, box), 1);
    }
  });
});

describe('the length of polygons', () => {
  it('is the sum of their sides, exactly', () => {
    const triangle = regionOf(
      polygon([
        { x: 0, y: 0 },
        { x: 4, y: 0 },
        { x: 4, y: 3 },
      ]),
    );
    expect(perimeter(triangle)).toBeCloseTo(12, 12);
    expect(perimeter(circle(0, 0, 5))).toBeCloseTo(10 * Math.PI, 2);
    expect(perimeter(ellipse(0, 0, 5, 5))).toBe(perimeter(circle(0, 0, 5)));
  });
});
