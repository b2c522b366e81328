import { EndType, inflatePaths, JoinType, type Path64 } from 'clipper2-ts';
import { type Checked, cleanChecked, uniteStrokes } from './boolean.js';
import { GRID_PER_MM } from './chords.js';
import { polylineOf } from './curve-boolean.js';
import { flatten, regionArea } from './measure.js';
import { cornerCount, type Join, MITRE_AREA, offsetOutline } from './offset-outline.js';
import { reversed } from './transform.js';
import type { Cubics, Line, Region } from './types.js';
import { ringArea, ringLength } from './verify.js';

/** Chord and arc tolerance (mm) of the polygons that offsets are checked against. */
const CHECK_MM = 1e-2;
/**
 * Area (mm2) by which the growth of a shape and that of its polygons may differ, a millimetre of
 * outline and in all: 2/3 of the tolerance where curves vanish, and slivers that only one sees.
 */
const CHECK_PER_MM = 7e-3;
const CHECK_MM2 = 2e-2;

/**
 * The region grown outward by `distanceMm` with round corners, or shrunk when it is negative. With
 * the join `mitre` the corners that would be round stay sharp; those that would reach further than
 * 4 distances are cut square at the distance. Curves are kept, within 0.005 mm of the true offset.
 */
export const offset = (region: Region, distanceMm: number, join: Join = 'round'): Region =>
  offsetChecked(region, distanceMm, join).region;

/** The lines drawn with a pen of `widthMm` and round ends. Curves are kept, within 0.005 mm. */
export const stroke = (lines: readonly Line[], widthMm: number): Region =>
  strokeChecked(lines, widthMm).region;

export function offsetChecked(region: Region, distanceMm: number, join: Join = 'round'): Checked {
  if (distanceMm === 0) return { region, exact: true };
  const outlines = region.contours.map((c) => offsetOutline(c, distanceMm, join));
  const result = cleanChecked(outlines, 'positive');
  const sharp = join === 'mitre' ? cornerCount(region.contours) : 0;
  const mitresMm2 = sharp * MITRE_AREA * distanceMm * distanceMm;
  return checked(result, region.contours, distanceMm, EndType.Polygon, mitresMm2);
}

export function strokeChecked(lines: readonly Line[], widthMm: number): Checked {
  const chains = lines.map((line) => line.cubics).filter((c) => c.length > 0);
  if (!(widthMm > 0)) return { region: { contours: [] }, exact: true };
  // There and back again makes a closed chain round nothing, and its ends are cusps.
  const outlines = chains.map((c) =>
    offsetOutline(Float64Array.from([...c, ...reversed(c)]), widthMm / 2, 'round'),
  );
  return checked(uniteStrokes(outlines), chains, widthMm / 2, EndType.Round, 0);
}

/**
 * The result, if polygons offset by another method (Clipper2's, with round joins) agree with it to
 * within `allowanceMm2` and their own errors; else those polygons.
 */
function checked(
  result: Checked,
  chains: readonly Cubics[],
  distanceMm: number,
  end: EndType,
  allowanceMm2: number,
): Checked {
  const closed = end === EndType.Polygon;
  const before = chains.map((chain) => chordPath(chain, closed));
  const tolerance = CHECK_MM * GRID_PER_MM;
  const rings = inflatePaths(before, distanceMm * GRID_PER_MM, JoinType.Round, end, 2, tolerance);
  // Chords cut inside convex curves: growth is compared, so that this error cancels out.
  const growth = regionArea(result.region) - (closed ? regionArea({ contours: chains }) : 0);
  const polygonGrowth = total(rings, ringArea) - (closed ? total(before, ringArea) : 0);
  const length = Math.max(total(before, ringLength), total(rings, ringLength));
  const allowed = allowanceMm2 + CHECK_MM2 + CHECK_PER_MM * length;
  if (Math.abs(growth - polygonGrowth) <= allowed) return result;
  return { region: { contours: rings.map(polylineOf) }, exact: false };
}

function chordPath(chain: Cubics, closed: boolean): Path64 {
  const points = flatten(chain, CHECK_MM);
  if (closed) points.pop();
  return points.map((p) => ({
    x: Math.round(p.x * GRID_PER_MM),
    y: Math.round(p.y * GRID_PER_MM),
  }));
}

const total = (paths: readonly Path64[], of: (path: Path64) => number): number =>
  paths.reduce((sum, path) => sum + of(path), 0);
