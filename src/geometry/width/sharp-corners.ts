import { jetAt } from '../cubic.js';
import { pointAt } from '../measure.js';
import type { Cubics, Point, Region } from '../types.js';

/** A place where the outline turns more sharply than a tool of some radius can follow. */
export interface SharpCorner {
  /** `point`: card sticks out. `notch`: the cut goes into the card, as corners of holes do. */
  readonly kind: 'point' | 'notch';
  /** The corner itself; of a bend, where half its turn is done. */
  readonly at: Point;
  /** Angle of card: 90 at a rectangle's corner, 270 at a window's; below 0 in a curl. */
  readonly angleDeg: number;
  /** How much the outline turns, card on its right: 180 less the angle, so notches are negative. */
  readonly turnDeg: number;
  /** Least radius of curvature; 0 for a true corner. */
  readonly radiusMm: number;
}

/** Turns of less than this are smooth, or nearly: fewer would count the joints of drawn curves. */
const SMOOTH_RAD = (5 * Math.PI) / 180;
/**
 * Details smaller than this (mm) are looked over: kinks of micrometres that booleans leave. What
 * bends within it is a corner. More would round off real corners, less would see kinks.
 */
const REACH_MM = 0.02;
/** A curve is looked at in bits that turn no more than this: coarser ones blunt its least radius. */
const BIT_RAD = (2 * Math.PI) / 180;
/** Each cubic is cut into this many bits first, lest an S with equal ends pass as straight. */
const FIRST_BITS = 8;
/** Halvings of a bit at most; a cusp ends there or at a quarter of the reach. */
const HALVINGS = 12;

/**
 * The corners and bends sharper than `radiusMm`, in order round each contour: true corners, and
 * stretches of curve all of which bends more tightly. Turns of less than 5 degrees do not count.
 * With a radius of 0 only true corners are listed. Radii are true to about a hundredth, those of a
 * curve that comes as a chain of cubics shorter than 0.02 mm to a sixth.
 */
export const sharpCorners = (region: Region, radiusMm: number): SharpCorner[] =>
  region.contours.flatMap((c) => cornersOf(bitsOf(c), radiusMm));

/** A bit of outline: nearly straight, or the turn at a corner, of no length. */
interface Bit {
  readonly at: Point;
  readonly lengthMm: number;
  turn: number;
}

const radiusOf = ({ lengthMm, turn }: Bit): number => {
  const radius = turn === 0 ? Infinity : lengthMm / Math.abs(turn);
  return lengthMm < REACH_MM && radius < REACH_MM ? 0 : radius;
};

/** Corners as they are, and runs of tight bits of one hand as one bend each. */
function cornersOf(bits: readonly Bit[], radiusMm: number): SharpCorner[] {
  const isTight = (b: Bit): boolean => b.lengthMm > 0 && radiusOf(b) < radiusMm;
  const goesOn = (a: Bit, b: Bit): boolean => isTight(a) && isTight(b) && a.turn * b.turn > 0;
  const n = bits.length;
  // Start where no bend runs on, so that none is cut in two.
  let start = 0;
  while (start < n && goesOn(bits[(start + n - 1) % n], bits[start])) start++;
  const corners: SharpCorner[] = [];
  for (let k = 0; k < n; ) {
    const run = [bits[(start + k) % n]];
    while (++k < n && goesOn(run[run.length - 1], bits[(start + k) % n])) {
      run.push(bits[(start + k) % n]);
    }
    const turn = run.reduce((sum, b) => sum + b.turn, 0);
    const counts = run[0].lengthMm === 0 || isTight(run[0]);
    if (counts && Math.abs(turn) >= SMOOTH_RAD) corners.push(cornerOf(run, turn));
  }
  return corners;
}

function cornerOf(run: readonly Bit[], turn: number): SharpCorner {
  let done = 0;
  const middle = run.find((b) => {
    done += Math.abs(b.turn);
    return done >= Math.abs(turn) / 2;
  });
  const turnDeg = (turn * 180) / Math.PI;
  return {
    kind: turn > 0 ? 'point' : 'notch',
    at: (middle ?? run[0]).at,
    angleDeg: 180 - turnDeg,
    turnDeg,
    radiusMm: Math.min(...run.map(radiusOf)),
  };
}

/** A piece of outline and its headings at both ends. */
interface Piece {
  readonly start: Point;
  readonly from: number;
  readonly to: number;
  readonly bits: readonly Bit[];
  /** Stands for a chain of tiny cubics, which is straight only because it is looked over. */
  readonly isSecant: boolean;
}

