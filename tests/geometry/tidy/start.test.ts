import { describe, expect, it } from 'vitest';
import { union } from '../../../src/geometry/boolean/boolean.js';
import { isStraightCubic, jetAt } from '../../../src/geometry/cubic.js';
import { chainLength, contourArea } from '../../../src/geometry/measure.js';
import { pen, polygon } from '../../../src/geometry/pen.js';
import { circle, ellipse, roundedRectangle } from '../../../src/geometry/primitives.js';
import { startOnStraightRun } from '../../../src/geometry/tidy/start.js';
import type { Cubics } from '../../../src/geometry/types.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { blobs } from '../reference.js';
import { leaf, strewnLeaves } from '../shapes.js';

const textOf = (c: Cubics): string[] =>
  Array.from({ length: c.length / 8 }, (_, k) => c.subarray(k * 8, k * 8 + 8).join(' '));

/** How far the outline turns where it starts, degrees. */
function turnAtStart(c: Cubics): number {
  const [p, q] = [jetAt(c, c.length - 8, 1 - 1e-6), jetAt(c, 0, 1e-6)];
  const turn = Math.atan2(p.dx * q.dy - p.dy * q.dx, p.dx * q.dx + p.dy * q.dy);
  return Math.abs((turn * 180) / Math.PI);
}

const outlines: Cubics[] = [
  circle(20, 20, 7).contours[0],
  ellipse(5, 5, 20, 6).contours[0],
  roundedRectangle(3, 4, 50, 70, 6).contours[0],
  leaf(30, 8).contours[0],
  ...Array.from({ length: 8 }, (_, k) => blobs(randomFrom(70, 'start', k))).flatMap(
    ({ contours }) => contours,
  ),
  ...union(strewnLeaves(60, 4)).contours,
];

describe('startOnStraightRun', () => {
  it('starts in the middle of the longest straight edge', () => {
    const c = startOnStraightRun(roundedRectangle(10, 20, 40, 90, 5).contours[0]);
    // The sides are 80 mm long, the first of them on the right.
    expect(c[0]).toBe(50);
    expect(c[1]).toBeCloseTo(65, 9);
    expect(isStraightCubic(c, 0) && isStraightCubic(c, c.length - 8)).toBe(true);
    expect(c.length / 8).toBe(9);
  });

  it('takes edges in a row for one run', () => {
    const c = startOnStraightRun(
      pen(0, 0)
        .lineTo(4, 0)
        .lineTo(6, 0)
        .lineTo(9, 0)
        .lineTo(9, 5)
        .lineTo(0, 5)
        .lineTo(0, 0)
        .close(),
    );
    // The bottom is one edge of 9 mm; the top, in three parts, is as long and comes first.
    expect(c[0]).toBeCloseTo(4.5, 12);
    expect(c[1]).toBe(0);
  });

  it('finds a run across the start', () => {
    const c = startOnStraightRun(
      polygon([
        { x: 9, y: 0 },
        { x: 20, y: 0 },
        { x: 20, y: 12 },
        { x: 2, y: 12 },
        { x: 0, y: 0 },
      ]),
    );
    expect(c[0]).toBeCloseTo(10, 12);
    expect(c[1]).toBeCloseTo(0, 12);
    expect(c.length / 8).toBe(6);
  });

  it('minds the length of a straight edge, not its parameter', () => {
    const uneven = pen(0, 0).curveTo(1, 0, 2, 0, 10, 0).lineTo(10, 4).lineTo(0, 4).close();
    const c = startOnStraightRun(uneven);
    expect(c[0]).toBeCloseTo(5, 9);
    expect(contourArea(c)).toBeCloseTo(40, 12);
  });

  it('starts in the flattest stretch where nothing is straight', () => {
    // An ellipse is flattest at the ends of its short axis.
    const c = startOnStraightRun(ellipse(0, 0, 20, 6).contours[0]);
    expect(Math.abs(c[0])).toBeLessThan(0.8);
    expect(Math.abs(c[1])).toBeCloseTo(6, 1);
  });

  it('never starts at a corner', () => {
    for (const outline of outlines) {
      expect(turnAtStart(startOnStraightRun(outline))).toBeLessThan(1);
    }
    // A leaf's outline starts at its tip.
    expect(turnAtStart(leaf(30, 8).contours[0])).toBeGreaterThan(60);
    const small = polygon(
      Array.from({ length: 6 }, (_, k) => ({
        x: 2 * Math.cos((k * Math.PI) / 3),
        y: 2 * Math.sin((k * Math.PI) / 3),
      })),
    );
    expect(turnAtStart(startOnStraightRun(small))).toBeLessThan(1e-6);
  });

  it('keeps the outline: all cubics but the split one, area and length', () => {
    for (const outline of outlines) {
      const c = startOnStraightRun(outline);
      const before = new Set(textOf(outline));
      const changed = textOf(c).filter((cubic) => !before.has(cubic));
      expect(changed.length === 0 || changed.length === 2).toBe(true);
      expect(c.length - outline.length).toBe(changed.length === 0 ? 0 : 8);
      expect(Math.abs(contourArea(c) - contourArea(outline))).toBeLessThan(1e-9);
      expect(Math.abs(chainLength(c) - chainLength(outline))).toBeLessThan(0.01);
      for (let i = 0; i < c.length; i += 8) {
        const next = (i + 8) % c.length;
        expect([c[next], c[next + 1]]).toEqual([c[i + 6], c[i + 7]]);
      }
    }
  });

  it('takes an empty contour', () => {
    expect(startOnStraightRun(new Float64Array(0))).toHaveLength(0);
  });
});
