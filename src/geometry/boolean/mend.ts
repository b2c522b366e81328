import { joined, subchain } from '../chain.js';
import { crossingNear, jetAt } from '../cubic.js';
import { contourArea } from '../measure.js';
import type { Cubics, Point } from '../types.js';
import type { ChordTable } from './chords.js';
import type { Side, Sliver } from './slivers.js';

/**
 * Takes narrow overlaps out of a result without clipping it anew. Where two outlines that run
 * opposite ways weave over each other, both stretches of the lens go, and at its ends each outline
 * goes on as the other; where one outline crosses itself, its little loop goes.
 */

/** A stretch of contour to leave out. Where it starts the outline goes on at the end of `twin`. */
interface Cut {
  readonly contour: number;
  /** Places on the contour; an end before its start lies past the contour's own start. */
  readonly from: number;
  readonly to: number;
  readonly start: Point;
  readonly end: Point;
  twin: Cut;
}

/** Contours with less area (mm2) than this are what is left of a sliver. */
const CRUMB_MM2 = 1e-4;
/** A true crossing lies this near (mm) to that of the chords, however flat the two curves cross. */
const NEAR_MM = 0.05;

/**
 * The contours without the slivers that were found on their chords (`table` holds the cubics of
 * all contours in order), or null where one of them is no plain lens or knot.
 */
export function withoutSlivers(
  contours: readonly Cubics[],
  slivers: readonly Sliver[],
  table: ChordTable,
): Cubics[] | null {
  const firstSegments = segmentsBefore(contours);
  const cuts: Cut[] = [];
  for (const { sides } of slivers) {
    const found = sides.length > 0 ? cutsOf(sides, firstSegments, table) : null;
    if (found === null) return null;
    cuts.push(...found);
  }
  const byContour = contours.map((_, k) =>
    cuts.filter((cut) => cut.contour === k).sort((a, b) => a.from - b.from),
  );
  if (!byContour.every((own, k) => areApart(own, contours[k].length / 8))) return null;
  const untouched = contours.filter((_, k) => byContour[k].length === 0);
  return [...untouched, ...rejoined(contours, byContour)];
}

/** How many cubics come before each contour. */
function segmentsBefore(contours: readonly Cubics[]): number[] {
  let count = 0;
  return contours.map((contour) => {
    count += contour.length / 8;
    return count - contour.length / 8;
  });
}

function cutsOf(
  sides: readonly Side[],
  firstSegments: readonly number[],
  table: ChordTable,
): Cut[] | null {
  const [one, two = one] = sides;
  const isKnot = one === two;
  const first = crossingAt(one.from, one.start, two.to, table);
  const last = isKnot ? first : crossingAt(one.to, one.end, two.from, table);
  if (!first || !last) return null;
  const contourOf = (segment: number): number =>
    firstSegments.findLastIndex((before) => before <= segment);
  const cut = (side: Side, from: number, to: number, start: Point, end: Point): Cut => {
    const contour = contourOf(table.segment[side.from]);
    const before = firstSegments[contour];
    const made = { contour, from: from - before, to: to - before, start, end } as Cut;
    made.twin = made;
    return made;
  };
  if (isKnot) return [cut(one, first.a, first.b, first.at, first.at)];
  const there = cut(one, first.a, last.a, first.at, last.at);
  const back = cut(two, last.b, first.b, last.at, first.at);
  there.twin = back;
  back.twin = there;
  return [there, back];
}

/** The true crossing of the cubics behind two chords, as places counted over all contours. */
function crossingAt(
  a: number,
  near: Point,
  b: number,
  table: ChordTable,
): { a: number; b: number; at: Point } | null {
  const { cubics, segment } = table;
  const ta = parameterNear(table, a, near);
  const tb = parameterNear(table, b, near);
  const hit = crossingNear(cubics, segment[a] * 8, ta, cubics, segment[b] * 8, tb);
  if (!hit || !isWithin(hit.ta) || !isWithin(hit.tb)) return null;
  const at = jetAt(cubics, segment[a] * 8, hit.ta);
  const chordAt = jetAt(cubics, segment[a] * 8, ta);
  if (Math.hypot(at.x - chordAt.x, at.y - chordAt.y) > NEAR_MM) return null;
  return { a: segment[a] + hit.ta, b: segment[b] + hit.tb, at: { x: at.x, y: at.y } };
}

/** A crossing on a node would leave no piece of its cubic: too rare to be worth the trouble. */
const isWithin = (t: number): boolean => t > 1e-9 && t < 1 - 1e-9;

function parameterNear({ x, y, next, t0, t1 }: ChordTable, chord: number, p: Point): number {
  const [dx, dy] = [x[next[chord]] - x[chord], y[next[chord]] - y[chord]];
  const along = (p.x - x[chord]) * dx + (p.y - y[chord]) * dy;
  const fraction = Math.max(0, Math.min(1, along / (dx * dx + dy * dy)));
  return t0[chord] + fraction * (t1[chord] - t0[chord]);
}

/** Whether the cuts of one contour, in order of their starts, leave something between them. */
const areApart = (cuts: readonly Cut[], count: number): boolean =>
  cuts.every((cut, k) => {
    const next = k + 1 < cuts.length ? cuts[k + 1].from : cuts[0].from + count;
    const end = cut.to < cut.from ? cut.to + count : cut.to;
    return end < next;
  });

/** The contours that the pieces between the cuts make when each goes on at its cut's twin. */
function rejoined(contours: readonly Cubics[], byContour: readonly Cut[][]): Cubics[] {
  const after = new Map<Cut, Cut>();
  for (const cuts of byContour) {
    cuts.forEach((cut, k) => {
      after.set(cut, cuts[(k + 1) % cuts.length]);
    });
  }
  const made: Cubics[] = [];
  const open = new Set(after.keys());
  for (const first of open) {
    let chain: Cubics | null = null;
    for (let cut = first; open.delete(cut); ) {
      const next = after.get(cut)!;
      const piece = between(contours[cut.contour], cut, next);
      chain = chain ? joined(chain, piece) : piece;
      cut = next.twin;
    }
    if (!chain) continue;
    chain.set([chain[0], chain[1]], chain.length - 2);
    if (Math.abs(contourArea(chain)) > CRUMB_MM2) made.push(chain);
  }
  return made;
}

/** The contour from the end of one cut to the start of the next, its ends put on the crossings. */
function between(contour: Cubics, cut: Cut, next: Cut): Cubics {
  const count = contour.length / 8;
  const [from, to] = [cut.to % count, next.from];
  const piece =
    to > from
      ? subchain(contour, from, to)
      : joined(subchain(contour, from, count), subchain(contour, 0, to));
  piece.set([cut.end.x, cut.end.y]);
  piece.set([next.start.x, next.start.y], piece.length - 2);
  return piece;
}
