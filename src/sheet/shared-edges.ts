import { isClosed, joined, placeAtLength, pointOn, subchain } from '../geometry/chain.js';
import { isStraightCubic } from '../geometry/cubic.js';
import { boundsOf, chainLength, contourArea, middleOfBox } from '../geometry/measure.js';
import { polyline } from '../geometry/pen.js';
import { mergedSpans, type Span, spansWithout } from '../geometry/tidy/spans.js';
import type { Cubics, Point } from '../geometry/types.js';
import type { PlacedMark } from '../process/layers.js';

/** An edge that two pieces on a sheet have in common, cut once. */
export interface SharedEdge {
  /** The two pieces, with their copies. */
  readonly pieces: readonly [string, string];
  /** How much of it is cut. */
  readonly lengthMm: number;
  /**
   * By how much each of the two comes out smaller there: half the kerf where they touch as
   * designed, for the one cut runs on the designed line; nothing where they lie the kerf apart.
   */
  readonly smallerMm: number;
}

export interface Shared {
  readonly marks: readonly PlacedMark[];
  readonly shared: readonly SharedEdge[];
}

/** Shorter edges (mm) are not worth it. */
const LEAST_EDGE_MM = 5;
/** Rounding of placed paths (mm), and the sine of the angle up to which edges are parallel. */
const NEAR_MM = 0.005;
const PARALLEL = 1e-4;
/** A gap in a straight edge up to this (mm) is that of a nib. */
const MOST_NIB_MM = 3;
/** What is left between two cuts and shorter than this (mm) is rounding. */
const NOTHING_MM = 0.01;

/**
 * The cuts of one sheet with each straight edge that two pieces have in common cut once, midway
 * between their two paths, as an open cut of kind `shared`; what is left of the two outlines is open
 * too. Edges are common where the paths of two pieces run parallel and no further apart than the
 * kerf, be it that the pieces touch or lie up to twice the kerf apart. A nib of either piece is one
 * of both. The shared cuts come last, because they free both pieces. They end half the kerf before the
 * paths that they run into, where the beam has passed already.
 * @param isPlain whether the piece's straight outer edges are nothing but straight edges.
 */
export function shareEdges(
  marks: readonly PlacedMark[],
  kerfMm: number,
  isPlain: (mark: PlacedMark) => boolean = () => true,
): Shared {
  const sides = sidesOf(marks, isPlain);
  const taken = new Map<number, Span[]>();
  const cuts: PlacedMark[] = [];
  const shared: SharedEdge[] = [];
  sides.forEach((a, i) => {
    for (const b of sides.slice(i + 1)) {
      const common = commonOf(a, b, kerfMm);
      if (common === null) continue;
      for (const side of [a, b]) take(side, common.along, kerfMm, marks, taken);
      const { piece, copy } = marks[a.stretches[0].mark];
      for (const { cubics } of common.lines) {
        cuts.push({ cubics, closed: false, kind: 'shared', piece, copy });
      }
      shared.push({
        pieces: [a.owner, b.owner],
        lengthMm: common.lines.reduce((sum, { cubics }) => sum + chainLength(cubics), 0),
        smallerMm: common.smallerMm,
      });
    }
  });
  const left = marks.flatMap((mark, k) => {
    const spans = taken.get(k);
    return spans === undefined ? [mark] : partsLeft(mark, spans);
  });
  return { marks: [...left, ...cuts], shared };
}

/** A straight cubic of a mark, from length `from` to `to` along its side's line, either way round. */
interface Stretch extends Span {
  readonly mark: number;
  readonly cubic: number;
  readonly runsBack: boolean;
}

/** Stretches of one piece on one straight line, with gaps between them no larger than a nib's. */
interface Side extends Span {
  readonly owner: string;
  /** The middle of the piece. */
  readonly middle: Point;
  readonly line: StraightLine;
  readonly stretches: readonly Stretch[];
}

