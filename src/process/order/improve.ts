import { type Random, randomFrom } from '../../scenery/random.js';
import type { Field, Tour } from './field.js';
import { PointGrid } from './point-grid.js';
import { Route } from './route.js';
import { bestWays } from './ways.js';

/** Neighbours that a run is tried beside: more find little and cost time. */
const NEIGHBOURS = 8;
/** Runs that are moved at once, at the most. */
const LONGEST_MOVE = 3;
/** Rounds of shortening the order, then choosing the ways for it. */
const ROUNDS = 2;

/**
 * A shorter tour: stretches are turned round (2-opt) and short ones moved (Or-opt) beside their
 * neighbours until nothing is gained, then ways are chosen anew; then places are shaken and mended
 * where that gains (iterated local search). The same field always gives the same tour.
 */
export function improved(field: Field, tour: Tour): Tour {
  if (field.count < 2) return bestWays(field, tour);
  let best = bestWays(field, tour);
  for (let round = 0; round < ROUNDS; round++) {
    const route = new Route(field, best);
    const near = neighbours(field, route);
    settle(route, near, [...route.order]);
    while (moveGroups(route)) settle(route, near, [...route.order]);
    shake(route, near, randomFrom('order', round));
    best = bestWays(field, route.tour());
  }
  return best;
}

/** Shortens the route beside the runs given and all that changes, until nothing is gained. */
function settle(route: Route, near: Neighbours, runs: readonly number[]): void {
  const queue = [...runs];
  const isQueued = new Uint8Array(route.order.length);
  for (const run of queue) isQueued[run] = 1;
  for (let head = 0; head < queue.length; head++) {
    const run = queue[head];
    isQueued[run] = 0;
    for (let touched = better(route, near, run); touched; touched = better(route, near, run)) {
      for (const position of touched) {
        const other = route.order[position];
        if (other === undefined || isQueued[other]) continue;
        isQueued[other] = 1;
        queue.push(other);
      }
    }
  }
}

/** Makes the first change that shortens the route at this run: the positions at its seams. */
function better(route: Route, near: Neighbours, run: number): number[] | null {
  const { at, order } = route;
  const end = order.length - 1;
  if (route.turn(at[run] + 1, end)) return [at[run], at[run] + 1, end];
  const a = at[run];
  if (route.suit(a)) return [a - 1, a, a + 1];
  const longer = a === 0 ? route.seam(0) : Math.max(route.seam(a - 1), route.seam(a));
  for (let n = near.first[run]; n < near.first[run + 1]; n++) {
    // A change that gains brings some run beside one nearer than a neighbour that it has.
    if (near.mm[n] >= longer) continue;
    const c = at[near.runs[n]];
    const low = Math.min(a, c);
    const high = Math.max(a, c);
    if (route.turn(low + 1, high)) return [low, low + 1, high, high + 1];
    if (route.turn(low, high - 1)) return [low - 1, low, high - 1, high];
    for (const k of [c, c - 1]) {
      if (route.moveOne(a, k)) return [a - 1, a, a + 1, k - 1, k, k + 1, k + 2];
    }
    for (let length = 2; length <= LONGEST_MOVE; length++) {
      for (const i of [a, a - length + 1]) {
        const j = i + length - 1;
        for (const k of [c, c - 1]) {
          if (route.move(i, j, k)) return [i - 1, i, j, j + 1, k - length, k, k + 1, k + length];
        }
      }
    }
  }
  return null;
}

/** Shakes for each run; small tours are shaken more, large ones less, to be done in seconds. */
const SHAKES_EACH = 10;
const LEAST_SHAKES = 1500;
const MOST_SHAKES = 8000;
/** Up to so many runs, the ways of rings are all chosen anew after each shake. */
const MOST_CHOSEN = 200;
/** Stretches that are swapped are no longer than this. */
const LONGEST_SWAP = 30;

