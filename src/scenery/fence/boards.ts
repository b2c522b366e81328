import { smoothLine } from '../../geometry/pen.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { handCut, mix } from '../brick/craft.js';
import { type Drawing, levelOf } from '../built/finish.js';
import type { Random } from '../random.js';
import { at, type Layout, type Run, SUNK_MM, WANDER_MM } from './plan.js';

interface Boarding {
  /** Width of a board and of a gap as shares of the height; the gap from close to open. */
  readonly board: number;
  readonly gap: readonly [number, number];
  /** How far tops differ in a new fence and in an old one, as shares of the height. */
  readonly uneven: readonly [number, number];
}

const PICKET: Boarding = { board: 0.105, gap: [0.055, 0.13], uneven: [0.004, 0.045] };
const PALING: Boarding = { board: 0.19, gap: [0.015, 0.13], uneven: [0.02, 0.1] };
const BOARDINGS = { picket: PICKET, paling: PALING } as const;

const HEADS = ['point', 'round', 'lance'] as const;
type Head = (typeof HEADS)[number] | 'slant';

/** Least width of a board in webs and of a gap in smallest holes. */
const LEAST_BOARD = 1.25;
const LEAST_GAP = 1.2;
/** With fewer boards than this the gaps are scored, not cut. */
const LEAST_BOARDS = 3;
const RAIL = 0.065;

/** Upright boards nailed on two rails. */
export function boardsOf(
  layout: Layout,
  style: keyof typeof BOARDINGS,
  run: Run,
  random: Random,
): Drawing {
  const { plot, wear, gaps } = layout;
  const { height, smallestWeb, smallestHole } = plot;
  const boarding = BOARDINGS[style];
  const head = style === 'paling' ? 'slant' : layout.kin.branch('head').pick(HEADS);
  const leastGap = LEAST_GAP * smallestHole;
  const wide = Math.max(LEAST_BOARD * smallestWeb, boarding.board * height);
  const wanted = Math.max(leastGap, mix(...boarding.gap, gaps) * height);
  // A board that would stand behind a gate post only helps to set out the others.
  const [atLeft, atRight] = [run.from > layout.whole.from, run.to < layout.whole.to];
  const from = run.from - (atLeft ? wide / 2 : 0);
  const length = run.to + (atRight ? wide / 2 : 0) - from;
  const fitting = Math.floor((length + wanted) / (wide + wanted));
  const isOpen = fitting >= LEAST_BOARDS;
  const count = isOpen ? fitting : Math.max(1, Math.round(length / wide));
  const gap = isOpen ? wanted : 0;
  const board = (length - (count - 1) * gap) / count;
  const step = board + gap;
  const luck = random.branch('boards');
  const isOld = isOpen && count > 5 && wear > 0.1;
  const missing = isOld ? luck.whole(2, count - 3) : -1;
  // The board beside the gap has come off its upper nail and leans into it.
  const leans = luck.pick([-1, 1]);
  const loose = isOld ? missing - leans : -1;
  const solids: Region[] = [];
  const lines: Line[] = [];
  for (let i = 0; i < count; i++) {
    const own = random.branch(i);
    const uneven = mix(...boarding.uneven, wear) * height;
    const top = height - uneven * own.between(0, 2);
    const isBroken = i === loose && own.branch('broken').chance(0.3);
    const lean = i === loose ? leans * step * own.branch('lean').between(0.4, 0.6) : 0;
    const sway = (gap > leastGap ? (gap - leastGap) * 0.4 : 0) * wear * own.between(-1, 1);
    const isPost = count > 1 && ((atLeft && i === 0) || (atRight && i === count - 1));
    if (i === missing || isPost) continue;
    const x = from + i * step;
    const shape = outlineOf(x, board, isBroken ? top * 0.6 : top, isBroken ? 'slant' : head, own);
    const lent = shape.map((p) => at(p.x + ((sway + lean) * -p.y) / height, p.y));
    const drawn = handCut(lent, WANDER_MM, own.branch('cut'));
    solids.push(drawn);
    if (!isOpen && i > 0) lines.push(smoothLine([at(x, -0.5), at(x, -top * 0.9)]));
    lines.push(...grainOf(layout, x, board, top, own.branch('grain')));
  }
  const rails = railsOf(layout, run, random.branch('rails'));
  return { solids: [...solids, ...rails], cuts: [], lines };
}

/** One board's corners, clockwise from its foot. */
function outlineOf(x: number, wide: number, top: number, head: Head, luck: Random): Point[] {
  const y = -top;
  const [l, r, m] = [x, x + wide, x + wide / 2];
  const feet = [at(r, SUNK_MM), at(l, SUNK_MM)];
  switch (head) {
    case 'point':
      return [
        at(l, y + wide * 0.62),
        at(m - wide * 0.08, y),
        at(m + wide * 0.08, y),
        at(r, y + wide * 0.62),
        ...feet,
      ];
    case 'round':
      return [
        at(l, y + wide * 0.5),
        at(l + wide * 0.13, y + wide * 0.16),
        at(l + wide * 0.36, y),
        at(r - wide * 0.36, y),
        at(r - wide * 0.13, y + wide * 0.16),
        at(r, y + wide * 0.5),
        ...feet,
      ];
    case 'lance':
      return [
        at(l, y + wide * 1.1),
        at(l + wide * 0.04, y + wide * 0.62),
        at(m - wide * 0.1, y),
        at(m + wide * 0.1, y),
        at(r - wide * 0.04, y + wide * 0.62),
        at(r, y + wide * 1.1),
        ...feet,
      ];
    case 'slant': {
      const fall = wide * luck.branch('slant').between(-0.3, 0.3);
      return [at(l, y + Math.max(0, fall)), at(r, y + Math.max(0, -fall)), ...feet];
    }
  }
}

/** Two rails where there is room to see through between them, or one. */
function railsOf({ plot }: Layout, run: Run, random: Random): Region[] {
  const { height, smallestWeb, smallestHole } = plot;
  const thick = Math.max(1.12 * smallestWeb, RAIL * height);
  const clear = 1.4 * smallestHole;
  const low = Math.max(clear + thick / 2, 0.24 * height);
  const high = Math.min(0.72 * height, height - Math.max(0.2 * height, thick));
  if (high - thick / 2 < clear) return [];
  const levels = high - low >= thick + clear ? [low, high] : [high];
  return levels.map((level, i) => {
    const luck = random.branch(i);
    const y = () => -level + luck.between(-0.012, 0.012) * height;
    const corners = [
      at(run.from, y() - thick / 2),
      at((run.from + run.to) / 2, -level - thick / 2),
      at(run.to, y() - thick / 2),
      at(run.to, y() + thick / 2 + 0.2),
      at((run.from + run.to) / 2, -level + thick / 2 + 0.2),
      at(run.from, y() + thick / 2 + 0.2),
    ];
    return handCut(corners, WANDER_MM, luck);
  });
}

/** A long stroke or two down a broad board, never its whole length. */
function grainOf(layout: Layout, x: number, wide: number, top: number, random: Random): Line[] {
  const strokes = levelOf(layout.plot);
  return Array.from({ length: strokes }, (_, i) => {
    const luck = random.branch(i);
    const from = top * luck.between(0.06, 0.45);
    const to = from + top * luck.between(0.2, 0.4);
    const across = x + wide * luck.between(0.35, 0.65);
    const bend = wide * luck.between(-0.05, 0.05);
    return smoothLine([at(across, -from), at(across + bend, -(from + to) / 2), at(across, -to)]);
  });
}
