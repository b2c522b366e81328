import type { Bounds, Point } from '../../geometry/types.js';
import type { Random } from '../random.js';
import type { Star } from './star.js';

/** What stars there are to be. */
export interface Wanted {
  readonly count: number;
  readonly points: number;
  readonly shape: string;
  /** Radius of a middling star, and least card or air between two, mm. */
  readonly radius: number;
  readonly apart: number;
  /** No star is smaller, mm. */
  readonly least: number;
}

/** Sizes of stars in middling ones: a few leading, most small. */
const SIZES = [0.72, 1.35] as const;
/** How many of mixed stars are rounds. */
const ROUNDS = 0.28;
const TURN_DEG = 16;
/** Places tried for each star; the one farthest from all others is taken. */
const TRIES = 12;

/** A star's own size and shape at a place: the same whatever the others are. */
export function starAt(at: Point, wanted: Wanted, luck: Random): Star {
  const grown = SIZES[0] + (SIZES[1] - SIZES[0]) * luck.next() ** 2;
  const isRound = wanted.shape === 'round' || (wanted.shape === 'mixed' && luck.chance(ROUNDS));
  return {
    ...at,
    radius: Math.max(wanted.least, wanted.radius * grown),
    points: isRound ? 0 : wanted.points,
    turnDeg: luck.between(-TURN_DEG, TURN_DEG),
  };
}

/** Stars strewn evenly but without order over the box, each clear of the others. */
export function strewn(box: Bounds, wanted: Wanted, random: Random): Star[] {
  const stars: Star[] = [];
  for (let i = 0; i < wanted.count; i++) {
    const luck = random.branch(i);
    const own = starAt({ x: 0, y: 0 }, wanted, luck.branch('star'));
    let best: Star | null = null;
    let bestGap = wanted.apart;
    for (let k = 0; k < TRIES; k++) {
      const at = inBox(box, own.radius, luck);
      if (at === null) continue;
      const gap = Math.min(
        1e6,
        ...stars.map((s) => Math.hypot(s.x - at.x, s.y - at.y) - s.radius - own.radius),
      );
      if (gap < bestGap) continue;
      bestGap = gap;
      best = { ...own, ...at };
    }
    if (best) stars.push(best);
  }
  return stars;
}

function inBox({ minX, minY, maxX, maxY }: Bounds, radius: number, luck: Random): Point | null {
  const [u, v] = [luck.next(), luck.next()];
  const [w, h] = [maxX - minX - 2 * radius, maxY - minY - 2 * radius];
  if (w < 0 || h < 0) return null;
  return { x: minX + radius + u * w, y: minY + radius + v * h };
}
