import { subtract } from '../../geometry/boolean/boolean.js';
import { linesInside } from '../../geometry/clip-lines.js';
import { offset } from '../../geometry/offset/offset.js';
import type { Bounds, Line, Region } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import { drawRing, type RingJoint, ringRegion, voussoirsShown } from './arch.js';
import { headOf, type RingForm } from './head.js';
import { type Opening, openingOf } from './opening.js';
import { middleOf, type Part, ringInPart } from './parts.js';
import { stoneFace } from './pressed.js';

/** Joints keep this clear of every cut edge: nearer, the card tears along them. */
export const CLEAR_MM = 1.75;

/** The card of a frame as a mason sees it. */
export interface FrameWall {
  readonly bounds: Bounds;
  /** Null on a panel without a window. */
  readonly opening: Opening | null;
  /** The opening's box, or what stands in for it. */
  readonly window: Bounds;
  readonly ring: readonly RingJoint[];
  /** Where scores may lie, and where those of the wall may: not on the ring. */
  readonly clear: Region;
  readonly wall: Region;
}

export function frameWallOf({ frame }: Plot, courseMm: number, form?: RingForm): FrameWall {
  const { card, bounds } = frame;
  const opening = openingOf(frame.window);
  const ring = opening ? headOf(opening, bounds, courseMm, form) : [];
  const clear = offset(card, -CLEAR_MM);
  const wall = ring.length > 0 ? subtract(clear, [ringRegion(ring)]) : clear;
  return { bounds, opening, window: opening?.bounds ?? middleOf(bounds), ring, clear, wall };
}

/** The voussoirs to draw: the index of each one's first joint. */
export const ringStones = (
  { ring, window }: FrameWall,
  part: Part,
  coverage: number,
  random: Random,
): number[] =>
  voussoirsShown(ring, coverage, random).filter((i) =>
    ringInPart(part, ring[i].foot.x, ring[i + 1].foot.x, window),
  );

export const ringScores = (
  { ring, clear }: FrameWall,
  stones: readonly number[],
  random: Random,
): Line[] => linesInside(drawRing(ring, new Set(stones), CLEAR_MM, random), clear);

export const ringFaces = ({ ring }: FrameWall, stones: readonly number[]): Region[] =>
  stones.map((i) => stoneFace(ring[i], ring[i + 1], CLEAR_MM));
