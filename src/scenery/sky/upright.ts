import { regionBounds } from '../../geometry/measure.js';
import {
  type Affine,
  IDENTITY,
  inverse,
  movePoint,
  moveRegion,
  rotation,
  scaling,
} from '../../geometry/transform.js';
import type { Bounds, Point, Region } from '../../geometry/types.js';
import type { Side } from '../../scene/parameter.js';
import type { Plot } from '../family.js';

/** How a turned plot lies to the upright world round the same foot (y down). */
const TURNS: Record<Side, Affine> = {
  sill: IDENTITY,
  head: scaling(1, -1),
  left: rotation(90),
  right: rotation(-90),
};

/** A turned plot seen upright: what the sky draws with, as clouds lie level on every side. */
export interface Sky {
  /** From upright coordinates back to the plot's, mm. */
  readonly toPlot: Affine;
  /** The element's own room, upright. */
  readonly box: Bounds;
  /** The window, or without one the frame's bounds, upright. */
  readonly opening: Bounds;
  readonly window: Region;
}

export function skyOf(plot: Plot): Sky {
  const turn = TURNS[plot.side];
  const corners = [
    { x: -plot.width / 2, y: -plot.height },
    { x: plot.width / 2, y: 0 },
  ].map((p) => movePoint(p, turn));
  const window = moveRegion(plot.frame.window, turn);
  const open = window.contours.length > 0 ? window : moveRegion(plot.frame.card, turn);
  return { toPlot: inverse(turn), box: boxOf(corners), opening: regionBounds(open), window };
}

export const boxOf = (points: readonly Point[]): Bounds => ({
  minX: Math.min(...points.map((p) => p.x)),
  minY: Math.min(...points.map((p) => p.y)),
  maxX: Math.max(...points.map((p) => p.x)),
  maxY: Math.max(...points.map((p) => p.y)),
});
