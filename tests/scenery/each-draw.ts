import { expect } from 'vitest';
import type { Family, Growth, Plot } from '../../src/scenery/family.js';
import { type Draw, drawOf, faultsOf } from './draws.js';

type Look = (growth: Growth, plot: Plot, label: string) => void;

/** Looks at the first draws of a family. */
export function eachDraw(family: Family, draws: number, look: Look): void {
  for (let n = 0; n < draws; n++) {
    const { growth, plot, label } = drawOf(family, n);
    look(growth, plot, label);
  }
}

/** One piece, rooted, no neck or part too narrow and no hole too small. */
export const expectFitToCut: Look = (growth, plot, label) =>
  expect(faultsOf({ growth, plot }), label).toEqual([]);

/** The same of one draw, which is returned. */
export function expectDrawFitToCut(family: Family, n: number): Draw {
  const draw = drawOf(family, n);
  expectFitToCut(draw.growth, draw.plot, draw.label);
  return draw;
}
