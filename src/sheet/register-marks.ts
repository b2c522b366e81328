import { polyline } from '../geometry/pen.js';
import type { Mark } from '../process/layers.js';

/** Arm of a corner mark in mm: long enough to sight along, short enough to leave the sheet clean. */
const ARM = 5;
/** The marks at the foot are longer, which tells a sheet turned over from one turned upside down. */
const FOOT_ARM = 10;

/**
 * Four corner marks, `inset` mm from the edges of a page. They run along the inset, where a card's
 * edge may lie but never its face, and are the same on both faces: turned over left to right, each
 * lies on its twin.
 */
export function registerMarks(width: number, height: number, inset: number): Mark[] {
  const corner = (x: number, y: number, right: number, down: number): Mark => ({
    cubics: polyline([
      { x: x + right, y },
      { x, y },
      { x, y: y + down },
    ]).cubics,
    closed: false,
    kind: 'register',
  });
  const right = width - inset;
  const foot = height - inset;
  return [
    corner(inset, inset, ARM, ARM),
    corner(right, inset, -ARM, ARM),
    corner(inset, foot, FOOT_ARM, -FOOT_ARM),
    corner(right, foot, -FOOT_ARM, -FOOT_ARM),
  ];
}