/** Swaps two stretches somewhere, mends what that spoils, and keeps it where the whole is shorter. */
function shake(route: Route, near: Neighbours, random: Random): void {
  const { order, at, way, field } = route;
  const choosesWays = order.length <= MOST_CHOSEN && field.firstWay[field.count] > 2 * field.count;
  const shakes = Math.max(LEAST_SHAKES, Math.min(SHAKES_EACH * order.length, MOST_SHAKES));
  const longest = Math.min(LONGEST_SWAP, order.length - 2);
  let { cost } = route;
  const kept = { order: order.slice(), at: at.slice(), way: way.slice() };
  for (let n = 0; n < shakes; n++) {
    const p = random.whole(0, order.length - 3);
    const q = p + random.whole(1, longest);
    const r = q + random.whole(1, longest);
    if (r >= order.length || !route.swap(p, q, r)) continue;
    if (choosesWays) route.take(bestWays(field, route.tour()));
    const seams = [p, p + 1, p + r - q, p + r - q + 1, r, r + 1];
    settle(
      route,
      near,
      seams.filter((k) => k < order.length).map((k) => order[k]),
    );
    if (choosesWays) route.take(bestWays(field, route.tour()));
    if (route.cost < cost - 1e-7) {
      cost = route.cost;
      kept.order.set(order);
      kept.at.set(at);
      kept.way.set(way);
    } else {
      order.set(kept.order);
      at.set(kept.at);
      way.set(kept.way);
      route.cost = cost;
    }
  }
}

/** Puts one group elsewhere between the others, if that is shorter. */
function moveGroups(route: Route): boolean {
  const { order, field } = route;
  const ends: number[] = [];
  for (let k = 0; k < order.length; k++) {
    if (field.group[order[k]] !== field.group[order[k + 1]]) ends.push(k);
  }
  if (ends.length < 3) return false;
  for (let g = 1; g < ends.length; g++) {
    for (const end of ends) if (route.move(ends[g - 1] + 1, ends[g], end, true)) return true;
  }
  return false;
}

/** For each run those that it may follow nearby, nearest first: from `first[run]` on in `runs`. */
interface Neighbours {
  readonly first: Int32Array;
  readonly runs: Int32Array;
  /** How far each is away. */
  readonly mm: Float64Array;
}

function neighbours(field: Field, route: Route): Neighbours {
  const { count, firstWay, entryX, entryY, exitX, exitY, clash, group } = field;
  // Runs are near where any of their ways is, as that can still be changed.
  const ends = firstWay[count];
  const x = new Float64Array(2 * ends);
  const y = new Float64Array(2 * ends);
  x.set(entryX.subarray(0, ends));
  y.set(entryY.subarray(0, ends));
  x.set(exitX.subarray(0, ends), ends);
  y.set(exitY.subarray(0, ends), ends);
  const runAt = new Int32Array(2 * ends);
  for (let run = 0; run < count; run++) {
    runAt.fill(run, firstWay[run], firstWay[run + 1]);
    runAt.fill(run, ends + firstWay[run], ends + firstWay[run + 1]);
  }
  const grid = new PointGrid(x, y);
  for (let point = 0; point < 2 * ends; point++) grid.add(point);
  const first = new Int32Array(count + 2);
  const runs: number[] = [];
  const mm: number[] = [];
  for (let run = 0; run <= count; run++) {
    first[run] = runs.length;
    const isFit = (other: number): boolean =>
      other !== run && (run === count || (group[other] === group[run] && !clash(run, other)));
    const w = route.way[run];
    const places = [
      [entryX[w], entryY[w]],
      [exitX[w], exitY[w]],
    ];
    for (const [px, py] of places) {
      for (const { run: other, sq } of nearestRuns(grid, runAt, px, py, isFit)) {
        const same = runs.indexOf(other, first[run]);
        if (same < 0) {
          runs.push(other);
          mm.push(Math.sqrt(sq));
        } else mm[same] = Math.min(mm[same], Math.sqrt(sq));
      }
    }
  }
  first[count + 1] = runs.length;
  return { first, runs: Int32Array.from(runs), mm: Float64Array.from(mm) };
}

function nearestRuns(
  grid: PointGrid,
  runAt: Int32Array,
  x: number,
  y: number,
  isFit: (run: number) => boolean,
): { run: number; sq: number }[] {
  const found: { run: number; sq: number }[] = [];
  grid.visit(x, y, (point, sq) => {
    const run = runAt[point];
    const last = found.length < NEIGHBOURS ? Infinity : found[found.length - 1].sq;
    if (sq >= last || !isFit(run)) return last;
    const same = found.findIndex((entry) => entry.run === run);
    if (same >= 0 && found[same].sq <= sq) return last;
    if (same >= 0) found.splice(same, 1);
    let k = found.length;
    while (k > 0 && found[k - 1].sq > sq) k--;
    found.splice(k, 0, { run, sq });
    if (found.length > NEIGHBOURS) found.pop();
    return found.length < NEIGHBOURS ? Infinity : found[found.length - 1].sq;
  });
  return found;
}
