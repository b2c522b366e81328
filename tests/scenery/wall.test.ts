import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { randomFrom } from '../../src/scenery/random.js';
import { setOutWall } from '../../src/scenery/wall/plan.js';
import { wall } from '../../src/scenery/wall.js';
import { plotAt } from './draws.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

/** A wall that stands free at both ends. */
const free = plotAt('sill', { width: 70, height: 30, smallestWeb: 1, smallestHole: 1 });
const topAt = (body: ReturnType<typeof grown>['body'], x: number): number =>
  regionBounds(intersect(body, rectangle(x - 0.3, -60, 0.6, 60))).minY;

describe('wall', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(wall, 50, expectFitToCut);
  }, 60000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(wall, plotWith('rectangle', { height: 30 }));
  });

  it('keeps its scores 1.5 mm clear of the cut', () => {
    for (const gateway of ['none', 'arch', 'open']) {
      const { body, holes, scores } = grown(wall, free, { gateway, coverage: 1 });
      expect(scores.length).toBeGreaterThan(20);
      const card = { contours: [...body.contours, ...holes.contours] };
      expect(clearance(scores, card)).toBeGreaterThan(1.48);
    }
  });

  it('hangs its coping 2 to 3 mm over a free end', () => {
    // Common practice, no source.
    const { body } = grown(wall, free, { piers: false });
    const at = (y: number) => regionBounds(intersect(body, rectangle(-60, y, 120, 0.5)));
    const over = at(-10).minX - at(-28).minX;
    expect(over).toBeGreaterThan(1.7);
    expect(over).toBeLessThan(3);
  });

  it('has a gateway that one can walk through: an arched hole, or a gap', () => {
    const arch = grown(wall, free, { gateway: 'arch' });
    const { minX, maxX, minY, maxY } = regionBounds(arch.holes);
    expect(maxY).toBeCloseTo(0, 6);
    expect(-minY).toBeGreaterThan(maxX - minX);
    const open = grown(wall, free, { gateway: 'open' });
    expect(open.holes.contours).toEqual([]);
    const above = (growth: typeof open) =>
      regionArea(intersect(growth.body, rectangle(-12, -40, 24, 38)));
    expect(above(open)).toBeLessThan(0.8 * above(grown(wall, free)));
  });

  it('carries balls on its piers', () => {
    const piers = grown(wall, free, { piers: true });
    const plain = grown(wall, free, { piers: false });
    expect(topAt(plain.body, 12)).toBeCloseTo(-30, 0);
    expect(topAt(piers.body, 12)).toBeGreaterThan(-24);
    expect(regionBounds(piers.body).minY).toBeCloseTo(-30, 0);
  });

  it('falls back towards a broken end in courses, toothed by quarter bricks', () => {
    // 56.25 mm to courses of 75: BS EN 771-1 and BS 4729 sizes, from memory.
    const { body } = grown(wall, free, { broken: true, piers: false });
    const plan = setOutWall(
      free,
      { masonry: 'brick', gateway: 'none', piers: false, broken: true },
      randomFrom(1),
    );
    const { minX, maxX } = regionBounds(body);
    const low = Math.max(topAt(body, minX + 3), topAt(body, maxX - 3));
    const high = Math.min(topAt(body, minX + 3), topAt(body, maxX - 3));
    expect(high).toBeLessThan(-28);
    expect(low).toBeGreaterThan(-12);
    // The broken end is all level beds and plumb ends, on whole courses.
    const levels = new Set<number>();
    const c = body.contours[0];
    for (let i = 0; i < c.length; i += 8) {
      if (Math.abs(c[i + 1] - c[i + 7]) < 1e-6 && c[i + 1] < -1 && c[i + 1] > -24) {
        levels.add(c[i + 1]);
      }
    }
    expect(levels.size).toBeGreaterThan(3);
    for (const y of levels) {
      const courses = -y / plan.course;
      expect(Math.abs(courses - Math.round(courses))).toBeLessThan(1e-6);
    }
  });

  it('is breached in the middle where both ends are held', () => {
    const plot = plotAt('sill', { width: 160, height: 30 });
    const area = (broken: boolean) =>
      regionArea(intersect(grown(wall, plot, { broken }).body, rectangle(-80, -40, 160, 40)));
    expect(area(true)).toBeLessThan(0.95 * area(false));
    expect(topAt(grown(wall, plot, { broken: true }).body, 79)).toBeLessThan(-15);
  });

  it('draws larger stones than bricks, and more with more coverage', () => {
    const count = (given: Record<string, string | number>) =>
      grown(wall, free, given).scores.length;
    expect(count({ masonry: 'brick', coverage: 1 })).not.toBe(
      count({ masonry: 'stone', coverage: 1 }),
    );
    expect(count({ coverage: 0.9 })).toBeGreaterThan(count({ coverage: 0.2 }) + 15);
  });

  it('presses its dressed stones on a backdrop', () => {
    expect(grown(wall, plotWith('none')).reliefs.length).toBe(1);
    expect(grown(wall, plotWith('rectangle')).reliefs).toEqual([]);
  });
});
