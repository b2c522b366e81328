import { clashesOf, type Field, type Tour, travelOf } from '../../src/process/order/field.js';
import { bestWays } from '../../src/process/order/ways.js';
import { type Random, randomFrom } from '../../src/scenery/random.js';

/** A run that follows at once where it should not costs this much, mm. */
const CLASH_MM = 5000;
const HOTTEST_MM = 30;
const COLDEST_MM = 0.02;
/** A run is tried beside one of its so many nearest. */
const NEAREST = 12;
const LONGEST_MOVE = 40;

/**
 * A tour by simulated annealing, many times slower than ours and not from its code: the best of a
 * few from different seeds, each begun at the tour given, of which the heat leaves nothing. It
 * keeps the same rules.
 */
export function referenceTour(field: Field, start: Tour, steps: number, seeds: number): Tour {
  const cost = (tour: Tour) => travelOf(field, tour) + CLASH_MM * clashesOf(field, tour);
  const tours = Array.from({ length: seeds }, (_, seed) =>
    bestWays(field, new Annealing(field, start, randomFrom('annealing', seed)).run(steps)),
  );
  return tours.reduce((best, tour) => (cost(tour) < cost(best) ? tour : best));
}

class Annealing {
  private readonly order: number[];
  private readonly way: number[];
  private readonly at: number[];
  private readonly nearest: number[][];
  private heat = HOTTEST_MM;

  constructor(
    private readonly field: Field,
    start: Tour,
    private readonly random: Random,
  ) {
    this.order = [field.count, ...start.order];
    this.way = [];
    this.way[field.count] = field.firstWay[field.count];
    start.order.forEach((run, k) => {
      this.way[run] = start.way[k];
    });
    this.at = [];
    this.order.forEach((run, k) => {
      this.at[run] = k;
    });
    const middle = (run: number) => field.firstWay[run];
    this.nearest = this.order.map((_, run) =>
      this.order
        .filter(
          (other) => other !== run && other < field.count && !field.clash(run % field.count, other),
        )
        .map((other) => ({
          other,
          mm: Math.hypot(
            field.entryX[middle(other)] - field.entryX[middle(run)],
            field.entryY[middle(other)] - field.entryY[middle(run)],
          ),
        }))
        .sort((a, b) => a.mm - b.mm)
        .slice(0, NEAREST)
        .map(({ other }) => other),
    );
  }

  run(steps: number): Tour {
    const cooling = (COLDEST_MM / HOTTEST_MM) ** (1 / steps);
    for (let step = 0; step < steps; step++) {
      this.heat *= cooling;
      const kind = this.random.next();
      if (kind < 0.4) this.tryTurn();
      else if (kind < 0.75) this.tryMove();
      else this.tryWay();
    }
    const order = this.order.slice(1);
    return { order, way: order.map((run) => this.way[run]) };
  }

  private link(a: number | undefined, wayA: number, b: number | undefined, wayB: number): number {
    if (a === undefined || b === undefined) return 0;
    const { exitX, exitY, entryX, entryY, count, clash } = this.field;
    const mm = Math.hypot(entryX[wayB] - exitX[wayA], entryY[wayB] - exitY[wayA]);
    return mm + (a !== count && clash(a, b) ? CLASH_MM : 0);
  }

  private seam(k: number): number {
    const [a, b] = [this.order[k], this.order[k + 1]];
    return this.link(a, this.way[a], b, this.way[b]);
  }

  private takes(increase: number): boolean {
    return increase <= 0 || this.random.next() < Math.exp(-increase / this.heat);
  }

  /** Two positions, mostly of runs that lie near each other. */
  private positions(): [number, number] {
    const i = this.random.whole(1, this.order.length - 1);
    const near = this.nearest[this.order[i]];
    if (near.length === 0 || this.random.chance(0.1)) {
      return [i, this.random.whole(1, this.order.length - 1)];
    }
    return [i, this.at[this.random.pick(near)]];
  }

  private tryTurn(): void {
    const [p, q] = this.positions();
    const i = Math.min(p, q) + (this.random.chance(0.5) ? 1 : 0);
    const j = Math.max(p, q) - (this.random.chance(0.5) ? 1 : 0);
    if (i > j || i < 1) return;
    const { order, way, field } = this;
    const [a, b, c, d] = [order[i - 1], order[i], order[j], order[j + 1]];
    const [backB, backC] = [field.back[way[b]], field.back[way[c]]];
    if (backB < 0 || backC < 0) return;
    const change =
      this.link(a, way[a], c, backC) +
      this.link(b, backB, d, way[d]) -
      this.seam(i - 1) -
      this.seam(j);
    if (!this.takes(change) || !this.mayTurn(i, j)) return;
    const turned = order.slice(i, j + 1).reverse();
    for (const run of turned) way[run] = field.back[way[run]];
    this.put(i, turned);
  }

  private mayTurn(i: number, j: number): boolean {
    const { group, after, back } = this.field;
    const inside = this.order.slice(i, j + 1);
    return inside.every(
      (run) =>
        group[run] === group[inside[0]] &&
        back[this.way[run]] >= 0 &&
        after[run].every((later) => this.at[later] > j),
    );
  }

  /** Swaps two neighbouring stretches. */
  private tryMove(): void {
    const [p, q] = this.positions();
    const length = this.random.whole(1, Math.min(LONGEST_MOVE, this.order.length));
    // The stretch that moves begins or ends at p, and comes to lie beside q.
    const [first, last] = this.random.chance(0.5) ? [p, p + length - 1] : [p - length + 1, p];
    const beside = q - (this.random.chance(0.5) ? 1 : 0);
    const [i, m, j] = beside > last ? [first, last, beside] : [beside + 1, first - 1, last];
    if (i < 1 || m < i || j <= m || j >= this.order.length) return;
    const { order, way } = this;
    const [a, b, c, d, e, f] = [
      order[i - 1],
      order[i],
      order[m],
      order[m + 1],
      order[j],
      order[j + 1],
    ];
    const change =
      this.link(a, way[a], d, way[d]) +
      this.link(e, way[e], b, way[b]) +
      this.link(c, way[c], f, way[f]) -
      (this.seam(i - 1) + this.seam(m) + this.seam(j));
    if (!this.takes(change) || !this.maySwap(i, m, j)) return;
    this.put(i, [...order.slice(m + 1, j + 1), ...order.slice(i, m + 1)]);
  }

  private maySwap(i: number, m: number, j: number): boolean {
    const { group, after } = this.field;
    const { order, at } = this;
    const first = order.slice(i, m + 1);
    const second = order.slice(m + 1, j + 1);
    const isOneGroup = [...first, ...second].every((run) => group[run] === group[first[0]]);
    const splits = (k: number): boolean => group[order[k]] === group[order[k + 1]];
    if (!isOneGroup && (splits(i - 1) || splits(m) || splits(j))) return false;
    return first.every((run) => after[run].every((later) => at[later] <= m || at[later] > j));
  }

  private tryWay(): void {
    const { order, way, field } = this;
    const k = this.random.whole(1, order.length - 1);
    const run = order[k];
    const old = way[run];
    const before = this.seam(k - 1) + this.seam(k);
    const from = field.firstWay[run];
    way[run] = this.random.whole(from, field.firstWay[run + 1] - 1);
    const random = this.seam(k - 1) + this.seam(k);
    if (this.takes(random - before)) return;
    way[run] = old;
  }

  private put(i: number, runs: readonly number[]): void {
    runs.forEach((run, k) => {
      this.order[i + k] = run;
      this.at[run] = i + k;
    });
  }
}
