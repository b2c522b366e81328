import { describe, expect, it } from 'vitest';
import { union } from '../../../src/geometry/boolean/boolean.js';
import { isStraightCubic, jetAt } from '../../../src/geometry/cubic.js';
import { contourArea, flatten } from '../../../src/geometry/measure.js';
import { pen, polygon, polyline, smoothContour } from '../../../src/geometry/pen.js';
import { circle, ellipse, roundedRectangle } from '../../../src/geometry/primitives.js';
import { selfCrossings } from '../../../src/geometry/tidy/crossing-count.js';
import { fitCubics } from '../../../src/geometry/tidy/fit.js';
import { reversed } from '../../../src/geometry/transform.js';
import type { Cubics, Point } from '../../../src/geometry/types.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { blobs, wanderer } from '../reference.js';
import { foldedChain, leaf, scribble, seeded, strewnLeaves } from '../shapes.js';
import { hausdorff } from './hausdorff.js';

const TOLERANCE = 0.02;

const facets = (c: Cubics, toleranceMm: number): Cubics =>
  polygon(flatten(c, toleranceMm).slice(0, -1));
const round = (count: number, radius: number, start = 0): Point[] =>
  Array.from({ length: count }, (_, k) => ({
    x: radius * Math.cos(start + (2 * Math.PI * k) / count),
    y: radius * Math.sin(start + (2 * Math.PI * k) / count),
  }));

const lumpy = (seed: number): Cubics => {
  const random = seeded(seed);
  return smoothContour(
    round(12, 1).map(({ x, y }) => {
      const r = 15 + 5 * random();
      return { x: r * x, y: r * y };
    }),
  );
};

/** What every result must be: near both ways, no longer, no more crossings, whole. */
function expectFit(chain: Cubics, toleranceMm = TOLERANCE): Cubics {
  const fitted = fitCubics(chain, toleranceMm);
  expect(hausdorff(chain, fitted)).toBeLessThanOrEqual(toleranceMm);
  expect(fitted.length).toBeLessThanOrEqual(chain.length);
  expect(selfCrossings(fitted)).toBeLessThanOrEqual(selfCrossings(chain));
  expect([...fitted.subarray(0, 2)]).toEqual([...chain.subarray(0, 2)]);
  expect([...fitted.subarray(-2)]).toEqual([...chain.subarray(-2)]);
  for (let i = 8; i < fitted.length; i += 8) {
    expect([fitted[i], fitted[i + 1]]).toEqual([fitted[i - 2], fitted[i - 1]]);
  }
  return fitted;
}

/** The turns at all joints, degrees; of a closed chain the one at its start too. */
function turns(c: Cubics): number[] {
  return Array.from({ length: c.length / 8 }, (_, k) => {
    const p = jetAt(c, k === 0 ? c.length - 8 : 8 * k - 8, 1);
    const q = jetAt(c, 8 * k, 0);
    const turn = Math.atan2(p.dx * q.dy - p.dy * q.dx, p.dx * q.dx + p.dy * q.dy);
    return Math.abs((turn * 180) / Math.PI);
  });
}

describe('fitCubics on dense outlines', () => {
  it('makes a circle of 1,000 points four to eight smooth cubics', () => {
    const fitted = expectFit(polygon(round(1000, 20)));
    expect(fitted.length / 8).toBeGreaterThanOrEqual(4);
    expect(fitted.length / 8).toBeLessThanOrEqual(8);
    expect(Math.max(...turns(fitted))).toBeLessThan(0.01);
    expect(contourArea(fitted) / (400 * Math.PI)).toBeCloseTo(1, 2);
  });

  it('finds the two curves of a leaf again, its tips exactly', () => {
    const drawn = leaf(30, 8).contours[0];
    const fitted = expectFit(facets(drawn, 0.005));
    expect(fitted.length / 8).toBe(2);
    expect([...fitted.subarray(6, 8)]).toEqual([30, 0]);
    expect(hausdorff(fitted, drawn)).toBeLessThan(0.01);
  });

  it('keeps straight sides straight beside arcs', () => {
    const drawn = roundedRectangle(5, 7, 40, 30, 4).contours[0];
    for (const tolerance of [0.005, 0.001]) {
      const fitted = expectFit(facets(drawn, tolerance));
      expect(fitted.length / 8).toBe(8);
      const sides = [0, 2, 4, 6].map((k) => isStraightCubic(fitted, 8 * k));
      expect(sides).toEqual([true, true, true, true]);
      expect(Math.max(...turns(fitted))).toBeLessThan(0.01);
    }
  });

  it('keeps corners exactly, facets beside them or not', () => {
    // A half moon: an arc in facets over a straight edge, with two corners.
    const arc = round(400, 12).slice(0, 201);
    const fitted = expectFit(polygon(arc));
    const corners = turns(fitted).filter((turn) => turn > 5);
    expect(corners).toHaveLength(2);
    expect([...fitted.subarray(0, 2)]).toEqual([12, 0]);
    expect(isStraightCubic(fitted, fitted.length - 8)).toBe(true);
    expect(fitted[fitted.length - 8]).toBe(arc[200].x);
    expect(fitted.length / 8).toBeLessThanOrEqual(4);
  });

  it('keeps corners of shapes with edges shorter than the tolerance allows for', () => {
    // A staircase of 0.06 mm: rounding each corner off would stay within the tolerance.
    const steps: Point[] = [];
    for (let k = 0; k < 20; k++)
      steps.push({ x: 0.06 * k, y: 0.06 * k }, { x: 0.06 * k + 0.06, y: 0.06 * k });
    const chain = polyline(steps).cubics;
    expect(expectFit(chain)).toEqual(chain);
  });

  it('takes a coarse polygon for a polygon', () => {
    for (const count of [3, 6, 24]) {
      const chain = polygon(round(count, 20));
      expect(fitCubics(chain)).toEqual(chain);
    }
  });

  it('follows a noisy scan smoothly', () => {
    const random = seeded(8);
    const drawn = lumpy(5);
    const noise = (): number => 0.016 * (random() - 0.5);
    const scan = polygon(
      flatten(drawn, 5e-4).map(({ x, y }) => ({ x: x + noise(), y: y + noise() })),
    );
    expect(scan.length / 8).toBeGreaterThan(500);
    const fitted = expectFit(scan);
    expect(fitted.length / 8).toBeLessThan(40);
    expect(Math.max(...turns(fitted).slice(1))).toBeLessThan(0.01);
    expect(hausdorff(fitted, drawn)).toBeLessThan(0.025);
  });

  it('smooths the steps of a scanned grid finer than the tolerance', () => {
    const grid = (v: number): number => Math.round(v / 0.01) * 0.01;
    const scan = polygon(flatten(lumpy(6), 5e-4).map(({ x, y }) => ({ x: grid(x), y: grid(y) })));
    expect(expectFit(scan).length / 8).toBeLessThan(40);
  });

  it('brings a polygonised union of leaves back to the count of the curves', () => {
    const drawn = union(strewnLeaves(300, 1)).contours;
    let [kept, dense, few] = [0, 0, 0];
    for (const contour of drawn) {
      const polygonal = facets(contour, 0.005);
      kept += contour.length / 8;
      dense += polygonal.length / 8;
      few += fitCubics(polygonal, TOLERANCE).length / 8;
    }
    expect(dense).toBeGreaterThan(6 * kept);
    expect(few).toBeLessThan(1.1 * kept);
  });
});

