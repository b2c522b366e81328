import { describe, expect, it } from 'vitest';
import { intersect, subtract } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { ARCHES, profileOf } from '../../src/scenery/bridge/profile.js';
import { bridge } from '../../src/scenery/bridge.js';
import { randomFrom } from '../../src/scenery/random.js';
import { grown, plotWith } from './plots.js';
import { type Case, itStandsSoundly, shareInPlace } from './standing.js';

const CASES: Case[] = [
  { plot: { width: 96, height: 40 } },
  { plot: { width: 96, height: 42 }, given: { arch: 'semicircular', masonry: 'brick', hump: 1 } },
  { plot: { width: 84, height: 34 }, given: { arch: 'elliptical', towpath: 'right' } },
  { plot: { width: 70, height: 28 }, given: { span: 0.7, hump: 0, towpath: 'none' } },
];

describe('bridge', () => {
  itStandsSoundly(bridge, CASES, 1.2);

  it('draws a sibling when a little larger', () => {
    const one = grown(bridge, plotWith('rectangle', { width: 80, height: 36 }));
    const two = grown(bridge, plotWith('rectangle', { width: 80.8, height: 36.4 }));
    expect(shareInPlace(one, two, 1.2)).toBeGreaterThan(0.75);
  });

  it('springs a segmental arch on its true circle', () => {
    // CRC Standard Mathematical Tables (from memory), circular segment: r = h/2 + c^2 / (8 h).
    const profile = profileOf(plotWith('rectangle'), 'segmental', 0.5, 0.5, randomFrom(1));
    const { soffit, span, middle } = profile;
    const crown = Math.min(...soffit.map((p) => p.y));
    const rise = soffit[0].y - crown;
    const r = rise / 2 + span ** 2 / (8 * rise);
    for (const p of soffit) expect(Math.hypot(p.x - middle, p.y - crown - r)).toBeCloseTo(r, 6);
  });

  it('is open to the water under each form of arch, wider with the span', () => {
    for (const arch of ARCHES) {
      const open = (span: number) => {
        const { holes } = grown(bridge, plotWith('rectangle'), { arch, span, towpath: 'none' });
        expect(holes.contours.length).toBe(1);
        expect(regionBounds(holes).maxY).toBeCloseTo(0, 3);
        return regionArea(holes);
      };
      expect(open(0.4)).toBeGreaterThan(open(0.3) * 1.15);
    }
  });

  it('leaves a towpath on the side that is asked for', () => {
    const foot = (towpath: string, x: number) => {
      const { holes } = grown(bridge, plotWith('rectangle'), { towpath });
      return regionArea(intersect(holes, rectangle(x - 1, -1.5, 2, 1)));
    };
    const [left, right] = [-18, 18];
    expect([foot('left', left), foot('right', right)]).toEqual([0, 0]);
    expect(foot('left', right)).toBeCloseTo(2, 1);
    expect(foot('right', left)).toBeCloseTo(2, 1);
    expect(foot('none', left)).toBeCloseTo(2, 1);
  });

  it('rises over the arch with its hump', () => {
    const ends = (hump: number) => {
      const { body } = grown(bridge, plotWith('rectangle'), { hump });
      return regionBounds(intersect(body, rectangle(-40, -45, 4, 45))).minY;
    };
    expect(ends(0)).toBeLessThan(-39);
    expect(ends(1)).toBeGreaterThan(-32);
  });

  it('presses what stands proud on a backdrop, and nothing on a panel with a window', () => {
    expect(grown(bridge, plotWith('rectangle')).reliefs).toEqual([]);
    const growth = grown(bridge, plotWith('none'));
    expect(growth.reliefs.length).toBe(1);
    const [{ region, side }] = growth.reliefs;
    expect(side).toBe('raised');
    expect(regionArea(region)).toBeGreaterThan(300);
    expect(regionArea(subtract(region, [growth.body]))).toBeLessThan(0.1);
  });
});
