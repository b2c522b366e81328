import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../src/geometry/boolean/boolean.js';
import { regionArea } from '../../src/geometry/measure.js';
import { type Moments, momentsOf } from '../../src/geometry/moments.js';
import { pen, polygon, regionOf } from '../../src/geometry/pen.js';
import { circle, ellipse, rectangle } from '../../src/geometry/primitives.js';
import {
  inOrder,
  moveRegion,
  reversed,
  rotation,
  scaling,
  translation,
} from '../../src/geometry/transform.js';
import type { Point, Region } from '../../src/geometry/types.js';
import { randomFrom } from '../../src/scenery/random.js';
import { blobs } from './reference.js';
import { fineCircle, fineEllipse } from './shapes.js';

const shape = (...points: [number, number][]): Region =>
  regionOf(polygon(points.map(([x, y]) => ({ x, y }))));

/** Within `share` of the size of what is compared. */
function expectClose(actual: number, wanted: number, share: number, size = Math.abs(wanted)): void {
  expect(Math.abs(actual - wanted), `${actual} is not ${wanted}`).toBeLessThanOrEqual(share * size);
}

const expectAt = ({ centroid }: Moments, x: number, y: number, mm = 1e-9): void => {
  expect(Math.abs(centroid.x - x), `x ${centroid.x} is not ${x}`).toBeLessThan(mm);
  expect(Math.abs(centroid.y - y), `y ${centroid.y} is not ${y}`).toBeLessThan(mm);
};

