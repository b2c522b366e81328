import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import type { Point } from '../../src/geometry/types.js';
import type { Plot } from '../../src/scenery/family.js';
import { randomFrom } from '../../src/scenery/random.js';
import { birchPlan, birchPlot } from '../../src/scenery/tree/birch.js';
import { HABITS } from '../../src/scenery/tree/habits.js';
import { palmPlan, palmPlot } from '../../src/scenery/tree/palm.js';
import type { TreeValues } from '../../src/scenery/tree/parameters.js';
import { tree } from '../../src/scenery/tree.js';
import { eachDraw, expectFitToCut } from './each-draw.js';
import { expectSeeded } from './standing.js';
import { LASER, plotOf, valuesOf } from './tree-plots.js';

const SLOW = 240_000;

const NAMES = ['birch', 'poplar', 'palm', 'winter'] as const;

/** The family as a maker has it who asks for this habit alone. */
const only = (habit: TreeValues['habit']) => ({
  ...tree,
  parameters: {
    ...tree.parameters,
    habit: { ...tree.parameters.habit, options: [habit], default: habit },
  },
});

const drawn = (habit: TreeValues['habit'], plot: Plot, seed: number, light = 0.2) =>
  tree.grow(plot, valuesOf({ habit, light }), randomFrom('tree', seed));

const branches = (habit: TreeValues['habit'], plot: Plot, seed: number, values = {}) =>
  HABITS[habit].branches(plot, valuesOf({ habit, ...values }), randomFrom(seed));

describe.each(NAMES)('%s', (habit) => {
  it('is fit to cut at any size', () => eachDraw(only(habit), 13, expectFitToCut), SLOW);

  it('draws the same bytes for one seed', () => expectSeeded(only(habit), plotOf()), SLOW);

  it('parts its card into crown and trunk', () => {
    const { body, holes, parts } = drawn(habit, plotOf(LASER), 2);
    const whole = regionArea(subtract(body, [holes]));
    const { crown, trunk } = parts!;
    expect(regionArea(crown) + regionArea(trunk)).toBeCloseTo(whole, 1);
    expect(regionBounds(trunk).maxY).toBeGreaterThan(7.9);
    expect(regionBounds(crown).minY).toBeLessThan(-60);
  });
});

// C. Eloy, Leonardo's rule, self-similarity, and wind-induced stresses in trees, Phys. Rev. Lett.
// 107, 258101 (2011): d^D = sum of d_i^D, D = 2, measured 1.8 < D < 2.3.
it.each(['birch', 'poplar', 'winter'] as const)("keeps Leonardo's rule in a %s", (habit) => {
  let forks = 0;
  for (const exponent of [1.8, 2, 2.3]) {
    const table = branches(habit, plotOf({ smallestWeb: 0.2 }), 3, { exponent });
    for (const branch of table) {
      const children = table.filter((b) => b.parent === branch.id);
      if (children.length === 0 || [branch, ...children].some((b) => b.held)) continue;
      const sum = children.reduce((total, b) => total + b.thickness ** exponent, 0);
      expect(sum / branch.thickness ** exponent).toBeCloseTo(1, 9);
      forks++;
    }
  }
  expect(forks).toBeGreaterThan(12);
});

describe('a birch', () => {
  it('hangs its locks: every strand ends lower than it turns over', () => {
    for (let seed = 0; seed < 8; seed++) {
      const plot = birchPlot(plotOf());
      const plan = birchPlan(plot, valuesOf({ habit: 'birch' }), randomFrom(seed));
      for (const { clumps } of plan.tufts) {
        expect(clumps[clumps.length - 1].y).toBeGreaterThan(clumps[0].y + 3);
      }
    }
  });

  it('is marked with short dashes across its trunk', () => {
    const { scores, parts } = drawn('birch', plotOf({ ...LASER, width: 90, height: 110 }), 1);
    const { minX, maxX } = regionBounds(parts!.trunk);
    const onTrunk = scores.filter(({ cubics: c }) => c[0] > minX && c[0] < maxX && c[1] > -20);
    expect(onTrunk.length).toBeGreaterThan(2);
    for (const { cubics: c } of onTrunk) {
      const n = c.length;
      expect(Math.abs(c[n - 2] - c[0])).toBeGreaterThan(1.5 * Math.abs(c[n - 1] - c[1]));
    }
  });
});

it('draws a poplar as a narrow flame, widest below its middle', () => {
  for (let seed = 0; seed < 3; seed++) {
    const { body } = drawn('poplar', plotOf(LASER), seed);
    const { minX, maxX, minY } = regionBounds(body);
    expect(maxX - minX).toBeLessThan(0.45 * -minY);
  }
});

describe('a palm', () => {
  const plans = Array.from({ length: 12 }, (_, seed) =>
    palmPlan(palmPlot(plotOf(LASER)), valuesOf({ habit: 'palm' }), randomFrom(seed)),
  );

  it('bears 7 to 11 fronds where there is room', () => {
    const counts = plans.map((p) => p.fronds.length);
    expect(Math.min(...counts)).toBeGreaterThanOrEqual(7);
    expect(Math.max(...counts)).toBeLessThanOrEqual(11);
    expect(new Set(counts).size).toBeGreaterThan(2);
  });

  it('arches its lower fronds: they rise from the heart and end below it', () => {
    for (const { heart, fronds } of plans) {
      const { path } = fronds[0];
      expect(path[1].y).toBeLessThan(heart.y + 1);
      expect(path[path.length - 1].y).toBeGreaterThan(heart.y);
    }
  });

  it('has a curved trunk', () => {
    for (const { trunk } of plans) {
      const [, foot, low, , heart] = trunk.points;
      const straight = foot.x + ((low.y - foot.y) / (heart.y - foot.y)) * (heart.x - foot.x);
      expect(Math.abs(low.x - straight)).toBeGreaterThan(0.2);
    }
  });
});

describe('a bare tree', () => {
  const crosses = (a: Point, b: Point, c: Point, d: Point): boolean => {
    const side = (p: Point, q: Point, r: Point): number =>
      (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    return side(a, b, c) * side(a, b, d) < -1e-9 && side(c, d, a) * side(c, d, b) < -1e-9;
  };

  it('lets no two boughs cross', () => {
    for (let seed = 0; seed < 12; seed++) {
      const table = branches('winter', plotOf(LASER), seed);
      for (const a of table) {
        for (const b of table.slice(a.id + 1)) {
          if (b.parent === a.id || b.parent === a.parent) continue;
          for (let i = 1; i < a.points.length; i++) {
            for (let k = 1; k < b.points.length; k++) {
              const [p, q, r, s] = [a.points[i - 1], a.points[i], b.points[k - 1], b.points[k]];
              expect(crosses(p, q, r, s), `seed ${seed}: ${a.id} and ${b.id}`).toBe(false);
            }
          }
        }
      }
    }
  });

  it('has fewer twigs the more light is asked for, and the coarser the process', () => {
    const twigs = (light: number, plot: Plot) => branches('winter', plot, 2, { light }).length;
    expect(twigs(0.12, plotOf(LASER))).toBeGreaterThan(twigs(0.26, plotOf(LASER)));
    expect(twigs(0.2, plotOf(LASER))).toBeGreaterThan(twigs(0.2, plotOf()));
  });

  it('is mostly sky', () => {
    const { body, holes } = drawn('winter', plotOf(LASER), 2);
    expect(regionArea(subtract(body, [holes]))).toBeLessThan(0.35 * 62 * 88);
  });
});
