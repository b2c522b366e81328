import { trimLine } from '../../geometry/clip-lines.js';
import { components } from '../../geometry/components.js';
import { lineLength } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import type { Region } from '../../geometry/types.js';
import { middleLine, type Stroke } from '../slim.js';

/** Where the middle of a ball may go so that the press mark keeps within a region. */
export interface BallRoom {
  readonly room: Region;
  /** Strokes along the middle of the parts that are narrower than the ball all over. */
  readonly middles: readonly Stroke[];
}

/** Parts narrower than this share of the ball are left out: the mark would show the ball, not them. */
const LEAST_BALLS = 1 / 3;
/** A middle line is trimmed so that the ball keeps within its ends, but to no less than a dot. */
const DOT_BALLS = 0.2;
/** What lies no further than this from a middle line, in balls, is pressed with it. */
const NEAR_BALLS = 0.75;

export function ballRoom(region: Region, ballMm: number): BallRoom {
  const parts = components(region).map((part) => ({ part, inside: offset(part, -ballMm / 2) }));
  const narrow = parts.filter(({ inside }) => inside.contours.length === 0);
  return {
    room: { contours: parts.flatMap(({ inside }) => inside.contours) },
    middles: narrow.flatMap(({ part }) => middlesOf(part, ballMm)),
  };
}

/** One stroke from end to end of a narrow part; where it has branches or a hole, one round it. */
function middlesOf(part: Region, ballMm: number): Stroke[] {
  const inset = offset(part, (-LEAST_BALLS * ballMm) / 2);
  if (inset.contours.length === 0) return [];
  const [outer, ...holes] = part.contours;
  const line = holes.length === 0 ? middleLine(outer, NEAR_BALLS * ballMm) : null;
  if (line === null) {
    return components(inset).map(({ contours: [cubics] }) => ({ cubics, closed: true }));
  }
  const spare = (lineLength(line) - DOT_BALLS * ballMm) / 2;
  const trimMm = Math.max(0, Math.min(ballMm / 2, spare));
  const { cubics } = trimLine(line, trimMm, trimMm) ?? line;
  return [{ cubics, closed: false }];
}
