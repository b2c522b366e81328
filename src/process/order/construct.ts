import type { Field, Tour } from './field.js';
import { PointGrid } from './point-grid.js';

/**
 * A tour that always goes on to the nearest run that may come next: nothing that must come before
 * it is left, it does not clash where there is a choice, and the group begun is finished first.
 */
export function nearestFirst(field: Field): Tour {
  const { count, firstWay, entryX, entryY, exitX, exitY, after, clash } = field;
  const order: number[] = [];
  const way: number[] = [];
  const waiting = Int32Array.from(field.before, (runs) => runs.length);
  const runOf = new Int32Array(firstWay[count + 1]);
  for (let run = 0; run <= count; run++) runOf.fill(run, firstWay[run], firstWay[run + 1]);
  const groups = groupsOf(field);
  const gridOf = (run: number): PointGrid => groups.get(field.group[run])!.grid;
  const each = (run: number, act: (grid: PointGrid, w: number) => void): void => {
    for (let w = firstWay[run]; w < firstWay[run + 1]; w++) act(gridOf(run), w);
  };
  for (let run = 0; run < count; run++) {
    if (waiting[run] === 0) each(run, (grid, w) => grid.add(w));
  }
  let x = exitX[firstWay[count]];
  let y = exitY[firstWay[count]];
  let last = count;
  let current: number | null = null;
  const isWelcome = (w: number): boolean => last === count || !clash(last, runOf[w]);
  while (order.length < count) {
    if (current === null) current = nearestGroup(groups, x, y, (w) => distanceSq(w));
    const group = groups.get(current)!;
    let w = group.grid.nearest(x, y, isWelcome);
    if (w < 0) w = group.grid.nearest(x, y);
    const run = runOf[w];
    order.push(run);
    way.push(w);
    each(run, (grid, other) => grid.remove(other));
    for (const later of after[run]) {
      if (--waiting[later] === 0) each(later, (grid, other) => grid.add(other));
    }
    if (--group.left === 0) {
      for (const later of group.after) groups.get(later)!.waiting.delete(current);
      groups.delete(current);
      current = null;
    }
    last = run;
    x = exitX[w];
    y = exitY[w];
  }
  return { order, way };

  function distanceSq(w: number): number {
    return (entryX[w] - x) ** 2 + (entryY[w] - y) ** 2;
  }
}

interface Group {
  readonly grid: PointGrid;
  /** Groups that must be finished before. */
  readonly waiting: Set<number>;
  readonly after: Set<number>;
  left: number;
}

function groupsOf({ count, group, after, entryX, entryY }: Field): Map<number, Group> {
  const groups = new Map<number, Group>();
  for (let run = 0; run < count; run++) {
    const own = groups.get(group[run]);
    if (own) own.left++;
    else {
      const grid = new PointGrid(entryX, entryY);
      groups.set(group[run], { grid, waiting: new Set(), after: new Set(), left: 1 });
    }
  }
  for (let run = 0; run < count; run++) {
    for (const later of after[run]) {
      if (group[later] === group[run]) continue;
      groups.get(group[run])!.after.add(group[later]);
      groups.get(group[later])!.waiting.add(group[run]);
    }
  }
  return groups;
}

function nearestGroup(
  groups: ReadonlyMap<number, Group>,
  x: number,
  y: number,
  distanceSq: (way: number) => number,
): number {
  let best = -1;
  let bestSq = Infinity;
  for (const [name, { grid, waiting }] of groups) {
    if (waiting.size > 0) continue;
    const sq = distanceSq(grid.nearest(x, y));
    if (sq >= bestSq) continue;
    best = name;
    bestSq = sq;
  }
  return best;
}