/** A straight line: its points are `along * way + off * across`, `across` a quarter turn on. */
interface StraightLine {
  readonly wayX: number;
  readonly wayY: number;
  readonly offMm: number;
}

const alongLine = ({ wayX, wayY }: StraightLine, p: Point): number => p.x * wayX + p.y * wayY;
const acrossLine = ({ wayX, wayY }: StraightLine, p: Point): number => p.y * wayX - p.x * wayY;

function sidesOf(
  marks: readonly PlacedMark[],
  isPlain: (mark: PlacedMark) => boolean,
): readonly Side[] {
  const owners = new Map<string, number[]>();
  marks.forEach((mark, k) => {
    const isOuter = mark.kind === 'nib' || (mark.closed && contourArea(mark.cubics) > 0);
    if (!isOuter || !isPlain(mark)) return;
    const owner = `${mark.piece} (${mark.copy})`;
    owners.set(owner, [...(owners.get(owner) ?? []), k]);
  });
  return [...owners].flatMap(([owner, own]) => sidesOfPiece(owner, marks, own));
}

function sidesOfPiece(owner: string, marks: readonly PlacedMark[], own: readonly number[]): Side[] {
  const middle = middleOfBox(boundsOf(own.map((k) => marks[k].cubics)));
  const lines: { line: StraightLine; stretches: Stretch[] }[] = [];
  for (const mark of own) {
    const { cubics } = marks[mark];
    for (let cubic = 0; cubic < cubics.length / 8; cubic++) {
      if (!isStraightCubic(cubics, 8 * cubic)) continue;
      const [a, b] = [
        pointOn(cubics, cubic),
        { x: cubics[8 * cubic + 6], y: cubics[8 * cubic + 7] },
      ];
      const line = lineThrough(a, b);
      let known = lines.find((l) => isSameLine(l.line, line, NEAR_MM));
      if (known === undefined) {
        known = { line, stretches: [] };
        lines.push(known);
      }
      const [from, to] = [a, b].map((p) => alongLine(known.line, p));
      known.stretches.push({
        mark,
        cubic,
        runsBack: to < from,
        from: Math.min(from, to),
        to: Math.max(from, to),
      });
    }
  }
  return lines.flatMap(({ line, stretches }) =>
    mergedSpans(stretches, MOST_NIB_MM)
      .filter(({ from, to }) => to - from >= LEAST_EDGE_MM)
      .map((span) => ({
        ...span,
        owner,
        middle,
        line,
        stretches: stretches.filter(({ from, to }) => from >= span.from && to <= span.to),
      })),
  );
}

/** The line through two points, its way turned to the right, or down where it is upright. */
function lineThrough(a: Point, b: Point): StraightLine {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [x, y] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const turn = x < -PARALLEL || (x <= PARALLEL && y < 0) ? -1 : 1;
  const way = { wayX: turn * x, wayY: turn * y, offMm: 0 };
  return { ...way, offMm: acrossLine(way, a) };
}

const isParallel = (a: StraightLine, b: StraightLine): boolean =>
  Math.abs(a.wayX * b.wayY - a.wayY * b.wayX) <= PARALLEL && a.wayX * b.wayX + a.wayY * b.wayY > 0;

const isSameLine = (a: StraightLine, b: StraightLine, nearMm: number): boolean =>
  isParallel(a, b) && Math.abs(a.offMm - b.offMm) <= nearMm;

interface Common {
  /** What is taken from both sides. */
  readonly along: Span;
  /** What is cut in its place, nibs left out. */
  readonly lines: readonly { readonly cubics: Cubics }[];
  readonly smallerMm: number;
}

