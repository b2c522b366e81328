import { flatten } from '../../geometry/measure.js';
import { type Affine, IDENTITY, moveLine, moveRegion, scaling } from '../../geometry/transform.js';
import type { Region } from '../../geometry/types.js';
import type { Growth, Plot } from '../family.js';

/**
 * A plot as a reader sees it: y down the page, x to the right, whichever side it is on. On the head
 * a plot is mirrored, which letters must not be.
 */
export interface View {
  readonly onHead: boolean;
  readonly card: Region;
  readonly window: Region;
  /** The window's edge at the element's foot, and the end of the card beyond it. */
  readonly edgeY: number;
  readonly endY: number;
  /** How far the element's foot is lifted off the edge, into the window. */
  readonly liftMm: number;
}

const MIRRORED = scaling(1, -1);

const mapOf = (plot: Plot): Affine => (plot.side === 'head' ? MIRRORED : IDENTITY);

export function viewOf(plot: Plot): View {
  const map = mapOf(plot);
  const outward = plot.side === 'head' ? -1 : 1;
  const liftMm = edgeOf(plot);
  return {
    onHead: plot.side === 'head',
    card: moveRegion(plot.frame.card, map),
    window: moveRegion(plot.frame.window, map),
    edgeY: outward * liftMm,
    endY: outward * plot.root,
    liftMm,
  };
}

/** How far below its foot the window's edge lies, at its lowest under the element. */
function edgeOf({ frame, width }: Plot): number {
  const [low, high] = [-width / 2, width / 2];
  let lowest = -Infinity;
  for (const contour of frame.window.contours) {
    const points = flatten(contour, 0.05);
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1], points[i]];
      if (Math.max(a.x, b.x) < low || Math.min(a.x, b.x) > high) continue;
      const level = (x: number): number =>
        a.x === b.x ? Math.max(a.y, b.y) : a.y + ((x - a.x) / (b.x - a.x)) * (b.y - a.y);
      const held = (x: number): number => Math.max(low, Math.min(high, x));
      lowest = Math.max(lowest, level(held(a.x)), level(held(b.x)));
    }
  }
  return Number.isFinite(lowest) ? lowest : 0;
}

/** What was drawn as a reader sees it, in the plot's own coordinates. */
export function inPlot(growth: Growth, plot: Plot): Growth {
  const map = mapOf(plot);
  return {
    ...growth,
    body: moveRegion(growth.body, map),
    holes: moveRegion(growth.holes, map),
    scores: growth.scores.map((line) => moveLine(line, map)),
    reliefs: growth.reliefs.map((r) => ({ ...r, region: moveRegion(r.region, map) })),
    ...(growth.pierced ? { pierced: moveRegion(growth.pierced, map) } : {}),
  };
}
