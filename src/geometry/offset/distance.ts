import { jetAt } from '../cubic.js';
import { contourArea } from '../measure.js';
import { nearestChord, type Outline, outlineOf, windingAt } from '../outline.js';
import type { Cubics, Point, Region } from '../types.js';
import type { Join } from './joins.js';
import { tangent } from './parallel.js';

/** How far (mm) a point of an outline may be from where it should be: chords' error included. */
const OUT_OF_PLACE_MM = 6e-3;
/** A step (mm) out of the offset, in which the distance must grow by most of it. */
const STEP_MM = 2e-2;
const GROWTH = 0.9;
/** Where each cubic of the result and of the source is looked at. */
const RESULT_T = [0, 1 / 3, 2 / 3];
const SOURCE_T = [0.25, 0.75];

/**
 * Where a region is not the offset of `source` at `distanceMm` to the left of its contours; null
 * where it is. Its outline must lie at the distance, and where the parallel of a contour has
 * nothing else near it, there must be outline. Round a node whose corner is not round the outline
 * may lie nearer, and where it is mitred up to `mitreLimit` distances out.
 */
export function wrongSpots(
  region: Region,
  source: Region,
  distanceMm: number,
  join: Join = 'round',
  mitreLimit = 1,
): Point[] | null {
  const before = outlineOf(source);
  const after = outlineOf(region);
  const range = rangeOf(source, Math.abs(distanceMm), join, mitreLimit);
  const wrong = [
    ...region.contours.flatMap((c) => misplaced(c, before, range)),
    ...source.contours.flatMap((c) => missing(c, distanceMm, before, after, join)),
  ];
  return wrong.length > 0 ? wrong : null;
}

/** Smaller pieces and holes (mm2), 0.02 mm across, are what rounding leaves over. */
const LEAST_MM2 = 4e-4;

/** A region without leftovers: specks, and contours that lie wholly within the distance of `source`. */
export function withoutLeftovers(
  region: Region,
  source: Region,
  distanceMm: number,
  join: Join,
): Region {
  const before = outlineOf(source);
  const range = rangeOf(source, Math.abs(distanceMm), join, Infinity);
  const isLeftover = (c: Cubics): boolean =>
    Math.abs(contourArea(c)) < LEAST_MM2 ||
    misplaced(c, before, range).length === (c.length / 8) * RESULT_T.length;
  return { contours: region.contours.filter((c) => !isLeftover(c)) };
}

/** Where an outline may lie: this far from its source, and nearer only round corners. */
interface Range {
  readonly nearestMm: number;
  readonly farthestMm: number;
  /** Nodes whose corners are not round. */
  readonly corners: readonly Point[];
}

function rangeOf(source: Region, distanceMm: number, join: Join, mitreLimit: number): Range {
  const nodes = (c: Cubics): Point[] =>
    Array.from({ length: c.length / 8 }, (_, k) => ({ x: c[8 * k], y: c[8 * k + 1] }));
  return {
    nearestMm: distanceMm - OUT_OF_PLACE_MM,
    farthestMm: distanceMm * (join === 'mitre' ? mitreLimit : 1) + OUT_OF_PLACE_MM,
    corners: join === 'round' ? [] : source.contours.flatMap(nodes),
  };
}

function misplaced(c: Cubics, source: Outline, range: Range): Point[] {
  const { nearestMm, farthestMm, corners } = range;
  const wrong: Point[] = [];
  for (let i = 0; i < c.length; i += 8) {
    for (const t of RESULT_T) {
      const p = jetAt(c, i, t);
      const foot = nearestChord(source, p.x, p.y, farthestMm);
      const isNear = foot !== null && foot.distanceMm < nearestMm;
      if (foot === null || (isNear && !isBy(corners, p, foot.distanceMm))) wrong.push(p);
    }
  }
  return wrong;
}

/** Whether the nearest place, so far from a point, is one of the corners. */
const isBy = (corners: readonly Point[], { x, y }: Point, distanceMm: number): boolean =>
  corners.some((q) => Math.hypot(q.x - x, q.y - y) < distanceMm + OUT_OF_PLACE_MM);

function missing(
  c: Cubics,
  distanceMm: number,
  source: Outline,
  outline: Outline,
  join: Join,
): Point[] {
  const far = Math.abs(distanceMm) + GROWTH * STEP_MM;
  const out = Math.sign(distanceMm) * (Math.abs(distanceMm) + STEP_MM);
  const wrong: Point[] = [];
  for (let i = 0; i < c.length; i += 8) {
    for (const t of SOURCE_T) {
      const at = jetAt(c, i, t);
      const [tx, ty] = tangent(c, i, t);
      const beyond = { x: at.x + out * ty, y: at.y - out * tx };
      if (nearestChord(source, beyond.x, beyond.y, far) !== null) continue;
      // Where a source folds over by rounding, its left is not out of it.
      if (windingAt(source, beyond.x, beyond.y) > 0 === distanceMm > 0) continue;
      const p = { x: at.x + distanceMm * ty, y: at.y - distanceMm * tx };
      if (nearestChord(outline, p.x, p.y, OUT_OF_PLACE_MM) !== null) continue;
      // A mitre may lie over it.
      const isOver = join === 'mitre' && windingAt(outline, p.x, p.y) > 0 === distanceMm > 0;
      if (!isOver) wrong.push(p);
    }
  }
  return wrong;
}
