import { isClosed, joined, pointOn, subchain } from '../../geometry/chain.js';
import { containsPoint, distanceTo } from '../../geometry/components.js';
import { jetAt } from '../../geometry/cubic.js';
import { polyline } from '../../geometry/pen.js';
import type { Cubics, Point, Region } from '../../geometry/types.js';
import { placeAt, type Way, wayRound } from '../way.js';

/** The beam may leave or take this much (mm) at a notch; a right angle leaves as much at a kerf of 0.2. */
const ALLOWED_MM = 0.04;
/** A corner that turns less than this (radians) leaves no more than that, at any kerf in use. */
const LEAST_TURN = Math.PI / 3;
/** Card is looked for this often (mm) beyond a corner of the path, up to so many kerfs. */
const STEP_MM = 0.005;
const MOST_KERFS = 4;
/** Pushes that are tried. */
const PUSHES = 24;
/** Directions in which the end of a notch is looked for, off the middle between its sides. */
const SIDEWAYS_RAD = [0, -4, 4, -8, 8, -12, 12, -16, 16, -20, 20, -24, 24].map(
  (deg) => (deg * Math.PI) / 180,
);
/** A corner may turn back on this share of what lies between it and the next, at most. */
const REACH_SHARE = 0.45;
/** How a corner turns is seen this far from it (mm). */
const ARM_MM = 0.05;
/** Angle (radians, 10 degrees) between the ways to a tip and back: less would burn one line twice. */
const LEAST_OPENING = (10 * Math.PI) / 180;

/** A corner of the path that points into a notch of the card. */
interface Notch {
  /** Length from the contour's start. */
  readonly atMm: number;
  /** Where the corner goes instead. */
  readonly tip: Point;
  /** How far from the corner the path is left for the tip. */
  readonly leaveMm: number;
}

/**
 * The path with its corners in sharp notches pushed further in. A round beam whose edge keeps to
 * both sides of a notch stops short of its end, by more the sharper it is. Here its corner goes on
 * until that is no more than 0.04 mm, or, where it would then eat into the sides by more than as
 * much, until the two are alike: between straight sides kerf/2 (1 - s) / (1 + s) with s the sine of
 * half the angle, which at a kerf of 0.2 is 0.05 mm at 39 degrees and never reaches half the kerf.
 * @param isSlit whether a slit runs on from a corner, which then stays where it is.
 */
export function pushedIntoNotches(
  path: Region,
  card: Region,
  kerfMm: number,
  isSlit: (corner: Point) => boolean,
): Region {
  return { contours: path.contours.map((c) => pushed(c, card, kerfMm, isSlit)) };
}

function pushed(
  c: Cubics,
  card: Region,
  kerfMm: number,
  isSlit: (corner: Point) => boolean,
): Cubics {
  const joints = sharpJoints(c);
  if (joints.length === 0) return c;
  const way = wayRound(c);
  const notches = apart(
    joints.map((k) => way.at[way.u.indexOf(k)]),
    way,
  ).flatMap((atMm): Notch[] => {
    const [before, corner, after] = [-ARM_MM, 0, ARM_MM].map((mm) =>
      pointOn(c, placeAt(way, atMm + mm)),
    );
    if (isSlit(corner)) return [];
    const found = tipBeyond(before, corner, after, card, kerfMm);
    return found === null ? [] : [{ ...found, atMm }];
  });
  return notches.length === 0 ? c : rerouted(c, notches, way);
}

/** Joints nearer to each other than a corner's arms are one corner. */
function apart(joints: readonly number[], { roundMm }: Way): number[] {
  const kept: number[] = [];
  for (const mm of joints) {
    const first = kept[0] ?? Infinity;
    const last = kept[kept.length - 1] ?? -Infinity;
    if (Math.min(mm - last, roundMm - mm + first) >= 2 * ARM_MM) kept.push(mm);
  }
  return kept;
}

/** The cubics at whose start the contour turns left: card lies on the right, so into the card. */
function sharpJoints(c: Cubics): number[] {
  const count = isClosed(c) ? c.length / 8 : 0;
  return Array.from({ length: count }, (_, k) => k).filter((k) => {
    const a = jetAt(c, 8 * ((k + count - 1) % count), 1);
    const b = jetAt(c, 8 * k, 0);
    return turnOf(a.dx, a.dy, b.dx, b.dy) < -LEAST_TURN;
  });
}

const turnOf = (ax: number, ay: number, bx: number, by: number): number =>
  Math.atan2(ax * by - ay * bx, ax * bx + ay * by);

