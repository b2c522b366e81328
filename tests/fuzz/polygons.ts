import {
  areaPaths,
  Clipper64,
  ClipType,
  EndType,
  FillRule,
  inflatePaths,
  JoinType,
  type Path64,
} from 'clipper2-ts';
import { withoutSpikes } from '../../src/geometry/boolean/spikes.js';
import { regionArea } from '../../src/geometry/measure.js';
import type { Region } from '../../src/geometry/types.js';
import { type Case, contoursOf } from '../cases/case.js';
import { onGrid, slabArea } from '../geometry/overlays.js';
import type { Random } from './kinds.js';

/** Chords of the reference (mm). Their polygons enclose what the arcs do, by Simpson's rule. */
const CHORD_MM = 2e-3;
/** Chords (mm) where small turns of a chord matter: they swing an offset edge by the distance. */
const FINE_CHORD_MM = 4e-4;
/** Edges shorter than this (mm) may count as none. */
const SPECK_MM = 2e-3;
/** Chords of the slabs (mm), which are slow, and where they decide. */
const [SLAB_MM, FINE_SLAB_MM] = [1e-2, 1e-3];
const UNITS = 1e5;
/** Square units of Clipper2's integers in a mm2. */
export const UNITS_SQ = UNITS * UNITS;
/** Area (mm2) that a result may be out by, slivers allowed for. */
export const AREA_MM2 = 0.05;
/** Between a result and the reference may lie what is thinner than this (mm). */
const SLIVER_MM = { exact: 1.2e-2, polyline: 2e-2 };
/** Smaller pieces (mm2) do not count, nor what is left of others once that is taken off them. */
const STRAY_MM2 = 2e-3;
/** A result that Clipper2 finds fault with is right if slabs agree with it by this (mm2). */
const SOUND_MM2 = 0.01;
/** Area (mm2) that contours may cover twice or backwards. */
const OVERLAP_MM2 = 2e-3;
/** Mitred and bevelled offsets may be out by this area a millimetre of outline. */
const OFFSET_MM = 5e-3;
/** Slabs judge this share of the cases, and all in which Clipper2 finds fault. */
const SLAB_SHARE = 0.1;
/** Larger cases are checked on points only, but for this share. */
const MANY_CUBICS = 150;
const LARGE_SHARE = 0.2;

/** What Clipper2 on other and finer chords, and at times slabs, say is wrong with a result. */
export function polygonFaults(c: Case, region: Region, exact: boolean, random: Random): string[] {
  const cubics = contoursOf(c.shapes).reduce((sum, s) => sum + s.length / 8, 0);
  const [isJudged, isSlab] = [random() < LARGE_SHARE, random() < SLAB_SHARE];
  if (cubics > MANY_CUBICS && !isJudged) return [];
  const result = gridOf(region);
  const overlap = leastOverlap(region, result);
  const overlaps = Math.abs(overlap) > OVERLAP_MM2 ? [`overlaps itself by ${overlap} mm2`] : [];
  if (c.operation === 'offset' && c.join !== 'round') {
    return [...overlaps, ...rangeFaults(c, regionArea(region), lengthOf(result) * OFFSET_MM)];
  }
  const found = strayFaults(region, result, referenceOf(c), exact);
  if (c.operation === 'offset' && found.length > 0) {
    // Edges of a micron or two across a tip lead Clipper2 astray.
    const rings = contoursOf(c.shapes).map((r) => withoutShortEdges(onGrid(r, CHORD_MM), SPECK_MM));
    const tidied = inflated(rings.map(withoutSpikes), c.distanceMm, JOINS[c.join]);
    const isSame = strayFaults(region, result, tidied, exact).length === 0;
    return isSame ? overlaps : [...overlaps, ...found];
  }
  // Clipper2 too is wrong at times, and slabs are not.
  if (c.operation === 'offset' || (found.length === 0 && !isSlab)) return [...overlaps, ...found];
  const isDeciding = found.length > 0;
  const area = slabsOf(c, isDeciding ? FINE_SLAB_MM : SLAB_MM);
  const isSound = Math.abs(regionArea(region) - area) < (isDeciding ? SOUND_MM2 : AREA_MM2);
  return isSound ? overlaps : [...overlaps, ...found, `area by slabs is ${area} mm2`];
}

/** Area covered twice or backwards; on finer chords where coarse ones, crossing, may feign it. */
function leastOverlap(region: Region, coarse: Path64[]): number {
  const overlapOf = (r: Path64[]): number => areaOf(clip(ClipType.Union, r, [])) - areaOf(r);
  const overlap = overlapOf(coarse);
  if (Math.abs(overlap) <= OVERLAP_MM2) return overlap;
  return overlapOf(region.contours.map((c) => onGrid(c, FINE_CHORD_MM)));
}

