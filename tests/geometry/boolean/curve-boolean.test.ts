import { describe, expect, it } from 'vitest';
import { chordTable, GRID_PER_MM } from '../../../src/geometry/boolean/chords.js';
import { touchingGroups } from '../../../src/geometry/boolean/clusters.js';
import { isFaithful, overlapOf } from '../../../src/geometry/boolean/verify.js';
import { crossingNear, footNear, jetAt, subCubic } from '../../../src/geometry/cubic.js';
import { contourArea } from '../../../src/geometry/measure.js';
import { polygon } from '../../../src/geometry/pen.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import { reversed } from '../../../src/geometry/transform.js';
import { fineCircle, scribble, seeded } from '../shapes.js';

describe('one cubic', () => {
  it('is cut into parts that follow it, either way', () => {
    const random = seeded(1);
    for (let k = 0; k < 20; k++) {
      const c = scribble(random);
      const [t0, t1] = [random(), random()];
      const part = Float64Array.from(subCubic(c, 0, t0, t1));
      for (const f of [0, 0.3, 0.8, 1]) {
        const p = jetAt(part, 0, f);
        const q = jetAt(c, 0, t0 + f * (t1 - t0));
        expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeLessThan(1e-12 * 100);
      }
    }
  });

  it('finds its nearest point, and where it meets another', () => {
    const [c] = fineCircle(0, 0, 10).contours;
    const foot = jetAt(c, 0, footNear(c, 0, 0.5, 10.4, 2.6));
    expect(foot.y / foot.x).toBeCloseTo(1 / 4, 6);
    // The parabola y = x2 and the line y = 1/4, both for x from 0 to 1, meet at x = 1/2.
    const parabola = Float64Array.of(0, 0, 1 / 3, 0, 2 / 3, 1 / 3, 1, 1);
    const line = Float64Array.of(0, 0.25, 1 / 3, 0.25, 2 / 3, 0.25, 1, 0.25);
    const hit = crossingNear(parabola, 0, 0.3, line, 0, 0.7)!;
    expect(hit.ta).toBeCloseTo(0.5, 12);
    expect(hit.tb).toBeCloseTo(0.5, 12);
    // A tangent has no crossing that could be trusted.
    const tangent = Float64Array.of(0, 0, 1 / 3, 0, 2 / 3, 0, 1, 0);
    expect(crossingNear(parabola, 0, 0, tangent, 0, 0)).toBeNull();
  });
});

describe('chords', () => {
  it('stay within the tolerance and know their part of the curve', () => {
    const [c] = circle(3, 4, 10).contours;
    const table = chordTable([c], 0.01);
    for (let v = 0; v < table.x.length; v++) {
      const middle = (table.t0[v] + table.t1[v]) / 2;
      const p = jetAt(c, table.segment[v] * 8, middle);
      const x = (table.x[v] + table.x[table.next[v]]) / 2 / GRID_PER_MM;
      const y = (table.y[v] + table.y[table.next[v]]) / 2 / GRID_PER_MM;
      expect(Math.hypot(p.x - x, p.y - y)).toBeLessThan(0.01);
    }
    expect(table.x.length).toBeLessThan(80);
  });

  it('of a curve and its reverse share their vertices to the last bit', () => {
    const c = scribble(seeded(9));
    const spots = (contour: Float64Array): string[] => {
      const { x, y, contourStart } = chordTable([contour], 0.01);
      return Array.from({ length: contourStart[1] }, (_, v) => `${x[v]} ${y[v]}`).sort();
    };
    expect(spots(reversed(c))).toEqual(spots(c));
  });
});

describe('verification', () => {
  it('measures how much contours overlap', () => {
    const [a, b] = [rectangle(0, 0, 10, 10), rectangle(9, 2, 10, 10)].map((r) => r.contours[0]);
    expect(overlapOf([a, b], 0.01).areaMm2).toBeCloseTo(8, 6);
    const bow = polygon([
      { x: 0, y: 0 },
      { x: 10, y: 10 },
      { x: 10, y: 0 },
      { x: 0, y: 10 },
    ]);
    expect(overlapOf([bow], 0.01).areaMm2).toBeGreaterThan(1);
    const touching = [circle(0, 0, 5), rectangle(5, -5, 10, 10)].map((r) => r.contours[0]);
    expect(overlapOf(touching, 0.01).areaMm2).toBeLessThan(1e-4);
    const [plate, hole] = [circle(0, 0, 9), circle(0, 0, 5)].map((r) => r.contours[0]);
    expect(overlapOf([plate, reversed(hole)], 0.01).areaMm2).toBe(0);
  });

  it('measures small slivers without a clip', () => {
    const [a] = rectangle(0, 0, 10, 10).contours;
    const [b] = rectangle(9.99, 4, 10, 0.05).contours;
    expect(overlapOf([a, b], 0.01).areaMm2).toBeCloseTo(0.01 * 0.05, 7);
  });

  it('refuses a contour that does not enclose what its ring does', () => {
    const [c] = circle(0, 0, 10).contours;
    const table = chordTable([c], 0.01);
    const ring = Array.from(table.x, (x, v) => ({ x, y: table.y[v], z: v + 1 }));
    const area = contourArea(c);
    expect(isFaithful(c, ring, area, 0.01)).toBe(true);
    expect(isFaithful(circle(0, 0, 9.9).contours[0], ring, area, 0.01)).toBe(false);
    expect(isFaithful(c, ring.slice(0, -5), area, 0.01)).toBe(false);
    expect(isFaithful(reversed(c), ring, -area, 0.01)).toBe(false);
  });
});

describe('touching groups', () => {
  const box = (minX: number, minY: number, size: number) => ({
    minX,
    minY,
    maxX: minX + size,
    maxY: minY + size,
  });

  it('join boxes that touch, directly or through others', () => {
    const boxes = [box(0, 0, 5), box(20, 0, 5), box(5, 5, 5), box(10, 0, 10), box(0, 30, 1)];
    expect(touchingGroups(boxes)).toEqual([[0, 1, 2, 3], [4]]);
    expect(touchingGroups([])).toEqual([]);
  });

  it('agree with asking each pair', () => {
    const random = seeded(4);
    const boxes = Array.from({ length: 120 }, () =>
      box(99 * random(), 99 * random(), 9 * random()),
    );
    const group = boxes.map((_, k) => k);
    const meet = (a: number, b: number): boolean =>
      boxes[a].minX <= boxes[b].maxX &&
      boxes[b].minX <= boxes[a].maxX &&
      boxes[a].minY <= boxes[b].maxY &&
      boxes[b].minY <= boxes[a].maxY;
    for (let a = 0; a < boxes.length; a++) {
      for (let b = 0; b < a; b++) {
        const [from, to] = [group[a], group[b]];
        if (!meet(a, b)) continue;
        for (let k = 0; k < group.length; k++) if (group[k] === from) group[k] = to;
      }
    }
    expect(touchingGroups(boxes).length).toBe(new Set(group).size);
  });
});
