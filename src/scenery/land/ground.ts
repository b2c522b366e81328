import { flatten, regionBounds } from '../../geometry/measure.js';
import { pen } from '../../geometry/pen.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { endsOf, mix, shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';

/** Scores on land keep this clear of cut edges, mm. */
export const CLEAR_MM = 1.5;
const FLATTEN_MM = 0.02;

/** Where the ground ends left and right, mm, and which ends stand free of the window's jambs. */
export interface Ground {
  readonly left: number;
  readonly right: number;
  readonly freeLeft: boolean;
  readonly freeRight: boolean;
}

export function groundOf(plot: Plot): Ground {
  const { left, right } = endsOf(plot);
  const { window, bounds } = plot.frame;
  const { minX, maxX } = window.contours.length > 0 ? regionBounds(window) : bounds;
  return { left, right, freeLeft: left > minX, freeRight: right < maxX };
}

/** What lies under a line that runs from left to right, down to `bottomMm`. */
export function landUnder({ cubics }: Line, bottomMm: number): Region {
  const n = cubics.length;
  const outline = pen(cubics[0], bottomMm).lineTo(cubics[0], cubics[1]);
  for (let i = 0; i < n; i += 8) {
    const [x1, y1, x2, y2, x, y] = cubics.subarray(i + 2, i + 8);
    outline.curveTo(x1, y1, x2, y2, x, y);
  }
  return shapeOf(outline.lineTo(cubics[n - 2], bottomMm).close());
}

/** Level (y, mm) of a line that runs from left to right without turning back. */
export function levelsOf(line: Line): (x: number) => number {
  const points: Point[] = flatten(line.cubics, FLATTEN_MM);
  return (x) => {
    const i = points.findIndex((p) => p.x >= x);
    if (i < 0) return points[points.length - 1].y;
    if (i === 0) return points[0].y;
    const [a, b] = [points[i - 1], points[i]];
    return b.x - a.x < 1e-9 ? b.y : mix(a.y, b.y, (x - a.x) / (b.x - a.x));
  };
}
