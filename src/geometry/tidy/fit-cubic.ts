import { chordsOf } from '../chain.js';
import { jetAt, straightCubic } from '../cubic.js';
import type { Cubics, Point } from '../types.js';
import type { Track } from './course.js';
import { gapBetween } from './gap.js';

/**
 * One cubic through the ends of a row of points, as near to it as least squares bring it. After
 * P. J. Schneider, An algorithm for automatically fitting digitized curves, Graphics Gems (1990);
 * here an end's direction may also be left free, and what counts in the end is the gap, measured.
 */

/** The unit direction in which the cubic runs through an end; null leaves it free. */
export type Heading = Point | null;

/** Chords stand for curves with this share of the tolerance as their error, on either side. */
export const CHORD_SHARE = 1 / 20;

/** Places along the row, evenly spaced, to which the cubic is fitted: more cost time. */
const SAMPLES = 40;
/** Rounds of fitting and finding the feet anew: mostly 2 to 4 do; more seldom help. */
const ROUNDS = 10;
/** A round that brings the cubic nearer by less than this share is the last. */
const LITTLE = 0.02;
/** What counts of a miss along the curve after the first round: less may overshoot. */
const ALONG_SHARE = 0.02;
/** Where the cubic misses by this many tolerances after the first round, more will not mend it. */
const HOPELESS = 20;
/** Runs this straight (share of the tolerance) become straight lines. */
export const STRAIGHT_SHARE = 1 / 20;

/**
 * A cubic within the tolerance of the row both ways (Fréchet, and so Hausdorff), or null. It runs
 * through the ends in the directions given, forward, and does not cross itself.
 */
export function fittedCubic(
  track: Track,
  start: Heading,
  end: Heading,
  toleranceMm: number,
): Cubics | null {
  const straight = straightRun(track, start, end, toleranceMm * STRAIGHT_SHARE);
  if (straight) return straight;
  const samples = sampled(track);
  if (samples === null) return null;
  const cubic = settled(samples, start, end, HOPELESS * toleranceMm);
  if (cubic === null || !runsForward(cubic, samples)) return null;
  const within = toleranceMm * (1 - 2 * CHORD_SHARE);
  const chords = chordsOf(cubic, toleranceMm * CHORD_SHARE);
  return gapBetween(track, chords, within) <= within ? cubic : null;
}

/** Fits and finds the feet anew until that gains little; null where the cubic misses by too much. */
function settled(samples: Samples, start: Heading, end: Heading, tooFarMm: number): Cubics | null {
  let best: Cubics | null = null;
  let least = tooFarMm;
  const unknowns = [...unknownsOf(0, start), ...unknownsOf(1, end && { x: -end.x, y: -end.y })];
  for (let round = 0; round < ROUNDS; round++) {
    const cubic = leastSquares(samples, unknowns, round === 0 ? 1 : ALONG_SHARE);
    if (cubic === null) break;
    const miss = findFeet(cubic, samples);
    if (!(miss < least)) break;
    const gain = least - miss;
    [best, least] = [cubic, miss];
    if (gain < LITTLE * miss) break;
  }
  return best;
}

/** A straight line, where the row is straight and the directions agree. */
function straightRun(track: Track, start: Heading, end: Heading, withinMm: number): Cubics | null {
  const last = track.x.length - 1;
  const ends = [track.x[0], track.y[0], track.x[last], track.y[last]] as const;
  for (const heading of [start, end]) {
    if (heading === null) continue;
    const aside = heading.x * (ends[3] - ends[1]) - heading.y * (ends[2] - ends[0]);
    if (Math.abs(aside) > withinMm) return null;
  }
  return isStraightTrack(track, withinMm) ? Float64Array.from(straightCubic(...ends)) : null;
}

/** Whether a row of points runs straight from its start to its end. */
export function isStraightTrack(track: Track, withinMm: number): boolean {
  const last = track.x.length - 1;
  const x = Float64Array.of(track.x[0], track.x[last]);
  const y = Float64Array.of(track.y[0], track.y[last]);
  const isPoint = x[0] === x[1] && y[0] === y[1];
  return !isPoint && gapBetween(track, { x, y }, withinMm) <= withinMm;
}

/** Places along the row, and for each the parameter of its foot on the cubic and the normal there. */
interface Samples extends Track {
  readonly t: Float64Array;
  readonly nx: Float64Array;
  readonly ny: Float64Array;
}

function sampled({ x, y }: Track): Samples | null {
  const last = x.length - 1;
  const at = new Float64Array(x.length);
  for (let k = 1; k <= last; k++) at[k] = at[k - 1] + Math.hypot(x[k] - x[k - 1], y[k] - y[k - 1]);
  if (at[last] === 0) return null;
  const [px, py, t, nx, ny] = [0, 0, 0, 0, 0].map(() => new Float64Array(SAMPLES + 1));
  let k = 0;
  for (let j = 0; j <= SAMPLES; j++) {
    const length = (j / SAMPLES) * at[last];
    while (k + 1 < last && at[k + 1] <= length) k++;
    const f = at[k + 1] > at[k] ? Math.min(1, (length - at[k]) / (at[k + 1] - at[k])) : 0;
    px[j] = x[k] + f * (x[k + 1] - x[k]);
    py[j] = y[k] + f * (y[k + 1] - y[k]);
    t[j] = j / SAMPLES;
  }
  px[SAMPLES] = x[last];
  py[SAMPLES] = y[last];
  return { x: px, y: py, t, nx, ny };
}

