import { chordTable } from '../boolean/chords.js';
import { crossingsOf } from '../boolean/crossings.js';
import type { Cubics } from '../types.js';

/** Chords for the look at crossings: what crosses by less is a touch. */
export const CHORD_MM = 5e-4;
/** A chain that crosses itself more often than this is not looked at further. */
export const MOST_CROSSINGS = 2000;

/** How often a chain crosses itself, or NaN where it is too often to count. */
export function selfCrossings(chain: Cubics): number {
  const table = chordTable([chain], CHORD_MM);
  const crossings = crossingsOf(table, MOST_CROSSINGS);
  // The table closes an open chain with an edge that is not the chain's own.
  const own = (chord: number): boolean => table.segment[chord] * 8 < chain.length;
  return crossings?.filter(({ a, b }) => own(a) && own(b)).length ?? Number.NaN;
}
