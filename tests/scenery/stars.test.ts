import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { regionArea } from '../../src/geometry/measure.js';
import { starShape } from '../../src/scenery/stars/star.js';
import { stars } from '../../src/scenery/stars.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const head = (changes = {}) =>
  plotWith('rectangle', { side: 'head', height: 60, smallestWeb: 1, smallestHole: 1, ...changes });

describe('stars', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(stars, 50, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(stars, head());
  });

  it('pierces more stars when more are asked, never more than that, and none elsewhere', () => {
    const holes = (form: string, count: number) =>
      grown(stars, head(), { form, count }).holes.contours.length;
    for (const count of [3, 8, 20]) expect(holes('cut', count)).toBeLessThanOrEqual(count);
    expect(holes('cut', 3)).toBeGreaterThan(0);
    expect(holes('cut', 8)).toBeGreaterThan(holes('cut', 3));
    expect(holes('cut', 20)).toBeGreaterThan(holes('cut', 8));
  });

  it('keeps all its stars on the card of strings and nets', () => {
    for (const form of ['strings', 'net']) {
      const { body, parts } = grown(stars, head(), { form });
      const own = parts?.stars ?? { contours: [] };
      expect(regionArea(intersect(body, own))).toBeGreaterThan(0.93 * regionArea(own));
    }
  });

  // Area of a regular star polygon: n R r sin(180/n), common geometry.
  it('draws stars of four to six points', () => {
    for (const [points, inner] of [
      [4, 0.38],
      [5, 0.44],
      [6, 0.52],
    ]) {
      const star = starShape({ x: 0, y: 0, radius: 10, points, turnDeg: 7 });
      const area = points * 100 * inner * Math.sin(Math.PI / points);
      expect(regionArea(star)).toBeCloseTo(area, 6);
    }
  });

  it('draws larger stars when asked, and rounds', () => {
    const area = (given: object) =>
      regionArea(grown(stars, head(), { form: 'cut', count: 3, ...given }).holes);
    expect(area({ size: 1 })).toBeGreaterThan(2 * area({ size: 0 }));
    const corners = (shape: string) =>
      grown(stars, head(), { form: 'cut', count: 3, shape }).holes.contours[0].length;
    expect(corners('star')).toBeGreaterThan(corners('round'));
  });

  it('raises its stars only when asked, and no holes', () => {
    const raised = (form: string, window: 'rectangle' | 'none') =>
      grown(stars, plotWith(window, { side: 'head', height: 60 }), { form, raised: true }).reliefs
        .length;
    expect(raised('net', 'rectangle')).toBe(1);
    expect(raised('cut', 'none')).toBe(1);
    expect(raised('cut', 'rectangle')).toBe(0);
    expect(grown(stars, head(), { form: 'net' }).reliefs).toHaveLength(0);
  });
});
