import { describe, expect, it } from 'vitest';
import {
  chordsOf,
  cubicLength,
  isClosed,
  joined,
  placeAtLength,
  pointOn,
  subchain,
} from '../../src/geometry/chain.js';
import { chainLength } from '../../src/geometry/measure.js';
import { pen, polyline } from '../../src/geometry/pen.js';
import { circle } from '../../src/geometry/primitives.js';
import { randomFrom } from '../../src/scenery/random.js';
import { wanderer } from './reference.js';

const bent = polyline([
  { x: 0, y: 0 },
  { x: 10, y: 0 },
  { x: 10, y: 20 },
  { x: 0, y: 20 },
]).cubics;

describe('places on a chain', () => {
  it('count cubics and the parameter on them', () => {
    expect(pointOn(bent, 0)).toEqual({ x: 0, y: 0 });
    expect(pointOn(bent, 1.5).y).toBeCloseTo(10, 12);
    expect(pointOn(bent, 2)).toEqual({ x: 10, y: 20 });
    expect(pointOn(bent, 3)).toEqual({ x: 0, y: 20 });
  });

  it('are found by length, joints exactly', () => {
    expect(placeAtLength(bent, 10)).toBe(1);
    expect(placeAtLength(bent, 15)).toBeCloseTo(1.25, 9);
    expect(placeAtLength(bent, 30)).toBe(2);
    expect(placeAtLength(bent, -1)).toBe(0);
    expect(placeAtLength(bent, 99)).toBe(3);
  });
});

describe('parts of a chain', () => {
  it('hold whole cubics and pieces of the first and last', () => {
    expect(subchain(bent, 0, 3)).toEqual(bent);
    expect(subchain(bent, 1, 2)).toEqual(bent.subarray(8, 16));
    const part = subchain(bent, 0.5, 2.5);
    expect(part).toHaveLength(24);
    expect([part[0], part[1], part[22], part[23]]).toEqual([5, 0, 5, 20]);
  });

  it('make the whole again, wherever it is cut', () => {
    for (let k = 0; k < 20; k++) {
      const random = randomFrom(80, 'chain', k);
      const { cubics } = wanderer(random);
      const u = random.between(0.01, cubics.length / 8 - 0.01);
      const [a, b] = [subchain(cubics, 0, u), subchain(cubics, u, cubics.length / 8)];
      expect(chainLength(a) + chainLength(b)).toBeCloseTo(chainLength(cubics), 2);
      const whole = joined(a, b);
      for (let i = 8; i < whole.length; i += 8) {
        expect([whole[i], whole[i + 1]]).toEqual([whole[i - 2], whole[i - 1]]);
      }
    }
  });
});

describe('lengths and chords', () => {
  it('measure cubics', () => {
    expect(cubicLength(bent, 8)).toBeCloseTo(20, 12);
    expect(cubicLength(bent, 8, 0.25, 0.5)).toBeCloseTo(5, 12);
    // The parabola y = x^2 from 0 to 1 is sqrt(5)/2 + asinh(2)/4 long: any calculus text.
    const parabola = pen(0, 0).quadTo(0.5, 0, 1, 1).line().cubics;
    expect(cubicLength(parabola, 0)).toBeCloseTo(Math.sqrt(5) / 2 + Math.asinh(2) / 4, 9);
  });

  it('keep chords within the tolerance, each with its place', () => {
    const c = circle(0, 0, 30).contours[0];
    const { x, y, u } = chordsOf(c, 0.01);
    for (let k = 0; k < x.length; k++) {
      const p = pointOn(c, u[k]);
      expect(Math.hypot(p.x - x[k], p.y - y[k])).toBeLessThan(1e-12);
      if (k === 0) continue;
      const middle = pointOn(c, (u[k - 1] + u[k]) / 2);
      const sagitta = Math.hypot(
        middle.x - (x[k - 1] + x[k]) / 2,
        middle.y - (y[k - 1] + y[k]) / 2,
      );
      expect(sagitta).toBeLessThan(0.01);
    }
    expect(chordsOf(new Float64Array(), 0.01).x).toHaveLength(0);
  });

  it('tell closed from open', () => {
    expect(isClosed(circle(0, 0, 3).contours[0])).toBe(true);
    expect(isClosed(bent)).toBe(false);
    expect(isClosed(new Float64Array())).toBe(false);
  });
});
