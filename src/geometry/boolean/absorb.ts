import { footNear, jetAt } from '../cubic.js';
import type { ChordTable } from './chords.js';
import { isChained, type Run } from './runs.js';

/** Share of the chord tolerance within which a run counts as lying on its neighbour's curve. */
const ON_CURVE = 0.1;
/** Parameter gap (absolute) across which two runs of one segment are one. */
const SAME_SEGMENT_GAP = 0.02;
/** Parameter by which a run may step back through rounding. */
const BACKSTEP = 1e-3;
/** Points of a run tested against the neighbour's curve. */
const SAMPLES = 4;
/** A run this short (mm) and over this few edges, and not a whole segment, is rounding dust. */
const DUST_MM = 2e-3;
const DUST_EDGES = 3;
/** Bound on the passes, far above what any ring needs; at the bound the runs stay as they are. */
const MAX_VISITS = 2000;

/**
 * Merges runs that lie on their neighbour's source curve into it. Coincident arcs that came
 * flattened differently weave over and under each other; without this they would come out as
 * confetti, or as whiskers that run out along the one and back along the other. Then drops runs
 * that are only rounding dust. Changes `runs`.
 */
export function tidyRuns(runs: Run[], table: ChordTable, toleranceMm: number): void {
  absorbRuns(runs, table, toleranceMm * ON_CURVE);
  for (let k = 0; k < runs.length && runs.length > 2; k++) {
    if (isDust(runs[k])) runs.splice(k--, 1);
  }
}

function absorbRuns(runs: Run[], table: ChordTable, nearMm: number): void {
  let quiet = 0;
  let k = 0;
  const limit = MAX_VISITS + 4 * runs.length;
  for (let visit = 0; quiet < runs.length && runs.length > 2 && visit < limit; visit++) {
    k %= runs.length;
    const next = (k + 1) % runs.length;
    const gone = mergePair(runs[k], runs[next], table, nearMm);
    if (gone === null) {
      quiet++;
      k++;
      continue;
    }
    quiet = 0;
    const removed = gone === 'second' ? next : k;
    runs.splice(removed, 1);
    k = Math.max(0, (removed < k ? k - 1 : k) - 1);
  }
}

/** Merges two neighbouring runs if they are one curve, and says which of them is now needless. */
function mergePair(a: Run, b: Run, table: ChordTable, nearMm: number): 'first' | 'second' | null {
  if (isWholeChain(a, b, table)) return null;
  if (a.segment === b.segment) {
    const gap = b.from - a.to;
    const onward = a.direction === b.direction && gap * a.direction > -BACKSTEP;
    if (!onward || Math.abs(gap) >= SAME_SEGMENT_GAP) return null;
    Object.assign(a, { to: b.to, toExact: b.toExact, end: b.end, edges: a.edges + b.edges });
    return 'second';
  }
  const ahead = endOnCurve(b, a, true, table, nearMm);
  if (ahead !== null) {
    Object.assign(a, { to: ahead, toExact: false, end: b.end, edges: a.edges + b.edges });
    return 'second';
  }
  const behind = endOnCurve(a, b, false, table, nearMm);
  if (behind !== null) {
    Object.assign(b, { from: behind, fromExact: false, start: a.start, edges: a.edges + b.edges });
    return 'first';
  }
  return foldedBack(a, b, table, nearMm);
}

/** Takes the shorter of two runs off the other where the second goes back along the first. */
function foldedBack(a: Run, b: Run, table: ChordTable, nearMm: number): 'first' | 'second' | null {
  const back = endOnCurve(b, a, true, table, nearMm, -1);
  if (back !== null && (back - a.from) * a.direction > 0) {
    Object.assign(a, { to: back, toExact: false, end: b.end });
    return 'second';
  }
  const out = endOnCurve(a, b, false, table, nearMm, -1);
  if (out === null || (b.to - out) * b.direction <= 0) return null;
  Object.assign(b, { from: out, fromExact: false, start: a.start });
  return 'first';
}

/** Two whole segments of one contour in a row: certainly meant to be two. */
const isWholeChain = (a: Run, b: Run, table: ChordTable): boolean =>
  isChained(a, b, table) &&
  a.from === (a.direction > 0 ? 0 : 1) &&
  b.to === (b.direction > 0 ? 1 : 0);

/**
 * If `run` lies on the source curve of `host`, beyond its end (`ahead`) or before its start, the
 * parameter of the host's segment that the far end of `run` reaches; else null. With `way` -1 it
 * must lie back from there instead, on the host itself.
 */
function endOnCurve(
  run: Run,
  host: Run,
  ahead: boolean,
  table: ChordTable,
  nearMm: number,
  way: 1 | -1 = 1,
): number | null {
  const onward = way * (ahead ? host.direction : -host.direction);
  let t = ahead ? host.to : host.from;
  for (let k = 1; k <= SAMPLES; k++) {
    const f = ahead ? k / SAMPLES : 1 - k / SAMPLES;
    const p = jetAt(table.cubics, run.segment * 8, run.from + f * (run.to - run.from));
    const foot = footNear(table.cubics, host.segment * 8, t, p.x, p.y);
    const q = jetAt(table.cubics, host.segment * 8, foot);
    if (Math.hypot(q.x - p.x, q.y - p.y) > nearMm) return null;
    if ((foot - t) * onward < -BACKSTEP) return null;
    t = foot;
  }
  return t;
}

function isDust(run: Run): boolean {
  if (run.edges > DUST_EDGES) return false;
  const whole = run.from === (run.direction > 0 ? 0 : 1) && run.to === (run.direction > 0 ? 1 : 0);
  if (whole) return false;
  return Math.hypot(run.end.x - run.start.x, run.end.y - run.start.y) < DUST_MM;
}
