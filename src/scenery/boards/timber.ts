import { smoothLine } from '../../geometry/pen.js';
import { circle, ellipse } from '../../geometry/primitives.js';
import type { Bounds, Line, Point } from '../../geometry/types.js';
import { handDrawn, mix } from '../brick/craft.js';
import type { Box } from '../brick/patches.js';
import type { Random } from '../random.js';
import { type Board, studSpacing } from './layout.js';

const WANDER_MM = 0.15;
/** End joints stop this short of the board's edges: scores that meet lift the corners. */
const SHY_MM = 0.35;
/** Nail heads, and how far they are from a joint, mm. */
const NAIL_MM = 0.36;
const NAIL_OFF_MM = 1.1;
/** One nail in a board narrower than this, two in a wider one, mm. */
const TWO_NAILS_FROM_MM = 5;
const NAILS_SEEN = 0.8;
/** Grain lines are at least this far apart and from the board's edges, mm. */
const GRAIN_APART_MM = 1.25;
const GRAIN_STEP_MM = 1.5;
const GRAIN_STROKE_MM = [7, 20] as const;
/** Knots: radius across the board as a share of its width, and how much longer than high. */
const KNOT = 0.11;
const KNOT_LONG = 1.5;
/** The grain is parted by a knot over this many of its lengths. */
const PARTED = 1.6;

/** Whether a place on the boards is one that is drawn. */
export type Shown = (x: number, y: number) => boolean;

export const shownIn =
  (sections: readonly Box[]): Shown =>
  (x, y) =>
    sections.some((s) => x >= s.x0 && x <= s.x1 && y > s.y0 && y < s.y1);

/** Joints across the boards, where board meets board end to end. */
export function endJoints(boards: readonly Board[], shown: Shown, random: Random): Line[] {
  return boards.flatMap(({ row, y0, y1, ends }) =>
    ends
      .filter((x) => shown(x - 0.1, (y0 + y1) / 2) || shown(x + 0.1, (y0 + y1) / 2))
      .map((x) => {
        const across = [y0 + SHY_MM, y1 - SHY_MM].map((y) => ({ x, y }));
        return handDrawn(across, WANDER_MM, random.branch(`${row} ${Math.round(x)}`));
      }),
  );
}

/** Nail heads over every stud, on both sides of a joint. */
export function nailHeads(
  boards: readonly Board[],
  boardMm: number,
  box: Bounds,
  shown: Shown,
  random: Random,
): Line[] {
  const stud = studSpacing(boardMm);
  return boards.flatMap(({ row, y0, y1, ends }) => {
    const lines: Line[] = [];
    const across = y1 - y0 < TWO_NAILS_FROM_MM ? [0.5] : [0.26, 0.74];
    for (let k = Math.ceil(box.minX / stud); k * stud < box.maxX; k++) {
      const x = k * stud;
      const offs = ends.includes(x) ? [-NAIL_OFF_MM, NAIL_OFF_MM] : [0];
      for (const off of offs) {
        for (const t of across) {
          const luck = random.branch(`${row} ${k} ${off} ${t}`);
          const at = {
            x: x + off + luck.between(-0.3, 0.3) * (off === 0 ? 1 : 0.5),
            y: mix(y0, y1, t),
          };
          const y = at.y + luck.between(-0.25, 0.25);
          if (!luck.chance(NAILS_SEEN) || !shown(at.x, y)) continue;
          lines.push({ cubics: circle(at.x, y, NAIL_MM).contours[0] });
        }
      }
    }
    return lines;
  });
}

interface Knot extends Point {
  readonly rx: number;
  readonly ry: number;
}

/** Knots, and lines of grain that part round them, in `share` of the boards. */
export function grainOf(
  boards: readonly Board[],
  boardMm: number,
  box: Bounds,
  share: number,
  shown: Shown,
  random: Random,
): { readonly knots: readonly Line[]; readonly runs: readonly Line[] } {
  const stud = studSpacing(boardMm);
  const knots: Line[] = [];
  const runs: Line[] = [];
  for (const board of boards) {
    const luck = random.branch(board.row);
    const own = knotsOf(board, stud, box, share, luck.branch('knots')).filter((k) =>
      shown(k.x, k.y),
    );
    knots.push(...own.map((k) => ({ cubics: ellipse(k.x, k.y, k.rx, k.ry).contours[0] })));
    runs.push(...runsOf(board, own, box, share, shown, luck.branch('runs')));
  }
  return { knots, runs };
}

/** About one knot between two studs at most, away from the nails. */
function knotsOf(board: Board, stud: number, box: Bounds, share: number, random: Random): Knot[] {
  const knots: Knot[] = [];
  const width = board.y1 - board.y0;
  const ry = Math.max(0.45, KNOT * width);
  if (width < 4 * GRAIN_APART_MM) return knots;
  for (let k = Math.floor(box.minX / stud); k * stud < box.maxX; k++) {
    const luck = random.branch(k);
    const at = { x: (k + luck.between(0.3, 0.7)) * stud, t: luck.between(0.38, 0.62) };
    if (!luck.chance(0.3 * share)) continue;
    knots.push({ x: at.x, y: mix(board.y0, board.y1, at.t), rx: ry * KNOT_LONG, ry });
  }
  return knots;
}

function runsOf(
  { y0, y1, ends }: Board,
  knots: readonly Knot[],
  box: Bounds,
  share: number,
  shown: Shown,
  random: Random,
): Line[] {
  const lines: Line[] = [];
  const count = Math.min(3, Math.floor((y1 - y0) / GRAIN_APART_MM) - 1);
  for (let n = 0; n < count; n++) {
    const base = mix(y0, y1, (n + 1) / (count + 1));
    const luck = random.branch(n);
    const drift = luck.between(-0.012, 0.012);
    for (let x = box.minX - luck.between(0, 15); x < box.maxX; ) {
      const length = luck.between(...GRAIN_STROKE_MM);
      const [from, to] = [x, x + length];
      x = to + luck.between(2, 9);
      const nearKnot = knots.some((k) => k.x > from - 2 && k.x < to + 2);
      const isDrawn = luck.chance(nearKnot ? 0.95 : 0.42 * share);
      if (!isDrawn || ends.some((e) => e > from - 1 && e < to + 1)) continue;
      const points: Point[] = [];
      for (let s = from; s <= to; s += GRAIN_STEP_MM) {
        const y = parted(base + drift * (s - from), s, knots, (y0 + y1) / 2, n, count);
        if (shown(s, y)) points.push({ x: s, y });
        else if (points.length > 0) break;
      }
      if (points.length > 2) lines.push(smoothLine(points));
    }
  }
  return lines;
}

/** A line of grain pushed off the knots that it would run into. */
function parted(
  y: number,
  x: number,
  knots: readonly Knot[],
  middle: number,
  n: number,
  count: number,
): number {
  let pushed = y;
  for (const k of knots) {
    const reach = PARTED * k.rx;
    const near = Math.exp(-(((x - k.x) / reach) ** 2));
    const way = n * 2 + 1 === count ? Math.sign(middle - k.y) || 1 : Math.sign(y - k.y) || 1;
    const wanted = k.y + way * (k.ry + 0.7);
    // Only a line that comes nearer than that is pushed.
    if ((wanted - y) * way > 0) pushed += (wanted - y) * near;
  }
  return pushed;
}
