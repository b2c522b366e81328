import { crossingNear, footNear, type Jet, jetAt } from '../cubic.js';
import type { Point } from '../types.js';
import type { ChordTable } from './chords.js';
import { isChained, type Run } from './runs.js';

/** Where one run ends and the next begins, on the true curves. */
export interface Corner {
  /** Where the run before ends. */
  readonly end: Point;
  /** Where the run after starts: the same point, save where a tiny straight bridge is needed. */
  readonly start: Point;
  /** Parameter on the segment of the run before, and of the run after. */
  readonly to: number;
  readonly from: number;
}

/** What must happen before a corner can be found: the run is used up, or must be carried on. */
type Change = { drop: Run } | { after: Run; insert: Run[] };

/** Two ends this near (mm) are one point. */
const SAME_POINT_MM = 1e-7;
/**
 * A gap wider than this (mm) is bridged by a straight edge: moving the curve's end with its handle
 * instead swings the whole curve, which costs far more area than the bridge.
 */
const BRIDGE_MM = 2e-4;
/** Parameter distance within which two ends on one segment are the same place. */
const SAME_T = 0.01;
/** A crossing may lie this many chord tolerances from the polygon's vertex, or 0.02 mm. */
const NEAR_TOLERANCES = 20;
const NEAR_MM = 0.02;
/** Or this many, where both curves run that near to each other all the way (near-tangency). */
const TANGENT_REACH = 150;
const TANGENT_APART = 3;
/** Rounding of a parameter at the ends of a segment. */
const T_EPSILON = 1e-9;
/** Length in t of a run put in to carry on another: the next round works out the true one. */
const SEED_T = 1e-6;

/**
 * The corners of a contour: corner k lies between run k and the run after it. Runs that turn out
 * to be used up by their neighbours are dropped, and runs whose crossing lies beyond their segment
 * are carried on to the next one; both change `runs`.
 */
export function cornersOf(runs: Run[], table: ChordTable, toleranceMm: number): Corner[] {
  const known = new Map<Run, { after: Run; corner: Corner }>();
  const roundLimit = 60 + 6 * runs.length;
  for (let round = 0; ; round++) {
    // Past the limit nothing is dropped or carried on any more, so that this must end.
    const settle = round > roundLimit;
    const finder = new CornerFinder(table, toleranceMm, settle || runs.length <= 2);
    const corners: Corner[] = [];
    let change: Change | null = null;
    for (let k = 0; k < runs.length && !change; k++) {
      const a = runs[k];
      const b = runs[(k + 1) % runs.length];
      const found = known.get(a);
      const corner = found?.after === b ? found.corner : finder.between(a, b, settle);
      if ('end' in corner) {
        corners.push(corner);
        known.set(a, { after: b, corner });
      } else change = corner;
    }
    change ??= settle ? null : dropReversed(runs, corners);
    if (!change) return corners;
    apply(change, runs);
  }
}

function dropReversed(runs: readonly Run[], corners: readonly Corner[]): Change | null {
  const n = runs.length;
  if (n <= 2) return null;
  const reversed = runs.find((run, k) => {
    const from = corners[(k + n - 1) % n].from;
    return (corners[k].to - from) * run.direction <= 0;
  });
  return reversed ? { drop: reversed } : null;
}

function apply(change: Change, runs: Run[]): void {
  if ('drop' in change) {
    runs.splice(runs.indexOf(change.drop), 1);
    return;
  }
  runs.splice(runs.indexOf(change.after) + 1, 0, ...change.insert);
}

class CornerFinder {
  constructor(
    private readonly table: ChordTable,
    private readonly toleranceMm: number,
    private readonly keepAll: boolean,
  ) {}

  between(a: Run, b: Run, settle: boolean): Corner | Change {
    if (a === b) return this.ownCrossing(a);
    if (isChained(a, b, this.table) && isNode(a.to) && isNode(b.from)) {
      return together(this.jet(a, a.to), a.to, b.from);
    }
    const p = { x: (a.end.x + b.start.x) / 2, y: (a.end.y + b.start.y) / 2 };
    const ta = a.toExact ? a.to : this.foot(a, a.to, p);
    const tb = b.fromExact ? b.from : this.foot(b, b.from, p);
    const pa = this.jet(a, ta);
    const gap = distance(pa, this.jet(b, tb));
    if (a.segment === b.segment && Math.abs(ta - tb) < SAME_T) return together(pa, ta, ta);
    if (gap < SAME_POINT_MM) return together(pa, ta, tb);
    const crossing = settle ? null : this.crossing(a, ta, b, tb, p, gap);
    return (crossing && this.take(crossing, a, b)) ?? this.bridged(a, ta, b, tb, gap);
  }

  /** The contour is a single run, the loop of one cubic: its two ends differ in t. */
  private ownCrossing(run: Run): Corner {
    if (isNode(run.to) && isNode(run.from))
      return together(this.jet(run, run.to), run.to, run.from);
    const at = run.segment * 8;
    const hit = crossingNear(this.table.cubics, at, run.to, this.table.cubics, at, run.from);
    const inside = (t: number): boolean => t >= 0 && t <= 1;
    if (!hit || Math.abs(hit.ta - hit.tb) <= 1e-3 || !inside(hit.ta) || !inside(hit.tb)) {
      return together(run.end, run.to, run.from);
    }
    return together(this.jet(run, hit.ta), hit.ta, hit.tb);
  }

