import { distanceTo } from '../../geometry/components.js';
import { pen, regionOf } from '../../geometry/pen.js';
import type { Bounds, Line, Point, Region } from '../../geometry/types.js';
import { leaf } from '../leaf.js';
import type { Random } from '../random.js';
import { cornersOf } from './moulding.js';

/** A corner's leaves: how far each is turned off the diagonal, and its length in the longest's. */
const LEAVES = [
  { turn: -37, length: 0.74 },
  { turn: 37, length: 0.74 },
  { turn: 0, length: 1 },
] as const;
/** How wide a leaf is for its length, and where it is widest. */
const [WIDTH, WIDEST] = [0.34, 0.45];
/** Between these lengths a leaf is worth drawing and still an ornament, mm. */
const [SHORTEST_MM, LONGEST_MM] = [3.2, 13];
/** Leaves start apart from one another by this share of the longest's length. */
const APART = 0.22;

export interface Ornament {
  readonly region: Region;
  /** Its middle rib. */
  readonly rib: Line;
}

/** Three leaves in each corner of the card, `fromMm` in from its edges, short of what is `kept`. */
export function leaves(card: Bounds, fromMm: number, kept: Region, random: Random): Ornament[] {
  return cornersOf(card, fromMm).flatMap((corner, i) => {
    const heading = 45 + 90 * i;
    const room = distanceTo(kept, corner)?.distanceMm ?? Infinity;
    const length = Math.min(LONGEST_MM, 0.95 * room);
    if (length < SHORTEST_MM) return [];
    return LEAVES.map(({ turn, length: share }, k) => {
      const angle = heading + turn + 3 * random.branch(`${i} ${k}`).bell();
      return oneLeaf(corner, angle, share * length * (1 - APART), APART * length);
    });
  });
}

function oneLeaf(corner: Point, headingDeg: number, length: number, startMm: number): Ornament {
  const way = {
    x: Math.cos((headingDeg * Math.PI) / 180),
    y: Math.sin((headingDeg * Math.PI) / 180),
  };
  const at = (mm: number): Point => ({ x: corner.x + way.x * mm, y: corner.y + way.y * mm });
  const form = { length, width: WIDTH * length, widest: WIDEST, tipRadius: 0.2 };
  const [from, to] = [at(startMm - 0.12 * length), at(startMm + 0.66 * length)];
  return {
    region: regionOf(leaf(form, at(startMm), headingDeg)),
    rib: pen(from.x, from.y).lineTo(to.x, to.y).line(),
  };
}

/** Quarter rounds in the card's corners where no line runs there: arcs about each corner. */
export function fans(card: Bounds, fromMm: number, radiiMm: readonly number[]): Line[] {
  return cornersOf(card, fromMm).flatMap(({ x, y }, i) =>
    radiiMm.map((r) => {
      const angle = (90 * i * Math.PI) / 180;
      return pen(x + r * Math.cos(angle), y + r * Math.sin(angle))
        .arcAround(x, y, 90)
        .line();
    }),
  );
}
