import { describe, expect, it } from 'vitest';
import { intersect, subtract, union } from '../../src/geometry/boolean/boolean.js';
import { distanceTo } from '../../src/geometry/components.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { randomFrom } from '../../src/scenery/random.js';
import { type Branch, branchTable, type Joint, wood } from '../../src/scenery/tree/branches.js';
import { HABITS } from '../../src/scenery/tree/habits.js';
import { willowPlan } from '../../src/scenery/tree/willow.js';
import { HABIT_NAMES, plotOf, valuesOf } from './tree-plots.js';

/** A fork 10 mm up whose branches end 40 mm apart, 30 mm above it. */
const fork = (loads: readonly number[]): Joint => ({
  x: 0,
  y: -10,
  load: 0,
  way: [],
  children: loads.map((load, i) => ({ x: 40 * i - 20, y: -40, load, way: [], children: [] })),
});

/** Thicknesses of the branches that a trunk 10 mm thick forks into. */
const forked = (loads: readonly number[], exponent: number): number[] =>
  branchTable({ x: 0, y: 0 }, fork(loads), 10, exponent, 0.1)
    .slice(1)
    .map((b) => b.thickness);

const childrenOf = (table: readonly Branch[], id: number): Branch[] =>
  table.filter((b) => b.parent === id);

describe("Leonardo's rule, d^D = sum of d_i^D", () => {
  // C. Eloy, Leonardo's rule, self-similarity, and wind-induced stresses in trees, Phys. Rev. Lett.
  // 107, 258101 (2011): D = 2, measured 1.8 < D < 2.3. Values worked out from the formula.
  it.each([
    { exponent: 1.8, thickness: 6.804 },
    { exponent: 2, thickness: 7.0711 },
    { exponent: 2.3, thickness: 7.3981 },
  ])('forks 10 mm into two equal branches of $thickness mm at D = $exponent', (c) => {
    for (const d of forked([1, 1], c.exponent)) expect(d).toBeCloseTo(c.thickness, 4);
  });

  it('forks 10 mm into three equal branches of 5.7735 mm at D = 2', () => {
    for (const d of forked([1, 1, 1], 2)) expect(d).toBeCloseTo(5.7735, 4);
  });

  it('joins 8 mm and 6 mm to 10 mm at D = 2', () => {
    expect(forked([64, 36], 2)).toEqual([8, 6]);
  });

  it.each(HABIT_NAMES)('holds at every fork of a %s that the smallest web leaves free', (habit) => {
    let forks = 0;
    for (const exponent of [1.8, 2, 2.3]) {
      const table = HABITS[habit].branches(
        plotOf({ smallestWeb: 0.2 }),
        valuesOf({ habit, exponent }),
        randomFrom(3, habit),
      );
      for (const branch of table) {
        const children = childrenOf(table, branch.id);
        if (children.length === 0 || [branch, ...children].some((b) => b.held)) continue;
        const sum = children.reduce((total, b) => total + b.thickness ** exponent, 0);
        expect(sum / branch.thickness ** exponent).toBeCloseTo(1, 9);
        forks++;
      }
    }
    expect(forks).toBeGreaterThan(12);
  });

  it.each(HABIT_NAMES)('thins no branch of a %s below the smallest web', (habit) => {
    const table = HABITS[habit].branches(plotOf(), valuesOf({ habit }), randomFrom(4, habit));
    for (const b of table) expect(b.thickness).toBeGreaterThanOrEqual(plotOf().smallestWeb);
    expect(table.some((b) => b.held)).toBe(true);
  });
});

describe('wood', () => {
  it('is drawn as thick as the table says', () => {
    const table = branchTable({ x: 0, y: 0 }, fork([64, 36]), 10, 2, 0.1);
    const drawn = union([wood(table)]);
    for (const { points, thickness } of table.slice(1)) {
      // The edge is half a thickness from a branch's end, which is round.
      const { distanceMm } = distanceTo(drawn, points[points.length - 1])!;
      expect(2 * distanceMm).toBeCloseTo(thickness, 2);
    }
  });

  it.each(HABIT_NAMES)('stands in the body of a %s, trunk and boughs', (habit) => {
    const plot = plotOf();
    const values = valuesOf({ habit });
    const { body, holes } = HABITS[habit].draw(plot, values, randomFrom(5, habit));
    const card = subtract(body, [holes]);
    const table = HABITS[habit].branches(plot, values, randomFrom(5, habit));
    const trunk = table[0];
    const y = 0.6 * trunk.points[trunk.points.length - 1].y;
    const { minX, maxX } = regionBounds(intersect(card, rectangle(-60, y, 120, 0.1)));
    expect(maxX - minX).toBeGreaterThan(0.85 * trunk.thickness);
  });
});

describe('a willow', () => {
  const plans = Array.from({ length: 12 }, (_, seed) =>
    willowPlan(plotOf({ width: 76, height: 84 }), valuesOf({ habit: 'willow' }), randomFrom(seed)),
  );

  // The figures below are common practice, no source.
  it('leans 5 to 10 degrees', () => {
    for (const { foot, first } of plans) {
      const lean = Math.atan2(Math.abs(first.x - foot.x), Math.abs(first.y)) * (180 / Math.PI);
      expect(lean).toBeGreaterThan(4.9);
      expect(lean).toBeLessThan(10.1);
    }
  });

  it('hangs in 3 to 5 locks whose withies fall within 10 degrees of plumb', () => {
    for (const { locks } of plans) {
      expect(locks.length).toBeGreaterThanOrEqual(3);
      expect(locks.length).toBeLessThanOrEqual(5);
      for (const { path } of locks.flat()) {
        const [a, b] = path.slice(-2);
        expect(Math.abs(b.x - a.x)).toBeLessThan(Math.tan(Math.PI / 18) * (b.y - a.y));
      }
    }
  });

  it('has an uneven hem', () => {
    for (const { locks } of plans) {
      const uneven = locks.map((lock) => {
        const ends = lock.map(({ path }) => path[path.length - 1].y);
        return (Math.max(...ends) - Math.min(...ends)) / 84;
      });
      expect(Math.max(...uneven)).toBeGreaterThan(0.1);
      expect(Math.max(...uneven)).toBeLessThan(0.3);
    }
  });
});
