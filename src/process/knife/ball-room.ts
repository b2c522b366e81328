import { components } from '../../geometry/components.js';
import { offset } from '../../geometry/offset/offset.js';
import type { Region } from '../../geometry/types.js';
import { contourStrokes, type Stroke } from '../slim.js';

/** Where the middle of a ball may go so that the press mark keeps within a region. */
export interface BallRoom {
  readonly room: Region;
  /** One stroke along the middle of each part that is narrower than the ball all over. */
  readonly middles: readonly Stroke[];
}

/** Parts narrower than this share of the ball are left out: the mark would show the ball, not them. */
const LEAST_BALLS = 1 / 3;
/** Halvings in search of the deepest place of a narrow part: to a 64th of the ball. */
const HALVINGS = 5;
/** Middles shorter than this, in balls, are pressed as a dot of this length. */
const DOT_BALLS = 0.2;

export function ballRoom(region: Region, ballMm: number): BallRoom {
  const parts = components(region).map((part) => ({ part, inside: offset(part, -ballMm / 2) }));
  const narrow = parts.filter(({ inside }) => inside.contours.length === 0);
  return {
    room: { contours: parts.flatMap(({ inside }) => inside.contours) },
    middles: narrow.flatMap(({ part }) => middlesOf(part, ballMm)),
  };
}

/** What is left of a narrow part as deep in it as there is any, each bit as one stroke. */
function middlesOf(part: Region, ballMm: number): Stroke[] {
  let [low, high] = [(LEAST_BALLS * ballMm) / 2, ballMm / 2];
  let deepest = offset(part, -low);
  if (deepest.contours.length === 0) return [];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2;
    const left = offset(part, -middle);
    if (left.contours.length === 0) high = middle;
    else [low, deepest] = [middle, left];
  }
  return components(deepest).flatMap((bit) => contourStrokes(bit, ballMm / 2, DOT_BALLS * ballMm));
}
