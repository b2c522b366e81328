import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components, containsPoint } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { birds } from '../../src/scenery/birds.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const fine = { smallestWeb: 1, smallestHole: 1 };
const head = (changes = {}) => plotWith('rectangle', { side: 'head', ...fine, ...changes });

describe('birds', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(birds, 50, expectFitToCut);
  }, 240000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(birds, head());
  });

  it('runs from jamb to jamb where it is as wide as the window, and holds in one piece', () => {
    for (const form of ['branch', 'flock']) {
      for (let seed = 0; seed < 6; seed++) {
        const growth = grown(birds, head(), { form }, seed);
        const { minX, maxX, maxY } = regionBounds(growth.body);
        expect(minX).toBeLessThan(-50);
        expect(maxX).toBeGreaterThan(50);
        expect(maxY).toBeLessThan(0.5);
        expect(components(cardWith(head(), growth))).toHaveLength(1);
      }
    }
  });

  it('hangs by stays at both ends where the jambs are out of reach', () => {
    const { body } = grown(birds, head({ width: 60 }), { form: 'flock', rise: 0 });
    const atHead = (from: number, to: number) =>
      Array.from({ length: 40 }, (_, k) => from + ((to - from) * k) / 39).some((x) =>
        containsPoint(body, { x, y: -1 }),
      );
    expect(atHead(-30, -20)).toBe(true);
    expect(atHead(20, 30)).toBe(true);
    expect(atHead(-18, 18)).toBe(false);
  });

  it('has more birds when asked, on the branch as in the air', () => {
    for (const form of ['branch', 'flock']) {
      const wings = (count: number) =>
        grown(birds, head({ width: 96 }), { form, count, leaves: 0 }).parts?.birds.contours.length;
      expect(wings(1)).toBeGreaterThan(0);
    }
    const sitting = (count: number) =>
      components(grown(birds, head(), { count, leaves: 0 }).parts?.birds ?? { contours: [] })
        .length;
    expect([1, 2, 3, 4].map(sitting)).toEqual([1, 2, 3, 4]);
  });

  it('climbs or falls as asked', () => {
    const ends = (rise: number) => {
      const { body } = grown(birds, head(), { form: 'branch', count: 1, leaves: 0, rise });
      const levelAt = (x: number) => {
        for (let y = 0; y > -40; y -= 0.2) if (containsPoint(body, { x, y })) return y;
        return Number.NaN;
      };
      // The plot is turned over at the head: lower in it is higher in the world.
      return levelAt(40) - levelAt(-40);
    };
    expect(ends(1)).toBeGreaterThan(4);
    expect(ends(-1)).toBeLessThan(-4);
  });

  it('bears leaves and scores feathers only when asked', () => {
    const area = (leaves: number) => regionArea(grown(birds, head(), { leaves }).body);
    expect(area(1)).toBeGreaterThan(area(0) + 20);
    const draw = (feathers: boolean) => grown(birds, head(), { count: 2, feathers });
    expect(draw(false).scores).toHaveLength(0);
    const { scores, body, holes } = draw(true);
    expect(scores.length).toBeGreaterThan(0);
    expect(clearance(scores, subtract(body, [holes]))).toBeGreaterThanOrEqual(1.48);
  });
});
