import { isClosed, joined, subchain } from '../chain.js';
import { chordsNear, OUTLINE_TOLERANCE_MM, type Outline, outlineOf } from '../outline.js';
import type { Cubics, Line } from '../types.js';
import { mergedSpans, NOTHING_MM, type Span, spansWithout } from './spans.js';

/**
 * Lines that run side by side for no more than this many tolerances are left alone: so far do lines
 * that cross, touch or branch off stay together. More would leave more to be burnt twice.
 */
const LEAST_RUN = 8;
/** Lines under a larger angle than this (radians, 5 degrees) cross and do not run together. */
const CROSSING_RAD = (5 * Math.PI) / 180;
/** A turn from chord to chord up to this (radians) is a curve's or a facet's, not a corner's. */
const MOST_BEND_RAD = Math.PI / 6;

export interface Undoubled {
  readonly lines: Line[];
  /** Length of all that was dropped. */
  readonly savedMm: number;
}

/**
 * The lines without what lies on an earlier line or an earlier part of the same one: duplicates run
 * either way, and stretches within `toleranceMm` of each other, straight or curved, however they
 * are cut into cubics. Crossings and stretches together for less than 8 tolerances are kept. What
 * remains lies within the tolerance of all that was given. Lines that lose nothing pass unchanged;
 * of others each part left is an exact piece of its curve. A closed line goes round its start.
 * Tolerances under 0.005 mm find only lines that are nearer still.
 *
 * For pieces that share edges give their outlines: `regions.flatMap(outlineLines)`.
 */
export function withoutDoubles(lines: readonly Line[], toleranceMm: number): Undoubled {
  const { parts, savedMm } = partsWithoutDoubles(lines, toleranceMm);
  return { lines: parts.flat(), savedMm };
}

/** The same, with what is left of each line by itself, in the order of the lines. */
export function partsWithoutDoubles(
  lines: readonly Line[],
  toleranceMm: number,
): { readonly parts: Line[][]; readonly savedMm: number } {
  const known = knownDoubles(lines, toleranceMm);
  let savedMm = 0;
  const parts = lines.map((line, k): Line[] => {
    if (known.dropped[k].length === 0) return [line];
    savedMm += known.dropped[k].reduce((sum, { from, to }) => sum + to - from, 0);
    return partsLeft(line.cubics, known, k);
  });
  return { parts, savedMm };
}

/** For each line the stretches, in mm along it, that `withoutDoubles` would take out. */
export const doubledStretches = (lines: readonly Line[], toleranceMm: number): readonly Span[][] =>
  knownDoubles(lines, toleranceMm).dropped;

function knownDoubles(lines: readonly Line[], toleranceMm: number): Known {
  const outline = outlineOf({ contours: lines.map((line) => line.cubics) });
  const known: Known = {
    outline,
    at: lengthsAlong(outline),
    bend: bendsOf(outline),
    dropped: lines.map(() => []),
    nearMm: nearnessFor(toleranceMm),
  };
  const leastMm = LEAST_RUN * toleranceMm;
  for (const k of lines.keys()) {
    known.dropped[k] = doubledSpans(known, k, leastMm);
    if (known.dropped[k].length === 0) continue;
    // Once more: what the line's own doubled stretches hid must not be missing now.
    known.dropped[k] = doubledSpans(known, k, leastMm);
  }
  return known;
}

/** All lines as chords of one outline, and what of each has been dropped so far. */
interface Known {
  readonly outline: Outline;
  /** Length from its line's start to the start of each chord. */
  readonly at: Float64Array;
  /** By how much directions near a chord may differ from its own, radians. */
  readonly bend: Float64Array;
  /** Along each line, in mm from its start. */
  readonly dropped: Span[][];
  /** Chords this near to each other stand for curves within the tolerance. */
  readonly nearMm: number;
}

/** Two chords that stand for one curve may lie as far apart as both stray from it. */
const nearnessFor = (toleranceMm: number): number =>
  Math.max(toleranceMm / 2, toleranceMm - 2 * OUTLINE_TOLERANCE_MM);

const chordLength = ({ ax, ay, bx, by }: Outline, k: number): number =>
  Math.hypot(bx[k] - ax[k], by[k] - ay[k]);

function lengthsAlong(outline: Outline): Float64Array {
  const at = new Float64Array(outline.contour.length);
  for (let k = 1; k < at.length; k++) {
    if (outline.contour[k] === outline.contour[k - 1])
      at[k] = at[k - 1] + chordLength(outline, k - 1);
  }
  return at;
}

