import { pen } from '../geometry/pen.js';
import { inOrder, moveCubics, rotation, translation } from '../geometry/transform.js';
import type { Cubics, Point } from '../geometry/types.js';

/** A leaf's outline before it is placed. Lengths in mm. */
export interface LeafForm {
  readonly length: number;
  readonly width: number;
  /** Where along the length it is widest, 0 = foot, 1 = tip. */
  readonly widest: number;
  /** Radius of the rounded tip: card tears and blades skid at a needle point. */
  readonly tipRadius: number;
}

/** A tip that a blade follows without skidding and that fingers do not bend. */
export const TIP_RADIUS_MM = 0.5;

/** How far round its centre the tip's arc runs to each side of the leaf's axis. */
const TIP_ARC_DEG = 55;

/**
 * One leaf as a closed contour, clockwise on screen. Its foot stands on `foot` and it points along
 * `headingDeg` (0 = right, 90 = down).
 */
export function leaf(form: LeafForm, foot: Point, headingDeg: number): Cubics {
  const { length, width, widest } = form;
  const r = Math.min(form.tipRadius, width / 3, length / 4);
  const half = width / 2;
  const belly = widest * length;
  const arc = (TIP_ARC_DEG * Math.PI) / 180;
  const tipX = length - r + r * Math.cos(arc);
  const tipY = r * Math.sin(arc);
  // Handle lengths that give a full belly and an almost straight run to the tip.
  const toTip = (length - belly) * 0.45;
  const fromTip = (length - belly) * 0.3;
  const slopeX = Math.sin(arc) * fromTip;
  const slopeY = Math.cos(arc) * fromTip;
  const outline = pen(0, 0)
    .curveTo(belly * 0.2, -half * 0.75, belly * 0.55, -half, belly, -half)
    .curveTo(belly + toTip, -half, tipX - slopeX, -tipY - slopeY, tipX, -tipY)
    .arcAround(length - r, 0, 2 * TIP_ARC_DEG)
    .curveTo(tipX - slopeX, tipY + slopeY, belly + toTip, half, belly, half)
    .curveTo(belly * 0.55, half, belly * 0.2, half * 0.75, 0, 0)
    .close();
  return moveCubics(outline, inOrder(rotation(headingDeg), translation(foot.x, foot.y)));
}
