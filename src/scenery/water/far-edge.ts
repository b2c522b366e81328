import { flatten, regionBounds } from '../../geometry/measure.js';
import { type Pen, pen } from '../../geometry/pen.js';
import type { Point, Region } from '../../geometry/types.js';
import { endsOf, mix, shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

/** The water's body and the edge at which it ends, away from the viewer. */
export interface FarEdge {
  readonly body: Region;
  /** Height of the edge at x, mm (negative upward). */
  readonly yAt: (x: number) => number;
  /** Between these the edge lies at its level; outside it runs out to a free end. */
  readonly from: number;
  readonly to: number;
  /** The lowest that the edge dips between its ends, mm. */
  readonly lowest: number;
}

/** From crest to crest, mm, and the crests' height at full chop. */
const WAVE_MM = [8, 26] as const;
const CREST_MM = 2.6;
/** An end that stands free of the jamb runs out over this many heights. */
const RUN_OUT = 1.6;
/** How far below the level a hollow dips, in crest heights, and where between two crests. */
const DIP = 0.12;
const LEE = 0.72;
const FLATTEN_MM = 0.02;

/** Low crests with long hollows between, as a breeze draws water; free ends run out flat. */
export function farEdgeOf(plot: Plot, chop: number, random: Random): FarEdge {
  const { height, root } = plot;
  const ends = endsOf(plot);
  const runs = runOuts(plot, ends);
  const crest = CREST_MM * chop * Math.min(1, height / 10);
  const level = -height + crest;
  const marks = [
    ...crests(-ends.left - runs.left, random.branch('left'))
      .map((m) => ({ ...m, x: -m.x }))
      .reverse(),
    { x: 0, high: random.between(0.5, 1) },
    ...crests(ends.right - runs.right, random.branch('right')),
  ].map(({ x, high }) => ({ x, y: level - crest * high }));

  const [first, last] = [marks[0], marks[marks.length - 1]];
  const outline = pen(ends.left, root);
  if (runs.left > 0) runOut(outline.lineTo(ends.left, 0), { x: ends.left, y: 0 }, first);
  else outline.lineTo(first.x, first.y);
  const lee = random.chance(0.5) ? LEE : 1 - LEE;
  for (let i = 1; i < marks.length; i++) hollow(outline, marks[i - 1], marks[i], level, lee);
  if (runs.right > 0) runOut(outline, last, { x: ends.right, y: 0 });
  const body = shapeOf(outline.lineTo(ends.right, root).close());
  const [from, to] = [first.x, last.x];
  return { body, yAt: edgeOf(body, root), from, to, lowest: level + DIP * crest };
}

/** How far each end that stands free of its jamb runs out; 0 where it meets the jamb. */
function runOuts(plot: Plot, ends: { readonly left: number; readonly right: number }) {
  const { window } = plot.frame;
  if (window.contours.length === 0) return { left: 0, right: 0 };
  const { minX, maxX } = regionBounds(window);
  const run = Math.min(plot.width * 0.4, RUN_OUT * plot.height);
  return { left: ends.left > minX ? run : 0, right: ends.right < maxX ? run : 0 };
}

/** Between the sill (y = 0) and the edge's level, bulging like the end of a lens. */
function runOut(outline: Pen, a: Point, b: Point): void {
  const [dx, y] = [b.x - a.x, Math.min(a.y, b.y)];
  const steep = 0.13 * dx;
  const flat = 0.5 * dx;
  if (a.y === 0) outline.curveTo(a.x + steep, y * 0.7, b.x - flat, y, b.x, b.y);
  else outline.curveTo(a.x + flat, y, b.x - steep, y * 0.7, b.x, b.y);
}

/** Crests outward from the middle, the last one on the end itself. */
function crests(end: number, random: Random): { x: number; high: number }[] {
  const list: { x: number; high: number }[] = [];
  for (let x = random.between(...WAVE_MM); ; x += random.between(...WAVE_MM)) {
    const last = x > end - WAVE_MM[0];
    // Now and then a crest stands out among low ones.
    const high = random.chance(0.35) ? random.between(0.7, 1) : random.between(0.1, 0.45);
    list.push({ x: last ? end : x, high: last ? high * 0.4 : high });
    if (last) return list;
  }
}

/** From crest to crest through a hollow that is deepest towards the lee side. */
function hollow(outline: Pen, a: Point, b: Point, level: number, lee: number): void {
  const x = mix(a.x, b.x, lee);
  const low = level + DIP * (level - Math.min(a.y, b.y));
  outline.curveTo(mix(a.x, x, 0.25), mix(a.y, low, 0.75), mix(a.x, x, 0.6), low, x, low);
  outline.curveTo(mix(x, b.x, 0.4), low, mix(x, b.x, 0.75), mix(low, b.y, 0.25), b.x, b.y);
}

/** Height of the outline's upper side at any x. */
function edgeOf(body: Region, root: number): (x: number) => number {
  const points: Point[] = flatten(body.contours[0], FLATTEN_MM).filter((p) => p.y < root - 1e-6);
  const sorted = [...points].sort((a, b) => a.x - b.x);
  return (x) => {
    const i = sorted.findIndex((p) => p.x >= x);
    if (i < 0) return sorted[sorted.length - 1].y;
    if (i === 0) return sorted[0].y;
    const [a, b] = [sorted[i - 1], sorted[i]];
    return b.x - a.x < 1e-9 ? b.y : mix(a.y, b.y, (x - a.x) / (b.x - a.x));
  };
}
