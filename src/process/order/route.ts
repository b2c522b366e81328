import type { Field, Tour } from './field.js';

/** Travel (mm) that is worth taking to keep two runs that clash apart: more than any bed is long. */
const CLASH_MM = 5000;
/** Gains below this (mm) are rounding. */
const GAIN_MM = 1e-7;

/**
 * A tour that is being made shorter. The place of departure stands at position 0 and never moves.
 * Every change keeps what must come before what, and groups together.
 */
export class Route {
  readonly order: Int32Array;
  readonly at: Int32Array;
  readonly way: Int32Array;
  /** What the whole tour costs: its travel, and what clashes are worth. */
  cost: number;

  constructor(
    readonly field: Field,
    tour: Tour,
  ) {
    const { count, firstWay } = field;
    this.order = Int32Array.from([count, ...tour.order]);
    this.at = new Int32Array(count + 1);
    this.way = new Int32Array(count + 1);
    this.way[count] = firstWay[count];
    tour.order.forEach((run, k) => {
      this.at[run] = k + 1;
    });
    this.cost = 0;
    this.take(tour);
  }

  /** Takes over the ways of a tour in the same order. */
  take({ order, way }: Tour): void {
    this.cost = 0;
    order.forEach((run, k) => {
      this.way[run] = way[k];
    });
    for (let k = 0; k < order.length; k++) this.cost += this.seam(k);
  }

  tour(): Tour {
    const order = [...this.order.subarray(1)];
    return { order, way: order.map((run) => this.way[run]) };
  }

  /** Runs the stretch from position i to j backwards, if that is shorter. */
  turn(i: number, j: number): boolean {
    const { order, way, field } = this;
    if (i < 1 || j < i) return false;
    const a = order[i - 1];
    const b = order[i];
    const c = order[j];
    const d = this.next(j);
    const backB = field.back[way[b]];
    const backC = field.back[way[c]];
    if (backB < 0 || backC < 0) return false;
    let gain = this.link(a, way[a], b, way[b]) - this.link(a, way[a], c, backC);
    if (d >= 0) gain += this.link(c, way[c], d, way[d]) - this.link(b, backB, d, way[d]);
    if (gain <= GAIN_MM || !this.mayTurn(i, j)) return false;
    this.reverse(i, j);
    this.cost -= gain;
    return true;
  }

  /**
   * Moves the stretch from position i to j between positions k and k + 1, either way round, if
   * that is shorter. A stretch of whole groups may go between other groups.
   */
  move(i: number, j: number, k: number, wholeGroups = false): boolean {
    if (i < 1 || j >= this.order.length || k < 0 || k >= this.order.length) return false;
    if (k >= i - 1 && k <= j) return false;
    const { order, way, field } = this;
    const before = order[i - 1];
    const first = order[i];
    const last = order[j];
    const behind = this.next(j);
    let freed = this.link(before, way[before], first, way[first]);
    if (behind >= 0) {
      freed += this.link(last, way[last], behind, way[behind]);
      freed -= this.link(before, way[before], behind, way[behind]);
    }
    if (freed <= GAIN_MM) return false;
    const left = order[k];
    const right = this.next(k);
    if (right >= 0) freed += this.link(left, way[left], right, way[right]);
    let onward = this.link(left, way[left], first, way[first]);
    if (right >= 0) onward += this.link(last, way[last], right, way[right]);
    let turned = Infinity;
    const backFirst = field.back[way[first]];
    const backLast = field.back[way[last]];
    if (backFirst >= 0 && backLast >= 0) {
      turned = this.link(left, way[left], last, backLast);
      if (right >= 0) turned += this.link(first, backFirst, right, way[right]);
    }
    if (freed - Math.min(onward, turned) <= GAIN_MM || !this.mayMove(i, j, k, wholeGroups)) {
      return false;
    }
    const turns = turned < onward && this.mayTurn(i, j);
    if (!turns && freed - onward <= GAIN_MM) return false;
    if (turns) this.reverse(i, j);
    this.shift(i, j, k);
    this.cost -= freed - (turns ? turned : onward);
    return true;
  }

  /** Moves one run between positions k and k + 1, in the way that suits best there, if shorter. */
  moveOne(i: number, k: number): boolean {
    if (i < 1 || k < 0 || k >= this.order.length || k === i || k === i - 1) return false;
    const { order, way } = this;
    const run = order[i];
    const left = order[k];
    const before = order[i - 1];
    const right = this.next(k);
    const behind = this.next(i);
    let gain = this.seam(i - 1) + this.seam(i);
    if (behind >= 0) gain -= this.link(before, way[before], behind, way[behind]);
    if (gain <= GAIN_MM) return false;
    const best = this.bestWay(left, run, right);
    gain += this.seam(k) - this.link(left, way[left], run, best);
    if (right >= 0) gain -= this.link(run, best, right, way[right]);
    if (gain <= GAIN_MM || !this.mayMove(i, i, k, false)) return false;
    way[run] = best;
    this.shift(i, i, k);
    this.cost -= gain;
    return true;
  }

