import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionArea } from '../../src/geometry/measure.js';
import { clumpsOf, type Habit } from '../../src/scenery/fern/clump.js';
import { breadthAt, KINDS } from '../../src/scenery/fern/frond.js';
import { fern } from '../../src/scenery/fern.js';
import { randomFrom } from '../../src/scenery/random.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, grown, plotWith, sillPlot } from './plots.js';
import { expectSeeded } from './standing.js';

const clumps = (given: Partial<Habit>, plot = sillPlot({ height: 60 })) =>
  clumpsOf(plot, { kind: 'feather', arch: 0.5, full: 0.5, croziers: 1, ...given }, randomFrom(2));

describe('fern', () => {
  it('is fit to cut whatever is drawn', () => {
    eachDraw(fern, 8, expectFitToCut);
  }, 900000);

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(fern, plotWith('rectangle'));
  });

  it.each(KINDS)('is one piece with any window: %s', (kind) => {
    for (const window of ['arch', 'pointed', 'circle', 'rounded'] as const) {
      const plot = plotWith(window, { height: 40, width: 70 });
      expect(components(cardWith(plot, grown(fern, plot, { kind })))).toHaveLength(1);
    }
  });

  it('hangs its tips the more it arches', () => {
    const hang = (arch: number) =>
      clumps({ arch })
        .flatMap((c) => c.fronds.map(({ arc }) => arc.to.y - arc.control.y))
        .reduce((a, b) => a + b, 0);
    expect(hang(1)).toBeGreaterThan(hang(0) + 20);
  });

  it('has more fronds when full', () => {
    const count = (full: number) => clumps({ full }).flatMap((c) => c.fronds).length;
    expect(count(1)).toBeGreaterThanOrEqual(2 * count(0));
  });

  it('unrolls as many croziers as asked for, where their coils can be cut', () => {
    for (const croziers of [0, 1, 2, 3]) {
      for (const clump of clumps({ croziers })) expect(clump.croziers).toHaveLength(croziers);
    }
    const low = sillPlot({ height: 12, smallestWeb: 1.5, smallestHole: 2 });
    for (const clump of clumps({ croziers: 2 }, low)) expect(clump.croziers).toHaveLength(0);
    const young = (croziers: number) =>
      regionArea(
        grown(fern, sillPlot({ height: 60 }), { croziers }).parts?.crozier ?? { contours: [] },
      );
    expect(young(0)).toBe(0);
    expect(young(2)).toBeGreaterThan(20);
  });

  // Common practice, no source: the pinnae of a frond taper to its tip.
  it('tapers to the tip', () => {
    for (const kind of KINDS) {
      const late = [0.5, 0.6, 0.7, 0.8, 0.9, 1].map((t) => breadthAt(kind, t));
      for (let i = 1; i < late.length; i++) expect(late[i]).toBeLessThan(late[i - 1]);
      expect(late[late.length - 1]).toBe(0);
    }
    expect(breadthAt('bracken', 0)).toBeGreaterThan(1.5 * breadthAt('feather', 0));
  });

  it('is drawn as three kinds that differ', () => {
    const card = KINDS.map((kind) => grown(fern, sillPlot({ height: 50 }), { kind }).body);
    for (const [a, b] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ]) {
      expect(regionArea(subtract(card[a], [card[b]]))).toBeGreaterThan(60);
    }
  });
});
