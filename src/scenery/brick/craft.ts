import { subtract } from '../../geometry/boolean/boolean.js';
import { linesInside, trimLine } from '../../geometry/clip-lines.js';
import { contourArea, lineLength, regionArea, regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { pen, polygon } from '../../geometry/pen.js';
import { reversed } from '../../geometry/transform.js';
import type { Cubics, Line, Point, Region } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

/** A stroke shorter than this is not worth a pen lift, mm. */
const SHORTEST_STROKE_MM = 0.9;

/** The closed chain as a region, turned the right way round. */
export const shapeOf = (contour: Cubics): Region => ({
  contours: [contourArea(contour) < 0 ? reversed(contour) : contour],
});

/** A shape with straight edges, whichever way its corners are listed. */
export const shape = (corners: readonly Point[]): Region => shapeOf(polygon(corners));

/**
 * A shape as a knife cuts it by hand: corners where they should be, edges that swell or sink by up
 * to `wanderMm`, less on short ones.
 */
export function handCut(corners: readonly Point[], wanderMm: number, random: Random): Region {
  const p = pen(corners[0].x, corners[0].y);
  corners.forEach((from, i) => {
    bowTo(p, from, corners[(i + 1) % corners.length], wanderMm, random.branch(i));
  });
  return shapeOf(p.close());
}

/** A drawn stroke through the points, each stretch bowed by up to `wanderMm`. */
export function handDrawn(points: readonly Point[], wanderMm: number, random: Random): Line {
  const p = pen(points[0].x, points[0].y);
  for (let i = 1; i < points.length; i++) {
    bowTo(p, points[i - 1], points[i], wanderMm, random.branch(i));
  }
  return p.line();
}

/** An edge bows by its full wander only from this length on, mm. */
const FULL_BOW_MM = 15;

function bowTo(p: ReturnType<typeof pen>, a: Point, b: Point, wanderMm: number, luck: Random) {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = Math.hypot(dx, dy);
  if (length < 1e-6) return;
  const size = (wanderMm * Math.min(1, length / FULL_BOW_MM)) / length;
  const [s, t] = [luck.bell() * size, luck.bell() * size];
  p.curveTo(
    a.x + dx / 3 - dy * s,
    a.y + dy / 3 + dx * s,
    b.x - dx / 3 - dy * t,
    b.y - dy / 3 + dx * t,
    b.x,
    b.y,
  );
}

/** Corners rounded, and what is narrower than twice the radius taken away. */
export const rounded = (region: Region, radiusMm: number): Region =>
  offset(offset(region, -radiusMm), radiusMm);

/** The lines where they keep `clearMm` from the card's edges. */
export const keptClear = (lines: readonly Line[], card: Region, clearMm: number): Line[] =>
  linesInside(lines, offset(card, -clearMm)).filter((l) => lineLength(l) >= SHORTEST_STROKE_MM);

/** Strokes of a long line and the breaks between them, mm: a longer one would fold. */
const STROKE_MM = [16, 36] as const;
const BREAK_MM = [2.5, 5] as const;

/** A long line in strokes that make no hinge. */
export function inStrokes(line: Line, random: Random): Line[] {
  const length = lineLength(line);
  const parts: Line[] = [];
  for (let from = random.between(0, 6); from < length - STROKE_MM[0]; ) {
    const to = Math.min(length, from + random.between(...STROKE_MM));
    const part = trimLine(line, from, length - to);
    if (part) parts.push(part);
    from = to + random.between(...BREAK_MM);
  }
  return parts;
}

export const mix = (a: number, b: number, t: number): number => a + (b - a) * t;

/** How far a wall runs on behind the jamb that it reaches, mm. */
const BEHIND_JAMB_MM = 3;
/** A gap at the jamb narrower than this many smallest holes is closed. */
const CLOSED_HOLES = 1.2;

/**
 * Where a body as wide as its plot ends left and right: on the plot's edge or, where that meets the
 * window's jamb or all but meets it, a little behind the jamb, so that no slit is left there.
 */
export function endsOf(plot: Plot): { readonly left: number; readonly right: number } {
  const half = plot.width / 2;
  const { window } = plot.frame;
  if (window.contours.length === 0) return { left: -half, right: half };
  const { minX, maxX } = regionBounds(window);
  const near = CLOSED_HOLES * plot.smallestHole;
  const end = (edge: number, jamb: number): number =>
    Math.abs(edge - jamb) < near ? Math.max(edge, jamb + BEHIND_JAMB_MM) : edge;
  return { left: -end(half, -minX), right: end(half, maxX) };
}

/** Less of a hole than this (mm2) outside the window is none. */
const NOTHING_MM2 = 0.01;

/** The holes that stand wholly in the window: its edge cuts none of them in two. */
export function wholeHoles(holes: readonly Region[], { window }: Plot['frame']): Region[] {
  if (window.contours.length === 0) return [...holes];
  return holes.filter((hole) => regionArea(subtract(hole, [window])) < NOTHING_MM2);
}