/** How far beyond a corner of the path its tip belongs; null for no further. */
function tipBeyond(
  before: Point,
  corner: Point,
  after: Point,
  card: Region,
  kerfMm: number,
): Omit<Notch, 'atMm'> | null {
  const [ax, ay] = [corner.x - before.x, corner.y - before.y];
  const [bx, by] = [after.x - corner.x, after.y - corner.y];
  // Looked at from further off: joints that are left from rounding turn on the spot, but not there.
  const turn = turnOf(ax, ay, bx, by);
  if (!(turn < -LEAST_TURN)) return null;
  const [p, q] = [Math.hypot(ax, ay), Math.hypot(bx, by)];
  const heading = Math.atan2(ay / p - by / q, ax / p - bx / q);
  // A notch between curves need not end straight ahead.
  const reaches = SIDEWAYS_RAD.map((aside) => {
    const way = { x: Math.cos(heading + aside), y: Math.sin(heading + aside) };
    const along = (mm: number) => ({ x: corner.x + mm * way.x, y: corner.y + mm * way.y });
    let reach = kerfMm / 2;
    while (reach < MOST_KERFS * kerfMm && !containsPoint(card, along(reach))) reach += STEP_MM;
    return { reach, along };
  });
  const { reach, along } = reaches.reduce((best, r) => (r.reach > best.reach ? r : best));
  if (reach >= MOST_KERFS * kerfMm) return null;
  // The card begins within the last step.
  const leftMm = reach - STEP_MM / 2 - kerfMm / 2;
  if (leftMm < ALLOWED_MM + STEP_MM / 2) return null;
  const pushMm = bestPush(leftMm, (mm) => kerfMm / 2 - clearOf(card, along(mm)));
  if (pushMm === 0) return null;
  // Ways there and back that open by LEAST_OPENING, or else the sides' own angle.
  const spread = Math.max(LEAST_OPENING / 4, 2 * Math.cos(turn / 2) - LEAST_OPENING);
  const leaveMm = Math.min(2 * pushMm, Math.max(ARM_MM, (LEAST_OPENING * pushMm) / spread));
  return { tip: along(pushMm), leaveMm };
}

/** How far a point lies off the card; negative on it. */
function clearOf(card: Region, p: Point): number {
  const mm = distanceTo(card, p)?.distanceMm ?? Infinity;
  return containsPoint(card, p) ? -mm : mm;
}

/**
 * How far to push a corner: as little as leaves what is allowed, or until as much is left as is
 * burnt too much on the way.
 * @param burntAt what is burnt too much with the corner pushed by so much.
 */
function bestPush(leftMm: number, burntAt: (pushMm: number) => number): number {
  let best = { pushMm: 0, worst: leftMm };
  let burnt = 0;
  for (let k = 1; k <= PUSHES; k++) {
    const pushMm = (leftMm * k) / PUSHES;
    burnt = Math.max(burnt, burntAt(pushMm));
    const worst = Math.max(leftMm - pushMm, burnt);
    if (worst < best.worst) best = { pushMm, worst };
    if (worst <= ALLOWED_MM || burnt > best.worst) break;
  }
  return best.pushMm;
}

/** The contour by way of the tips: off it before each corner and back on it behind. */
function rerouted(c: Cubics, notches: readonly Notch[], way: Way): Cubics {
  const last = notches.length - 1;
  const roomAfter = notches.map(({ atMm }, k) =>
    k === last ? way.roundMm - atMm + notches[0].atMm : notches[k + 1].atMm - atMm,
  );
  const turns = notches.map(({ atMm, tip, leaveMm }, k) => {
    const room = Math.min(roomAfter[k], roomAfter[k === 0 ? last : k - 1]);
    const reach = Math.min(leaveMm, REACH_SHARE * room);
    return { tip, off: placeAt(way, atMm - reach), on: placeAt(way, atMm + reach) };
  });
  const stretch = (from: number, to: number): Cubics =>
    from < to ? subchain(c, from, to) : joined(subchain(c, from, c.length / 8), subchain(c, 0, to));
  const pieces = turns.map(({ tip, off, on }, k) => {
    const corner = polyline([pointOn(c, off), tip, pointOn(c, on)]).cubics;
    return joined(corner, stretch(on, turns[(k + 1) % turns.length].off));
  });
  const whole = pieces.reduce((all, piece) => joined(all, piece));
  whole[whole.length - 2] = whole[0];
  whole[whole.length - 1] = whole[1];
  return whole;
}