/** All bits round a contour. Where two pieces meet in a corner there is a bit of no length. */
function bitsOf(c: Cubics): Bit[] {
  const pieces = piecesOf(c);
  return pieces.flatMap((piece, k) => {
    const before = pieces[(k + pieces.length - 1) % pieces.length];
    const turn = wrapped(piece.from - before.to);
    if (Math.abs(turn) >= SMOOTH_RAD) {
      return [{ at: piece.start, lengthMm: 0, turn }, ...piece.bits];
    }
    // What secants turn between them is the bend of the chain that they stand for.
    if (before.isSecant) before.bits[before.bits.length - 1].turn += turn / 2;
    if (piece.isSecant) piece.bits[0].turn += turn / 2;
    return piece.bits;
  });
}

/** The contour's cubics; chains of tiny ones as secants of the reach, or skipped where shorter. */
function piecesOf(c: Cubics): Piece[] {
  const pieces: Piece[] = [];
  let start = { x: c[0], y: c[1] };
  let end = start;
  const endChain = (): void => {
    const last = pieces[pieces.length - 1];
    if (last?.isSecant) pieces[pieces.length - 1] = secantPiece(last.start, end);
  };
  for (let i = 0; i < c.length; i += 8) {
    const large = isLarge(c, i);
    if (large) endChain();
    end = { x: c[i + 6], y: c[i + 7] };
    if (large) pieces.push(curvePiece(c, i));
    else if (distance(start, end) >= REACH_MM) pieces.push(secantPiece(start, end));
    else continue;
    start = end;
  }
  endChain();
  return pieces;
}

const distance = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

const isLarge = (c: Cubics, i: number): boolean =>
  [2, 4, 6].some((k) => Math.hypot(c[i + k] - c[i], c[i + k + 1] - c[i + 1]) >= REACH_MM);

function secantPiece(a: Point, b: Point): Piece {
  const heading = Math.atan2(b.y - a.y, b.x - a.x);
  const at = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const bits = [{ at, lengthMm: distance(a, b), turn: 0 }];
  return { start: a, from: heading, to: heading, bits, isSecant: true };
}

function curvePiece(c: Cubics, i: number): Piece {
  const bits: Bit[] = [];
  const cut = (t0: number, t1: number, halvings: number): void => {
    const t = (t0 + t1) / 2;
    const at = pointAt(c, i, t);
    const lengthMm = distance(pointAt(c, i, t0), at) + distance(at, pointAt(c, i, t1));
    const middle = headingAt(c, i, t);
    const first = wrapped(middle - headingAt(c, i, t0));
    const second = wrapped(headingAt(c, i, t1) - middle);
    const isStraight = Math.max(Math.abs(first), Math.abs(second)) < BIT_RAD / 2;
    if (isStraight || halvings === HALVINGS || lengthMm < REACH_MM / 4) {
      bits.push({ at, lengthMm, turn: first + second });
      return;
    }
    cut(t0, t, halvings + 1);
    cut(t, t1, halvings + 1);
  };
  for (let k = 0; k < FIRST_BITS; k++) cut(k / FIRST_BITS, (k + 1) / FIRST_BITS, 0);
  const start = pointAt(c, i, 0);
  return { start, from: headingAt(c, i, 0), to: headingAt(c, i, 1), bits, isSecant: false };
}

/** How far (in t) from a place without a direction, as where a handle is drawn in, to look. */
const BESIDE_T = 1e-3;

/** Angle of the curve's run, clockwise on screen from the x axis. */
function headingAt(c: Cubics, i: number, t: number): number {
  const { dx, dy } = jetAt(c, i, t);
  // What is no more than rounding beside the cubic's size has no direction.
  const size = Math.hypot(
    c[i + 2] - c[i],
    c[i + 3] - c[i + 1],
    c[i + 6] - c[i],
    c[i + 7] - c[i + 1],
  );
  if (Math.hypot(dx, dy) > 1e-7 * size) return Math.atan2(dy, dx);
  const beside = jetAt(c, i, t < 0.5 ? t + BESIDE_T : t - BESIDE_T);
  return Math.atan2(beside.dy, beside.dx);
}

/** An angle within half a turn; a turn straight back counts as clockwise: a point. */
function wrapped(angle: number): number {
  const turn = Math.atan2(Math.sin(angle), Math.cos(angle));
  return turn < -Math.PI + 1e-6 ? turn + 2 * Math.PI : turn;
}
