import { type Random, randomFrom } from '../scenery/random.js';
import {
  type Ground,
  type Item,
  type Laid,
  LEANS,
  type Lean,
  layOut,
  type Turn,
} from './lay-out.js';
import { type Pressed, workedFaces } from './sheet.js';

/** A layout of one stock's items, how it came about, and what it costs. */
interface Plan {
  readonly turns: readonly Turn[];
  readonly lean: Lean;
  readonly sheets: readonly Laid[][];
  /** Compared one by one: the lowest wins. */
  readonly cost: readonly number[];
}

/**
 * Looks for a good layout of one stock's items: first a few orders by size, then those changed here
 * and there as chance has it, a change kept if it makes nothing worse. The same items and the same
 * number of tries always give the same sheets. That none needs fewer is not guaranteed.
 */
export class Search {
  private best: Plan;
  private readonly random: Random;

  constructor(
    items: readonly Item[],
    private readonly ground: Ground,
  ) {
    this.random = randomFrom('sheets', items.length);
    const orders = unlike(ORDERS.map((order) => items.toSorted(order)));
    const plans = orders.flatMap((order) =>
      LEANS.map((lean) =>
        this.plan(
          order.map((item) => ({ item })),
          lean,
        ),
      ),
    );
    this.best = plans.reduce((a, b) => (isLess(b.cost, a.cost) ? b : a));
  }

  get sheets(): readonly Laid[][] {
    return this.best.sheets;
  }

  /** Whether no try could save a sheet or a face. */
  get isSettled(): boolean {
    const { usable } = this.ground;
    const { turns, cost } = this.best;
    const area = turns.reduce((sum, { item }) => sum + item.area, 0);
    const [sheets, faces] = cost;
    return faces === sheets && sheets <= Math.ceil(area / (usable.width * usable.height));
  }

  tryChange(): void {
    if (this.isSettled) return;
    const { turns, lean } = changed(this.best, this.random);
    const plan = this.plan(turns, lean);
    if (!isLess(this.best.cost, plan.cost)) this.best = plan;
  }

  private plan(turns: readonly Turn[], lean: Lean): Plan {
    const sheets = layOut(turns, lean, this.ground);
    return { turns, lean, sheets, cost: costOf(sheets, this.ground) };
  }
}

type Order = (a: Item, b: Item) => number;

const SIZE_ORDERS: readonly Order[] = [
  (a, b) => b.box.height - a.box.height || b.box.width - a.box.width,
  (a, b) => b.box.width - a.box.width || b.box.height - a.box.height,
  (a, b) => b.box.width * b.box.height - a.box.width * a.box.height,
];

/** The same orders, and the same again within pieces that are worked from the same faces. */
const ORDERS: readonly Order[] = SIZE_ORDERS.flatMap((bySize): Order[] => [
  bySize,
  (a, b) => faceRank(a.pressed) - faceRank(b.pressed) || bySize(a, b),
]);

/** Lists without those that say the same as one before. */
const unlike = (lists: readonly Item[][]): Item[][] =>
  lists.filter((list, i) =>
    lists.slice(0, i).every((earlier) => list.some((item, k) => earlier[k] !== item)),
  );

/**
 * Brings together what can share a face: pieces worked from both faces come first, those worked
 * from the back alone last, which a sheet of their own lets be cut from the back too.
 */
function faceRank({ front, back }: Pressed): number {
  if (front) return back ? 0 : 1;
  return back ? 3 : 2;
}

/** What makes a layout worse, the weightiest first. */
function costOf(sheets: readonly Laid[][], { process, usable }: Ground): readonly number[] {
  let faces = 0;
  let evenness = 0;
  let usedHeight = 0;
  for (const laid of sheets) {
    const front = laid.some(({ item }) => item.pressed.front);
    const back = laid.some(({ item }) => item.pressed.back);
    faces += workedFaces({ front, back }, process).length;
    const share =
      laid.reduce((sum, { item }) => sum + item.area, 0) / (usable.width * usable.height);
    // Full sheets beside nearly empty ones are nearer to one sheet less than all half full.
    evenness -= share ** 2;
    usedHeight += Math.max(...laid.map(({ item, y }) => y + item.box.height));
  }
  return [sheets.length, faces, Math.round(evenness * 1e6), usedHeight];
}

/** Compares two lists number by number. */
function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i] < b[i];
  return false;
}

/** How often a change moves something from the emptiest sheet, which is to be done without. */
const FROM_EMPTIEST = 0.5;

/** The plan's order with one or two items elsewhere or turned, or with another lean. */
function changed({ turns, lean, sheets }: Plan, random: Random): Pick<Plan, 'turns' | 'lean'> {
  if (random.chance(0.05)) return { turns, lean: random.pick(LEANS) };
  const next = [...turns];
  const moving = random.chance(FROM_EMPTIEST)
    ? random.pick(emptiest(sheets)).item
    : random.pick(turns).item;
  const at = next.findIndex(({ item }) => item === moving);
  const to = random.whole(0, next.length - 1);
  const how = random.next();
  if (how < 0.4) [next[at], next[to]] = [next[to], next[at]];
  else if (how < 0.8) next.splice(to, 0, ...next.splice(at, 1));
  else next[at] = { item: next[at].item, only: random.pick([0, 1, undefined] as const) };
  return { turns: next, lean };
}

const areaOf = (laid: readonly Laid[]): number =>
  laid.reduce((sum, { item }) => sum + item.area, 0);

const emptiest = (sheets: readonly Laid[][]): Laid[] =>
  sheets.reduce((a, b) => (areaOf(b) < areaOf(a) ? b : a));
