import { smoothLine } from '../../geometry/pen.js';
import type { Line, Point } from '../../geometry/types.js';
import { nibbledLine } from '../edge.js';
import type { Random } from '../random.js';
import { isFree } from './outline.js';
import type { Room } from './room.js';

/**
 * The edge of a hedge left to grow, left to right: the coarse and the middle of its three scales of
 * lumps. The nibble of its leaves is the third.
 */
export function looseEdge(room: Room, random: Random): Line {
  const { height, grain } = room;
  const masses = nibbledLine(
    envelope(room, random.branch('bulk')),
    0.5,
    { wavelength: [0.5 * height, 0.95 * height], depth: [0.07 * height, 0.15 * height] },
    random.branch('masses'),
  );
  return nibbledLine(
    masses,
    0.5,
    { wavelength: [5.5 * grain, 11 * grain], depth: [0.9 * grain, 1.9 * grain] },
    random.branch('lumps'),
  );
}

/** Places on each half of the bulk's shoulder. */
const ENVELOPE_STEPS = 12;
/** A superellipse between an ellipse (2) and a box. */
const ENVELOPE_POWER = 3.2;
/** How far its foot stands in from its sides, as a share of its width, and how high the sides bulge. */
const FOOT_INSET = 0.05;
const BULGE = 0.35;

/** The hedge's bulk: narrower at the foot, its shoulders rounded. */
function envelope(room: Room, random: Random): Line {
  const { width, height } = room;
  const crestX = width * random.between(-0.08, 0.08);
  const half = (end: 'left' | 'right'): Point[] => {
    const footX = end === 'left' ? room.leftX : room.rightX;
    if (!isFree(room, end)) return [{ x: footX, y: -height * random.between(0.82, 0.95) }];
    const points: Point[] = [{ x: footX * (1 - 2 * FOOT_INSET), y: 0 }];
    for (let i = 0; i < ENVELOPE_STEPS; i++) {
      const angle = ((Math.PI / 2) * i) / ENVELOPE_STEPS;
      points.push({
        x: crestX + (footX - crestX) * Math.cos(angle) ** (2 / ENVELOPE_POWER),
        y: -height * (BULGE + (1 - BULGE) * Math.sin(angle) ** (2 / ENVELOPE_POWER)),
      });
    }
    return points;
  };
  const left = half('left');
  const right = half('right');
  return smoothLine([...left, { x: crestX, y: -height }, ...right.reverse()]);
}
