import { pen } from '../../geometry/pen.js';
import type { Line, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { groundOf } from '../land/ground.js';
import type { Random } from '../random.js';

/** Snow's edge from left to right, and the crests or lobes along it. */
export interface Edge {
  readonly line: Line;
  readonly crests: readonly Crest[];
}

export interface Crest extends Point {
  /** How far the snow reaches to each side of it, mm. */
  readonly half: number;
  /** Where the wind has carried it: 1 to the right. */
  readonly lee: number;
}

/** How snow lies, in shares of the height: how low its lobes and the notches between them are. */
export interface Lie {
  /** Breadth of a lobe in heights, in one long sweep and in many lumps. */
  readonly breadth: readonly [number, number];
  readonly deep: readonly [number, number];
  readonly notch: readonly [number, number];
}

/** Snow that hangs over, soft mounds of a drift, and the nearly level cap of a ledge. */
export const LIES = {
  hanging: { breadth: [1.4, 0.6], deep: [0.56, 0.92], notch: [0.2, 0.42] },
  drifted: { breadth: [4.6, 1.3], deep: [0.5, 0.88], notch: [0.3, 0.46] },
  capped: { breadth: [2.2, 0.8], deep: [0.9, 1], notch: [0.8, 0.88] },
} as const satisfies Record<string, Lie>;

/** Lobes differ in breadth within this, and none is narrower than so many webs. */
const UNEVEN = [0.6, 1.4] as const;
const LOBE_WEBS = 5;

/** Snow that lies on its side of the window in soft lobes, one of which reaches farthest. */
export function lobesOf(plot: Plot, lie: Lie, lumps: number, random: Random): Edge {
  const { height, smallestWeb, smallestHole } = plot;
  const { left, right, freeLeft, freeRight } = groundOf(plot);
  const least = LOBE_WEBS * smallestWeb + smallestHole;
  const wanted = Math.max(least, height * mix(...lie.breadth, lumps));
  const count = Math.max(1, Math.round((right - left) / wanted));
  const shares = Array.from({ length: count }, (_, i) =>
    random.branch(`lobe ${i}`).between(...UNEVEN),
  );
  const unit = (right - left) / shares.reduce((a, b) => a + b, 0);
  const lowest = random.whole(0, count - 1);
  const notch = (i: number): number => height * random.branch(`notch ${i}`).between(...lie.notch);
  let x = left;
  let y = freeLeft ? 0 : -notch(0);
  const outline = pen(x, y);
  const crests: Crest[] = [];
  shares.forEach((share, i) => {
    const luck = random.branch(`deep ${i}`);
    const width = share * unit;
    const low = -height * (i === lowest ? 1 : luck.between(...lie.deep));
    const middle = x + width * luck.between(0.4, 0.6);
    const last = i === count - 1;
    const end = { x: last ? right : x + width, y: last && freeRight ? 0 : -notch(i + 1) };
    outline.curveTo(x + 0.02 * width, mix(y, low, 0.75), x + 0.16 * width, low, middle, low);
    outline.curveTo(
      end.x - 0.16 * width,
      low,
      end.x - 0.02 * width,
      mix(end.y, low, 0.75),
      end.x,
      end.y,
    );
    crests.push({ x: middle, y: low, half: width / 2, lee: luck.chance(0.5) ? 1 : -1 });
    x = end.x;
    y = end.y;
  });
  return { line: outline.line(), crests };
}
