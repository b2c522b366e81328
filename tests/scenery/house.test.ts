import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { GABLES, rowOf } from '../../src/scenery/house/plan.js';
import { house } from '../../src/scenery/house.js';
import { randomFrom } from '../../src/scenery/random.js';
import { plotAt } from './draws.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

/** Room for one front, and for a row of them. */
const one = plotAt('sill', { width: 34, height: 60, smallestWeb: 1, smallestHole: 1 });
const row = plotAt('sill', { width: 140, height: 60, smallestWeb: 1, smallestHole: 1 });

describe('house', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(house, 50, expectFitToCut);
  }, 90000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(house, plotWith('rectangle', { width: 60, height: 50 }));
  });

  it('keeps its scores 1.5 mm clear of the cut', () => {
    for (const gable of GABLES) {
      const { body, holes, scores } = grown(house, one, { gable, coverage: 1 });
      expect(scores.length).toBeGreaterThan(20);
      const card = { contours: [...body.contours, ...holes.contours] };
      expect(clearance(scores, card)).toBeGreaterThan(1.48);
    }
  });

  it('stands as one front, or as a row of unlike ones where there is room', () => {
    const fronts = rowOf(row, 'mixed', 3, randomFrom(1));
    expect(fronts.length).toBeGreaterThan(2);
    fronts.slice(1).forEach((f, i) => {
      expect(f.x0).toBeCloseTo(fronts[i].x1, 9);
      expect(f.gable).not.toBe(fronts[i].gable);
      expect(f.top).not.toBe(fronts[i].top);
    });
    expect(rowOf(one, 'mixed', 3, randomFrom(1)).length).toBe(1);
    expect(Math.min(...fronts.map((f) => f.top))).toBeCloseTo(-60, 6);
  });

  it('draws the gable that is asked for', () => {
    // How much of the top fifth is filled, level edges and curved ones tell them apart.
    const shapes = GABLES.filter((g) => g !== 'mixed').map((gable) => {
      const { body } = grown(house, one, { gable }, 3);
      const { minX, maxX } = regionBounds(body);
      return regionArea(intersect(body, rectangle(minX, -60, maxX - minX, 12))) / (maxX - minX);
    });
    const [stepped, curved, pitched, flat] = shapes;
    expect(flat).toBeGreaterThan(11);
    expect(pitched).toBeLessThan(stepped);
    expect(curved).not.toBeCloseTo(stepped, 1);
    const levels = (gable: string) => {
      const [c] = grown(house, one, { gable }, 3).body.contours;
      let count = 0;
      for (let i = 0; i < c.length; i += 8) {
        if (Math.abs(c[i + 1] - c[i + 7]) < 1e-6 && c[i + 1] < -30) count++;
      }
      return count;
    };
    expect(levels('stepped')).toBeGreaterThan(levels('pitched') + 4);
  });

  it('has a row of windows on every storey, cut where it is lit and scored where not', () => {
    const lights = (given: Record<string, number | boolean>) =>
      grown(house, one, { gable: 'flat', ...given }).holes.contours;
    const sills = (storeys: number) =>
      new Set(lights({ storeys }).map((c) => Math.round(regionBounds({ contours: [c] }).maxY)))
        .size;
    expect(sills(4)).toBeGreaterThan(sills(2));
    expect(lights({ lit: true }).length).toBeGreaterThan(5);
    expect(lights({ lit: false })).toEqual([]);
    const scores = (lit: boolean) =>
      grown(house, one, { gable: 'flat', lit, coverage: 0 }).scores.length;
    expect(scores(false)).toBeGreaterThan(10);
  });

  it('makes do with fewer storeys where windows could not be cut', () => {
    const press = plotAt('sill', { width: 30, height: 24, smallestWeb: 3, smallestHole: 3 });
    const [front] = rowOf(press, 'flat', 4, randomFrom(1));
    expect(front.floors.length).toBeLessThan(4);
    const [fine] = rowOf(one, 'flat', 4, randomFrom(1));
    expect(fine.floors.length).toBe(4);
  });

  it('draws more bricks with more coverage', () => {
    const scores = (coverage: number) => grown(house, row, { coverage }).scores.length;
    const bricks = (coverage: number) => scores(coverage) - scores(0);
    expect(bricks(0.2)).toBeGreaterThan(10);
    expect(bricks(0.7)).toBeGreaterThan(1.5 * bricks(0.2));
  });
});
