import { chordCount, isStraightCubic, straightCubic } from '../cubic.js';
import type { Cubics } from '../types.js';

/** Integer units a millimetre: 10 nm, far below any machine, yet 21 m fit in 32 bits. */
export const GRID_PER_MM = 1e5;
/** Farthest coordinate that fits the grid. */
const MAX_MM = 20000;

/**
 * Closed contours cut into chords whose ends lie on an integer grid, each chord knowing which part
 * of which cubic it stands for.
 *
 * Vertex k and chord k go together: chord k runs from vertex k to vertex `next[k]` and covers the
 * parameters `t0[k]`..`t1[k]` of segment `segment[k]`. Segment s is the cubic at `cubics[8 * s]`.
 */
export interface ChordTable {
  /** All cubics of all contours, eight numbers each, closed. */
  readonly cubics: Cubics;
  /** 1 for a segment that is straight; its t is then proportional to length. */
  readonly straight: Uint8Array;
  readonly nextSegment: Int32Array;
  readonly previousSegment: Int32Array;
  /** Vertex coordinates in grid units. */
  readonly x: Int32Array;
  readonly y: Int32Array;
  readonly segment: Int32Array;
  readonly next: Int32Array;
  readonly previous: Int32Array;
  readonly t0: Float64Array;
  readonly t1: Float64Array;
  /** Contour q owns the vertices from contourStart[q] up to contourStart[q + 1]. */
  readonly contourStart: Int32Array;
}

/**
 * Cuts contours into chords within `toleranceMm` of the curves. An open chain is closed with a
 * straight edge; a contour that collapses on the grid gets no vertices.
 * Throws where a coordinate is not a number or lies farther than 20 m out.
 */
export function chordTable(contours: readonly Cubics[], toleranceMm: number): ChordTable {
  const closed = contours.map(closedChain);
  const segments = gatherSegments(closed);
  const steps = stepCounts(segments, toleranceMm);
  const capacity = steps.reduce((sum, n) => sum + n, 0);
  const table: ChordTable = {
    ...segments,
    x: new Int32Array(capacity),
    y: new Int32Array(capacity),
    segment: new Int32Array(capacity),
    next: new Int32Array(capacity),
    previous: new Int32Array(capacity),
    t0: new Float64Array(capacity),
    t1: new Float64Array(capacity),
    contourStart: new Int32Array(closed.length + 1),
  };
  let vertex = 0;
  let segment = 0;
  closed.forEach((chain, q) => {
    const after = segment + chain.length / 8;
    table.contourStart[q] = vertex;
    vertex = addContour(table, steps, segment, after, vertex);
    segment = after;
  });
  table.contourStart[closed.length] = vertex;
  return table;
}

/** The chain with its end joined to its start, as it is where it already closes. */
function closedChain(c: Cubics): Cubics {
  const n = c.length;
  for (const v of c) {
    if (!(Math.abs(v) <= MAX_MM)) {
      throw new Error(
        `A shape has a coordinate of ${v} mm. Coordinates must be numbers within ${MAX_MM} mm of the origin.`,
      );
    }
  }
  if (n === 0 || (c[n - 2] === c[0] && c[n - 1] === c[1])) return c;
  return Float64Array.from([...c, ...straightCubic(c[n - 2], c[n - 1], c[0], c[1])]);
}

type Segments = Pick<ChordTable, 'cubics' | 'straight' | 'nextSegment' | 'previousSegment'>;

function gatherSegments(chains: readonly Cubics[]): Segments {
  const count = chains.reduce((sum, c) => sum + c.length / 8, 0);
  const cubics = new Float64Array(count * 8);
  const straight = new Uint8Array(count);
  const nextSegment = new Int32Array(count);
  const previousSegment = new Int32Array(count);
  let s = 0;
  for (const chain of chains) {
    const first = s;
    cubics.set(chain, s * 8);
    for (; s < first + chain.length / 8; s++) {
      nextSegment[s] = s + 1;
      previousSegment[s] = s - 1;
      if (!isStraightCubic(cubics, s * 8)) continue;
      straight[s] = 1;
      const [x0, y0, x3, y3] = [0, 1, 6, 7].map((k) => cubics[s * 8 + k]);
      cubics.set(straightCubic(x0, y0, x3, y3), s * 8);
    }
    if (s > first) {
      nextSegment[s - 1] = first;
      previousSegment[first] = s - 1;
    }
  }
  return { cubics, straight, nextSegment, previousSegment };
}

const stepCounts = ({ cubics, straight }: Segments, toleranceMm: number): Int32Array =>
  Int32Array.from(straight, (isStraight, s) =>
    // Two chords at the least, so that a lens of two cubics does not collapse.
    isStraight ? 1 : Math.max(2, chordCount(cubics, s * 8, toleranceMm)),
  );

/** Adds the chords of the segments from..to and links them in a ring; returns the next vertex. */
function addContour(
  table: ChordTable,
  steps: Int32Array,
  from: number,
  to: number,
  start: number,
): number {
  let v = start;
  for (let s = from; s < to; s++) v = addSegment(table, s, steps[s], v);
  if (v - start < 3) return start;
  for (let k = start; k < v; k++) {
    table.next[k] = k + 1;
    table.previous[k] = k - 1;
  }
  table.next[v - 1] = start;
  table.previous[start] = v - 1;
  return v;
}

function addSegment(table: ChordTable, s: number, n: number, start: number): number {
  const { cubics, x, y, segment, t0, t1 } = table;
  const at = s * 8;
  let v = start;
  let lastX = Math.round(cubics[at] * GRID_PER_MM);
  let lastY = Math.round(cubics[at + 1] * GRID_PER_MM);
  let lastT = 0;
  // The same cubic may occur run the other way (two shapes sharing an edge). Evaluating both from
  // the same end makes their vertices equal to the last bit.
  const backwards = runsBackwards(cubics, at);
  const [a, b, c, d] = backwards ? [at + 6, at + 4, at + 2, at] : [at, at + 2, at + 4, at + 6];
  for (let step = 1; step <= n; step++) {
    const t = step === n ? (backwards ? 0 : 1) : (backwards ? n - step : step) / n;
    const u = 1 - t;
    const [w0, w1, w2, w3] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
    const mmX = w0 * cubics[a] + w1 * cubics[b] + w2 * cubics[c] + w3 * cubics[d];
    const mmY = w0 * cubics[a + 1] + w1 * cubics[b + 1] + w2 * cubics[c + 1] + w3 * cubics[d + 1];
    const px = Math.round(mmX * GRID_PER_MM);
    const py = Math.round(mmY * GRID_PER_MM);
    if (px === lastX && py === lastY) continue;
    x[v] = lastX;
    y[v] = lastY;
    segment[v] = s;
    t0[v] = lastT;
    t1[v] = step / n;
    lastX = px;
    lastY = py;
    lastT = step / n;
    v++;
  }
  if (v > start) t1[v - 1] = 1;
  return v;
}

function runsBackwards(c: Cubics, i: number): boolean {
  if (c[i + 6] !== c[i]) return c[i + 6] < c[i];
  return c[i + 7] < c[i + 1];
}