function commonOf(a: Side, b: Side, kerfMm: number): Common | null {
  if (a.owner === b.owner || !isSameLine(a.line, b.line, kerfMm + NEAR_MM)) return null;
  const along = { from: Math.max(a.from, b.from), to: Math.min(a.to, b.to) };
  if (along.to - along.from < LEAST_EDGE_MM) return null;
  const { wayX, wayY, offMm } = a.line;
  const middleOff = (offMm + b.line.offMm) / 2;
  const at = (s: number): Point => ({
    x: s * wayX - middleOff * wayY,
    y: s * wayY + middleOff * wayX,
  });
  // Uncut bits of either side are left uncut.
  const uncut = [a, b].flatMap((side) =>
    spansWithout(along, mergedSpans(side.stretches, NOTHING_MM)),
  );
  const lines = spansWithout(along, mergedSpans(uncut, 0)).map(({ from, to }) =>
    polyline([at(from), at(to)]),
  );
  const towardsB = Math.sign(acrossLine(a.line, b.middle) - acrossLine(a.line, a.middle));
  // Never minus nothing.
  const smallerMm = Math.round(((offMm - b.line.offMm) * towardsB * 1000) / 2) / 1000 + 0;
  return { along, lines, smallerMm };
}

/** Notes what a common edge takes from the marks of a side, as spans of places on each. */
function take(
  side: Side,
  along: Span,
  kerfMm: number,
  marks: readonly PlacedMark[],
  taken: Map<number, Span[]>,
): void {
  for (const { mark, cubic, runsBack, from, to } of side.stretches) {
    const [low, high] = [Math.max(from, along.from), Math.min(to, along.to)];
    if (high - low < NOTHING_MM) continue;
    const { cubics } = marks[mark];
    const own = cubics.subarray(8 * cubic, 8 * cubic + 8);
    const lengths = runsBack ? [to - high, to - low] : [low - from, high - from];
    const [start, end] = lengths.map((mm) => cubic + placeAtLength(own, mm));
    const spans = taken.get(mark) ?? [];
    taken.set(mark, spans);
    spans.push({ from: start, to: end });
    spans.push(...cornersBeside(cubics, { from: start, to: end }, kerfMm));
  }
}

/** The cubics with which the outline goes round the corner next to what is taken of it. */
function cornersBeside(c: Cubics, { from, to }: Span, kerfMm: number): Span[] {
  const count = c.length / 8;
  const found: Span[] = [];
  const isNear = (k: number, { x, y }: Point): boolean =>
    [0, 2, 4, 6].every((n) => Math.hypot(c[8 * k + n] - x, c[8 * k + n + 1] - y) <= kerfMm);
  const within = (k: number): number => (isClosed(c) ? (k + count) % count : k);
  for (const [place, way] of [
    [to, 1],
    [from, -1],
  ]) {
    const whole = Math.round(place);
    const [stop, corner] = [pointOn(c, place), pointOn(c, whole)];
    if (Math.hypot(corner.x - stop.x, corner.y - stop.y) > kerfMm) continue;
    found.push({ from: Math.min(place, whole), to: Math.max(place, whole) });
    for (let n = 0; n < count; n++) {
      const k = within(way > 0 ? whole + n : whole - 1 - n);
      if (k < 0 || k >= count || !isNear(k, corner)) break;
      found.push({ from: k, to: k + 1 });
    }
  }
  return found;
}

/** What is left of a mark, as open cuts; of a closed one what meets at its start is joined. */
function partsLeft(mark: PlacedMark, taken: readonly Span[]): PlacedMark[] {
  const { cubics } = mark;
  const end = cubics.length / 8;
  const spans = spansWithout({ from: 0, to: end }, mergedSpans(taken, 1e-6));
  const parts = spans.map(({ from, to }) => subchain(cubics, from, to));
  if (
    mark.closed &&
    spans.length > 1 &&
    spans[0].from === 0 &&
    spans[spans.length - 1].to === end
  ) {
    parts[0] = joined(parts.pop() as Cubics, parts[0]);
  }
  return parts
    .filter((part) => chainLength(part) >= NOTHING_MM)
    .map((part) => ({ ...mark, cubics: part, closed: false, kind: mark.kind ?? 'shared' }));
}
