import { describe, expect, it } from 'vitest';
import { intersect } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import { type BedValues, tuftsOf } from '../../src/scenery/flowers/bed.js';
import { petalAngles, petalCount } from '../../src/scenery/flowers/daisy.js';
import { HEADS } from '../../src/scenery/flowers/head.js';
import { stemLeaves } from '../../src/scenery/flowers/leaves.js';
import { floret, floretsWithin, GOLDEN_DEG, scaleFor } from '../../src/scenery/flowers/spiral.js';
import { flowers } from '../../src/scenery/flowers.js';
import { lengthOf } from '../../src/scenery/grass/arc.js';
import { randomFrom } from '../../src/scenery/random.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { cardWith, grown, plotWith, sillPlot } from './plots.js';
import { expectSeeded } from './standing.js';

const bed = (given: Partial<BedValues>, seed = 1, plot = plotWith('rectangle')) =>
  tuftsOf(plot, { kind: 'daisy', bloom: 0.6, sway: 0, ...given }, randomFrom(seed, 'bed'));

describe('flowers', () => {
  it('are fit to cut whatever is drawn', () => {
    eachDraw(flowers, 15, expectFitToCut);
  }, 900000);

  it('draw the same bytes for one seed and others for another', () => {
    expectSeeded(flowers, plotWith('rectangle'));
  });

  it.each([...HEADS, 'mixed'] as const)('are one piece with any window: %s', (kind) => {
    for (const window of ['arch', 'pointed', 'circle', 'rounded'] as const) {
      const plot = plotWith(window, { height: 34, width: 70 });
      expect(components(cardWith(plot, grown(flowers, plot, { kind })))).toHaveLength(1);
    }
  });

  it('open more heads the fuller they bloom', () => {
    const count = (bloom: number) =>
      [1, 2, 3, 4].flatMap((seed) => bed({ bloom }, seed).flatMap((t) => t.stems)).length;
    expect(count(1)).toBeGreaterThan(1.3 * count(0));
  });

  it('bear more leaves when leafy', () => {
    const leaf = (leafy: number) => {
      const { parts } = grown(flowers, sillPlot({ height: 40 }), { leafy, kind: 'daisy' });
      return regionArea(parts?.leaf ?? { contours: [] });
    };
    expect(leaf(1)).toBeGreaterThan(1.15 * leaf(0));
  });

  it('lean with the sway', () => {
    const drift = (sway: number) =>
      bed({ sway })
        .flatMap((t) => t.stems.map(({ arc }) => arc.to.x - arc.from.x))
        .reduce((a, b) => a + b, 0);
    expect(drift(20)).toBeGreaterThan(drift(0) + 5);
    expect(drift(-20)).toBeLessThan(drift(0) - 5);
  });

  it('set their leaves by turns or in pairs', () => {
    const plot = sillPlot({ height: 60 });
    const [stem] = bed({}, 1, plot)[0].stems;
    const spread = (kind: 'alternate' | 'opposite') =>
      stemLeaves(stem, plot, 1, kind, randomFrom(3)).map(({ rib }) => {
        const c = rib.cubics;
        return { side: Math.sign(c[c.length - 2] - c[0]), y: c[1] };
      });
    const turns = spread('alternate');
    const pairs = spread('opposite');
    expect(turns.length).toBeGreaterThan(2);
    expect(pairs.length).toBe(turns.length);
    for (let i = 1; i < turns.length; i++) expect(turns[i].side).toBe(-turns[i - 1].side);
    for (let i = 0; i < pairs.length; i += 2) {
      expect(pairs[i].side).toBe(-pairs[i + 1].side);
      expect(Math.abs(pairs[i].y - pairs[i + 1].y)).toBeLessThan(2.5);
    }
  });

  it('name their parts, blossom over leaf', () => {
    const { parts, body } = grown(flowers, sillPlot({ height: 30 }), { kind: 'tulip' });
    const blossom = parts?.blossom ?? { contours: [] };
    expect(regionArea(blossom)).toBeGreaterThan(20);
    expect(regionArea(intersect(blossom, body))).toBeCloseTo(regionArea(blossom), 1);
    expect(regionBounds(blossom).minY).toBeCloseTo(regionBounds(body).minY, 0);
  });

  // Common practice, no source: no head sways on a stem longer than 15 times its width.
  it('stand on stems that hold their heads', () => {
    for (const kind of HEADS) {
      for (const height of [10, 30, 70, 110]) {
        for (const smallestWeb of [1, 1.5, 3]) {
          const plot = sillPlot({ height, smallestWeb });
          for (const { arc, widthMm } of bed({ kind }, 2, plot).flatMap((t) => t.stems)) {
            expect(lengthOf(arc) / widthMm).toBeLessThanOrEqual(15);
            expect(widthMm).toBeGreaterThan(smallestWeb);
          }
        }
      }
    }
  });

  it('stand at uneven heights in each tuft', () => {
    for (const { stems } of bed({ bloom: 1 }, 5, plotWith('rectangle', { height: 60 }))) {
      const tops = stems.map((s) => s.length - s.arc.to.y).sort((a, b) => a - b);
      for (let i = 1; i < tops.length; i++) expect(tops[i] - tops[i - 1]).toBeGreaterThan(0.5);
    }
  });
});

