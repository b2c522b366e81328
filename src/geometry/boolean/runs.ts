import type { Point } from '../types.js';
import { type ChordTable, GRID_PER_MM } from './chords.js';
import type { Ring } from './clip.js';
import type { Hit } from './sources.js';

/**
 * A stretch of a clipped ring that follows one source segment. Runs are changed in place while a
 * contour is put together, and never leave the boolean.
 */
export interface Run {
  /** The source segment. */
  segment: number;
  /** 1 with growing t, -1 with falling t. */
  direction: 1 | -1;
  /** Parameters of the segment where the run starts and ends. */
  from: number;
  to: number;
  /** Whether that end is a vertex of the chord table, whose t is therefore exact. */
  fromExact: boolean;
  toExact: boolean;
  /** The ring's own points at both ends, mm. */
  start: Point;
  end: Point;
  /** How many edges of the ring it covers. */
  edges: number;
  /** Put in to carry a run on past its segment's end; never dropped as consumed. */
  added: boolean;
  /** Already carried on at that end. */
  extendedFrom?: boolean;
  extendedTo?: boolean;
}

/** Chords shorter than the grid are left out: two chords with such a gap (units) are adjacent. */
const GAP_UNITS = 12;
/** No more chords than this in such a gap. */
const GAP_CHORDS = 4;
/** Fraction of a chord by which a run may step back through rounding. */
const BACKSTEP = 1e-3;

/** Covers a ring with the longest runs that its hits (at least one an edge) allow. */
export function runsOf(ring: Ring, hits: readonly Hit[][], table: ChordTable): Run[] {
  const n = ring.length;
  const first = firstBreak(hits, table);
  const edge = (k: number): Hit[] => hits[(first + k) % n];
  const point = (k: number): Point => {
    const p = ring[(first + k) % n];
    return { x: p.x / GRID_PER_MM, y: p.y / GRID_PER_MM };
  };
  const runs: Run[] = [];
  for (let k = 0; k < n; ) {
    const { start, end, edges } = longest(edge, k, n, table);
    runs.push({
      segment: table.segment[start.chord],
      direction: start.direction,
      from: parameter(table, start.chord, start.from),
      to: parameter(table, end.chord, end.to),
      fromExact: start.from === 0 || start.from === 1,
      toExact: end.to === 0 || end.to === 1,
      start: point(k),
      end: point(k + edges),
      edges,
      added: false,
    });
    k += edges;
  }
  joinEnds(runs);
  return runs;
}

/** The hit to start from at edge k that can be followed over the most edges. */
function longest(
  edge: (k: number) => Hit[],
  k: number,
  n: number,
  table: ChordTable,
): { start: Hit; end: Hit; edges: number } {
  const [first] = edge(k);
  let best = { start: first, end: first, edges: 0 };
  for (const start of edge(k)) {
    let end = start;
    let edges = 1;
    while (k + edges < n) {
      const onward = continuation(edge(k + edges), end, table);
      if (!onward) break;
      end = onward;
      edges++;
    }
    if (edges > best.edges) best = { start, end, edges };
  }
  return best;
}

/**
 * The hit that carries `before` on: the same segment and direction, on the same chord or the one
 * next to it. Any later chord would not do: it would jump the loop of a self-crossing cubic.
 */
function continuation(hits: readonly Hit[], before: Hit, table: ChordTable): Hit | undefined {
  const segment = table.segment[before.chord];
  return hits.find((hit) => {
    if (hit.direction !== before.direction || table.segment[hit.chord] !== segment) return false;
    if (hit.chord !== before.chord) return isAdjacent(before, hit, table);
    return (hit.from - before.to) * hit.direction >= -BACKSTEP;
  });
}

function isAdjacent(before: Hit, hit: Hit, table: ChordTable): boolean {
  // A contour of one cubic meets itself at its node: that is a corner, not the next chord.
  if ((table.t0[hit.chord] - table.t0[before.chord]) * before.direction < 0) return false;
  const ahead = before.direction > 0;
  const along = ahead ? table.next : table.previous;
  const segment = table.segment[before.chord];
  let gap =
    (ahead ? 1 - before.to : before.to) * chordLength(table, before.chord) +
    (ahead ? hit.from : 1 - hit.from) * chordLength(table, hit.chord);
  let chord = along[before.chord];
  for (let k = 0; chord !== hit.chord; k++) {
    if (table.segment[chord] !== segment || gap >= GAP_UNITS || k >= GAP_CHORDS) return false;
    gap += chordLength(table, chord);
    chord = along[chord];
  }
  return gap < GAP_UNITS;
}

function chordLength({ x, y, next }: ChordTable, chord: number): number {
  return Math.hypot(x[next[chord]] - x[chord], y[next[chord]] - y[chord]);
}

/** An edge that no hit of the edge before it carries on to; 0 where the ring is one run. */
function firstBreak(hits: readonly Hit[][], table: ChordTable): number {
  const n = hits.length;
  for (let k = 0; k < n; k++) {
    const before = hits[(k + n - 1) % n];
    if (!before.some((hit) => continuation(hits[k], hit, table))) return k;
  }
  return 0;
}

function parameter({ t0, t1 }: ChordTable, chord: number, fraction: number): number {
  if (fraction === 0) return t0[chord];
  if (fraction === 1) return t1[chord];
  return t0[chord] + fraction * (t1[chord] - t0[chord]);
}

/** Joins the last run to the first where the ring's start lies in the middle of one. */
function joinEnds(runs: Run[]): void {
  if (runs.length < 2) return;
  const first = runs[0];
  const last = runs[runs.length - 1];
  if (first.segment !== last.segment || first.direction !== last.direction) return;
  if (Math.abs(first.from - last.to) > 1e-9) return;
  last.to = first.to;
  last.toExact = first.toExact;
  last.end = first.end;
  last.edges += first.edges;
  runs.shift();
}

/** Whether run b carries on run a over a node of the source contour. */
export function isChained(a: Run, b: Run, table: ChordTable): boolean {
  if (a.direction !== b.direction || !a.toExact || !b.fromExact) return false;
  const onward = a.direction > 0 ? table.nextSegment : table.previousSegment;
  return onward[a.segment] === b.segment;
}
