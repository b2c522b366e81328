import { union } from '../../geometry/boolean/boolean.js';
import { pen } from '../../geometry/pen.js';
import { circle, rectangle, roundedRectangle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Random } from '../random.js';

/** One round of a heaped cloud. */
export interface Lobe extends Point {
  readonly radius: number;
}

/** Where a heaped cloud lies: y down, its base level, mm. */
export interface Heap {
  readonly left: number;
  readonly right: number;
  readonly base: number;
  readonly top: number;
  /** Where it is highest, as a share of its width; by chance a little off the middle. */
  readonly summit?: number;
}

/** A heaped cloud: rounds of uneven size over a level base. */
export interface Billow {
  readonly region: Region;
  readonly lobes: readonly Lobe[];
}

/** Radius of rounds as a share of the cloud's height there: small ones and great ones. */
const SMALL = [0.16, 0.34] as const;
const GREAT = [0.3, 0.56] as const;
/** From one round to the next, in radii. */
const STEP = [0.3, 0.8] as const;
/** Height at a cloud's ends as a share of its summit's. */
const FOOT = 0.26;
const MOST_LOBES = 40;

/**
 * Rounds set side by side along a lopsided dome, small at its ends and uneven over its top, on a
 * level base with round corners. `leastMm` is the smallest radius that may be drawn, and `size`
 * says how large the rounds are, 0 to 1.
 */
export function billowOf(heap: Heap, leastMm: number, random: Random, size = 0.5): Billow {
  const { left, right, base, top } = heap;
  const width = right - left;
  const height = base - top;
  const summit = left + width * (heap.summit ?? random.between(0.34, 0.66));
  const riseAt = (x: number): number => {
    const flank = x < summit ? summit - left : right - summit;
    return height * mix(1, FOOT, Math.min(1, Math.abs(x - summit) / Math.max(1e-6, flank)) ** 1.5);
  };
  const round = (x: number, hand: number, luck: Random): Lobe => {
    const share = luck.between(mix(SMALL[0], GREAT[0], size), mix(SMALL[1], GREAT[1], size));
    const radius = Math.min(width / 2, Math.max(leastMm, riseAt(x + hand * 0.1 * height) * share));
    const at = Math.max(left + radius, Math.min(right - radius, x + hand * radius));
    const high = Math.max(2 * radius, riseAt(at) * luck.between(0.86, 1));
    return { x: at, y: base - high + radius, radius };
  };
  const flank = (from: number, hand: number, luck: Random): Lobe[] => {
    const lobes: Lobe[] = [];
    let x = from;
    for (let i = 0; i < MOST_LOBES && hand * (summit - x) > 0; i++) {
      const lobe = round(x, hand, luck.branch(i));
      lobes.push(lobe);
      x = lobe.x + hand * lobe.radius * luck.branch(i).between(...STEP);
    }
    return lobes;
  };
  const lobes = [
    ...flank(left, 1, random.branch('left')),
    ...flank(right, -1, random.branch('right')).reverse(),
  ];
  return { region: filled(lobes, base), lobes };
}

/** The rounds and what lies under them, down to the base. */
function filled(lobes: readonly Lobe[], base: number): Region {
  const columns = lobes.map(({ x, y, radius }) => {
    const corner = Math.min(radius, base - y);
    return roundedRectangle(x - radius, y - radius, 2 * radius, base - y + radius, corner);
  });
  const between = lobes.slice(1).map((b, i) => {
    const a = lobes[i];
    const top = Math.max(a.y, b.y);
    return rectangle(
      a.x,
      Math.min(top, base - 0.1),
      Math.max(0.1, b.x - a.x),
      Math.max(0.1, base - top),
    );
  });
  return union([...columns, ...between, ...lobes.map((l) => circle(l.x, l.y, l.radius))]);
}

/** A curl that runs on inwards from a round's edge: `sweepDeg` of a narrowing turn. */
export function curl({ x, y, radius }: Lobe, startDeg: number, sweepDeg: number): Line {
  const steps = 10;
  const at = (k: number): Point => {
    const t = k / steps;
    const a = ((startDeg + sweepDeg * t) * Math.PI) / 180;
    const r = radius * mix(0.78, 0.36, t);
    return { x: x + r * Math.cos(a), y: y + r * Math.sin(a) };
  };
  const first = at(0);
  return pen(first.x, first.y)
    .smoothTo(Array.from({ length: steps }, (_, k) => at(k + 1)))
    .line();
}
