import type { Point } from '../../geometry/types.js';
import type { Run } from './runs.js';

/**
 * What a tour is made of, as flat arrays: runs by their numbers, with one more at the end that
 * stands for the place where the head comes from. Lengths in mm.
 */
export interface Field {
  /** Runs, the place of departure not counted; that place's number is the same. */
  readonly count: number;
  /** The ways of run r are those from `firstWay[r]` up to `firstWay[r + 1]`. */
  readonly firstWay: Int32Array;
  readonly entryX: Float64Array;
  readonly entryY: Float64Array;
  readonly exitX: Float64Array;
  readonly exitY: Float64Array;
  /** The way that is this one backwards, or -1. */
  readonly back: Int32Array;
  /** Runs of one group are run together. */
  readonly group: Int32Array;
  /** Runs that must come later, and the same seen from those. */
  readonly after: readonly (readonly number[])[];
  readonly before: readonly (readonly number[])[];
  /** Whether one should not follow the other at once; the same both ways round. */
  readonly clash: (a: number, b: number) => boolean;
}

export interface Wishes {
  readonly from: Point;
  readonly group: readonly number[];
  readonly after: readonly (readonly number[])[];
  readonly clash: (a: number, b: number) => boolean;
}

export function fieldOf(
  runs: readonly Pick<Run, 'ways'>[],
  { from, group, after, clash }: Wishes,
): Field {
  const departure = { entry: from, exit: from, back: -1 };
  const all = [...runs.map(({ ways }) => ways), [departure]];
  const firstWay = new Int32Array(all.length + 1);
  all.forEach((ways, run) => {
    firstWay[run + 1] = firstWay[run] + ways.length;
  });
  const ways = all.flat();
  const isRing = all.flatMap((own) => own.map(({ back }, k) => back === k));
  const before = runs.map((): number[] => []);
  after.forEach((later, run) => {
    for (const other of later) before[other].push(run);
  });
  return {
    count: runs.length,
    firstWay,
    entryX: Float64Array.from(ways, ({ entry }) => entry.x),
    entryY: Float64Array.from(ways, ({ entry }) => entry.y),
    // A ring that overlaps itself ends a little after its start: for the tour it is a ring.
    exitX: Float64Array.from(ways, ({ entry, exit }, w) => (isRing[w] ? entry : exit).x),
    exitY: Float64Array.from(ways, ({ entry, exit }, w) => (isRing[w] ? entry : exit).y),
    back: Int32Array.from(
      all.flatMap((own, run) => own.map(({ back }) => (back < 0 ? -1 : firstWay[run] + back))),
    ),
    group: Int32Array.from([...group, -1]),
    after: [...after, []],
    before: [...before, []],
    clash,
  };
}

/** Runs in order, each with the way in which it is run; the place of departure is left out. */
export interface Tour {
  readonly order: readonly number[];
  readonly way: readonly number[];
}

/** Where the head goes without working, from the place of departure to the last run's start. */
export function travelOf(field: Field, { order, way }: Tour): number {
  let sum = 0;
  let last = field.firstWay[field.count];
  order.forEach((_, k) => {
    sum += Math.hypot(
      field.entryX[way[k]] - field.exitX[last],
      field.entryY[way[k]] - field.exitY[last],
    );
    last = way[k];
  });
  return sum;
}

/** How often a run follows another at once that it should not. */
export const clashesOf = (field: Field, { order }: Tour): number =>
  order.filter((run, k) => k > 0 && field.clash(order[k - 1], run)).length;
