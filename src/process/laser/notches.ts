import { chordsOf, isClosed, joined, pointOn, subchain } from '../../geometry/chain.js';
import { containsPoint } from '../../geometry/components.js';
import { jetAt } from '../../geometry/cubic.js';
import { polyline } from '../../geometry/pen.js';
import type { Cubics, Point, Region } from '../../geometry/types.js';

/** The beam may leave or take this much (mm) at a notch: a little under a twentieth. */
const ALLOWED_MM = 0.045;
/** A corner that turns less than this (radians) leaves no more than that, at any kerf in use. */
const LEAST_TURN = Math.PI / 3;
/** Card is looked for this often (mm) beyond a corner of the path, up to so many kerfs. */
const STEP_MM = 0.002;
const MOST_KERFS = 4;
/** A corner may turn back on this share of what lies between it and the next, at most. */
const REACH_SHARE = 0.45;
/** Chords to measure along the path with (mm). */
const CHORD_MM = 0.002;

/** A corner of the path that points into a notch of the card. */
interface Notch {
  /** Length from the contour's start. */
  readonly atMm: number;
  /** Where the corner goes instead. */
  readonly tip: Point;
  readonly pushMm: number;
}

/**
 * The path with its corners in sharp notches pushed further in. A round beam whose edge keeps to
 * both sides of a notch stops short of its end, by more the sharper it is. Here its corner goes on
 * until that is no more than 0.045 mm, or, where it would then eat into the sides by more than as
 * much, until the two are alike: kerf/2 (1 - s) / (1 + s) with s the sine of half the angle, which
 * at a kerf of 0.2 is 0.05 mm at 39 degrees and never reaches half the kerf.
 * @param isSlit whether a slit runs on from a corner, which then stays where it is.
 */
export function pushedIntoNotches(
  path: Region,
  card: Region,
  kerfMm: number,
  isSlit: (corner: Point) => boolean,
): Region {
  const inCard = (p: Point): boolean => containsPoint(card, p);
  return { contours: path.contours.map((c) => pushed(c, inCard, kerfMm, isSlit)) };
}

function pushed(
  c: Cubics,
  inCard: (p: Point) => boolean,
  kerfMm: number,
  isSlit: (corner: Point) => boolean,
): Cubics {
  const count = c.length / 8;
  const tips = Array.from({ length: isClosed(c) ? count : 0 }, (_, k) => {
    const corner = { x: c[8 * k], y: c[8 * k + 1] };
    const found = tipBeyond(c, k, inCard, kerfMm);
    return found === null || isSlit(corner) ? null : { ...found, cubic: k };
  }).filter((tip) => tip !== null);
  if (tips.length === 0) return c;
  const { x, y, u } = chordsOf(c, CHORD_MM);
  const at = new Float64Array(u.length);
  for (let k = 1; k < at.length; k++) {
    at[k] = at[k - 1] + Math.hypot(x[k] - x[k - 1], y[k] - y[k - 1]);
  }
  const notches = tips.map(({ cubic, ...tip }): Notch => ({ ...tip, atMm: at[u.indexOf(cubic)] }));
  return rerouted(c, notches, { at, u });
}

/** How far beyond the path's corner at the start of cubic k its tip belongs; null for no further. */
function tipBeyond(
  c: Cubics,
  k: number,
  inCard: (p: Point) => boolean,
  kerfMm: number,
): Pick<Notch, 'tip' | 'pushMm'> | null {
  const before = (k + c.length / 8 - 1) % (c.length / 8);
  const [a, b] = [jetAt(c, 8 * before, 1), jetAt(c, 8 * k, 0)];
  // Card lies on the right hand, so a corner that turns left points into it.
  const turn = Math.atan2(a.dx * b.dy - a.dy * b.dx, a.dx * b.dx + a.dy * b.dy);
  if (!(turn < -LEAST_TURN)) return null;
  const [p, q] = [Math.hypot(a.dx, a.dy), Math.hypot(b.dx, b.dy)];
  const [x, y] = [a.dx / p - b.dx / q, a.dy / p - b.dy / q];
  const size = Math.hypot(x, y);
  const along = (mm: number): Point => ({ x: b.x + (mm * x) / size, y: b.y + (mm * y) / size });
  let reach = kerfMm / 2;
  while (reach < MOST_KERFS * kerfMm && !inCard(along(reach))) reach += STEP_MM;
  const leftMm = reach - kerfMm / 2;
  if (leftMm <= ALLOWED_MM) return null;
  const sine = Math.cos(turn / 2);
  const enough = leftMm - ALLOWED_MM;
  const pushMm = enough * sine <= ALLOWED_MM ? enough : leftMm / (1 + sine);
  return { tip: along(pushMm), pushMm };
}

/** The contour by way of the tips: off it before each corner and back on it behind. */
function rerouted(
  c: Cubics,
  notches: readonly Notch[],
  { at, u }: { at: Float64Array; u: Float64Array },
): Cubics {
  const round = at[at.length - 1];
  const placeAt = (mm: number): number => {
    const length = ((mm % round) + round) % round;
    let k = 0;
    while (k + 2 < at.length && at[k + 1] <= length) k++;
    return u[k] + ((u[k + 1] - u[k]) * (length - at[k])) / (at[k + 1] - at[k]);
  };
  const gapTo = (k: number, n: number): number => {
    const way = Math.abs(notches[n].atMm - notches[k].atMm);
    return k === n ? round : Math.min(way, round - way) || round;
  };
  const last = notches.length - 1;
  const turns = notches.map((notch, k) => {
    const room = Math.min(gapTo(k, k === 0 ? last : k - 1), gapTo(k, k === last ? 0 : k + 1));
    const reach = Math.min(2 * notch.pushMm, REACH_SHARE * room);
    return { tip: notch.tip, off: placeAt(notch.atMm - reach), on: placeAt(notch.atMm + reach) };
  });
  const stretch = (from: number, to: number): Cubics =>
    from < to ? subchain(c, from, to) : joined(subchain(c, from, c.length / 8), subchain(c, 0, to));
  const pieces = turns.map(({ tip, off, on }, k) => {
    const next = turns[(k + 1) % turns.length].off;
    const round = polyline([pointOn(c, off), tip, pointOn(c, on)]).cubics;
    return joined(round, stretch(on, next));
  });
  const whole = pieces.reduce((all, piece) => joined(all, piece));
  whole[whole.length - 2] = whole[0];
  whole[whole.length - 1] = whole[1];
  return whole;
}