// Centroids and second moments of plane shapes: CRC Standard Mathematical Tables (from memory).
describe('moments by closed forms', () => {
  it('of a rectangle: b h^3 / 12', () => {
    const m = momentsOf(rectangle(130, 70, 40, 30))!;
    expectAt(m, 150, 85);
    expectClose(m.ixx, (40 * 30 ** 3) / 12, 1e-12);
    expectClose(m.iyy, (30 * 40 ** 3) / 12, 1e-12);
    expectClose(m.ixy, 0, 1e-12, m.ixx);
  });

  it('of a right triangle: b h^3 / 36, and b^2 h^2 / 72 for the product', () => {
    // The right angle at the top left: with y down the hypotenuse falls off to the lower left.
    const m = momentsOf(shape([0, 0], [12, 0], [0, 9]))!;
    expectAt(m, 4, 3);
    expectClose(m.ixx, (12 * 9 ** 3) / 36, 1e-12);
    expectClose(m.iyy, (9 * 12 ** 3) / 36, 1e-12);
    expectClose(m.ixy, -(12 ** 2 * 9 ** 2) / 72, 1e-12);
  });

  it('of a circle and of an ellipse: pi r^4 / 4 and pi a b^3 / 4', () => {
    const disc = momentsOf(fineCircle(20, -30, 8))!;
    expectAt(disc, 20, -30, 1e-6);
    for (const i of [disc.ixx, disc.iyy]) expectClose(i, (Math.PI * 8 ** 4) / 4, 1e-6);
    const oval = momentsOf(fineEllipse(30, 20))!;
    expectClose(oval.areaMm2, 1884.955592, 1e-6);
    expectClose(oval.ixx, (Math.PI * 30 * 20 ** 3) / 4, 1e-6);
    expectClose(oval.iyy, (Math.PI * 20 * 30 ** 3) / 4, 1e-6);
    // Four cubics lie up to 0.0273 % outside the circle: four times that in r^4 at the very most.
    expectClose(momentsOf(circle(0, 0, 8))!.ixx, (Math.PI * 8 ** 4) / 4, 4 * 2.73e-4);
  });

  it('of a ring: the hole takes off', () => {
    const ring = {
      contours: [...fineCircle(5, 5, 10).contours, reversed(fineCircle(5, 5, 6).contours[0])],
    };
    const m = momentsOf(ring)!;
    expectAt(m, 5, 5, 1e-6);
    expectClose(m.areaMm2, Math.PI * (100 - 36), 1e-6);
    expectClose(m.ixx, (Math.PI * (10 ** 4 - 6 ** 4)) / 4, 1e-6);
  });

  it('of an L, by its two rectangles and the parallel axis theorem', () => {
    const l = shape([0, 0], [40, 0], [40, 10], [10, 10], [10, 30], [0, 30]);
    const m = momentsOf(l)!;
    // 40 x 10 round (20, 5) and 10 x 20 round (5, 20).
    const [x, y] = [(400 * 20 + 200 * 5) / 600, (400 * 5 + 200 * 20) / 600];
    expect(m.areaMm2).toBeCloseTo(600, 9);
    expectAt(m, x, y);
    expectClose(
      m.ixx,
      (40 * 10 ** 3) / 12 + 400 * (y - 5) ** 2 + (10 * 20 ** 3) / 12 + 200 * (20 - y) ** 2,
      1e-12,
    );
    expectClose(
      m.iyy,
      (10 * 40 ** 3) / 12 + 400 * (20 - x) ** 2 + (20 * 10 ** 3) / 12 + 200 * (x - 5) ** 2,
      1e-12,
    );
    expectClose(m.ixy, 400 * (20 - x) * (5 - y) + 200 * (5 - x) * (20 - y), 1e-12);
  });

  it('of a circular segment: its centroid 4 r sin^3(t/2) / (3 (t - sin t)) from the centre', () => {
    const [r, t] = [10, Math.PI / 2];
    const half = (t / 2) * (180 / Math.PI);
    const start = { x: r * Math.cos(t / 2), y: -r * Math.sin(t / 2) };
    const p = pen(start.x, start.y);
    for (let k = 0; k < 8; k++) p.arcAround(0, 0, (2 * half) / 8);
    const m = momentsOf(regionOf(p.close()))!;
    expectClose(m.areaMm2, 28.539816, 1e-6);
    expectAt(m, (4 * r * Math.sin(t / 2) ** 3) / (3 * (t - Math.sin(t))), 0, 1e-6);
  });

  it('of an equilateral pointed arch of span 40: area 982.695759', () => {
    const w = 40;
    const h = (Math.sqrt(3) / 2) * w;
    const p = pen(0, 0);
    for (let k = 0; k < 8; k++) p.arcAround(w, 0, 60 / 8);
    for (let k = 0; k < 8; k++) p.arcAround(0, 0, 60 / 8);
    const m = momentsOf(regionOf(p.close()))!;
    expectClose(m.areaMm2, 982.695759, 1e-6);
    // A slice at height y is 2 sqrt(w^2 - y^2) - w wide; each integral of it has a closed form.
    const rise = (w ** 3 - (w * w - h * h) ** 1.5) * (2 / 3) - (w * h * h) / 2;
    expectAt(m, w / 2, -rise / m.areaMm2, 1e-5);
    const turned = h * Math.sqrt(w * w - h * h);
    const square =
      (w ** 4 * Math.asin(h / w) - turned * (w * w - 2 * h * h)) / 4 - (w * h ** 3) / 3;
    expectClose(m.ixx, square - m.areaMm2 * m.centroid.y ** 2, 1e-5);
  });
});