// H. Vogel, A better way to construct the sunflower head, Mathematical Biosciences 44 (1979).
describe('the golden angle', () => {
  it('is 137.507764 degrees', () => {
    expect(GOLDEN_DEG).toBeCloseTo(137.507764, 6);
  });

  it('sets florets on a spiral of radius c sqrt n', () => {
    const table = [
      [-0.737369, 0.67549],
      [0.123639, -1.408799],
      [1.053847, 1.374557],
      [-1.969427, -0.348364],
    ];
    table.forEach(([x, y], i) => {
      expect(floret(i + 1, 1).x).toBeCloseTo(x, 6);
      expect(floret(i + 1, 1).y).toBeCloseTo(y, 6);
    });
  });

  it('keeps the nearest florets, numbers 1 and 4, 1.601950 c apart', () => {
    expect(scaleFor(1)).toBeCloseTo(0.624239, 6);
    const list = floretsWithin(22, 1.60195);
    expect(list.length).toBeGreaterThan(400);
    let least = Infinity;
    list.forEach((p, i) => {
      for (const q of list.slice(i + 1)) least = Math.min(least, Math.hypot(p.x - q.x, p.y - q.y));
    });
    expect(least).toBeCloseTo(1.60195, 5);
    expect(Math.hypot(list[0].x - list[3].x, list[0].y - list[3].y)).toBeCloseTo(least, 9);
  });

  it('spreads a Fibonacci number of petals with two gaps only, in the golden ratio', () => {
    for (const count of [5, 8, 13]) {
      const at = petalAngles(count).sort((a, b) => a - b);
      const gaps = at.map((a, i) => (i + 1 < count ? at[i + 1] : at[0] + 360) - a);
      const [wide, narrow] = [Math.max(...gaps), Math.min(...gaps)];
      expect(wide / narrow).toBeCloseTo((1 + Math.sqrt(5)) / 2, 6);
      for (const g of gaps) expect(Math.min(wide - g, g - narrow)).toBeLessThan(1e-6);
    }
  });

  it('gives a larger, finer daisy more petals', () => {
    const count = (radius: number, web: number, fineness = 0.5) =>
      petalCount(radius, { smallestWeb: web, smallestHole: web, fineness });
    expect([count(1, 1), count(2.5, 1), count(4, 1), count(8, 1)]).toEqual([0, 5, 8, 13]);
    expect(count(5, 3)).toBeLessThan(count(5, 1));
    expect(count(3, 1, 0)).toBeLessThan(count(3, 1, 1));
  });
});