/** Where a result and the reference differ by more than slivers. */
function strayFaults(
  region: Region,
  result: Path64[],
  reference: Path64[],
  exact: boolean,
): string[] {
  const [area, wanted] = [regionArea(region), areaOf(reference)];
  const between = clip(ClipType.Xor, result, reference);
  const xor = areaOf(between);
  const limit = exact ? SLIVER_MM.exact : SLIVER_MM.polyline;
  const pieces = between.filter((piece) => Math.abs(areaOf([piece])) > STRAY_MM2);
  const thick = areaOf(inflatePaths(pieces, (-limit / 2) * UNITS, JoinType.Miter, EndType.Polygon));
  const faults: string[] = [];
  if (Math.abs(area - wanted) > AREA_MM2 + xor)
    faults.push(`area ${area}, should be ${wanted} mm2`);
  if (thick > STRAY_MM2) faults.push(`off by ${xor} mm2, thicker than slivers over ${thick} mm2`);
  return faults;
}

/** Corners too sharp for a mitre are bevelled by us and cut square by Clipper2. */
function rangeFaults(c: Case & { operation: 'offset' }, area: number, slackMm2: number): string[] {
  // A tip with an edge of a micron or two across is one corner or two.
  const areas: number[] = [];
  for (const speckMm of [0, SPECK_MM]) {
    const rings = contoursOf(c.shapes).map((contour) =>
      withoutSpikes(withoutShortEdges(onGrid(contour, FINE_CHORD_MM), speckMm)),
    );
    areas.push(
      areaOf(inflated(rings, c.distanceMm, JoinType.Bevel)),
      // A corner whose mitre comes to just the limit has it or not by how its chords lie.
      ...[0.9, 1.1].map((f) =>
        areaOf(inflated(rings, c.distanceMm, JoinType.Miter, f * MITRE_LIMIT)),
      ),
    );
    if (isBetween(area, areas, AREA_MM2 + slackMm2)) return [];
  }
  return [`area ${area}, should be ${Math.min(...areas)} to ${Math.max(...areas)} mm2`];
}

const isBetween = (value: number, bounds: readonly number[], slack: number): boolean =>
  value > Math.min(...bounds) - slack && value < Math.max(...bounds) + slack;

const areaOf = (paths: Path64[]): number => areaPaths(paths) / UNITS_SQ;

const gridOf = (region: Region): Path64[] => region.contours.map((r) => onGrid(r, CHORD_MM));

/** The result by Clipper2 on fine chords. */
export function referenceOf(c: Case): Path64[] {
  const [first, ...others] = c.shapes.map(gridOf);
  switch (c.operation) {
    case 'offset':
      return inflatedBy(c, JOINS[c.join]);
    case 'nonzero':
    case 'union':
      return clip(ClipType.Union, [first, ...others].flat(), []);
    case 'even-odd':
      return clip(ClipType.Union, [first, ...others].flat(), [], FillRule.EvenOdd);
    case 'subtract':
      return clip(ClipType.Difference, first, others.flat());
    case 'intersect':
      return clip(ClipType.Intersection, first, others[0]);
    default:
      return clip(ClipType.Xor, first, others[0]);
  }
}

const JOINS = { round: JoinType.Round, mitre: JoinType.Miter, bevel: JoinType.Bevel };
const MITRE_LIMIT = 4;

const inflatedBy = (c: Case & { operation: 'offset' }, join: JoinType): Path64[] =>
  inflated(c.shapes.flatMap(gridOf).map(withoutSpikes), c.distanceMm, join);

const inflated = (
  rings: Path64[],
  distanceMm: number,
  join: JoinType,
  mitreLimit = MITRE_LIMIT,
): Path64[] =>
  inflatePaths(rings, distanceMm * UNITS, join, EndType.Polygon, mitreLimit, CHORD_MM * UNITS);

/** A ring without the vertices nearer than this to the one before. */
function withoutShortEdges(ring: Path64, leastMm: number): Path64 {
  const kept: Path64 = [];
  for (const p of ring) {
    const q = kept[kept.length - 1];
    if (!q || Math.hypot(p.x - q.x, p.y - q.y) >= leastMm * UNITS) kept.push(p);
  }
  return kept;
}

function clip(
  type: ClipType,
  subjects: Path64[],
  clips: Path64[],
  rule = FillRule.NonZero,
): Path64[] {
  const clipper = new Clipper64();
  clipper.addSubject(subjects.map(withoutSpikes).filter((r) => r.length > 0));
  clipper.addClip(clips.map(withoutSpikes).filter((r) => r.length > 0));
  const out: Path64[] = [];
  clipper.execute(type, rule, out);
  return out;
}

/** Areas by unions alone, as |A or B| + |A and B| = |A| + |B| and the like. */
function slabsOf(c: Case, chordMm: number): number {
  const united = (shapes: readonly Region[]): number =>
    slabArea(contoursOf(shapes), (w) => w !== 0, chordMm);
  const [first, ...others] = c.shapes;
  if (c.operation === 'even-odd')
    return slabArea(contoursOf(c.shapes), (w) => w % 2 !== 0, chordMm);
  if (c.operation === 'subtract') return united(c.shapes) - united(others);
  if (c.operation === 'intersect') return united([first]) + united(others) - united(c.shapes);
  if (c.operation === 'xor') return 2 * united(c.shapes) - united([first]) - united(others);
  return united(c.shapes);
}

function lengthOf(paths: readonly Path64[]): number {
  let sum = 0;
  for (const path of paths) {
    path.forEach((p, k) => {
      const q = path[k === 0 ? path.length - 1 : k - 1];
      sum += Math.hypot(p.x - q.x, p.y - q.y);
    });
  }
  return sum / UNITS;
}
