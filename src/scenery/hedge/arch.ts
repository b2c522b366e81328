import { pen } from '../../geometry/pen.js';
import type { Cubics, Line } from '../../geometry/types.js';
import { guideOf, nibbleAlong } from '../edge.js';
import type { Random } from '../random.js';
import { BATTER_DEG, levelEdge } from './clipped.js';
import { isFree, roundedLine, type Stretch } from './outline.js';
import type { Room } from './room.js';

/** A hedge with a way through: its edge, and the passage where there is room for one. */
export interface ArchHedge {
  readonly stretches: readonly Stretch[];
  readonly openings: readonly Cubics[];
}

/** The passage: its width as a share of the height and of what is seen, at most. */
const PASSAGE = { high: 0.5, seen: 0.34 };
/** The hedge beside the arch stands this high, as a share of the whole. */
const SHOULDER: readonly [number, number] = [0.66, 0.74];
/** Card left beside and over the passage, as a share of the height and in smallest webs. */
const AROUND = { high: 0.15, webs: 2.2 };

/** The passage lies off the middle by about this share of what is seen. */
const ASIDE = 0.02;
/** Level hedge left to each side of the arch at least, in mm. */
const BESIDE_MM = 3;

/** A level hedge that rises in an arch over a passage cut through it down to the ground. */
export function archHedge(room: Room, random: Random): ArchHedge {
  const { height, seen, plot } = room;
  const { smallestWeb: web, smallestHole: hole } = plot;
  const span = seen.maxX - seen.minX;
  const aside = ASIDE * span * random.bell();
  const middle = (seen.minX + seen.maxX) / 2 + aside;
  const shoulder = height * random.between(...SHOULDER);
  const around = Math.max(AROUND.high * height, AROUND.webs * web);
  const wide = Math.max(2 * hole, Math.min(PASSAGE.high * height, PASSAGE.seen * span));
  const batter = Math.tan((BATTER_DEG[1] * Math.PI) / 180) * height;
  const half = Math.min(wide / 2 + around, span / 2 - Math.abs(aside) - batter - BESIDE_MM);
  if (half < BESIDE_MM) return { stretches: [plain(room, random)], openings: [] };
  const line = archedEdge(room, middle, half, shoulder, random);
  const sill = -Math.max(1.3 * web, 1.3);
  const top = -(height - around);
  const hasRoom = half - wide / 2 > 1.5 * web && sill - top > Math.max(1.6 * hole, 0.3 * height);
  return {
    stretches: [{ line, anchor: 0.5 }],
    openings: hasRoom ? [passage(room, { middle, wide, top, sill }, random.branch('way'))] : [],
  };
}

/** A hedge too narrow for an arch is clipped level. */
const plain = (room: Room, random: Random): Stretch => ({
  line: levelEdge(room, 'upright', random),
  anchor: 0.5,
});

/** Left to right: up the side, level, over the arch in a half round, level and down. */
function archedEdge(
  room: Room,
  middle: number,
  half: number,
  shoulder: number,
  random: Random,
): Line {
  const { leftX, rightX, height } = room;
  const slope = Math.tan((random.between(...BATTER_DEG) * Math.PI) / 180);
  const radius = random.between(1, 2);
  const rise = height - shoulder;
  const left = isFree(room, 'left')
    ? [
        { x: leftX, y: 0 },
        { x: leftX + slope * shoulder, y: -shoulder, radius },
      ]
    : [{ x: leftX, y: -shoulder }];
  const right = isFree(room, 'right')
    ? [
        { x: rightX - slope * shoulder, y: -shoulder, radius },
        { x: rightX, y: 0 },
      ]
    : [{ x: rightX, y: -shoulder }];
  // Half an ellipse, in places close enough to be joined by straight lines.
  const arch = Array.from({ length: ARCH_STEPS + 1 }, (_, i) => {
    const a = Math.PI * (1 - i / ARCH_STEPS);
    return { x: middle + half * Math.cos(a), y: -shoulder - rise * Math.sin(a) ** 0.8 };
  });
  return roundedLine([...left, ...arch, ...right]);
}

const ARCH_STEPS = 40;

interface Passage {
  readonly middle: number;
  readonly wide: number;
  readonly top: number;
  readonly sill: number;
}

/** The passage as a hole: upright sides under a round head, nibbled as the hedge is. */
function passage(room: Room, { middle, wide, top, sill }: Passage, random: Random): Cubics {
  const r = Math.min(wide / 2, sill - top);
  // Up the right side and down the left, so that the card lies to the right of the way.
  const line = pen(middle + wide / 2, sill)
    .lineTo(middle + wide / 2, top + r)
    .curveTo(middle + wide / 2, top + 0.45 * r, middle + 0.28 * wide, top, middle, top)
    .curveTo(
      middle - 0.28 * wide,
      top,
      middle - wide / 2,
      top + 0.45 * r,
      middle - wide / 2,
      top + r,
    )
    .lineTo(middle - wide / 2, sill)
    .line();
  const guide = guideOf(line);
  const outline = pen(middle + wide / 2, sill);
  nibbleAlong(outline, guide, guide.lengthMm / 2, room.nibble, random);
  return outline.close();
}
