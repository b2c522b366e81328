import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import type { Side } from '../../src/scene/parameter.js';
import { strandsOf } from '../../src/scenery/ivy/strands.js';
import { ivy } from '../../src/scenery/ivy.js';
import { randomFrom } from '../../src/scenery/random.js';
import { plotAt } from './draws.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { grown, valuesOf } from './plots.js';
import { expectSeeded } from './standing.js';

const SLOW = 240_000;
const HEAD = plotAt('head', { width: 140, height: 40, smallestWeb: 1, smallestHole: 1 });

/** Turned to its side, the plot of a jamb is that of a sill. */
const onSill = { ...ivy, sides: ['sill', 'head'] as const };
const onJamb = (side: Side) => ({
  ...ivy,
  sides: ['sill'] as const,
  grow: (...[plot, values, random]: Parameters<typeof ivy.grow>) =>
    ivy.grow({ ...plot, side }, values, random),
});

type IvyGiven = Parameters<typeof ivy.grow>[1];
const strands = (given = {}, plot = HEAD) =>
  strandsOf(plot, valuesOf(ivy, given) as unknown as IvyGiven, 9, randomFrom(5));

describe('ivy', () => {
  it(
    'is fit to cut at any size',
    () => {
      eachDraw(onSill, 30, expectFitToCut);
      for (const side of ['left', 'right'] as const) eachDraw(onJamb(side), 10, expectFitToCut);
    },
    SLOW,
  );

  it('draws the same bytes for one seed', () => expectSeeded(ivy, HEAD), SLOW);

  it('hangs plumb from a head and turns down along a jamb', () => {
    for (const { path } of strands({ strands: 1 })) {
      const [a, b] = [path[0], path[path.length - 1]];
      expect(Math.abs(b.x - a.x)).toBeLessThan(0.3 * Math.abs(b.y - a.y));
    }
    for (const side of ['left', 'right'] as const) {
      for (const { path } of strands({ strands: 1 }, { ...HEAD, side })) {
        const drift = path[path.length - 1].x - path[0].x;
        // In the plot of a left jamb down is to the right, in that of a right one to the left.
        expect(Math.sign(drift)).toBe(side === 'left' ? 1 : -1);
      }
    }
  });

  it('trails as many strands as it is told, the second of a lock tied to the first', () => {
    expect(strands({ strands: 0 })).toEqual([]);
    expect(strands({ strands: 1 }).length).toBeGreaterThan(strands({ strands: 0.3 }).length);
    expect(strands({ strands: 1, uneven: 0 }).some(({ ties }) => ties.length > 0)).toBe(true);
  });

  it('has strands of one length or of many', () => {
    const spread = (uneven: number) => {
      const tips = strands({ strands: 1, uneven })
        .filter(({ ties }) => ties.length === 0)
        .map(({ path }) => path[path.length - 1].y);
      return Math.max(...tips) - Math.min(...tips);
    };
    expect(spread(1)).toBeGreaterThan(spread(0));
  });

  it('has a band as deep as it is told', () => {
    const covered = (band: number) => {
      const { body, holes } = grown(ivy, HEAD, { band, strands: 0 }, 2);
      return regionArea(intersect(subtract(body, [holes]), rectangle(-60, -40, 120, 40)));
    };
    expect(covered(0.6)).toBeGreaterThan(1.5 * covered(0.2));
  });

  it('draws ivy and vine leaves apart, and keeps to its ends', () => {
    const areas = (['ivy', 'vine'] as const).map((leaf) =>
      regionArea(grown(ivy, HEAD, { leaf }, 2).body).toFixed(2),
    );
    expect(areas[0]).not.toBe(areas[1]);
    const { minX, maxX } = regionBounds(grown(ivy, HEAD, {}, 2).body);
    expect(minX).toBeGreaterThan(-70.5);
    expect(maxX).toBeLessThan(70.5);
  });
});