/** A direction in which one of the handles may grow: by how much is what is sought. */
interface Unknown {
  readonly handle: 0 | 1;
  readonly x: number;
  readonly y: number;
}

/**
 * The cubic nearest to the samples in the sense of least squares, their parameters as they are. What
 * a sample misses by along the curve counts for little once its foot is about right, as another foot
 * takes it up (tangent distance minimisation: W. Wang, H. Pottmann and Y. Liu, Fitting B-spline
 * curves to point clouds by curvature-based squared distance minimization, 2006).
 */
function leastSquares(
  { x, y, t, nx, ny }: Samples,
  unknowns: readonly Unknown[],
  alongShare: number,
): Cubics | null {
  const cubic = Float64Array.of(
    x[0],
    y[0],
    x[0],
    y[0],
    x[SAMPLES],
    y[SAMPLES],
    x[SAMPLES],
    y[SAMPLES],
  );
  const rows = unknowns.map(() => new Array<number>(unknowns.length + 1).fill(0));
  for (let k = 1; k < SAMPLES; k++) {
    const u = 1 - t[k];
    const weights = [3 * u * u * t[k], 3 * u * t[k] * t[k]];
    const at = jetAt(cubic, 0, t[k]);
    const [rx, ry] = [x[k] - at.x, y[k] - at.y];
    const across = rx * nx[k] + ry * ny[k];
    const pulls = unknowns.map((p) => p.x * nx[k] + p.y * ny[k]);
    unknowns.forEach((p, i) => {
      unknowns.forEach((q, j) => {
        const dot = pulls[i] * pulls[j] + alongShare * (p.x * q.x + p.y * q.y);
        rows[i][j] += weights[p.handle] * weights[q.handle] * dot;
      });
      const toward = pulls[i] * across + alongShare * (p.x * rx + p.y * ry);
      rows[i][unknowns.length] += weights[p.handle] * toward;
    });
  }
  const amounts = solved(rows);
  if (amounts === null) return null;
  unknowns.forEach(({ handle, x: dx, y: dy }, k) => {
    cubic[2 + 2 * handle] += amounts[k] * dx;
    cubic[3 + 2 * handle] += amounts[k] * dy;
  });
  return cubic;
}

const unknownsOf = (handle: 0 | 1, heading: Heading): Unknown[] =>
  heading
    ? [{ handle, ...heading }]
    : [
        { handle, x: 1, y: 0 },
        { handle, x: 0, y: 1 },
      ];

/** Pivots below this share of the largest mean that the equations do not decide. */
const SINGULAR = 1e-12;

/** Solves linear equations, each a row with its right side last (elimination with pivots). */
function solved(rows: number[][]): number[] | null {
  const n = rows.length;
  const scale = Math.max(...rows.flatMap((row) => row.slice(0, n).map(Math.abs)));
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let r = column; r < n; r++) {
      if (Math.abs(rows[r][column]) > Math.abs(rows[pivot][column])) pivot = r;
    }
    if (!(Math.abs(rows[pivot][column]) > SINGULAR * scale)) return null;
    [rows[column], rows[pivot]] = [rows[pivot], rows[column]];
    for (let r = 0; r < n; r++) {
      if (r === column) continue;
      const factor = rows[r][column] / rows[column][column];
      for (let k = column; k <= n; k++) rows[r][k] -= factor * rows[column][k];
    }
  }
  return rows.map((row, k) => row[n] / row[k]);
}

/** Whether both handles point along the row and the control polygon does not cross itself. */
function runsForward(c: Cubics, { x, y }: Samples): boolean {
  const out = (c[2] - c[0]) * (x[1] - x[0]) + (c[3] - c[1]) * (y[1] - y[0]);
  const home =
    (c[6] - c[4]) * (x[SAMPLES] - x[SAMPLES - 1]) + (c[7] - c[5]) * (y[SAMPLES] - y[SAMPLES - 1]);
  if (!(out > 0 && home > 0)) return false;
  const side = (a: number, b: number, p: number): number =>
    (c[b] - c[a]) * (c[p + 1] - c[a + 1]) - (c[b + 1] - c[a + 1]) * (c[p] - c[a]);
  return !(side(0, 2, 4) * side(0, 2, 6) < 0 && side(4, 6, 0) * side(4, 6, 2) < 0);
}

/** Moves each sample's parameter toward its foot (a Newton step); returns the farthest miss. */
function findFeet(cubic: Cubics, { x, y, t, nx, ny }: Samples): number {
  let most = 0;
  for (let k = 1; k < SAMPLES; k++) {
    const at = jetAt(cubic, 0, t[k]);
    const u = 1 - t[k];
    const bend = (i: number): number =>
      6 *
      (u * (cubic[i] - 2 * cubic[i + 2] + cubic[i + 4]) +
        t[k] * (cubic[i + 2] - 2 * cubic[i + 4] + cubic[i + 6]));
    const [ex, ey] = [at.x - x[k], at.y - y[k]];
    const slope = at.dx * at.dx + at.dy * at.dy + ex * bend(0) + ey * bend(1);
    if (slope > 0) t[k] = Math.max(0, Math.min(1, t[k] - (ex * at.dx + ey * at.dy) / slope));
    const foot = jetAt(cubic, 0, t[k]);
    const speed = Math.hypot(foot.dx, foot.dy);
    nx[k] = speed > 0 ? -foot.dy / speed : 0;
    ny[k] = speed > 0 ? foot.dx / speed : 0;
    most = Math.max(most, Math.hypot(foot.x - x[k], foot.y - y[k]));
  }
  return most;
}
