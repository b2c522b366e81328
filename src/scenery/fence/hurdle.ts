import { pen, smoothLine } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { handCut, mix, shapeOf } from '../brick/craft.js';
import { smoothNoise } from '../brick/patches.js';
import { type Drawing, levelOf } from '../built/finish.js';
import type { Random } from '../random.js';
import { at, type Layout, type Run, SUNK_MM, WANDER_MM } from './plan.js';

/** Weave from under its foot to under the sails' tops, as shares of the height. */
const FOOT = 0.1;
const HEAD = 0.84;
/** From sail to sail and from row to row, as shares of the height; least height of a row, mm. */
const SAIL = 0.36;
const ROW = 0.085;
const LEAST_ROW_MM = 2;
/** Share of the bays that stand on the ground. */
const GROWN_IN = 0.55;
/** How far a withy swings round a sail, in rows. */
const SWING = 0.3;

interface Weave {
  readonly xs: readonly number[];
  readonly rows: number;
  readonly row: number;
  readonly foot: number;
  readonly sail: number;
}

/** Split hazel woven round upright sails. */
export function hurdleOf(layout: Layout, run: Run, random: Random): Drawing {
  const { plot, gaps, wear } = layout;
  const { height, smallestWeb, smallestHole } = plot;
  const sail = Math.max(1.3 * smallestWeb, 0.055 * height);
  const length = run.to - run.from - sail;
  const spacing = Math.max(SAIL * height, sail + 1.3 * smallestHole);
  const count = Math.max(1, Math.round(length / spacing));
  const xs = Array.from(
    { length: count + 1 },
    (_, i) => run.from + sail / 2 + (i * length) / count,
  );
  // The foot is either well clear of the ground or on it.
  const clear = Math.max(FOOT * height, 1.3 * smallestHole);
  const isClear = clear < 0.3 * height && length / count - sail > 1.2 * smallestHole;
  const foot = isClear ? clear : -SUNK_MM;
  const rows = Math.max(
    2,
    Math.round((HEAD * height - foot) / Math.max(LEAST_ROW_MM, ROW * height)),
  );
  const weave = { xs, rows, row: (HEAD * height - foot) / rows, foot, sail };
  const sails = xs.map((x, i) => sailAt(x, weave, height, wear, random.branch(`sail ${i}`)));
  const cuts = eyesOf(weave, gaps, smallestHole, smallestWeb, random.branch('eyes'));
  const lines = rowLines(weave, random.branch('lines'));
  return {
    solids: [
      panelOf(weave, run, wear, random.branch('panel')),
      ...sails,
      ...grownIn(weave, random.branch('grown in')),
    ],
    cuts,
    lines: levelOf(plot) === 0 ? lines.filter((_, i) => i % 3 !== 2) : lines,
  };
}

/** Under some bays the ground has grown up to the weave. */
function grownIn({ xs, foot }: Weave, random: Random): Region[] {
  if (foot <= 0) return [];
  return xs.slice(1).flatMap((x, i) => {
    if (!random.branch(i).chance(GROWN_IN)) return [];
    return [rectangle(xs[i], -foot - 0.5, x - xs[i], foot + 0.5 + SUNK_MM)];
  });
}

function sailAt(x: number, { sail }: Weave, height: number, wear: number, random: Random): Region {
  const top = height * random.between(0.93, 1);
  const lean = wear * 0.03 * height * random.between(-1, 1);
  const half = sail / 2;
  const corners = [
    at(x - half, SUNK_MM),
    at(x - half + lean, -top + half),
    at(x - half * 0.3 + lean, -top),
    at(x + half + lean, -top + half * random.between(0.2, 1)),
    at(x + half, SUNK_MM),
  ];
  return handCut(corners, WANDER_MM, random.branch('cut'));
}

/** All that is woven: its ends bulge row by row where withies turn back. */
function panelOf(weave: Weave, run: Run, wear: number, random: Random): Region {
  const { rows, row, foot, xs } = weave;
  const left: Point[] = [];
  const right: Point[] = [];
  for (let k = 0; k < rows; k++) {
    const luck = random.branch(k);
    const y = -foot - (k + 0.5) * row;
    const turn = (k % 2 ? 0.1 : 0.42) * row * luck.between(0.7, 1.2 + 0.3 * wear);
    left.push(at(run.from - turn, y));
    right.push(at(run.to + (0.5 * row - turn), y));
  }
  const top = -foot - rows * row;
  const crest = xs.slice(1).flatMap((x, i) => {
    const side = i % 2 ? 1 : -1;
    return [at((xs[i] + x) / 2, top + side * SWING * 0.5 * row), at(x, top)];
  });
  const base = [...crest].reverse().map(({ x, y }) => at(x, -foot - (y - top) * 0.5));
  return shapeOf(
    pen(run.from, -foot)
      .smoothTo([...left, at(xs[0], top), ...crest, ...right.reverse(), at(run.to, -foot), ...base])
      .close(),
  );
}

/** Slits between the withies, where they part in the middle of a bay. */
function eyesOf(
  { xs, rows, row, foot, sail }: Weave,
  gaps: number,
  smallestHole: number,
  smallestWeb: number,
  random: Random,
): Region[] {
  const tall = 1.2 * smallestHole;
  const apart = Math.ceil((tall + 1.4 * smallestWeb) / row);
  const eyes: Region[] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    const luck = random.branch(i);
    const from = xs[i] + sail / 2 + 0.6 * smallestWeb;
    const to = xs[i + 1] - sail / 2 - 0.6 * smallestWeb;
    let k = luck.whole(1, Math.max(1, apart));
    for (; k < rows - 1 && to - from > 1.5 * tall; k += apart + luck.whole(0, 2)) {
      const own = luck.branch(k);
      const isOpen = own.chance(0.15 + 0.75 * gaps);
      const reach = (to - from) * own.between(0.36, 0.5);
      const room = Math.min(foot + k * row, (rows - k) * row) > tall / 2 + smallestWeb;
      if (!isOpen || !room) continue;
      const m = mix(from, to, 0.5) + (to - from) * own.between(-0.06, 0.06);
      const y = -foot - k * row;
      eyes.push(
        shapeOf(
          pen(m - reach, y)
            .curveTo(
              m - reach * 0.5,
              y - tall * 0.68,
              m + reach * 0.5,
              y - tall * 0.68,
              m + reach,
              y,
            )
            .curveTo(
              m + reach * 0.5,
              y + tall * 0.68,
              m - reach * 0.5,
              y + tall * 0.68,
              m - reach,
              y,
            )
            .close(),
        ),
      );
    }
  }
  return eyes;
}

/** Rows of withies in patches, in front of one sail and behind the next. */
function rowLines({ xs, rows, row, foot, sail }: Weave, random: Random): Line[] {
  const shown = smoothNoise(random.branch('patches'), 14, 7);
  const lines: Line[] = [];
  for (let k = 1; k < rows; k++) {
    const y = -foot - k * row;
    for (let i = 0; i + 1 < xs.length; i++) {
      if (shown(xs[i], y) < 0.42) continue;
      const isBehind = (i + k) % 2 === 0;
      const swing = SWING * row * (isBehind ? 1 : -1);
      const from = isBehind ? xs[i] + sail * 0.5 : xs[i] - sail * 0.6;
      const to = isBehind ? xs[i + 1] + sail * 0.6 : xs[i + 1] - sail * 0.5;
      lines.push(smoothLine([at(from, y), at((from + to) / 2, y + swing), at(to, y)]));
    }
  }
  return lines;
}
