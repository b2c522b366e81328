import { pen } from '../../geometry/pen.js';
import type { Cubics, Line, Point } from '../../geometry/types.js';

/** A quadratic arc: how a blade, a stem or a twig bends. */
export interface Arc {
  readonly from: Point;
  readonly control: Point;
  readonly to: Point;
}

/** Half the width of a ribbon at t (0 at its foot, 1 at its tip), and how fast it changes there. */
export interface Profile {
  readonly half: (t: number) => number;
  readonly slope: (t: number) => number;
}

/** Each side of a ribbon is a chain of cubics that touches the true offset at these places. */
const TOUCH = [0, 0.35, 0.7, 1];

/** Even width. */
export const even = (halfMm: number): Profile => ({ half: () => halfMm, slope: () => 0 });

/**
 * From `footMm` to `tipMm` half width; the larger the power, the longer the ribbon stays broad
 * before it narrows to its tip.
 */
export const taper = (footMm: number, tipMm: number, power: number): Profile => ({
  half: (t) => tipMm + (footMm - tipMm) * (1 - t ** power),
  slope: (t) => -(footMm - tipMm) * power * t ** (power - 1),
});

/** Slim at both ends, broadest at `peak`; a leaf or an ear. */
export const spindle = (endMm: number, midMm: number, peak = 0.5): Profile => {
  const bulge = Math.log(0.5) / Math.log(peak);
  const half = (t: number) => endMm + (midMm - endMm) * Math.sin(Math.PI * t ** bulge);
  return {
    half,
    slope: (t) =>
      t <= 0 && bulge < 1
        ? 0
        : (midMm - endMm) *
          Math.PI *
          bulge *
          Math.max(t, 1e-9) ** (bulge - 1) *
          Math.cos(Math.PI * t ** bulge),
  };
};

/**
 * The outline of a ribbon of card along an arc: a closed chain, clockwise on screen, its foot cut
 * straight across (or round) and its tip round. The bend must stay wider than the ribbon.
 */
export function ribbon(
  arc: Arc,
  profile: Profile,
  foot: 'straight' | 'round' = 'straight',
): Cubics {
  const sides = TOUCH.map((t) => sideAt(arc, profile, t));
  const p = pen(sides[0].left.x, sides[0].left.y);
  for (let i = 0; i + 1 < sides.length; i++) {
    const k = (TOUCH[i + 1] - TOUCH[i]) / 3;
    const a = sides[i];
    const b = sides[i + 1];
    p.curveTo(
      a.left.x + k * a.leftWay.x,
      a.left.y + k * a.leftWay.y,
      b.left.x - k * b.leftWay.x,
      b.left.y - k * b.leftWay.y,
      b.left.x,
      b.left.y,
    );
  }
  p.arcAround(arc.to.x, arc.to.y, 180);
  for (let i = sides.length - 1; i > 0; i--) {
    const k = (TOUCH[i] - TOUCH[i - 1]) / 3;
    const a = sides[i];
    const b = sides[i - 1];
    p.curveTo(
      a.right.x - k * a.rightWay.x,
      a.right.y - k * a.rightWay.y,
      b.right.x + k * b.rightWay.x,
      b.right.y + k * b.rightWay.y,
      b.right.x,
      b.right.y,
    );
  }
  if (foot === 'round') p.arcAround(arc.from.x, arc.from.y, 180);
  return p.close();
}

export function pointOn({ from, control, to }: Arc, t: number): Point {
  const u = 1 - t;
  return {
    x: u * u * from.x + 2 * u * t * control.x + t * t * to.x,
    y: u * u * from.y + 2 * u * t * control.y + t * t * to.y,
  };
}

/** The direction at t, of length 1. */
export function wayOn(arc: Arc, t: number): Point {
  const v = velocity(arc, t);
  const speed = Math.max(1e-9, Math.hypot(v.x, v.y));
  return { x: v.x / speed, y: v.y / speed };
}

/** The part of the arc from t0 to t1, as a line. */
export function arcLine(arc: Arc, t0: number, t1: number): Line {
  const a = pointOn(arc, t0);
  const b = pointOn(arc, t1);
  const v = velocity(arc, t0);
  const k = (t1 - t0) / 2;
  return pen(a.x, a.y)
    .quadTo(a.x + k * v.x, a.y + k * v.y, b.x, b.y)
    .line();
}

const velocity = ({ from, control, to }: Arc, t: number): Point => ({
  x: 2 * ((1 - t) * (control.x - from.x) + t * (to.x - control.x)),
  y: 2 * ((1 - t) * (control.y - from.y) + t * (to.y - control.y)),
});

/** Both sides of the ribbon at t, with their derivatives by t. */
function sideAt(arc: Arc, profile: Profile, t: number) {
  const at = pointOn(arc, t);
  const v = velocity(arc, t);
  const speed = Math.max(1e-9, Math.hypot(v.x, v.y));
  const way = { x: v.x / speed, y: v.y / speed };
  const normal = { x: -way.y, y: way.x };
  const bend = {
    x: 2 * (arc.from.x - 2 * arc.control.x + arc.to.x),
    y: 2 * (arc.from.y - 2 * arc.control.y + arc.to.y),
  };
  // The normal turns as fast as the direction does: (way x bend) / speed.
  const turn = (way.x * bend.y - way.y * bend.x) / speed;
  const half = profile.half(t);
  const slope = profile.slope(t);
  const side = (sign: number) => ({
    at: { x: at.x + sign * half * normal.x, y: at.y + sign * half * normal.y },
    way: {
      x: v.x + sign * (slope * normal.x - half * turn * way.x),
      y: v.y + sign * (slope * normal.y - half * turn * way.y),
    },
  });
  const left = side(-1);
  const right = side(1);
  return { left: left.at, leftWay: left.way, right: right.at, rightWay: right.way };
}

/** The part of the arc from t0 to t1, as an arc. */
export function subArc(arc: Arc, t0: number, t1: number): Arc {
  const from = pointOn(arc, t0);
  const v = velocity(arc, t0);
  const k = (t1 - t0) / 2;
  return {
    from,
    control: { x: from.x + k * v.x, y: from.y + k * v.y },
    to: pointOn(arc, t1),
  };
}
