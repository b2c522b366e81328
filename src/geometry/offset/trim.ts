import { crossingNear, jetAt, subCubic } from '../cubic.js';
import type { Cubics, Point } from '../types.js';
import type { Turn } from './joins.js';
import type { Curve } from './parallel.js';

/** One thing after another round a raw outline, each ending on the place where the next starts. */
export type Element = Curve | Turn;

/** How many pieces back and on from a gap its crossing is looked for. */
const REACH = 6;

/**
 * Cuts off the loops that a raw outline makes where it turns inward or runs backwards: the pieces
 * before and after such a gap mostly cross, and the outline can go from one to the other there. A
 * gap whose pieces do not cross stays as it is. What is cut off lies within the offset.
 */
export function trimLoops(elements: readonly Element[], distanceMm: number): Element[] {
  const n = elements.length;
  const out: (Element | null)[] = [...elements];
  for (let k = 0; k < n; k++) {
    if (!isForward(elements[k])) continue;
    let end = k + 1;
    while (end - k < n && isBackward(elements[end % n])) end++;
    if (end === k + 1 || end - k >= n || !isForward(elements[end % n])) continue;
    cutAcross(out, k, end, distanceMm);
  }
  return out.filter((e) => e !== null);
}

const isForward = (e: Element | null): e is Curve => e?.kind === 'curve' && !e.inverted;

const isBackward = (e: Element): boolean => (e.kind === 'curve' ? e.inverted : e.sweep === 0);

/** Joins curve `last` or one before it to curve `first` or one after it, where they cross. */
function cutAcross(out: (Element | null)[], last: number, first: number, distanceMm: number): void {
  const n = out.length;
  const before = curvesFrom(out, last, -1);
  const after = curvesFrom(out, first, 1);
  for (let sum = 0; sum < before.length + after.length - 1; sum++) {
    for (let j = Math.max(0, sum - after.length + 1); j < before.length && j <= sum; j++) {
      const [a, b] = [before[j], after[sum - j]];
      const [from, to] = [last - j, first + sum - j];
      const hit = to - from < n ? crossing(a.cubic, b.cubic) : null;
      if (!hit) continue;
      const back = [part(a, hit.ta, 1), ...before.slice(0, j)];
      const on = [part(b, 0, hit.tb), ...after.slice(0, sum - j)];
      const gap = Array.from({ length: first - last - 1 }, (_, k) => out[(last + 1 + k) % n]);
      if (!turnsInward([...back, ...gap, ...on], distanceMm)) continue;
      if (!isBuried(back, on, distanceMm) || !isBuried(on, back, distanceMm)) continue;
      // Indices may run past both ends of the row.
      out[(from + n) % n] = part(a, 0, hit.ta);
      out[to % n] = part(b, hit.tb, 1);
      for (let k = from + 1; k < to; k++) out[(k + n) % n] = null;
      return;
    }
  }
}

/** The curves in a row from index k on, forward or backward, at most REACH of them. */
function curvesFrom(out: readonly (Element | null)[], k: number, step: 1 | -1): Curve[] {
  const curves: Curve[] = [];
  const n = out.length;
  for (let j = 0; j < Math.min(REACH, n); j++) {
    const element = out[(k + j * step + 2 * n) % n];
    if (!isForward(element)) break;
    curves.push(element);
  }
  return curves;
}

const part = (curve: Curve, t0: number, t1: number): Curve => ({
  ...curve,
  cubic: Float64Array.from(subCubic(curve.cubic, 0, t0, t1)),
});

/**
 * Whether the source turns inward, by less than half a turn in all: that makes a loop to cut off. A
 * loop of the source itself makes one too, but turns further on.
 */
function turnsInward(elements: readonly (Element | null)[], distanceMm: number): boolean {
  const outward = Math.sign(distanceMm);
  let turn = 0;
  for (const e of elements) {
    if (e?.kind === 'curve') turn += outward * turnOf(e);
    else if (e) turn -= Math.abs(angle(e.a.tx, e.a.ty, e.b.tx, e.b.ty));
  }
  return turn < 0 && turn > -Math.PI;
}

/** Whether curves lie within the distance of the source of the others, looked at in the middle. */
const isBuried = (
  curves: readonly Curve[],
  others: readonly Curve[],
  distanceMm: number,
): boolean =>
  curves.every(({ cubic }) => {
    const p = jetAt(cubic, 0, 0.5);
    return others.some((other) => sourceDistance(other, p) < Math.abs(distanceMm));
  });

/** Distance (mm) of a point from the chord of a curve's source. */
function sourceDistance({ a, b }: Curve, p: Point): number {
  const [ux, uy] = [b.px - a.px, b.py - a.py];
  const along = ((p.x - a.px) * ux + (p.y - a.py) * uy) / (ux * ux + uy * uy || 1);
  const f = Math.max(0, Math.min(1, along));
  return Math.hypot(a.px + f * ux - p.x, a.py + f * uy - p.y);
}

/** The angle (radians, clockwise positive) through which the source of a curve turns. */
function turnOf({ a, b, cubic, inverted }: Curve): number {
  if (inverted) return angle(a.tx, a.ty, b.tx, b.ty);
  const [p, q] = [jetAt(cubic, 0, 0), jetAt(cubic, 0, 1)];
  return angle(p.dx || a.tx, p.dy || a.ty, q.dx || b.tx, q.dy || b.ty);
}

const angle = (ux: number, uy: number, vx: number, vy: number): number =>
  Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);

/** Where two cubics cross within both. */
function crossing(a: Cubics, b: Cubics): { ta: number; tb: number } | null {
  if (!boxesMeet(a, b)) return null;
  const guess = chordCrossing(a, b) ?? { ta: 1, tb: 0 };
  const hit = crossingNear(a, 0, guess.ta, b, 0, guess.tb);
  return hit && hit.ta > 0 && hit.ta < 1 && hit.tb > 0 && hit.tb < 1 ? hit : null;
}

function boxesMeet(a: Cubics, b: Cubics): boolean {
  for (const k of [0, 1]) {
    const [a0, a1, a2, a3] = [a[k], a[k + 2], a[k + 4], a[k + 6]];
    const [b0, b1, b2, b3] = [b[k], b[k + 2], b[k + 4], b[k + 6]];
    if (Math.max(a0, a1, a2, a3) < Math.min(b0, b1, b2, b3)) return false;
    if (Math.max(b0, b1, b2, b3) < Math.min(a0, a1, a2, a3)) return false;
  }
  return true;
}

/** Where the chords of two cubics cross, as fractions of them, or null. */
function chordCrossing(a: Cubics, b: Cubics): { ta: number; tb: number } | null {
  const [ux, uy, vx, vy] = [a[6] - a[0], a[7] - a[1], b[6] - b[0], b[7] - b[1]];
  const [wx, wy] = [b[0] - a[0], b[1] - a[1]];
  const cross = ux * vy - uy * vx;
  const [ta, tb] = [(wx * vy - wy * vx) / cross, (wx * uy - wy * ux) / cross];
  return ta >= 0 && ta <= 1 && tb >= 0 && tb <= 1 ? { ta, tb } : null;
}
