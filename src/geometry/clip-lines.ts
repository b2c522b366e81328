import {
  type Chords,
  chordsOf,
  cubicLength,
  isClosed,
  joined,
  placeAtLength,
  placeOn,
  pointOn,
  subchain,
} from './chain.js';
import { crossingNear } from './cubic.js';
import {
  chordsNear,
  OUTLINE_TOLERANCE_MM,
  type Outline,
  outlineOf,
  type Side,
  sideOf,
} from './outline.js';
import type { Cubics, Line, Region } from './types.js';

/** Parts shorter than this (mm) are dropped: no machine draws them, they only cost a pen lift. */
const SHORTEST_MM = 0.01;
/** A line that crosses the edge flatly lies on it for a bit: only longer bits (mm) run along it. */
const SHORTEST_ALONG_MM = 0.1;
/** Chords that come this near (mm) may stand for curves that meet: twice their error and more. */
const MEETING_MM = 0.005;
/** A crossing refined on the true curves may move this far (mm) from where the chords cross. */
const REFINING_REACH_MM = 0.05;
/** Where a part is looked at: uneven, so that touching points in drawn shapes are missed. */
const LOOKS = [0.5, 0.23, 0.79];

/**
 * What of the lines lies inside the region. Each part is an exact piece of its curve, cut within
 * 1e-6 mm of where it crosses the region's edge. What runs along the edge (within 0.001 mm of it
 * for 0.1 mm or more) is outside: a score on a cut is no score. So every bit of a line is either
 * inside or outside, save parts shorter than 0.01 mm, which are dropped from both; a gap in the
 * region shorter than that does not interrupt a line. A closed line whose start lies inside comes
 * back as one part across its start. Not guaranteed: a line that dips over the edge by less than
 * 0.005 mm may be left whole.
 */
export const linesInside = (lines: readonly Line[], region: Region): Line[] =>
  lines.flatMap((line) => partsOf(line, outlineOf(region), true));

/** What of the lines lies outside the region or runs along its edge; see `linesInside`. */
export const linesOutside = (lines: readonly Line[], region: Region): Line[] =>
  lines.flatMap((line) => partsOf(line, outlineOf(region), false));

/** Each contour as an open line that ends at the point where it starts, in the contour's order. */
export const outlineLines = (region: Region): Line[] =>
  region.contours.map((cubics) => ({ cubics }));

/**
 * The line without its first `startMm` and its last `endMm`, measured along it; null where nothing
 * is left. Negative amounts count as 0.
 */
export function trimLine(line: Line, startMm: number, endMm: number): Line | null {
  const c = line.cubics;
  let length = 0;
  for (let i = 0; i < c.length; i += 8) length += cubicLength(c, i);
  const from = Math.max(0, startMm);
  const to = length - Math.max(0, endMm);
  if (!(to > from)) return null;
  const end = endMm > 0 ? placeAtLength(c, to) : c.length / 8;
  return { cubics: subchain(c, placeAtLength(c, from), end) };
}

/** A place where a line may change sides; `exact` where two curves truly cross. */
interface Cut {
  readonly u: number;
  readonly exact: boolean;
}

/** A stretch of a line from place to place; `inside` is not known of one too short to look at. */
interface Stretch {
  readonly from: Cut;
  readonly to: Cut;
  readonly inside: boolean;
}

function partsOf(line: Line, outline: Outline, inside: boolean): Line[] {
  const c = line.cubics;
  const chords = chordsOf(c, OUTLINE_TOLERANCE_MM);
  const lengths = lengthsAlong(chords);
  if (!(lengths[lengths.length - 1] >= SHORTEST_MM)) return [];
  const cuts = cutsOf(c, chords, outline);
  const stretches = sidesOf(c, cuts, chords, lengths, outline);
  const parts = stretches
    .filter((s) => s.inside === inside)
    .map((s) => ({ cubics: subchain(c, s.from.u, s.to.u) }));
  const first = stretches[0];
  const last = stretches[stretches.length - 1];
  const meetAgain =
    parts.length > 1 &&
    first.inside === inside &&
    last.inside === inside &&
    first.from.u === 0 &&
    last.to.u === c.length / 8 &&
    isClosed(c);
  if (!meetAgain) return parts;
  const across = { cubics: joined(parts[parts.length - 1].cubics, parts[0].cubics) };
  return [across, ...parts.slice(1, -1)];
}

