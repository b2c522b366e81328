import { EndType, inflatePaths, JoinType } from 'clipper2-ts';
import { type Checked, cleanChecked, uniteShapes } from '../boolean/boolean.js';
import { chordTable, GRID_PER_MM } from '../boolean/chords.js';
import { clip, type Ring, ringsOf } from '../boolean/clip.js';
import { polylineOf, type Solution } from '../boolean/curve-boolean.js';
import { withoutSpikes } from '../boolean/spikes.js';
import { ringArea, ringLength } from '../boolean/verify.js';
import { flatten, regionArea } from '../measure.js';
import { reversed } from '../transform.js';
import type { Cubics, Line, Region } from '../types.js';
import { cornerCount, type Join, MITRE_AREA, offsetOutline } from './offset-outline.js';

export type { Join } from './offset-outline.js';

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
  const growth = regionArea(result.region) - regionArea(region);
  const polygons = inflated(region.contours, distanceMm, EndType.Polygon);
  if (agrees(growth, polygons, mitresMm2)) return result;
  return { region: { contours: polygons.rings.map(polylineOf) }, exact: false };
}

export function strokeChecked(lines: readonly Line[], widthMm: number): Checked {
  if (!(widthMm > 0)) return { region: { contours: [] }, exact: true };
  const chains = lines.map((line) => line.cubics).filter((c) => c.length > 0);
  const outlines = chains.map((chain) => strokeOutlines(chain, widthMm / 2));
  const { region, exact } = uniteShapes(outlines.map((o) => o.contours));
  return { region, exact: exact && outlines.every((o) => o.exact) };
}

/** The raw outline of one line, wound round all of the stroke; polygons where it fails its check. */
function strokeOutlines(chain: Cubics, distanceMm: number): Solution {
  // There and back again makes a closed chain round nothing, and its ends are cusps.
  const outline = offsetOutline(
    Float64Array.from([...chain, ...reversed(chain)]),
    distanceMm,
    'round',
  );
  const rings = ringsOf(chordTable([outline], CHECK_MM), 0, 1);
  const area = total(clip('union', rings, [], 'positive'), ringArea);
  const polygons = inflated([chain], distanceMm, EndType.Round);
  if (agrees(area, polygons, 0)) return { contours: [outline], exact: true };
  return { contours: polygons.rings.map(polylineOf), exact: false };
}

/** What another method makes of the same: Clipper2's polygons, with round joins. */
interface Inflated {
  readonly rings: readonly Ring[];
  /** Area gained, mm2. Chords cut inside convex curves; the gain is free of most of that error. */
  readonly growthMm2: number;
  /** The longer outline of before and after, mm. */
  readonly lengthMm: number;
}

function inflated(chains: readonly Cubics[], distanceMm: number, end: EndType): Inflated {
  const closed = end === EndType.Polygon;
  const before = chains.map((c) => chordPath(c, closed)).filter((path) => path.length > 0);
  const tolerance = CHECK_MM * GRID_PER_MM;
  const rings = inflatePaths(before, distanceMm * GRID_PER_MM, JoinType.Round, end, 2, tolerance);
  return {
    rings,
    growthMm2: total(rings, ringArea) - (closed ? total(before, ringArea) : 0),
    lengthMm: Math.max(total(before, ringLength), total(rings, ringLength)),
  };
}

const agrees = (growthMm2: number, polygons: Inflated, allowanceMm2: number): boolean =>
  Math.abs(growthMm2 - polygons.growthMm2) <=
  allowanceMm2 + CHECK_MM2 + CHECK_PER_MM * polygons.lengthMm;

function chordPath(chain: Cubics, closed: boolean): Ring {
  const path = flatten(chain, CHECK_MM).map((p) => ({
    x: Math.round(p.x * GRID_PER_MM),
    y: Math.round(p.y * GRID_PER_MM),
  }));
  return closed ? withoutSpikes(path) : path;
}

const total = (rings: readonly Ring[], of: (ring: Ring) => number): number =>
  rings.reduce((sum, ring) => sum + of(ring), 0);
