import { EndType, inflatePaths, JoinType, type Path64 } from 'clipper2-ts';
import { flatten } from './measure.js';
import { polygon } from './pen.js';
import type { Line, Region } from './types.js';

// INTERIM: polyline offsets behind the final public face; the curve-keeping engine replaces this file.
const SCALE = 1e5;
const pts = (c: Float64Array) =>
  flatten(c, 0.005).map((p) => ({ x: Math.round(p.x * SCALE), y: Math.round(p.y * SCALE) }));
const back = (ps: Path64[]): Region => ({
  contours: ps.map((p) => polygon(p.map((q) => ({ x: q.x / SCALE, y: q.y / SCALE })))),
});

/** The region grown outward by `distanceMm` with round corners, or shrunk when it is negative. */
export const offset = (region: Region, distanceMm: number): Region =>
  back(
    inflatePaths(
      region.contours.map((c) => pts(c).slice(0, -1)) as Path64[],
      distanceMm * SCALE,
      JoinType.Round,
      EndType.Polygon,
      2,
      0.005 * SCALE,
    ),
  );

/** The lines drawn with a pen of `widthMm` and round ends. */
export const stroke = (lines: readonly Line[], widthMm: number): Region =>
  back(
    inflatePaths(
      lines.map((l) => pts(l.cubics)) as Path64[],
      (widthMm / 2) * SCALE,
      JoinType.Round,
      EndType.Round,
      2,
      0.005 * SCALE,
    ),
  );