/** Length in mm from the start to each point. */
function lengthsAlong({ x, y }: Chords): Float64Array {
  const lengths = new Float64Array(x.length);
  for (let k = 1; k < x.length; k++) {
    lengths[k] = lengths[k - 1] + Math.hypot(x[k] - x[k - 1], y[k] - y[k - 1]);
  }
  return lengths;
}

/** All places, in order, where the line crosses, meets or leaves the edge; its two ends included. */
function cutsOf(c: Cubics, chords: Chords, outline: Outline): Cut[] {
  const cuts: Cut[] = [
    { u: 0, exact: false },
    { u: c.length / 8, exact: false },
  ];
  const { x, y, u } = chords;
  const seen = new Int32Array(outline.contour.length).fill(-1);
  for (let k = 0; k + 1 < x.length; k++) {
    if (x[k] === x[k + 1] && y[k] === y[k + 1]) continue;
    const segment: Segment = [x[k], y[k], x[k + 1], y[k + 1]];
    const step = u[k + 1] - u[k];
    chordsNear(outline, ...segment, MEETING_MM, (n) => {
      if (seen[n] === k) return;
      seen[n] = k;
      const edge: Segment = [outline.ax[n], outline.ay[n], outline.bx[n], outline.by[n]];
      if (areApart(segment, edge)) return;
      const crossing = segmentCrossing(segment, edge);
      if (crossing) {
        const edgeU = outline.u0[n] + crossing.g * (outline.u1[n] - outline.u0[n]);
        const edgeChain = outline.contours[outline.contour[n]];
        cuts.push(refined(c, u[k] + crossing.f * step, edgeChain, edgeU));
      }
      for (const f of meetings(segment, edge)) cuts.push({ u: u[k] + f * step, exact: false });
    });
  }
  return cuts.sort((a, b) => a.u - b.u);
}

type Segment = readonly [ax: number, ay: number, bx: number, by: number];

/** Whether the boxes of two segments are too far apart for them to meet. */
const areApart = (p: Segment, q: Segment): boolean =>
  Math.min(p[0], p[2]) - MEETING_MM > Math.max(q[0], q[2]) ||
  Math.min(q[0], q[2]) - MEETING_MM > Math.max(p[0], p[2]) ||
  Math.min(p[1], p[3]) - MEETING_MM > Math.max(q[1], q[3]) ||
  Math.min(q[1], q[3]) - MEETING_MM > Math.max(p[1], p[3]);

/** How far along two segments they cross, ends included; null where they do not or run parallel. */
function segmentCrossing(p: Segment, q: Segment): { f: number; g: number } | null {
  const [px, py, qx, qy] = [p[2] - p[0], p[3] - p[1], q[2] - q[0], q[3] - q[1]];
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]];
  const det = px * qy - py * qx;
  if (det === 0) return null;
  const f = (dx * qy - dy * qx) / det;
  const g = (dx * py - dy * px) / det;
  // Chords meet end to end: a crossing at their joint must not slip between them.
  const slack = 1e-9;
  if (!(f >= -slack && f <= 1 + slack && g >= -slack && g <= 1 + slack)) return null;
  return { f: Math.max(0, Math.min(1, f)), g: Math.max(0, Math.min(1, g)) };
}

/** How far along `p` an end of one segment comes to lie on the other: where they may merge. */
function meetings(p: Segment, q: Segment): number[] {
  const found: number[] = [];
  for (const k of [0, 2]) {
    const onP = footOn(p, q[k], q[k + 1]);
    if (onP.distanceSq <= MEETING_MM ** 2) found.push(onP.f);
    if (footOn(q, p[k], p[k + 1]).distanceSq <= MEETING_MM ** 2) found.push(k / 2);
  }
  return found;
}

