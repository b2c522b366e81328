import { expect } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { narrowWebs, smallHoles } from '../../src/geometry/width/webs.js';
import type { Family, Growth, Plot } from '../../src/scenery/family.js';
import { type Random, randomFrom } from '../../src/scenery/random.js';
import { cardWith, grown } from './plots.js';

/** Smallest web and hole of laser, knife and press, mm. */
export const LIMITS = [
  [1, 1],
  [1.5, 2],
  [3, 3],
] as const;

/** A window of 160 x 130 mm in a card, seen from the middle of one of its sides. */
export function plotAt(side: Plot['side'], size: Partial<Plot>): Plot {
  const onJamb = side === 'left' || side === 'right';
  const x = side === 'left' ? 0 : side === 'right' ? -160 : -80;
  const y = onJamb ? -115 : -130;
  const sheet = rectangle(x - 90, y - 40, 340, 210);
  const window = rectangle(x, y, 160, 130);
  return {
    side,
    width: 60,
    height: 30,
    root: onJamb ? 55 : 10,
    smallestWeb: 1.5,
    smallestHole: 2,
    fineness: 0.3,
    frame: { card: subtract(sheet, [window]), bounds: regionBounds(sheet), window },
    ...size,
  };
}

/** Every parameter drawn, its ends more often than what lies between them. */
export const drawnValues = (family: Family, luck: Random) =>
  Object.fromEntries(
    Object.entries(family.parameters).map(([key, p]) => {
      if (p.kind === 'choice') return [key, luck.pick(p.options)];
      if (p.kind === 'flag') return [key, luck.chance(0.5)];
      if (p.kind === 'text' || p.kind === 'file') return [key, p.default];
      const end = luck.next();
      if (end < 0.3) return [key, end < 0.15 ? p.min : p.max];
      const whole = p.kind === 'number' && p.whole;
      return [key, whole ? luck.whole(p.min, p.max) : luck.between(p.min, p.max)];
    }),
  );

/** Draws sizes, limits, sides, values and seeds, and looks at what grows. */
export function eachDraw(
  family: Family,
  draws: number,
  look: (growth: Growth, plot: Plot, label: string) => void,
): void {
  for (let n = 0; n < draws; n++) {
    const luck = randomFrom('draw', family.name, n);
    const [smallestWeb, smallestHole] = luck.pick(LIMITS);
    const side = luck.pick(family.sides);
    const width = luck.between(10, 150);
    const height = luck.between(6, side === 'sill' || side === 'head' ? 110 : 90);
    const fineness = luck.next();
    // What is turned to its side finds the window above its foot, as along a sill.
    const seen = family.stance === 'turned' ? 'sill' : side;
    const plot = plotAt(seen, { side, width, height, smallestWeb, smallestHole, fineness });
    const values = drawnValues(family, luck);
    look(grown(family, plot, values, n), plot, JSON.stringify({ n, side, width, height, values }));
  }
}

/** One piece, rooted, no neck or part too narrow and no hole too small. */
export function expectFitToCut(growth: Growth, plot: Plot, label: string): void {
  const own = subtract(growth.body, [growth.holes]);
  const card = cardWith(plot, growth);
  expect(components(own).length, label).toBe(1);
  expect(components(card).length, label).toBe(1);
  const least = plot.smallestWeb - 0.02;
  const narrow = narrowWebs(card, least).filter((p) => p.kind !== 'tip');
  expect(narrow, `${label} web ${plot.smallestWeb}`).toEqual([]);
  expect(smallHoles(card, plot.smallestHole - 0.02), label).toEqual([]);
  if (plot.side === 'sill' || plot.side === 'head') {
    expect(regionBounds(growth.body).maxY, label).toBeCloseTo(plot.root, 0);
  } else {
    const { minX, maxX } = regionBounds(growth.body);
    expect(Math.min(-minX, maxX), label).toBeGreaterThan(2);
  }
}
