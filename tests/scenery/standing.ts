import { expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { narrowWebs, smallHoles } from '../../src/geometry/width/webs.js';
import type { Family, Growth, Plot } from '../../src/scenery/family.js';
import { cardWith, clearance, grown, plotWith, written } from './plots.js';

type Given = Record<string, number | string | boolean>;

/** Smallest web and hole of a knife and of a laser, mm. */
export const LIMITS = [
  { smallestWeb: 1.5, smallestHole: 2 },
  { smallestWeb: 1, smallestHole: 1 },
] as const;

export interface Case {
  readonly given?: Given;
  readonly plot?: Partial<Plot>;
}

/** Every case with knife and laser limits and a few seeds. */
export function eachGrowth(
  family: Family,
  cases: readonly Case[],
  look: (growth: Growth, plot: Plot) => void,
): void {
  for (const limits of LIMITS) {
    for (const { given, plot: changes } of cases) {
      const plot = plotWith('rectangle', { ...changes, ...limits });
      for (const seed of [1, 2, 3]) look(grown(family, plot, given, seed), plot);
    }
  }
}

/**
 * The tests that everything built has to pass: cases are drawn for knife and laser, scores keep
 * `clearMm` from the cut, and the seed alone decides the bytes.
 */
export function itStandsSoundly(family: Family, cases: readonly Case[], clearMm: number): void {
  it('is one piece of card, rooted in the frame', () => {
    eachGrowth(family, cases, expectOnePiece);
  });

  it('leaves no web and cuts no hole that the process cannot', () => {
    eachGrowth(family, cases, expectSound);
  });

  it('keeps its scores clear of the cut', () => {
    eachGrowth(family, cases.slice(0, 2), (growth) => expectClear(growth, clearMm));
  });

  it('draws the same bytes for one seed', () => {
    expectSeeded(family, plotWith('rectangle', cases[0].plot));
  });
}

/** It is one piece by itself, and one with the frame that it is rooted in. */
export function expectOnePiece(growth: Growth, plot: Plot): void {
  expect(components(subtract(growth.body, [growth.holes])).length).toBe(1);
  expect(components(cardWith(plot, growth)).length).toBe(1);
  expect(regionBounds(growth.body).maxY).toBeCloseTo(plot.root, 0);
}

/** No web that something hangs on is narrower than the process can leave, no hole too small. */
export function expectSound(growth: Growth, plot: Plot): void {
  const card = cardWith(plot, growth);
  const necks = narrowWebs(card, plot.smallestWeb - 0.02).filter((p) => p.kind === 'neck');
  expect(necks).toEqual([]);
  expect(smallHoles(card, plot.smallestHole)).toEqual([]);
}

/** Scores stay clear of the cut: `leastMm` from the edges of body and holes. */
export function expectClear(growth: Growth, leastMm: number): void {
  const card = subtract(growth.body, [growth.holes]);
  expect(growth.scores.length).toBeGreaterThan(0);
  expect(clearance(growth.scores, card)).toBeGreaterThanOrEqual(leastMm - 0.02);
}

/** Same bytes for one seed, others for another. */
export function expectSeeded(family: Family, plot: Plot): void {
  const draw = (seed: number) => written(grown(family, plot, {}, seed));
  expect(draw(4)).toBe(draw(4));
  expect(draw(4)).not.toBe(draw(5));
}

/** Share of a growth's score lines that lie within `nearMm` of one of another's, by their middle. */
export function shareInPlace(a: Growth, b: Growth, nearMm: number): number {
  const middle = ({ scores }: Growth) =>
    scores.map(({ cubics }) => {
      const n = cubics.length;
      return { x: (cubics[0] + cubics[n - 2]) / 2, y: (cubics[1] + cubics[n - 1]) / 2 };
    });
  const others = middle(b);
  const own = middle(a);
  const found = own.filter((p) => others.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < nearMm));
  return found.length / own.length;
}
