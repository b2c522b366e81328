import { describe, expect, it } from 'vitest';
import { boundsOf, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { EMPTY_REGION } from '../../src/geometry/types.js';
import { water } from '../../src/scenery/water.js';
import { grown, plotWith } from './plots.js';
import { type Case, itStandsSoundly, shareInPlace } from './standing.js';

const CASES: Case[] = [
  { plot: { width: 96, height: 11 } },
  { plot: { width: 96, height: 14 }, given: { light: 1, streaks: 3 } },
  { plot: { width: 96, height: 8 }, given: { chop: 1 } },
  { plot: { width: 60, height: 12 } },
];

describe('water', () => {
  itStandsSoundly(water, CASES, 1.2);

  it('draws a sibling when a little wider', () => {
    const at = (width: number) =>
      grown(water, plotWith('rectangle', { width, height: 12 }), { streaks: 0 });
    expect(shareInPlace(at(92), at(93), 1)).toBeGreaterThan(0.75);
  });

  it('is made of level strokes, longer towards the viewer', () => {
    let [far, near, count] = [0, 0, 0];
    for (const seed of [1, 2, 3, 4]) {
      const plot = plotWith('rectangle', { height: 14, smallestWeb: 1, smallestHole: 1 });
      const { holes } = grown(water, plot, { light: 0.8, streaks: 0 }, seed);
      const boxes = holes.contours.map((c) => boundsOf([c]));
      for (const b of boxes) expect(b.maxX - b.minX).toBeGreaterThan(2.5 * (b.maxY - b.minY));
      const longest = (from: number, to: number) => {
        const row = boxes.filter((b) => b.minY >= from && b.minY < to).map((b) => b.maxX - b.minX);
        return row.reduce((a, b) => a + b, 0) / Math.max(1, row.length);
      };
      far += longest(-14, -8);
      near += longest(-6, 0);
      count += boxes.length;
    }
    expect(count).toBeGreaterThan(40);
    expect(near).toBeGreaterThan(far);
  });

  it('shows more light when asked, and none when there is to be none', () => {
    const lit = (light: number, streaks = 0) =>
      regionArea(grown(water, plotWith('rectangle', { height: 13 }), { light, streaks }).holes);
    expect(lit(0)).toBe(0);
    expect(lit(0, 1)).toBeGreaterThan(20);
    expect(lit(0.5)).toBeGreaterThan(20);
    expect(lit(1)).toBeGreaterThan(lit(0.5) * 1.2);
  });

  it('has a rougher edge with more chop', () => {
    const edge = (chop: number) => {
      const { body } = grown(water, plotWith('rectangle', { width: 96, height: 11 }), { chop });
      return body.contours[0].length;
    };
    const lift = (chop: number) => {
      const { body } = grown(water, plotWith('rectangle', { width: 96, height: 11 }), { chop });
      return regionArea(body);
    };
    expect(edge(1)).toBeGreaterThan(100);
    expect(lift(0)).toBeGreaterThan(lift(1) + 30);
  });

  it('cuts nothing on a backdrop or when only scored', () => {
    for (const growth of [
      grown(water, plotWith('none', { height: 12 })),
      grown(water, plotWith('rectangle', { height: 12 }), { work: 'score' }),
    ]) {
      expect(growth.holes).toEqual(EMPTY_REGION);
      expect(growth.scores.length).toBeGreaterThan(10);
    }
  });

  it('runs on behind the jambs where it meets them and ends by itself where it does not', () => {
    const ends = (width: number) =>
      regionBounds(grown(water, plotWith('rectangle', { width, height: 11 })).body);
    expect(ends(96).minX).toBeLessThan(-50);
    expect(ends(60).minX).toBeCloseTo(-30, 6);
  });
});
