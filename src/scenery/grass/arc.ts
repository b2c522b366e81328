import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import { type Arc, pointOn, wayOn } from './ribbon.js';

/** Chords an arc is measured by. */
const CHORDS = 10;
/** Where along its length a blade's bend sits. */
const KNEE = 0.55;
/** Blades past the plot's end by more than this share of its height are shortened. */
const BEYOND = 0.2;

/** An arc that leaves its foot at `leanDeg` from upright, ends at `tipDeg` and just reaches up. */
export function arcOfHeight(
  foot: Point,
  leanDeg: number,
  tipDeg: number,
  heightMm: number,
  longestMm: number,
): Arc {
  const a = (leanDeg * Math.PI) / 180;
  const b = (tipDeg * Math.PI) / 180;
  const unit: Arc = {
    from: { x: 0, y: 0 },
    control: { x: KNEE * Math.sin(a), y: -KNEE * Math.cos(a) },
    to: {
      x: KNEE * Math.sin(a) + (1 - KNEE) * Math.sin(b),
      y: -KNEE * Math.cos(a) - (1 - KNEE) * Math.cos(b),
    },
  };
  return placed(unit, foot, Math.min(longestMm, heightMm / Math.max(0.1, topOf(unit))));
}

/** The arc scaled about the origin and moved to its foot. */
export function placed({ from, control, to }: Arc, foot: Point, scale: number): Arc {
  const at = (p: Point) => ({
    x: foot.x + scale * (p.x - from.x),
    y: foot.y + scale * (p.y - from.y),
  });
  return { from: foot, control: at(control), to: at(to) };
}

/** The arc, shortened if it would run far past the plot's end. */
export function within(arc: Arc, plot: Plot): Arc {
  const limit = plot.width / 2 + BEYOND * plot.height;
  const run = arc.to.x - arc.from.x;
  const room = Math.sign(run) * limit - arc.from.x;
  return Math.abs(run) <= Math.abs(room) ? arc : placed(arc, arc.from, Math.abs(room / run));
}

/** How high the arc's highest point stands over its foot. */
export function topOf({ from, control, to }: Arc): number {
  const rise = from.y - control.y;
  const over = control.y - to.y;
  // The top of y(t) = 2 rise t (1 - t) + (rise + over) t^2 within the arc.
  const t = over >= 0 || rise <= 0 ? 1 : rise / (rise - over);
  return 2 * rise * t * (1 - t) + (rise + over) * t * t;
}

/** The arc's length, near enough: the mean of its chord and its polygon. */
export function lengthOf({ from, control, to }: Arc): number {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const polygon =
    Math.hypot(control.x - from.x, control.y - from.y) +
    Math.hypot(to.x - control.x, to.y - control.y);
  return (chord + polygon) / 2;
}

/** How near a point comes to the arc, from chords of it. */
export function distanceTo(arc: Arc, p: Point): number {
  let least = Infinity;
  let a = arc.from;
  for (let i = 1; i <= CHORDS; i++) {
    const b = pointOn(arc, i / CHORDS);
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const t = ((p.x - a.x) * dx + (p.y - a.y) * dy) / Math.max(1e-18, dx * dx + dy * dy);
    const u = Math.max(0, Math.min(1, t));
    least = Math.min(least, Math.hypot(p.x - a.x - u * dx, p.y - a.y - u * dy));
    a = b;
  }
  return least;
}

/** How sharply a broken blade folds, and how its upper part then points, from its own direction. */
const FOLD_DEG = 96;
const HANG_DEG = 128;

/** The upper part of a blade that broke at t and hangs to its side (-1 or 1). */
export function hangingFrom(arc: Arc, t: number, side: -1 | 1): Arc {
  const from = pointOn(arc, t);
  const way = wayOn(arc, t);
  const length = (1 - t) * lengthOf(arc);
  const reach = (p: Point, degrees: number, mm: number): Point => {
    const r = (side * degrees * Math.PI) / 180;
    return {
      x: p.x + mm * (way.x * Math.cos(r) - way.y * Math.sin(r)),
      y: p.y + mm * (way.x * Math.sin(r) + way.y * Math.cos(r)),
    };
  };
  const control = reach(from, FOLD_DEG, 0.5 * length);
  return { from, control, to: reach(control, HANG_DEG, 0.6 * length) };
}