describe('fitCubics on curves', () => {
  it('joins small cubics of one curve', () => {
    const p = pen(20, 0);
    for (let k = 0; k < 60; k++) p.arcAround(0, 0, 6);
    const fitted = expectFit(p.close());
    expect(fitted.length / 8).toBeLessThanOrEqual(5);
    expect(Math.max(...turns(fitted))).toBeLessThan(0.01);
  });

  it('leaves alone what has few cubics already', () => {
    for (const c of [circle(0, 0, 5), leaf(30, 8)].map((region) => region.contours[0])) {
      expect(fitCubics(c)).toEqual(c);
    }
    const single = pen(0, 0).curveTo(3, 9, 7, -9, 10, 0).line().cubics;
    expect(fitCubics(single)).toEqual(single);
  });

  it('makes collinear edges one, and drops points', () => {
    const row = pen(0, 0).lineTo(3, 1).lineTo(9, 3).lineTo(9.3, 3.1).line().cubics;
    const fitted = expectFit(row);
    expect(fitted.length / 8).toBe(1);
    expect(isStraightCubic(fitted, 0)).toBe(true);
    const specked = Float64Array.from([
      ...row.subarray(0, 8),
      3,
      1,
      3,
      1,
      3,
      1,
      3,
      1,
      ...row.subarray(8),
    ]);
    expect(fitCubics(specked).length / 8).toBe(1);
  });

  it('takes an empty chain and a chain of points', () => {
    expect(fitCubics(new Float64Array(0))).toHaveLength(0);
    const point = Float64Array.of(3, 1, 3, 1, 3, 1, 3, 1);
    expect(fitCubics(point)).toEqual(point);
  });

  it('is sound on whatever it is given', () => {
    const open = Array.from({ length: 6 }, (_, k) => wanderer(randomFrom(40, 'fit', k)).cubics);
    const some = Array.from({ length: 12 }, (_, k) => [
      scribble(seeded(k)),
      foldedChain(seeded(k)),
    ]);
    const regions = Array.from({ length: 4 }, (_, k) => blobs(randomFrom(41, 'fit', k)).contours);
    for (const c of [...open, ...some.flat(), ...regions.flat()]) {
      expectFit(c);
      expectFit(reversed(c), 0.1);
    }
    for (const c of [...open, ...regions.flat()]) expectFit(facetsOf(c));
  });
});

const facetsOf = (c: Cubics): Cubics => polyline(flatten(c, 0.01)).cubics;

describe('fitCubics does not let outlines cross', () => {
  it('where both sides of a slender shape could', () => {
    // Two lumpy sides 0.02 mm apart, with a tolerance of ten times that.
    const wave = (x: number): number => Math.sin(x) + 0.3 * Math.sin(3.1 * x);
    const across = Array.from({ length: 301 }, (_, k) => ({ x: k / 10, y: wave(k / 10) }));
    const back = across.map(({ x, y }) => ({ x, y: y + 0.02 })).reverse();
    const slender = polygon([...across, ...back]);
    const fitted = expectFit(slender, 0.2);
    expect(selfCrossings(fitted)).toBe(0);
    expect(fitted.length).toBeLessThan(slender.length);
    expect(contourArea(fitted) * contourArea(slender)).toBeGreaterThan(0);
  });

  it('keeps a narrow ellipse an ellipse', () => {
    const fitted = expectFit(facets(ellipse(0, 0, 30, 0.05).contours[0], 0.001));
    expect(selfCrossings(fitted)).toBe(0);
  });
});

describe('the measure of distance used here', () => {
  it('sees what is too far', () => {
    const a = polyline([
      { x: 0, y: 0 },
      { x: 10, y: 0 },
    ]).cubics;
    const b = polyline([
      { x: 0, y: 0 },
      { x: 5, y: 0.3 },
      { x: 10, y: 0 },
    ]).cubics;
    expect(hausdorff(a, b)).toBeCloseTo(0.3, 6);
    expect(hausdorff(a, a.subarray(0, 8))).toBe(0);
  });
});
