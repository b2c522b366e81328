import { linesInside } from '../../geometry/clip-lines.js';
import { regionBounds } from '../../geometry/measure.js';
import { smoothLine } from '../../geometry/pen.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { extent, level, type Span } from './cells.js';
import type { Box } from './patches.js';

/** Coordinates this near (mm) are the same joint. */
const SAME_MM = 1e-3;
/** A perpend stops this short of its beds: where scores meet, the card's corners lift. */
const SHY_MM = 0.3;
/** A bed runs at most this far in one stroke: a longer one starts to fold. */
const LONGEST_BED_MM = 40;
const SHORTEST_BED_MM = 18;
/** The break in a bed, mm; a smaller one still folds. */
const BREAK_MM = 3;
/** A stroke shorter than this is not worth drawing. */
const SHORTEST_STROKE_MM = 1;
/** A perpend that an edge cuts down to less than this share of a course is left out. */
const LEAST_PERPEND = 0.45;
/** How far a drawn joint wanders off its line, mm: enough for the eye, far below the clearance. */
const WANDER_MM = 0.09;

/**
 * The joints round the given bricks as score lines, one line a joint however many bricks share it,
 * drawn by hand within `region`. Beds are broken so that none makes a hinge of what it crosses;
 * perpends stand only between beds.
 */
export function drawJoints(cells: readonly Box[], region: Region, random: Random): Line[] {
  if (cells.length === 0 || region.contours.length === 0) return [];
  return [...drawBeds(cells, region, random), ...drawPerpends(cells, region, random)];
}

/** The level joints along the given boxes, in strokes that make no hinge. */
export function drawBeds(cells: readonly Box[], region: Region, random: Random): Line[] {
  const lines: Line[] = [];
  const { minX, maxX } = regionBounds(region);
  for (const [y, spans] of bedSpans(cells)) {
    const luck = random.branch(`bed ${y.toFixed(2)}`);
    const frayed = merged(spans.map((s) => fray(s, luck)));
    const room = linesInside([level(minX - 1, maxX + 1, y)], region)
      .map(extent)
      .flatMap((s) => broken(s, luck));
    for (const s of overlaps(frayed, room)) {
      if (s.to - s.from >= SHORTEST_STROKE_MM) lines.push(byHand(s, y, luck));
    }
  }
  return lines;
}

/** The stretches of each bed, by its y, that border on a brick. */
function bedSpans(cells: readonly Box[]): Map<number, Span[]> {
  const beds = new Map<number, { y: number; spans: Span[] }>();
  for (const cell of cells) {
    for (const y of [cell.y0, cell.y1]) {
      const key = Math.round(y / SAME_MM);
      const bed = beds.get(key) ?? { y, spans: [] };
      bed.spans.push({ from: cell.x0, to: cell.x1 });
      beds.set(key, bed);
    }
  }
  const sorted = [...beds.values()].sort((a, b) => a.y - b.y);
  return new Map(sorted.map(({ y, spans }) => [y, merged(spans)]));
}

function drawPerpends(cells: readonly Box[], region: Region, random: Random): Line[] {
  const drawn = new Set<string>();
  const lines: Line[] = [];
  for (const c of [...cells].sort((a, b) => a.y0 - b.y0 || a.x0 - b.x0)) {
    for (const x of [c.x0, c.x1]) {
      const key = `${Math.round(c.y0 / SAME_MM)}/${Math.round(x / SAME_MM)}`;
      if (drawn.has(key)) continue;
      drawn.add(key);
      const luck = random.branch(`perpend ${key}`);
      const lean = luck.between(-WANDER_MM, WANDER_MM);
      const top = { x: x + lean, y: c.y0 + SHY_MM * luck.between(0.7, 1.3) };
      const foot = { x: x - lean, y: c.y1 - SHY_MM * luck.between(0.7, 1.3) };
      lines.push(smoothLine([top, foot]));
    }
  }
  const course = Math.max(...cells.map((c) => c.y1 - c.y0));
  return linesInside(lines, region).filter((l) => heightOf(l) >= LEAST_PERPEND * course);
}

const heightOf = (line: Line): number => Math.abs(line.cubics.at(-1)! - line.cubics[1]);

/** The run's ends drawn a little past or short of the brick. */
function fray(s: Span, luck: Random): Span {
  const length = s.to - s.from;
  return {
    from: s.from - length * luck.between(-0.04, 0.1),
    to: s.to + length * luck.between(-0.04, 0.1),
  };
}

/** The stretch in strokes, with at least one break in its middle half however short it is. */
function broken(s: Span, luck: Random): Span[] {
  const length = s.to - s.from;
  if (length < 2 * BREAK_MM)
    return length > BREAK_MM ? [{ from: s.from, to: s.to - BREAK_MM }] : [];
  const parts: Span[] = [];
  let from = s.from;
  while (from < s.to) {
    const left = s.to - from;
    const run =
      left > LONGEST_BED_MM
        ? luck.between(SHORTEST_BED_MM, LONGEST_BED_MM)
        : left * (parts.length === 0 ? luck.between(0.25, 0.7) : 1);
    parts.push({ from, to: Math.min(s.to, from + run) });
    from += run + BREAK_MM * luck.between(1, 1.3);
  }
  return parts;
}

function merged(spans: readonly Span[]): Span[] {
  const out: { from: number; to: number }[] = [];
  for (const s of [...spans].sort((a, b) => a.from - b.from)) {
    const last = out.at(-1);
    if (last && s.from <= last.to + SAME_MM) last.to = Math.max(last.to, s.to);
    else out.push({ ...s });
  }
  return out;
}

function overlaps(a: readonly Span[], b: readonly Span[]): Span[] {
  return a.flatMap((s) =>
    b
      .map((t) => ({ from: Math.max(s.from, t.from), to: Math.min(s.to, t.to) }))
      .filter((o) => o.to > o.from),
  );
}

/** A level stroke as a steady hand draws it. */
function byHand(s: Span, y: number, luck: Random): Line {
  const parts = Math.max(1, Math.round((s.to - s.from) / 9));
  const points: Point[] = [];
  for (let i = 0; i <= parts; i++) {
    points.push({
      x: s.from + ((s.to - s.from) * i) / parts,
      y: y + luck.between(-WANDER_MM, WANDER_MM),
    });
  }
  return smoothLine(points);
}
