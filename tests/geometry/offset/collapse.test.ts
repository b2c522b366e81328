import { describe, expect, it } from 'vitest';
import { subtract, union, xor } from '../../../src/geometry/boolean/boolean.js';
import { perimeter, regionArea } from '../../../src/geometry/measure.js';
import { offset, offsetChecked } from '../../../src/geometry/offset/offset.js';
import { polygon, regionOf, smoothContour } from '../../../src/geometry/pen.js';
import { circle, rectangle, roundedRectangle } from '../../../src/geometry/primitives.js';
import { moveRegion, rotation } from '../../../src/geometry/transform.js';
import { EMPTY_REGION, type Region } from '../../../src/geometry/types.js';
import { chainFaults } from '../overlays.js';
import { fineCircle, leaf } from '../shapes.js';

/** Offsets by exactly a radius of the outline, where parallels shrink to a point or meet. */
const RADII = [0.4, 1, 2, 5, 10];
const ANGLES = [0, 17, 45];

/** Area by which two regions differ, a millimetre of outline: a mean distance. */
function apart(a: Region, b: Region): number {
  const mm = perimeter(a) + perimeter(b);
  return mm === 0 ? 0 : regionArea(xor(a, b)) / (mm / 2);
}

function expectSame(found: ReturnType<typeof offsetChecked>, wanted: Region, withinMm: number) {
  expect(found.exact).toBe(true);
  expect(chainFaults(found.region)).toEqual([]);
  expect(found.region.contours.length).toBe(wanted.contours.length);
  expect(apart(found.region, wanted)).toBeLessThan(withinMm);
}

describe.each(RADII)('by a radius of %d', (r) => {
  // A quarter arc of one cubic is up to 0.0273 % of its radius out.
  const arcMm = 1e-3 + 2.73e-4 * r;

  it('a circle shrinks to nothing', () => {
    expect(offset(fineCircle(3, 4, r), -r)).toEqual(EMPTY_REGION);
    expect(offset(circle(3, 4, r), -r)).toEqual(EMPTY_REGION);
    expect(offset(circle(3, 4, r), -1.001 * r)).toEqual(EMPTY_REGION);
  });

  it.each(ANGLES)(
    'a rounded rectangle turned by %d degrees becomes sharp, and round again',
    (a) => {
      const turned = (region: Region): Region => moveRegion(region, rotation(a));
      const round = turned(roundedRectangle(0, 0, 5 * r, 4 * r, r));
      const sharp = offsetChecked(round, -r);
      expectSame(sharp, turned(rectangle(r, r, 3 * r, 2 * r)), arcMm);
      expectSame(offsetChecked(sharp.region, r), round, arcMm);
    },
  );

  it.each(ANGLES)('a stadium turned by %d degrees shrinks to nothing', (a) => {
    const stadium = moveRegion(roundedRectangle(0, 0, 5 * r, 2 * r, r), rotation(a));
    expect(offset(stadium, -r)).toEqual(EMPTY_REGION);
  });

  it('a ring closes, and another wears away', () => {
    const ring = subtract(fineCircle(0, 0, 2 * r), [fineCircle(0, 0, r)]);
    expectSame(offsetChecked(ring, r), fineCircle(0, 0, 3 * r), 1e-3);
    expect(Math.abs(regionArea(offset(ring, -r / 2)))).toBeLessThan(1e-3 * 3 * Math.PI * r);
  });

  it('two circles grow until they touch', () => {
    const two = [circle(0, 0, r), circle(4 * r, 0, r)].flatMap((c) => c.contours);
    const grown = offsetChecked({ contours: two }, r);
    expect(grown.exact).toBe(true);
    expect(Math.abs(regionArea(grown.region) - 8 * Math.PI * r * r)).toBeLessThan(20 * r * arcMm);
  });

  it.each(ANGLES)('tips made round wear back by their radius and grow again, turned by %d', (a) => {
    const needle = polygon([
      { x: 0, y: 0 },
      { x: 20 * r, y: -2 * r },
      { x: 20 * r, y: 2 * r },
    ]);
    const egg = smoothContour([
      { x: 0, y: 0 },
      { x: 10 * r, y: -4 * r },
      { x: 20 * r, y: 0 },
      { x: 10 * r, y: 5 * r },
    ]);
    for (const drawn of [leaf(10 * r, 3 * r), regionOf(needle), regionOf(egg)]) {
      const shape = moveRegion(drawn, rotation(a));
      const tip = offset(shape, r);
      // Convex shapes: growing and shrinking in steps is the same as at once.
      expectSame(offsetChecked(tip, -r), shape, 1.5e-3);
      const worn = offsetChecked(tip, -2 * r);
      const once = offset(shape, -r);
      expectSame(worn, once, 2e-3);
      expectSame(offsetChecked(worn.region, r), offset(once, r), 2e-3);
    }
  });
});

// Outlines that come from rounding fold over themselves by a micrometre or less.
describe('outlines folded over by rounding', () => {
  const folded = (fold: readonly [number, number][]): Region =>
    regionOf(
      polygon([
        { x: 0, y: 0 },
        { x: 30, y: 0 },
        ...fold.map(([x, y]) => ({ x, y })),
        { x: 30, y: 20 },
        { x: 0, y: 20 },
      ]),
    );
  const folds: [string, readonly [number, number][]][] = [
    [
      'a spike whose sides cross',
      [
        [30, 9.99999],
        [40, 10.00001],
        [39.9999, 9.99998],
        [30, 10],
      ],
    ],
    [
      'a slit whose sides cross',
      [
        [30, 9.99999],
        [20, 10.00001],
        [20.0001, 9.99998],
        [30, 10],
      ],
    ],
    [
      'a zigzag',
      [
        [30, 10],
        [30.0002, 9.9997],
        [30.0001, 10.0001],
      ],
    ],
    [
      'a loop',
      [
        [30, 10.0016],
        [30.0005, 10.0012],
        [29.9992, 10.0004],
      ],
    ],
  ];
  it.each(folds)('%s', (name, fold) => {
    const shape = folded(fold);
    const isSpike = name.startsWith('a spike');
    const reach = isSpike
      ? regionOf(
          polygon([
            { x: 30, y: 9.99 },
            { x: 40, y: 10 },
            { x: 30, y: 10.01 },
          ]),
        )
      : null;
    const plain = reach ? union([folded([]), reach]) : folded([]);
    for (const d of [0.35, 2, 4.4, -0.35, -4.4]) {
      const found = offsetChecked(shape, d);
      // A slit without width is closed by growing and opened by shrinking.
      if (name.startsWith('a slit') && d < 0) expect(found.exact).toBe(true);
      else expectSame(found, offset(plain, d), 5e-3);
    }
  });
});
