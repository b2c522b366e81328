import type { Bounds } from '../../geometry/types.js';
import type { Opening } from './opening.js';
import type { Anchor } from './patches.js';

/** Reach of the patches at corners and along the window's plumb edges, in courses. */
const CORNER_REACH = 7;
const QUOIN_REACH = 3;

/** Joints gather at the card's corners and along the edges that a bricklayer sets out first. */
export function frameAnchors(card: Bounds, opening: Opening | null, courseMm: number): Anchor[] {
  const at = (x: number, y: number, pull: number): Anchor => ({
    x0: x,
    y0: y,
    x1: x,
    y1: y,
    reach: CORNER_REACH * courseMm,
    pull,
  });
  const corners = (b: Bounds, pull: number) => [
    at(b.minX, b.minY, pull),
    at(b.maxX, b.minY, pull),
    at(b.minX, b.maxY, pull),
    at(b.maxX, b.maxY, pull),
  ];
  if (!opening) return corners(card, 0.6);
  const { bounds, springing } = opening;
  const quoin = (x: number): Anchor => ({
    x0: x,
    y0: springing,
    x1: x,
    y1: bounds.maxY,
    reach: QUOIN_REACH * courseMm,
    pull: 0.4,
  });
  return [...corners(card, 0.55), ...corners(bounds, 0.7), quoin(bounds.minX), quoin(bounds.maxX)];
}
