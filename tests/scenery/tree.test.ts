import { describe, expect, it } from 'vitest';
import { intersect, subtract, xor } from '../../src/geometry/boolean/boolean.js';
import { components, containsPoint, distanceTo } from '../../src/geometry/components.js';
import { contourArea, flatten, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { offset } from '../../src/geometry/offset/offset.js';
import { regionPathData } from '../../src/geometry/path/path-data.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { moveRegion, scaling } from '../../src/geometry/transform.js';
import type { Region } from '../../src/geometry/types.js';
import { narrowSlots, narrowWebs, smallHoles } from '../../src/geometry/width/webs.js';
import type { Growth, Plot } from '../../src/scenery/family.js';
import { randomFrom } from '../../src/scenery/random.js';
import type { TreeValues } from '../../src/scenery/tree/parameters.js';
import { tree } from '../../src/scenery/tree.js';
import { expectDrawFitToCut } from './each-draw.js';
import { cardWith, plotWith } from './plots.js';
import { HABIT_NAMES, KNIFE, LASER, plotOf, valuesOf } from './tree-plots.js';

/** Drawing and measuring dozens of trees takes a while on a busy machine. */
const SLOW = 240_000;

const grow = (plot: Plot, values: Partial<TreeValues>, seed: number): Growth =>
  tree.grow(plot, valuesOf(values), randomFrom('tree', seed));

const cardOf = (g: Growth): Region => subtract(g.body, [g.holes]);

/** Sky in the crown, its bays filled, as a share: what is cut out of the crown's outline. */
function skyShare(card: Region, plot: Plot, trunk: number): number {
  const { minX, minY, maxX } = regionBounds(card);
  const foot = -trunk * plot.height;
  const crown = intersect(card, rectangle(minX - 1, minY - 1, maxX - minX + 2, foot - minY + 1));
  const bay = 0.07 * Math.sqrt(plot.width * plot.height);
  const closed = offset(offset(crown, bay), -bay);
  const outline = { contours: closed.contours.filter((c) => contourArea(c) > 0) };
  return 1 - regionArea(crown) / regionArea(outline);
}

/** Ten trees of a habit, by turns for knife and laser, of several sizes, leans and depths. */
const stand = (habit: TreeValues['habit']) =>
  Array.from({ length: 10 }, (_, seed) => {
    const limits = seed % 2 === 0 ? KNIFE : LASER;
    const size = 0.8 + 0.06 * seed;
    const plot = plotOf({ ...limits, width: 62 * size, height: 86 * size, fineness: seed / 9 });
    const values = { habit, lean: seed % 3 === 2 ? 8 : 0, light: seed % 3 === 1 ? 0.16 : 0.2 };
    const growth = grow(plot, values, seed);
    return { seed, plot, values, growth, card: cardOf(growth) };
  });

describe('a tree on a jamb', () => {
  it('has its foot well behind it, however small it is', () => {
    expectDrawFitToCut(tree, 600);
  });
});

describe.each(HABIT_NAMES)('%s', (habit) => {
  const trees = stand(habit);

  it(
    'is one piece of card from its root to its tips, with nothing that drops out',
    () => {
      for (const { card, growth, plot, seed } of trees) {
        expect(components(card), `seed ${seed}`).toHaveLength(1);
        expect(growth.body.contours).toHaveLength(1);
        expect(growth.holes.contours.every((c) => contourArea(c) > 0)).toBe(true);
        // Holes lie within the body, so that cutting them takes exactly their area.
        const left = regionArea(growth.body) - regionArea(growth.holes);
        expect(regionArea(card)).toBeCloseTo(left, 2);
        expect(regionBounds(growth.body).maxY).toBeCloseTo(plot.root, 3);
      }
    },
    SLOW,
  );

  it(
    'has no web below the smallest and no gap or hole below the smallest hole',
    () => {
      for (const { card, plot, seed } of trees) {
        const webs = narrowWebs(card, plot.smallestWeb);
        const slots = narrowSlots(card, plot.smallestHole);
        const holes = smallHoles(card, plot.smallestHole);
        expect({ seed, webs, slots, holes }).toEqual({ seed, webs: [], slots: [], holes: [] });
      }
    },
    SLOW,
  );

  it(
    'keeps to its plot but for leaves a tenth of the width long',
    () => {
      for (const { growth, plot, seed } of trees) {
        const { minX, maxX, minY } = regionBounds(growth.body);
        expect(-minX, `seed ${seed}`).toBeLessThan(0.6 * plot.width);
        expect(maxX, `seed ${seed}`).toBeLessThan(0.6 * plot.width);
        expect(-minY, `seed ${seed}`).toBeLessThan(1.05 * plot.height);
        expect(-minY, `seed ${seed}`).toBeGreaterThan(0.92 * plot.height);
      }
    },
    SLOW,
  );

  it(
    'lets about as much light through its crown as it is asked to',
    () => {
      const misses = trees.map(
        ({ card, plot, values }) => skyShare(card, plot, 0.25) - values.light,
      );
      for (const miss of misses) expect(Math.abs(miss)).toBeLessThan(0.1);
      const mean = misses.reduce((a, b) => a + b, 0) / misses.length;
      expect(Math.abs(mean)).toBeLessThan(0.05);
    },
    SLOW,
  );

  it(
    'scores only what lies well inside the card, and little of it',
    () => {
      for (const { card, growth } of trees) {
        expect(growth.scores.length).toBeGreaterThan(0);
        expect(growth.scores.length).toBeLessThan(45);
        for (const { cubics } of growth.scores) {
          for (const p of flatten(cubics, 0.05)) {
            expect(containsPoint(card, p)).toBe(true);
            expect(distanceTo(card, p)!.distanceMm).toBeGreaterThan(1.3);
          }
        }
      }
    },
    SLOW,
  );

  it('is the same to the byte when it is drawn again, and another from another seed', () => {
    const [first, second] = trees;
    const path = (g: Growth): string => regionPathData(g.body) + regionPathData(g.holes);
    expect(path(grow(first.plot, first.values, first.seed))).toBe(path(first.growth));
    expect(path(grow(first.plot, first.values, second.seed))).not.toBe(path(first.growth));
  });

  it(
    'is kin to itself at another size: 5 % larger, it differs far less than a stranger',
    () => {
      for (const { plot, values, seed, card } of trees.slice(0, 3)) {
        const { width, height, root } = plot;
        const larger = { ...plot, width: 1.05 * width, height: 1.05 * height, root: 1.05 * root };
        const kin = moveRegion(cardOf(grow(larger, values, seed)), scaling(1 / 1.05));
        const stranger = cardOf(grow(plot, values, seed + 100));
        expect(regionArea(xor(card, kin)) / regionArea(card)).toBeLessThan(0.15);
        expect(regionArea(xor(card, stranger)) / regionArea(card)).toBeGreaterThan(0.25);
      }
    },
    SLOW,
  );

  it(
    'opens its crown when more light is asked for',
    () => {
      const plot = plotOf(LASER);
      const sky = (light: number): number =>
        [1, 2, 3].reduce(
          (sum, seed) => sum + skyShare(cardOf(grow(plot, { habit, light }, seed)), plot, 0.25),
          0,
        ) / 3;
      expect(sky(0.26)).toBeGreaterThan(sky(0.12) + 0.03);
    },
    SLOW,
  );
});

describe('tree', () => {
  it.each(['rectangle', 'arch', 'circle'] as const)(
    'is sound where it meets the frame of a window: %s',
    (window) => {
      for (const habit of HABIT_NAMES) {
        for (const side of ['sill', 'left'] as const) {
          const plot = plotWith(window, { side, width: 70, height: 90, ...KNIFE });
          const panel = cardWith(plot, grow(plot, { habit }, 6));
          expect(components(panel)).toHaveLength(1);
          expect(narrowWebs(panel, plot.smallestWeb)).toEqual([]);
          expect(smallHoles(panel, plot.smallestHole)).toEqual([]);
        }
      }
    },
    SLOW,
  );

  it('ends a conifer in a leader that stands alone', () => {
    for (let seed = 0; seed < 4; seed++) {
      const plot = plotOf({ width: 56 });
      const card = cardOf(grow(plot, { habit: 'conifer' }, seed));
      const top = intersect(card, rectangle(-60, -plot.height, 120, 0.05 * plot.height));
      const { minX, maxX } = regionBounds(top);
      expect(components(top)).toHaveLength(1);
      expect(maxX - minX).toBeLessThan(2 * plot.smallestWeb);
    }
  });

  it('leans the way it is told', () => {
    const middle = (lean: number): number => {
      const { body } = grow(plotOf(), { habit: 'broadleaf', lean }, 2);
      const crown = regionBounds(intersect(body, rectangle(-60, -120, 120, 80)));
      return (crown.minX + crown.maxX) / 2;
    };
    expect(middle(12)).toBeGreaterThan(middle(0) + 2);
    expect(middle(-12)).toBeLessThan(middle(0) - 2);
  });

  it('has a stouter trunk for more girth, and a longer one for more trunk', () => {
    const at = (values: Partial<TreeValues>, share: number): number => {
      const plot = plotOf();
      const y = -share * plot.height;
      const { minX, maxX } = regionBounds(
        intersect(cardOf(grow(plot, values, 3)), rectangle(-60, y, 120, 0.1)),
      );
      return maxX - minX;
    };
    expect(at({ girth: 1.5 }, 0.15)).toBeGreaterThan(1.3 * at({ girth: 1 }, 0.15));
    // At this height the longer trunk is still bare where the shorter one bears its crown.
    expect(at({ trunk: 0.45 }, 0.33)).toBeLessThan(0.5 * at({ trunk: 0.2 }, 0.33));
  });

  it.each([
    { width: 40, height: 110 },
    { width: 90, height: 60 },
    { width: 34, height: 40 },
  ])(
    'is sound at $width x $height mm too',
    (size) => {
      for (const habit of HABIT_NAMES) {
        const plot = plotOf(size);
        const card = cardOf(grow(plot, { habit }, 5));
        expect(components(card)).toHaveLength(1);
        expect(narrowWebs(card, plot.smallestWeb)).toEqual([]);
      }
    },
    SLOW,
  );
});
