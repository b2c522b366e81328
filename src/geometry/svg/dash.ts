import { cubicLength, joined, placeAtLength, subchain } from '../chain.js';
import { jetAt } from '../cubic.js';
import type { Cubics } from '../types.js';
import type { Element } from './element.js';
import { nameOf, SvgImportError } from './error.js';
import { MAX_DASHES } from './limits.js';

/** A dash pattern along a line, in the units of the line. */
export interface Dashing {
  /** Lengths of dashes and gaps by turns, an even number of them, whose sum is above 0. */
  readonly pattern: readonly number[];
  readonly offset: number;
}

/** What is left of a chain: pieces of it, and all of it where no gap falls on it. */
export interface Dashed {
  readonly open: readonly Cubics[];
  readonly closed: readonly Cubics[];
}

/**
 * A dash of no length still has a direction, which its caps need: it is made this long (mm). What
 * rounding leaves of a dash at an end of the line is no longer.
 */
const SPECK = 1e-6;

/**
 * A chain cut into dashes (SVG 2, section 13.5.6). On a closed chain the last dash runs on into the
 * first where no gap parts them.
 */
export function dashed(
  element: Element,
  chain: Cubics,
  isClosed: boolean,
  { pattern, offset }: Dashing,
): Dashed {
  const ruler = new Ruler(chain);
  const period = pattern.reduce((sum, length) => sum + length, 0);
  const spans = dashesOn(element, ruler.length, pattern, ((offset % period) + period) % period);
  if (spans.length === 1 && spans[0][0] === 0 && spans[0][1] === ruler.length) {
    return isClosed ? { open: [], closed: [chain] } : { open: [chain], closed: [] };
  }
  const pieces = spans.map(([from, to]) => ruler.piece(from, to));
  const runsOn = isClosed && spans.length > 1 && spans[0][0] === 0;
  if (runsOn && spans[spans.length - 1][1] === ruler.length) {
    pieces[0] = joined(pieces.pop() as Cubics, pieces[0]);
  }
  return { open: pieces, closed: [] };
}

/** Start and end of each dash along a line of the given length; `at` is the place in the pattern. */
function dashesOn(
  element: Element,
  length: number,
  pattern: readonly number[],
  at: number,
): [number, number][] {
  const spans: [number, number][] = [];
  let from = -at;
  for (let k = 0; from < length - SPECK; k++) {
    if (k > 2 * MAX_DASHES) throw tooManyDashes(element);
    const to = from + pattern[k % pattern.length];
    const isSeen = k % 2 === 0 && (from >= 0 || to > SPECK);
    if (isSeen) spans.push([Math.max(0, from), Math.min(length, to)]);
    from = to;
  }
  return spans;
}

export const tooManyDashes = (element: Element): SvgImportError =>
  new SvgImportError(
    `${nameOf(element)}: its stroke has more than ${MAX_DASHES} dashes. Make its stroke-dasharray ` +
      'longer, or draw it solid.',
  );

/** Measures a chain once, to cut many pieces from it. */
class Ruler {
  private readonly ends: Float64Array;

  constructor(private readonly chain: Cubics) {
    this.ends = new Float64Array(chain.length / 8);
    let sum = 0;
    for (let i = 0; i < chain.length; i += 8) {
      sum += cubicLength(chain, i);
      this.ends[i / 8] = sum;
    }
  }

  get length(): number {
    return this.ends[this.ends.length - 1] ?? 0;
  }

  piece(from: number, to: number): Cubics {
    const [start, end] = [this.place(from), this.place(to)];
    return end > start ? subchain(this.chain, start, end) : this.speck(start);
  }

  /** The place of a length along the chain. */
  private place(length: number): number {
    let [low, high] = [0, this.ends.length - 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.ends[middle] < length) low = middle + 1;
      else high = middle;
    }
    const before = low > 0 ? this.ends[low - 1] : 0;
    const cubic = this.chain.subarray(low * 8, low * 8 + 8);
    return low + placeAtLength(cubic, length - before);
  }

  private speck(place: number): Cubics {
    const k = Math.min(Math.floor(place), this.ends.length - 1);
    const { x, y, dx, dy } = jetAt(this.chain, k * 8, place - k);
    const speed = Math.hypot(dx, dy) || 1;
    const [ex, ey] = [(SPECK * dx) / speed, (SPECK * dy) / speed];
    return Float64Array.of(
      x,
      y,
      x + ex / 3,
      y + ey / 3,
      x + (2 * ex) / 3,
      y + (2 * ey) / 3,
      x + ex,
      y + ey,
    );
  }
}
