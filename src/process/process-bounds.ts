import type { Range } from '../scene/bounds.js';

/**
 * What settings may be: wide enough for every machine that cuts card, narrow enough to catch a slip
 * of the keys or of the unit. Lengths in mm.
 */
export const PROCESS_BOUNDS = {
  smallest: { min: 0.05, max: 20 },
  clearance: { min: 0, max: 20 },
  /** Wider than this is no beam in focus. */
  kerf: { min: 0, max: 1 },
  bedSide: { min: 50, max: 3000 },
  bedMargin: { min: 0, max: 200 },
  passes: { min: 1, max: 20 },
  speedMmS: { min: 0.5, max: 5000 },
  accelerationMmS2: { min: 10, max: 100_000 },
  liftS: { min: 0, max: 30 },
  corner: { min: 0.001, max: 1 },
  stopS: { min: 0, max: 3600 },
  perforation: { min: 0.2, max: 20 },
  nibs: { min: 0, max: 20 },
  nib: { min: 0.1, max: 3 },
  blade: { min: 0, max: 2 },
  overcut: { min: 0, max: 5 },
  angleDeg: { min: 0, max: 180 },
  apartBalls: { min: 0.2, max: 5 },
  apart: { min: 0.05, max: 5 },
  heatApart: { min: 0, max: 50 },
  densestPerMm: { min: 0.01, max: 100 },
  price: { min: 0, max: 1_000_000 },
  quantity: { min: 1, max: 100_000 },
} as const satisfies Record<string, Range>;

/** Prices of more editions than this are no quote. */
export const MOST_QUANTITIES = 12;
export const CURRENCY_CHARACTERS = 12;