  /** The true crossing of two runs' curves, if there is one where the polygon turns. */
  private crossing(
    a: Run,
    ta: number,
    b: Run,
    tb: number,
    p: Point,
    gap: number,
  ): { ta: number; tb: number } | null {
    const { cubics } = this.table;
    const hit = crossingNear(cubics, a.segment * 8, a.to, cubics, b.segment * 8, b.from);
    if (!hit) return null;
    const away = distance(this.jet(a, hit.ta), p);
    if (away < Math.max(NEAR_TOLERANCES * this.toleranceMm, NEAR_MM)) return hit;
    const apart = TANGENT_APART * this.toleranceMm;
    if (gap >= apart || away >= TANGENT_REACH * this.toleranceMm) return null;
    for (const f of [0.25, 0.5, 0.75]) {
      const q = this.jet(a, ta + f * (hit.ta - ta));
      const foot = this.foot(b, tb + f * (hit.tb - tb), q);
      if (distance(this.jet(b, foot), q) > apart) return null;
    }
    return hit;
  }

  /** A crossing as a corner, or the change that it calls for, or null where it is no use. */
  private take({ ta, tb }: { ta: number; tb: number }, a: Run, b: Run): Corner | Change | null {
    if (isOutside(ta) || isOutside(tb)) return this.carryOn(ta, tb, a, b);
    const to = Math.max(0, Math.min(1, ta));
    const from = Math.max(0, Math.min(1, tb));
    const aUsedUp = (to - a.from) * a.direction <= 0;
    const bUsedUp = (b.to - from) * b.direction <= 0;
    if (!aUsedUp && !bUsedUp) return together(this.jet(a, to), to, from);
    if (this.keepAll) return null;
    if (aUsedUp && !a.added) return { drop: a };
    if (bUsedUp && !b.added) return { drop: b };
    return null;
  }

  /** The crossing lies past the end of a segment: go on to its neighbour, or drop what is behind. */
  private carryOn(ta: number, tb: number, a: Run, b: Run): Change | null {
    const aAhead = isOutside(ta) && ta > 1 === a.direction > 0;
    const bAhead = isOutside(tb) && tb < 0 === b.direction > 0;
    if (isOutside(ta) && !aAhead && !this.keepAll) return { drop: a };
    if (isOutside(tb) && !bAhead && !this.keepAll) return { drop: b };
    const insert: Run[] = [];
    const crossing = this.jet(a, ta);
    if (aAhead && !a.extendedTo) insert.push(this.runAfter(a, crossing));
    if (bAhead && !b.extendedFrom) insert.push(this.runBefore(b, crossing));
    return insert.length > 0 ? { after: a, insert } : null;
  }

  private runAfter(a: Run, at: Point): Run {
    const forward = a.direction > 0;
    Object.assign(a, { to: forward ? 1 : 0, toExact: true, extendedTo: true });
    const onward = forward ? this.table.nextSegment : this.table.previousSegment;
    return {
      ...seedRun(onward[a.segment], a.direction, at),
      from: forward ? 0 : 1,
      to: forward ? SEED_T : 1 - SEED_T,
      fromExact: true,
    };
  }

  private runBefore(b: Run, at: Point): Run {
    const forward = b.direction > 0;
    Object.assign(b, { from: forward ? 0 : 1, fromExact: true, extendedFrom: true });
    const back = forward ? this.table.previousSegment : this.table.nextSegment;
    return {
      ...seedRun(back[b.segment], b.direction, at),
      from: forward ? 1 - SEED_T : SEED_T,
      to: forward ? 1 : 0,
      toExact: true,
    };
  }

  /** No crossing to be had: the nearest places of the two curves, bridged where they part. */
  private bridged(a: Run, ta: number, b: Run, tb: number, gap: number): Corner {
    let ends = { to: ta, from: tb, gap };
    if (gap > BRIDGE_MM) {
      const pa = this.jet(a, ta);
      const pb = this.jet(b, tb);
      const from = this.foot(b, tb, pa);
      const gapB = distance(this.jet(b, from), pa);
      if (gapB < ends.gap && (b.to - from) * b.direction > 0) ends = { to: ta, from, gap: gapB };
      const to = this.foot(a, ta, pb);
      const gapA = distance(this.jet(a, to), pb);
      if (gapA < ends.gap && (to - a.from) * a.direction > 0) ends = { to, from: tb, gap: gapA };
    }
    const end = this.jet(a, ends.to);
    const start = this.jet(b, ends.from);
    if (ends.gap > BRIDGE_MM) return { end, start, to: ends.to, from: ends.from };
    if (isNode(ends.from)) return together(start, ends.to, ends.from);
    if (isNode(ends.to)) return together(end, ends.to, ends.from);
    const middle = { x: (end.x + start.x) / 2, y: (end.y + start.y) / 2 };
    return together(middle, ends.to, ends.from);
  }

  private jet(run: Run, t: number): Jet {
    const at = run.segment * 8;
    // The stored node, not the polynomial's rounding of it.
    if (t === 0 || t === 1) return { ...jetAt(this.table.cubics, at, t), ...this.node(at, t) };
    return jetAt(this.table.cubics, at, t);
  }

  private node(at: number, t: 0 | 1): Point {
    const k = t === 0 ? at : at + 6;
    return { x: this.table.cubics[k], y: this.table.cubics[k + 1] };
  }

  private foot(run: Run, t: number, p: Point): number {
    return footNear(this.table.cubics, run.segment * 8, t, p.x, p.y);
  }
}

const seedRun = (segment: number, direction: 1 | -1, at: Point): Run => ({
  segment,
  direction,
  from: 0,
  to: 0,
  fromExact: false,
  toExact: false,
  start: { x: at.x, y: at.y },
  end: { x: at.x, y: at.y },
  edges: 0,
  added: true,
});

const together = (p: Point, to: number, from: number): Corner => {
  const point = { x: p.x, y: p.y };
  return { end: point, start: point, to, from };
};

const isNode = (t: number): boolean => t === 0 || t === 1;
const isOutside = (t: number): boolean => t < -T_EPSILON || t > 1 + T_EPSILON;
const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);