function footOn(
  [ax, ay, bx, by]: Segment,
  x: number,
  y: number,
): { f: number; distanceSq: number } {
  const [dx, dy] = [bx - ax, by - ay];
  const f = Math.max(0, Math.min(1, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
  return { f, distanceSq: (ax + f * dx - x) ** 2 + (ay + f * dy - y) ** 2 };
}

/** The crossing on the true curves near places of two chains; as given where none is found. */
function refined(c: Cubics, u: number, edge: Cubics, edgeU: number): Cut {
  const own = placeOn(c, u);
  const other = placeOn(edge, edgeU);
  const start = pointOn(c, u);
  for (const i of nearCubics(c, own.i, own.t)) {
    for (const j of nearCubics(edge, other.i, other.t)) {
      const hit = crossingNear(c, i.i, i.t, edge, j.i, j.t);
      if (!hit || hit.ta < -1e-9 || hit.ta > 1 + 1e-9 || hit.tb < -1e-9 || hit.tb > 1 + 1e-9) {
        continue;
      }
      const exactU = i.i / 8 + Math.max(0, Math.min(1, hit.ta));
      const at = pointOn(c, exactU);
      if (Math.hypot(at.x - start.x, at.y - start.y) > REFINING_REACH_MM) continue;
      return { u: exactU, exact: true };
    }
  }
  return { u, exact: false };
}

/** A place near a joint (in t) may have its crossing on the next cubic. */
const NEAR_JOINT_T = 0.2;

/** The cubic of a place and, near its joint, its neighbour too; a closed chain goes round. */
function nearCubics(c: Cubics, i: number, t: number): { i: number; t: number }[] {
  const places = [{ i, t }];
  const last = c.length - 8;
  if (t < NEAR_JOINT_T && (i > 0 || isClosed(c))) places.push({ i: i > 0 ? i - 8 : last, t: 1 });
  if (t > 1 - NEAR_JOINT_T && (i < last || isClosed(c))) {
    places.push({ i: i < last ? i + 8 : 0, t: 0 });
  }
  return places;
}

/** The line as stretches that lie on one side each, neighbours on different sides. */
function sidesOf(
  c: Cubics,
  cuts: readonly Cut[],
  chords: Chords,
  lengths: Float64Array,
  outline: Outline,
): Stretch[] {
  const lengthAt = (u: number): number => interpolated(chords.u, lengths, u);
  const clear: { first: number; last: number; inside: boolean }[] = [];
  for (let k = 0; k + 1 < cuts.length; k++) {
    const [from, to] = [cuts[k].u, cuts[k + 1].u];
    const length = lengthAt(to) - lengthAt(from);
    if (length < SHORTEST_MM) continue;
    const side = sideBetween(c, from, to, outline);
    if (side === 'edge' && length < SHORTEST_ALONG_MM) continue;
    const inside = side === 'inside';
    const before = clear[clear.length - 1];
    if (before?.inside === inside) before.last = k + 1;
    else clear.push({ first: k, last: k + 1, inside });
  }
  if (clear.length === 0) {
    const [from, to] = [cuts[0], cuts[cuts.length - 1]];
    return [{ from, to, inside: sideBetween(c, from.u, to.u, outline) === 'inside' }];
  }
  return clear.map(({ first, last, inside }, k) => {
    const before = clear[k - 1];
    const after = clear[k + 1];
    return {
      from: before
        ? changeAmong(cuts.slice(before.last, first + 1))
        : startOf(c, cuts, first, inside, outline),
      to: after
        ? changeAmong(cuts.slice(last, after.first + 1))
        : endOf(c, cuts, last, inside, outline),
      inside,
    };
  });
}

/** Of cuts too near to one another to tell apart, the one where the line changes sides. */
const changeAmong = (cuts: readonly Cut[]): Cut => cuts.find((cut) => cut.exact) ?? cuts[0];

/** A short beginning before cut `first` is kept unless it lies on the other side. */
function startOf(
  c: Cubics,
  cuts: readonly Cut[],
  first: number,
  inside: boolean,
  outline: Outline,
): Cut {
  const other = inside ? 'outside' : 'inside';
  let k = first;
  while (k > 0 && sideBetween(c, cuts[k - 1].u, cuts[k].u, outline) !== other) k--;
  return cuts[k];
}

function endOf(
  c: Cubics,
  cuts: readonly Cut[],
  last: number,
  inside: boolean,
  outline: Outline,
): Cut {
  const other = inside ? 'outside' : 'inside';
  let k = last;
  while (k + 1 < cuts.length && sideBetween(c, cuts[k].u, cuts[k + 1].u, outline) !== other) k++;
  return cuts[k];
}

/** Where the stretch lies between two neighbouring cuts: along the edge only if all of it does. */
function sideBetween(c: Cubics, from: number, to: number, outline: Outline): Side {
  for (const look of LOOKS) {
    const { x, y } = pointOn(c, from + look * (to - from));
    const side = sideOf(outline, x, y);
    if (side !== 'edge') return side;
  }
  return 'edge';
}

/** The value at `at` of a function given by rising places and values, straight between them. */
function interpolated(places: Float64Array, values: Float64Array, at: number): number {
  let [low, high] = [0, places.length - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (places[middle] <= at) low = middle;
    else high = middle;
  }
  const span = places[high] - places[low];
  const f = span > 0 ? (at - places[low]) / span : 0;
  return values[low] + f * (values[high] - values[low]);
}
