import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { containsPoint } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { holdOf } from '../../src/scenery/climber/hold.js';
import { climber } from '../../src/scenery/climber.js';
import { plotAt } from './draws.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const SLOW = 240_000;
const LASER = { smallestWeb: 1, smallestHole: 1 };
const JAMB = plotAt('left', { width: 36, height: 90, ...LASER });

describe('a climber', () => {
  it('is fit to cut at any size', () => eachDraw(climber, 50, expectFitToCut), SLOW);

  it('draws the same bytes for one seed', () => expectSeeded(climber, JAMB), SLOW);

  it(
    'is held by the jamb in many places',
    () => {
      for (let seed = 0; seed < 4; seed++) {
        const { body, holes } = grown(climber, JAMB, {}, seed);
        const own = subtract(body, [holes]);
        // A sliver of the light beside the edge: what card is in it is held by the jamb.
        for (const from of [0, 22, 44]) {
          const held = intersect(own, rectangle(0.05, -from - 22, 0.1, 22));
          expect(regionArea(held) / 0.1, `seed ${seed}, ${from} mm up`).toBeGreaterThan(2);
        }
      }
    },
    SLOW,
  );

  it('follows the edge of a round window up', () => {
    const plot = plotWith('circle', { side: 'left', width: 30, height: 60 });
    const hold = holdOf(plot);
    for (const f of [0.2, 0.5, 0.8]) {
      const inside = hold.at(f * hold.guide.lengthMm, 1);
      const outside = hold.at(f * hold.guide.lengthMm, -1);
      expect(containsPoint(plot.frame.window, inside)).toBe(true);
      expect(containsPoint(plot.frame.window, outside)).toBe(false);
    }
  });

  it('runs along a sill to a jamb within reach, and climbs a post where none is', () => {
    const near = plotWith('rectangle', { width: 96, height: 80 });
    const far = plotWith('rectangle', { width: 40, height: 80 });
    expect(holdOf(near).kind).toBe('edge');
    expect(Math.abs(holdOf(near).at(1000, 0).x)).toBeCloseTo(48, 0);
    expect(holdOf(far).kind).toBe('post');
    const { body } = grown(climber, far, {}, 2);
    const top = intersect(body, rectangle(-60, -80, 120, 10));
    expect(regionArea(top)).toBeGreaterThan(2);
  });

  it('winds off its hold as far as it is told', () => {
    const reach = (winding: number) =>
      regionBounds(grown(climber, JAMB, { winding }, 1).parts!.stem).maxX;
    expect(reach(2)).toBeGreaterThan(reach(0) + 3);
  });

  it('bears as much as it is told, and leaves as thickly', () => {
    const parts = (given: Record<string, number>) => grown(climber, JAMB, given, 4).parts!;
    expect(regionArea(parts({ bearing: 0 }).fruit)).toBe(0);
    expect(regionArea(parts({ bearing: 0.7 }).fruit)).toBeGreaterThan(20);
    const leafy = (leaves: number) => regionArea(parts({ leaves, bearing: 0 }).leaves);
    expect(leafy(1.5)).toBeGreaterThan(1.2 * leafy(0.5));
  });

  it('draws ivy, rose and vine apart', () => {
    const areas = (['ivy', 'rose', 'vine'] as const).map((kind) =>
      regionArea(cardWith(JAMB, grown(climber, JAMB, { kind }, 2))).toFixed(2),
    );
    expect(new Set(areas).size).toBe(3);
  });
});
