import { smoothLine } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Line, Region } from '../../geometry/types.js';
import { endsOf, handCut } from '../brick/craft.js';
import { levelOf } from '../built/finish.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Support } from './climber.js';
import { beamOf, braceOf, type End, postOf, sizesOf } from './timber.js';

/** A pergola's timber, what can be climbed of it, and a place where it stands. */
export interface Built {
  readonly solids: readonly Region[];
  readonly lines: readonly Line[];
  readonly support: Support;
  readonly foot: number;
}

/** A rafter's end over the beam, and from one to the next, as shares of the height. */
const TAIL = 0.06;
const STEP = 0.15;
const BRACE = 0.17;

/** Seen from the side: posts in a line under a long beam, rafters' ends over it. */
export function rowOf(plot: Plot, bays: number, end: End, random: Random): Built {
  const { width, height, root, smallestWeb, smallestHole } = plot;
  const { post, beam, rafter, overhang } = sizesOf(plot);
  const ends = endsOf(plot);
  const least = post + 2 * smallestHole;
  const span = width - 2 * overhang - post;
  const count = Math.max(1, Math.min(bays, Math.floor(span / least)));
  const xs = Array.from({ length: count + 1 }, (_, i) => {
    const inner = i > 0 && i < count ? random.branch(`x ${i}`).between(-0.03, 0.03) : 0;
    return -span / 2 + ((i + inner) * span) / count;
  });
  const tail = Math.max(0.6 * smallestWeb, TAIL * height);
  const top = -(height - tail);
  const posts = xs.flatMap((x, i) =>
    postOf(x, 0, top + beam / 2, post, random.branch(`post ${i}`)),
  );
  const long = beamOf(ends.left, ends.right, top, beam, overhang, end);
  const step = Math.max(rafter + 1.35 * smallestHole, STEP * height);
  const room = ends.right - ends.left - 2 * rafter;
  const rafters = Math.max(1, Math.floor(room / step));
  const tails = Array.from({ length: rafters + 1 }, (_, i) => {
    const luck = random.branch(`rafter ${i}`);
    const x = ends.left + rafter + (i * room) / rafters;
    const half = (rafter / 2) * luck.between(1, 1.12);
    const high = tail * luck.between(0.85, 1);
    return handCut(
      [
        { x: x - half, y: top + 0.5 },
        { x: x - half * 0.95, y: top - high },
        { x: x + half * 0.95, y: top - high },
        { x: x + half, y: top + 0.5 },
      ],
      0.1,
      luck,
    );
  });
  const under = top + beam;
  const reach = BRACE * height;
  const braced = reach - post / 2 > 2 * smallestHole && 2 * reach + post < span / count;
  const thick = Math.max(1.15 * smallestWeb, 0.032 * height);
  const braces = braced
    ? xs.flatMap((x, i) => [
        ...(i > 0 ? [braceOf(x, under, -1, reach, thick)] : []),
        ...(i < count ? [braceOf(x, under, 1, reach, thick)] : []),
      ])
    : [];
  const strokes = levelOf(plot) + 1;
  const stretch = (ends.right - ends.left) / strokes;
  const lines = Array.from({ length: strokes }, (_, i) => {
    const luck = random.branch(`grain ${i}`);
    const from = ends.left + stretch * (i + luck.between(0.1, 0.45));
    const y = top + beam * luck.between(0.45, 0.55);
    return smoothLine([
      { x: from, y },
      { x: from + stretch * luck.between(0.2, 0.45), y: y + luck.between(-0.1, 0.1) },
    ]);
  });
  const bed = rectangle(xs[0] - post, 0, xs[count] - xs[0] + 2 * post, root);
  return {
    solids: [bed, ...posts, long, ...tails, ...braces],
    lines,
    support: {
      beams: [{ from: xs[0], to: xs[count], y: () => under, thick: beam }],
      posts: xs.map((x) => ({ x, top: under, foot: 0 })),
    },
    foot: xs[0],
  };
}
