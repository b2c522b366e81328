import { expect } from 'vitest';
import type { Family, Growth, Plot } from '../../src/scenery/family.js';
import { frameDrawOf, frameFaultsOf } from './frames.js';

type Look = (growth: Growth, plot: Plot, label: string) => void;

/** Looks at the first draws of a frame, in windows of every shape. */
export function eachFrame(family: Family, draws: number, look: Look): void {
  for (let n = 0; n < draws; n++) {
    const { growth, plot, label } = frameDrawOf(family, n);
    look(growth, plot, label);
  }
}

/** Fit to cut, see `frameFaultsOf`; without a window it is scored or pressed. */
export const expectFrameFitToCut: Look = (growth, plot, label) => {
  expect(frameFaultsOf({ growth, plot }), label).toEqual([]);
  if (plot.frame.window.contours.length > 0) return;
  expect(growth.scores.length + growth.reliefs.length, label).toBeGreaterThan(0);
};
