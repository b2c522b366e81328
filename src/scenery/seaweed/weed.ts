import type { Cubics, Line } from '../../geometry/types.js';

export const KINDS = ['kelp', 'wrack', 'lace'] as const;
export type Kind = (typeof KINDS)[number];

/** One plant as overlapping pieces of card: its blades, its floats, and lines to score on them. */
export interface Weed {
  readonly card: readonly Cubics[];
  readonly floats: readonly Cubics[];
  readonly ribs: readonly Line[];
}