describe('moments by theorems', () => {
  const cases = Array.from({ length: 12 }, (_, k) => blobs(randomFrom(81, 'moments', k)));

  it('have the area that the exact formula has', () => {
    for (const region of cases) expectClose(momentsOf(region)!.areaMm2, regionArea(region), 1e-12);
  });

  it('add up over parts by the parallel axis theorem', () => {
    const [left, right] = [ellipse(20, 30, 15, 8), rectangle(60, 10, 20, 30)];
    const [a, b, both] = [left, right, union([left, right])].map((r) => momentsOf(r)!);
    const about = ({ x, y }: Point, m: Moments) => ({
      ixx: m.ixx + m.areaMm2 * (m.centroid.y - y) ** 2,
      iyy: m.iyy + m.areaMm2 * (m.centroid.x - x) ** 2,
      ixy: m.ixy + m.areaMm2 * (m.centroid.x - x) * (m.centroid.y - y),
    });
    const [p, q] = [about(both.centroid, a), about(both.centroid, b)];
    expectClose(both.ixx, p.ixx + q.ixx, 1e-12);
    expectClose(both.iyy, p.iyy + q.iyy, 1e-12);
    expectClose(both.ixy, p.ixy + q.ixy, 1e-12);
  });

  it('turn as a tensor does, their sum and determinant unchanged', () => {
    for (const region of cases) {
      const m = momentsOf(region)!;
      for (const degrees of [17, 90, 133]) {
        const move = inOrder(rotation(degrees), translation(300, -200));
        const turned = momentsOf(moveRegion(region, move))!;
        const size = m.ixx + m.iyy;
        expectClose(turned.ixx + turned.iyy, size, 1e-10);
        expectClose(turned.ixx * turned.iyy - turned.ixy ** 2, m.ixx * m.iyy - m.ixy ** 2, 1e-9);
        const [cos, sin] = [
          Math.cos((degrees * Math.PI) / 180),
          Math.sin((degrees * Math.PI) / 180),
        ];
        const wanted = m.ixx * cos * cos + m.iyy * sin * sin + 2 * m.ixy * sin * cos;
        expectClose(turned.ixx, wanted, 1e-10, size);
      }
    }
  });

  it('keep their sign when mirrored, but for the product, and scale by the fourth power', () => {
    for (const region of cases) {
      const m = momentsOf(region)!;
      const mirrored = momentsOf(moveRegion(region, scaling(-1, 1)))!;
      expectClose(mirrored.ixx, m.ixx, 1e-11);
      expectClose(mirrored.ixy, -m.ixy, 1e-11, m.ixx + m.iyy);
      expectClose(momentsOf(moveRegion(region, scaling(0.5)))!.iyy, m.iyy / 16, 1e-11);
    }
  });

  it('are those of a fine raster', () => {
    const plate = subtract(ellipse(40, 30, 35, 25), [circle(50, 34, 9), rectangle(12, 20, 14, 11)]);
    const m = momentsOf(plate)!;
    const isCard = (x: number, y: number): boolean =>
      ((x - 40) / 35) ** 2 + ((y - 30) / 25) ** 2 < 1 &&
      (x - 50) ** 2 + (y - 34) ** 2 > 81 &&
      !(x > 12 && x < 26 && y > 20 && y < 31);
    const step = 0.1;
    let [n, sx, sy, sxx, syy, sxy] = [0, 0, 0, 0, 0, 0];
    for (let x = step / 2; x < 80; x += step) {
      for (let y = step / 2; y < 60; y += step) {
        if (!isCard(x, y)) continue;
        n++;
        sx += x;
        sy += y;
        sxx += x * x;
        syy += y * y;
        sxy += x * y;
      }
    }
    expectAt(m, sx / n, sy / n, 0.01);
    expectClose(m.ixx, (syy - (sy * sy) / n) * step * step, 1e-3);
    expectClose(m.iyy, (sxx - (sx * sx) / n) * step * step, 1e-3);
    expectClose(m.ixy, (sxy - (sx * sy) / n) * step * step, 1e-3, m.ixx);
  });
});

describe('moments of nothing', () => {
  it('are none: no contour, or no area', () => {
    expect(momentsOf({ contours: [] })).toBeNull();
    expect(momentsOf({ contours: [new Float64Array(0)] })).toBeNull();
    expect(momentsOf(shape([0, 0], [10, 0]))).toBeNull();
  });

  it('keep the centroid but change sign where a region runs the wrong way round', () => {
    const m = momentsOf(rectangle(2, 3, 8, 4))!;
    const wrong = momentsOf({ contours: [reversed(rectangle(2, 3, 8, 4).contours[0])] })!;
    expectAt(wrong, m.centroid.x, m.centroid.y);
    expectClose(wrong.ixx, -m.ixx, 1e-12);
  });
});