/** Half the larger of a chord's turns to its neighbours, those at corners left out. */
function bendsOf(outline: Outline): Float64Array {
  const { ax, ay, bx, by, contour } = outline;
  const bend = new Float64Array(contour.length);
  for (let k = 1; k < bend.length; k++) {
    if (contour[k] !== contour[k - 1]) continue;
    const [ux, uy] = [bx[k - 1] - ax[k - 1], by[k - 1] - ay[k - 1]];
    const [vx, vy] = [bx[k] - ax[k], by[k] - ay[k]];
    const turn = Math.abs(Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy));
    if (turn > MOST_BEND_RAD) continue;
    bend[k - 1] = Math.max(bend[k - 1], turn / 2);
    bend[k] = turn / 2;
  }
  return bend;
}

/** The stretches of a line, in mm along it, that lie on what is kept of it and those before it. */
function doubledSpans(known: Known, line: number, leastMm: number): Span[] {
  const { outline, nearMm } = known;
  const { ax, ay, bx, by, first } = outline;
  const found: Span[] = [];
  for (let b = first[line]; b < first[line + 1]; b++) {
    const seen = new Set<number>();
    chordsNear(outline, ax[b], ay[b], bx[b], by[b], nearMm, (a) => {
      if (a >= b || seen.has(a)) return;
      seen.add(a);
      found.push(...spansAlong(known, a, b));
    });
  }
  const merged = mergedSpans(found, 2 * OUTLINE_TOLERANCE_MM);
  return merged.filter(({ from, to }) => to - from >= leastMm);
}

/** Where chord b runs along what is kept of chord a, in mm along the line of b. */
function spansAlong(known: Known, a: number, b: number): Span[] {
  const { outline, at, bend, dropped, nearMm } = known;
  const { ax, ay, bx, by, contour } = outline;
  const [lengthA, lengthB] = [chordLength(outline, a), chordLength(outline, b)];
  const [ux, uy] = [(bx[a] - ax[a]) / lengthA, (by[a] - ay[a]) / lengthA];
  const [vx, vy] = [(bx[b] - ax[b]) / lengthB, (by[b] - ay[b]) / lengthB];
  const along = ux * vx + uy * vy;
  const aside = ux * vy - uy * vx;
  const angle = Math.atan2(Math.abs(aside), Math.abs(along));
  if (angle > CROSSING_RAD + bend[a] + bend[b]) return [];
  const [dx, dy] = [ax[b] - ax[a], ay[b] - ay[a]];
  const foot = dx * ux + dy * uy;
  const off = ux * dy - uy * dx;
  const near = whereWithin(off, aside, -nearMm, nearMm);
  // The feet of what runs round the outside of a bend leave a gap there. A line's next chord has its
  // foot there too.
  const slack = contour[a] === contour[b] ? 0 : nearMm * Math.tan(2 * bend[a]);
  const start = at[a];
  const kept = spansWithout({ from: start, to: start + lengthA }, dropped[contour[a]]);
  return kept.flatMap(({ from, to }) => {
    const over = whereWithin(foot, along, from - start - slack, to - start + slack);
    const low = Math.max(0, near.from, over.from);
    const high = Math.min(lengthB, near.to, over.to);
    return high - low > NOTHING_MM ? [{ from: at[b] + low, to: at[b] + high }] : [];
  });
}

/** Where a straight function, its value at 0 and its slope given, lies between two bounds. */
function whereWithin(value: number, slope: number, low: number, high: number): Span {
  if (Math.abs(slope) < 1e-12) {
    return value >= low && value <= high ? { from: -Infinity, to: Infinity } : { from: 0, to: -1 };
  }
  const [p, q] = [(low - value) / slope, (high - value) / slope];
  return { from: Math.min(p, q), to: Math.max(p, q) };
}

/** What is left of a line, its curves kept; what meets at the start of a closed line is joined. */
function partsLeft(c: Cubics, known: Known, line: number): Line[] {
  const { outline, at, dropped } = known;
  const last = outline.first[line + 1] - 1;
  const whole = { from: 0, to: at[last] + chordLength(outline, last) };
  const spans = spansWithout(whole, dropped[line]);
  const parts = spans.map(({ from, to }) =>
    subchain(c, placeAt(known, line, from), placeAt(known, line, to)),
  );
  const meets = spans.length > 1 && spans[0].from === 0 && spans[spans.length - 1].to === whole.to;
  if (!meets || !isClosed(c)) return parts.map((cubics) => ({ cubics }));
  const across = joined(parts[parts.length - 1], parts[0]);
  return [across, ...parts.slice(1, -1)].map((cubics) => ({ cubics }));
}

/** The place u on a line's chain at a length along its chords. */
function placeAt({ outline, at }: Known, line: number, lengthMm: number): number {
  let [low, high] = [outline.first[line], outline.first[line + 1] - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (at[middle] <= lengthMm) low = middle;
    else high = middle - 1;
  }
  const share = Math.max(0, Math.min(1, (lengthMm - at[low]) / chordLength(outline, low)));
  return outline.u0[low] + share * (outline.u1[low] - outline.u0[low]);
}
