import { chordsOf, joined, placeOn, pointOn, subchain } from '../chain.js';
import { isStraightCubic, jetAt, straightCubic } from '../cubic.js';
import type { Cubics } from '../types.js';

/** A straight run from this long on (mm) takes the start: room for a dragged blade to turn in. */
const LEAST_RUN_MM = 3;
/** Straight edges that turn by less than this (sine) at their joint are one run. */
const SAME_DIRECTION = 1e-6;
/** Chords for the search for the flattest stretch: its place need not be exact. */
const CHORD_MM = 0.005;
/** The flattest stretch is looked for over this share of the way round, and no more than so long. */
const STRETCH_SHARE = 1 / 12;
const MOST_STRETCH_MM = 5;

/**
 * The closed contour started where a blade that comes back to its start is not seen turning: in the
 * middle of its longest straight run, if that is 3 mm long or more, else in the middle of its
 * flattest stretch, never at a corner. The outline and its direction are the same; all cubics are
 * kept bit for bit but the one that the new start splits.
 */
export function startOnStraightRun(contour: Cubics): Cubics {
  if (contour.length === 0) return contour;
  return startedAt(contour, middleOfLongestRun(contour) ?? middleOfFlattestStretch(contour));
}

/** The contour started at place u. */
function startedAt(c: Cubics, u: number): Cubics {
  const end = c.length / 8;
  if (u <= 0 || u >= end) return c;
  const { i, t } = placeOn(c, u);
  const started = joined(subchain(c, u, end), subchain(c, 0, u));
  if (t === 0 || t === 1) return started;
  // The two halves meet in one point to the last bit, and those of a straight edge are straight.
  const at = pointOn(c, u);
  const last = started.length - 8;
  const [toX, toY] = started.subarray(6, 8);
  const [fromX, fromY] = started.subarray(last, last + 2);
  if (isStraightCubic(c, i)) {
    started.set(straightCubic(at.x, at.y, toX, toY));
    started.set(straightCubic(fromX, fromY, at.x, at.y), last);
  }
  started[0] = started[last + 6] = at.x;
  started[1] = started[last + 7] = at.y;
  return started;
}

/** Straight edges in one direction, from cubic `first` on. */
interface Run {
  readonly first: number;
  readonly count: number;
  readonly lengthMm: number;
}

/** The place of the middle of the longest straight run; null where none is long enough. */
function middleOfLongestRun(c: Cubics): number | null {
  const count = c.length / 8;
  const longest = straightRuns(c).reduce<Run | null>(
    (best, run) => (best === null || run.lengthMm > best.lengthMm + 1e-9 ? run : best),
    null,
  );
  if (longest === null || longest.lengthMm < LEAST_RUN_MM) return null;
  let left = longest.lengthMm / 2;
  for (let k = 0; k < longest.count; k++) {
    const cubic = (longest.first + k) % count;
    const length = chordLength(c, cubic);
    if (left <= length) return cubic + parameterAlong(c, cubic * 8, left / length);
    left -= length;
  }
  return null;
}

function straightRuns(c: Cubics): Run[] {
  const count = c.length / 8;
  const isStraight = Array.from({ length: count }, (_, k) => isStraightCubic(c, k * 8));
  const goesOn = (k: number): boolean => isStraight[k] && runsOn(c, (k + count - 1) % count, k);
  const isFirst = (k: number): boolean =>
    isStraight[k] && !(isStraight[(k + count - 1) % count] && goesOn(k));
  const runs: Run[] = [];
  for (let first = 0; first < count; first++) {
    if (!isFirst(first)) continue;
    let lengthMm = chordLength(c, first);
    let size = 1;
    while (size < count && goesOn((first + size) % count)) {
      lengthMm += chordLength(c, (first + size) % count);
      size++;
    }
    runs.push({ first, count: size, lengthMm });
  }
  return runs;
}

/** Whether the chord of cubic b runs on in the direction of that of cubic a. */
function runsOn(c: Cubics, a: number, b: number): boolean {
  const [ux, uy] = [c[a * 8 + 6] - c[a * 8], c[a * 8 + 7] - c[a * 8 + 1]];
  const [vx, vy] = [c[b * 8 + 6] - c[b * 8], c[b * 8 + 7] - c[b * 8 + 1]];
  const lengths = chordLength(c, a) * chordLength(c, b);
  return ux * vx + uy * vy > 0 && Math.abs(ux * vy - uy * vx) <= SAME_DIRECTION * lengths;
}

const chordLength = (c: Cubics, cubic: number): number =>
  Math.hypot(c[cubic * 8 + 6] - c[cubic * 8], c[cubic * 8 + 7] - c[cubic * 8 + 1]);

/** Halvings for a parameter: 2^-50 of an edge is below rounding. */
const HALVINGS = 50;

/** The parameter at a share of the way along a straight cubic, whose speed may vary. */
function parameterAlong(c: Cubics, i: number, share: number): number {
  const [dx, dy] = [c[i + 6] - c[i], c[i + 7] - c[i + 1]];
  const shareAt = (t: number): number => {
    const { x, y } = jetAt(c, i, t);
    return ((x - c[i]) * dx + (y - c[i + 1]) * dy) / (dx * dx + dy * dy);
  };
  let [low, high] = [0, 1];
  for (let k = 0; k < HALVINGS; k++) {
    const t = (low + high) / 2;
    if (shareAt(t) < share) low = t;
    else high = t;
  }
  return (low + high) / 2;
}

/**
 * The place in the middle of the chord round which the outline turns least; of equals the one whose
 * chord is longest. The middle of a chord is no corner.
 */
function middleOfFlattestStretch(c: Cubics): number {
  const { x, y, u } = chordsOf(c, CHORD_MM);
  const chords = Array.from({ length: u.length - 1 }, (_, k) => k).filter(
    (k) => x[k] !== x[k + 1] || y[k] !== y[k + 1],
  );
  const lengths = chords.map((k) => Math.hypot(x[k + 1] - x[k], y[k + 1] - y[k]));
  const angles = chords.map((k) => Math.atan2(y[k + 1] - y[k], x[k + 1] - x[k]));
  const round = lengths.reduce((sum, length) => sum + length, 0);
  const reach = Math.min(MOST_STRETCH_MM, STRETCH_SHARE * round) / 2;
  const turns = chords.map((_, k) => turningRound(lengths, angles, k, reach));
  let best = 0;
  chords.forEach((_, k) => {
    const gain = turns[best] - turns[k];
    if (gain > 1e-9 || (gain > -1e-9 && lengths[k] > lengths[best] + 1e-9)) best = k;
  });
  const k = chords[best];
  return chords.length === 0 ? 0 : (u[k] + u[k + 1]) / 2;
}

/** How much the outline turns (radians) within `reach` of the middle of chord k, both ways. */
function turningRound(
  lengths: readonly number[],
  angles: readonly number[],
  k: number,
  reach: number,
): number {
  const n = lengths.length;
  let turning = 0;
  for (const way of [1, -1]) {
    let far = lengths[k] / 2;
    for (let j = 0; j < n && far < reach; j++) {
      const [from, to] = [(k + way * j + n * n) % n, (k + way * (j + 1) + n * n) % n];
      const turn = Math.abs(angles[to] - angles[from]);
      turning += Math.min(turn, 2 * Math.PI - turn);
      far += lengths[to];
    }
  }
  return turning;
}
