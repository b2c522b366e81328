import type { Bounds } from '../../geometry/types.js';
import type { Cell } from './cells.js';

/** The parts of a frame that can be built of brick. */
export const PARTS = ['all', 'sill', 'head', 'jambs', 'left', 'right', 'base', 'surround'] as const;
export type Part = (typeof PARTS)[number];

/** Courses in a base. */
const BASE_COURSES = 6;
/** A queen closer next to the corner's header begins half a brick, 1.5 courses, from the edge. */
const CLOSER_COURSES = 1.5;
/** How much setting out may stretch that, and how near to the edge a brick touches it, mm. */
const SLACK = 1.3;
const TOUCHING_MM = 0.1;

/** How far over the window the arch goes with a jamb, as a share of its width. */
const RING_SHARE = 0.12;

/** Whether a brick belongs to the part. `window` is the opening, or what stands in for it. */
export function inPart(
  part: Part,
  cell: Cell,
  card: Bounds,
  window: Bounds,
  courseMm: number,
): boolean {
  const x = (cell.x0 + cell.x1) / 2;
  const y = (cell.y0 + cell.y1) / 2;
  switch (part) {
    case 'all':
      return true;
    case 'sill':
      return y > window.maxY;
    case 'head':
      return y < window.minY;
    case 'left':
      return x < window.minX;
    case 'right':
      return x > window.maxX;
    case 'jambs':
      return x < window.minX || x > window.maxX;
    case 'base':
      return y > card.maxY - BASE_COURSES * courseMm;
    case 'surround':
      return y > window.minY && y < window.maxY && isQuoin(cell, window, courseMm);
  }
}

/** The bricks that bond the window's plumb edges: toothed, as one course reaches in further. */
function isQuoin(cell: Cell, window: Bounds, courseMm: number): boolean {
  const off = Math.min(Math.abs(cell.x1 - window.minX), Math.abs(cell.x0 - window.maxX));
  return cell.kind === 'closer' ? off < CLOSER_COURSES * SLACK * courseMm : off < TOUCHING_MM;
}

/** Whether a stone of the arch between x0 and x1 belongs to the part. */
export function ringInPart(part: Part, x0: number, x1: number, window: Bounds): boolean {
  const share = ((x0 + x1) / 2 - window.minX) / (window.maxX - window.minX);
  switch (part) {
    case 'sill':
    case 'base':
      return false;
    case 'left':
      return share < RING_SHARE;
    case 'right':
      return share > 1 - RING_SHARE;
    case 'jambs':
      return Math.abs(share - 0.5) > 0.5 - RING_SHARE;
    default:
      return true;
  }
}

/** A backdrop has no window: its parts are those round its middle. */
export function middleOf(card: Bounds): Bounds {
  const x = (card.maxX - card.minX) / 4;
  const y = (card.maxY - card.minY) / 4;
  return { minX: card.minX + x, maxX: card.maxX - x, minY: card.minY + y, maxY: card.maxY - y };
}