  /** Runs the run at position i in the way that suits its neighbours best, if shorter. */
  suit(i: number): boolean {
    if (i < 1) return false;
    const { order, way, field } = this;
    const run = order[i];
    if (field.firstWay[run + 1] - field.firstWay[run] === 1) return false;
    const before = this.seam(i - 1) + this.seam(i);
    const old = way[run];
    way[run] = this.bestWay(order[i - 1], run, this.next(i));
    const gain = before - this.seam(i - 1) - this.seam(i);
    if (gain <= GAIN_MM) {
      way[run] = old;
      return false;
    }
    this.cost -= gain;
    return true;
  }

  /** Swaps the stretches p + 1 to q and q + 1 to r, whatever that costs, if it is allowed. */
  swap(p: number, q: number, r: number): boolean {
    if (!this.mayMove(p + 1, q, r, false)) return false;
    const seams = [p, q, r];
    const before = seams.reduce((sum, k) => sum + this.seam(k), 0);
    this.shift(p + 1, q, r);
    const after = [p, p + r - q, r].reduce((sum, k) => sum + this.seam(k), 0);
    this.cost += after - before;
    return true;
  }

  next(position: number): number {
    return position + 1 < this.order.length ? this.order[position + 1] : -1;
  }

  /** What it costs to go on to b from a, run in these ways. */
  link(a: number, wayA: number, b: number, wayB: number): number {
    const { exitX, exitY, entryX, entryY, count } = this.field;
    const mm = distance(entryX[wayB] - exitX[wayA], entryY[wayB] - exitY[wayA]);
    return a !== count && this.field.clash(a, b) ? mm + CLASH_MM : mm;
  }

  /** What it costs to go on from position k; nothing at the end. */
  seam(k: number): number {
    const b = this.next(k);
    const a = this.order[k];
    return b < 0 ? 0 : this.link(a, this.way[a], b, this.way[b]);
  }

  /** The way of a run that is shortest between two others; `right` is -1 at the end. */
  private bestWay(left: number, run: number, right: number): number {
    const { firstWay, entryX, entryY, exitX, exitY } = this.field;
    const from = this.way[left];
    const to = right < 0 ? -1 : this.way[right];
    let best = firstWay[run];
    let leastMm = Infinity;
    for (let w = firstWay[run]; w < firstWay[run + 1]; w++) {
      let mm = distance(entryX[w] - exitX[from], entryY[w] - exitY[from]);
      if (to >= 0) mm += distance(entryX[to] - exitX[w], entryY[to] - exitY[w]);
      if (mm >= leastMm) continue;
      leastMm = mm;
      best = w;
    }
    return best;
  }

  private mayTurn(i: number, j: number): boolean {
    const { order, at, way } = this;
    const { group, after, back } = this.field;
    if (group[order[i]] !== group[order[j]]) return false;
    for (let k = i; k <= j; k++) {
      if (back[way[order[k]]] < 0) return false;
      for (const later of after[order[k]]) if (at[later] <= j) return false;
    }
    return true;
  }

  private mayMove(i: number, j: number, k: number, wholeGroups: boolean): boolean {
    const { order, at } = this;
    const { group, after, before } = this.field;
    const own = group[order[i]];
    const right = this.next(k);
    const staysIn = group[order[k]] === own || (right >= 0 && group[right] === own);
    if (!wholeGroups && (group[order[j]] !== own || !staysIn)) return false;
    for (let m = i; m <= j; m++) {
      if (k > j) {
        for (const later of after[order[m]]) if (at[later] > j && at[later] <= k) return false;
      } else {
        for (const sooner of before[order[m]]) if (at[sooner] > k && at[sooner] < i) return false;
      }
    }
    return true;
  }

  private reverse(i: number, j: number): void {
    const { order, way } = this;
    const { back } = this.field;
    for (let k = i; k <= j; k++) way[order[k]] = back[way[order[k]]];
    order.subarray(i, j + 1).reverse();
    this.renumber(i, j);
  }

  private shift(i: number, j: number, k: number): void {
    const { order } = this;
    const moved = order.slice(i, j + 1);
    if (k > j) {
      order.copyWithin(i, j + 1, k + 1);
      order.set(moved, k - moved.length + 1);
      this.renumber(i, k);
    } else {
      order.copyWithin(k + 1 + moved.length, k + 1, i);
      order.set(moved, k + 1);
      this.renumber(k + 1, j);
    }
  }

  private renumber(i: number, j: number): void {
    for (let k = i; k <= j; k++) this.at[this.order[k]] = k;
  }
}

const distance = (dx: number, dy: number): number => Math.sqrt(dx * dx + dy * dy);
