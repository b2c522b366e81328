import type { Point } from '../geometry/types.js';

/** Rounds that widen the step up to the tolerance, so that what matters least goes first. */
const ROUNDS = 5;

/**
 * A ring with fewer corners that covers at least the same card: dents are filled and round corners
 * drawn out to a point, where either adds less than about `tolerance` of depth. Card lies on the
 * right hand of the ring's run (y down), for outer rings and holes alike. The result may cross itself;
 * what it winds round in a positive sense (with the outer ring round it, for a hole) is still a
 * superset of what was card, since every step adds a triangle that winds positively.
 */
export function coarsened(points: readonly Point[], tolerance: number): Point[] {
  const ring = new Ring(points);
  for (let round = ROUNDS - 1; round >= 0; round--) {
    const depth = tolerance / 2 ** round;
    while (ring.size > 3 && passOnce(ring, depth));
  }
  return ring.points();
}

/** Goes round once; whether anything was left out. */
function passOnce(ring: Ring, depth: number): boolean {
  let changed = false;
  let at = ring.first;
  for (let left = ring.size; left > 0 && ring.size > 3; left--) {
    if (fillsDent(ring, at, depth) || drawsOut(ring, at, depth)) changed = true;
    at = ring.next[at];
  }
  return changed;
}

/** Leaves out a corner that turns away from the card, or does not turn at all. */
function fillsDent(ring: Ring, at: number, depth: number): boolean {
  const [before, corner, after] = [ring.at(ring.before[at]), ring.at(at), ring.at(ring.next[at])];
  const area = cross(before, corner, after);
  if (area > 0) return false;
  const length = Math.hypot(after.x - before.x, after.y - before.y);
  if (length === 0 ? area !== 0 : -area > depth * length) return false;
  // A corner that runs straight back would be a spike, not a dent.
  if (area === 0 && isSpike(before, corner, after)) return false;
  ring.remove(at);
  return true;
}

/** Leaves out a short edge between two corners of the card: its neighbours are drawn on till they meet. */
function drawsOut(ring: Ring, at: number, depth: number): boolean {
  if (ring.size < 5) return false;
  const second = ring.next[at];
  const [before, a] = [ring.at(ring.before[at]), ring.at(at)];
  const [b, after] = [ring.at(second), ring.at(ring.next[second])];
  if (cross(before, a, b) <= 0 || cross(a, b, after) <= 0) return false;
  const [ux, uy] = [a.x - before.x, a.y - before.y];
  const [vx, vy] = [b.x - after.x, b.y - after.y];
  const turn = uy * vx - ux * vy;
  // Together they must turn by less than half round, or the neighbours never meet.
  if (turn <= 0) return false;
  const t = ((b.y - a.y) * vx - (b.x - a.x) * vy) / turn;
  // Where the neighbours are all but parallel the tip is too far away to be measured itself.
  const added = t * (ux * (b.y - a.y) - uy * (b.x - a.x));
  const tip = { x: a.x + t * ux, y: a.y + t * uy };
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (added > depth * length) return false;
  ring.move(at, tip);
  ring.remove(second);
  return true;
}

const cross = (a: Point, b: Point, c: Point): number =>
  (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);

const isSpike = (a: Point, b: Point, c: Point): boolean =>
  (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0;

/** A closed ring of points from which some are taken out. */
class Ring {
  readonly next: number[];
  readonly before: number[];
  first = 0;
  size: number;
  private readonly spots: Point[];

  constructor(points: readonly Point[]) {
    const n = points.length;
    this.spots = [...points];
    this.size = n;
    this.next = points.map((_, i) => (i + 1) % n);
    this.before = points.map((_, i) => (i + n - 1) % n);
  }

  at(i: number): Point {
    return this.spots[i];
  }

  move(i: number, to: Point): void {
    this.spots[i] = to;
  }

  remove(i: number): void {
    this.next[this.before[i]] = this.next[i];
    this.before[this.next[i]] = this.before[i];
    if (this.first === i) this.first = this.next[i];
    this.size--;
  }

  points(): Point[] {
    const out: Point[] = [];
    for (let at = this.first, left = this.size; left > 0; left--) {
      out.push(this.spots[at]);
      at = this.next[at];
    }
    return out;
  }
}
