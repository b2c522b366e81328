import { jetAt } from '../cubic.js';
import { nearestChord, type Outline, outlineOf, windingAt } from '../outline.js';
import type { Cubics, Point, Region } from '../types.js';
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
 * Where a region is not the offset, round at all corners, of `source` at `distanceMm` to the left
 * of its contours; null where it is. Its outline must lie at the distance, and where the parallel
 * of a contour has nothing else near it, there must be outline.
 */
export function wrongSpots(region: Region, source: Region, distanceMm: number): Point[] | null {
  const before = outlineOf(source);
  const after = outlineOf(region);
  const wrong = [
    ...region.contours.flatMap((c) => misplaced(c, before, Math.abs(distanceMm))),
    ...source.contours.flatMap((c) => missing(c, distanceMm, before, after)),
  ];
  return wrong.length > 0 ? wrong : null;
}

function misplaced(c: Cubics, source: Outline, distanceMm: number): Point[] {
  const wrong: Point[] = [];
  for (let i = 0; i < c.length; i += 8) {
    for (const t of RESULT_T) {
      const p = jetAt(c, i, t);
      const foot = nearestChord(source, p.x, p.y, distanceMm + OUT_OF_PLACE_MM);
      if (foot === null || foot.distanceMm < distanceMm - OUT_OF_PLACE_MM) wrong.push(p);
    }
  }
  return wrong;
}

function missing(c: Cubics, distanceMm: number, source: Outline, outline: Outline): Point[] {
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
      if (nearestChord(outline, p.x, p.y, OUT_OF_PLACE_MM) === null) wrong.push(p);
    }
  }
  return wrong;
}
