import { flatten } from '../../geometry/measure.js';
import type { Bounds, Point } from '../../geometry/types.js';
import { openingOf } from '../brick/opening.js';
import type { Plot } from '../family.js';
import type { Opening } from '../window/opening.js';

/** What a curtain is hung in, mm. */
export interface Stage {
  readonly bounds: Bounds;
  readonly width: number;
  readonly height: number;
  /** What the pelmet hangs from, left to right. */
  readonly head: readonly Point[];
  readonly flat: boolean;
  readonly web: number;
  readonly hole: number;
  readonly fineness: number;
}

/** A curved head is hung with a pelmet down to this share of the window's height. */
const HUNG = 0.34;
const FLATTEN_MM = 0.02;

export function stageOf({ window, bounds }: Opening, plot: Plot): Stage {
  const height = bounds.maxY - bounds.minY;
  const known = openingOf(window);
  const flat = known?.form === 'flat';
  const corners = [
    { x: bounds.minX, y: bounds.minY },
    { x: bounds.maxX, y: bounds.minY },
  ];
  return {
    bounds,
    width: bounds.maxX - bounds.minX,
    height,
    head: flat ? corners : upperEdge(flatten(window.contours[0], FLATTEN_MM), bounds, height),
    flat,
    web: plot.smallestWeb,
    hole: plot.smallestHole,
    fineness: plot.fineness,
  };
}

function upperEdge(outline: readonly Point[], { minY }: Bounds, height: number): Point[] {
  const level = minY + HUNG * height;
  return outline.filter((p) => p.y <= level).sort((a, b) => a.x - b.x);
}

/** Places that divide a row of points evenly by length, ends included. */
export function divided(points: readonly Point[], parts: number): Point[] {
  const lengths = [0];
  for (let i = 1; i < points.length; i++) {
    const [p, q] = [points[i - 1], points[i]];
    lengths.push(lengths[i - 1] + Math.hypot(q.x - p.x, q.y - p.y));
  }
  const whole = lengths[lengths.length - 1];
  return Array.from({ length: parts + 1 }, (_, k) => {
    const at = (k / parts) * whole;
    const i = Math.max(
      1,
      lengths.findIndex((l) => l >= at - 1e-9),
    );
    const share = (at - lengths[i - 1]) / Math.max(1e-9, lengths[i] - lengths[i - 1]);
    const [p, q] = [points[i - 1], points[i]];
    return { x: p.x + share * (q.x - p.x), y: p.y + share * (q.y - p.y) };
  });
}
