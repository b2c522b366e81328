import { describe, expect, it } from 'vitest';
import { subtract, union } from '../src/geometry/boolean/boolean.js';
import { offset } from '../src/geometry/offset/offset.js';
import { circle, rectangle } from '../src/geometry/primitives.js';
import { moveRegion, reversed, translation } from '../src/geometry/transform.js';
import type { Region } from '../src/geometry/types.js';
import type { Case } from './cases/case.js';
import { faultsOf } from './fuzz/check.js';
import { KINDS } from './fuzz/kinds.js';
import { recordOf, shrunk } from './fuzz/shrink.js';
import { distanceFrom, windingOf } from './fuzz/sides.js';
import { tryNumber } from './fuzz/trial.js';
import { seeded } from './geometry/shapes.js';

/** Cases of each kind: a taste of what `npm run fuzz` does at length. */
const CASES = 120;
const SEED = 2026;

describe('random cases', () => {
  it.each(KINDS)('%s', (kind) => {
    for (let index = 0; index < CASES; index++) {
      const { faults } = tryNumber(SEED, index, kind);
      expect({ index, faults }).toEqual({ index, faults: [] });
    }
  });

  it('are the same for the same numbers', () => {
    expect(tryNumber(7, 3).made).toEqual(tryNumber(7, 3).made);
    expect(tryNumber(7, 3).made).not.toEqual(tryNumber(8, 3).made);
  });
});

describe('the check', () => {
  const plate = rectangle(0, 0, 40, 30);
  const cut: Case = { operation: 'subtract', shapes: [plate, circle(20, 15, 8)] };
  const holed = subtract(plate, [circle(20, 15, 8)]);
  const isFound = (c: Case, result: Region): boolean =>
    faultsOf(c, result, true, seeded(1)).length > 0;

  it('passes what is right', () => {
    expect(faultsOf(cut, holed, true, seeded(1))).toEqual([]);
    const other: Case = { ...cut, operation: 'even-odd' };
    expect(faultsOf(other, holed, true, seeded(1))).toEqual([]);
  });

  it.each<[string, Region]>([
    ['a hole left out', plate],
    ['nothing at all', { contours: [] }],
    ['a hole wound the wrong way', { contours: [holed.contours[0], reversed(holed.contours[1])] }],
    ['everything inside out', { contours: holed.contours.map(reversed) }],
    ['an outline 0.03 mm off', moveRegion(holed, translation(0.03, 0))],
    ['a contour twice', { contours: [...holed.contours, holed.contours[0]] }],
    ['an open contour', { contours: [holed.contours[0].slice(0, 24), holed.contours[1]] }],
    ['no number', { contours: [holed.contours[0].map((v, k) => (k === 3 ? NaN : v))] }],
  ])('finds %s', (_, wrong) => {
    expect(isFound(cut, wrong)).toBe(true);
  });

  it('finds an offset that is too wide, or has its corners square', () => {
    const grown: Case = { operation: 'offset', distanceMm: 2, join: 'round', shapes: [plate] };
    expect(isFound(grown, offset(plate, 2))).toBe(false);
    expect(isFound(grown, offset(plate, 2.03))).toBe(true);
    expect(isFound(grown, offset(plate, 2, 'mitre'))).toBe(true);
  });

  it('knows sides and distances of curves', () => {
    const { contours } = circle(0, 0, 10);
    expect(windingOf(contours, 9.9, 0)).toBe(1);
    expect(windingOf(contours.map(reversed), 0, -9.9)).toBe(-1);
    expect(windingOf(contours, 7.2, 7.2)).toBe(0);
    expect(distanceFrom(contours, 0, 13, 99)).toBeCloseTo(3, 3);
    expect(distanceFrom(contours, 0, 13, 2)).toBe(2);
  });
});

describe('a failing case', () => {
  it('is shrunk to the shapes that matter and written down with what the reference says', () => {
    const shapes = [rectangle(0, 0, 9, 9), circle(4, 4, 2), rectangle(50, 0, 5, 5)];
    const c: Case = { operation: 'union', shapes };
    const small = shrunk(c, (less) => union(less.shapes).contours.length > 1);
    expect(small.shapes.length).toBe(2);
    expect(recordOf(small, 'two', 'more than one')).toMatchObject({
      areaMm2: 106,
      outers: 2,
      holes: 0,
    });
  });
});
