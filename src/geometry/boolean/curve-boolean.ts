import { contourArea } from '../measure.js';
import { polygon } from '../pen.js';
import type { Cubics } from '../types.js';
import { tidyRuns } from './absorb.js';
import { withoutBuried } from './buried.js';
import { type ChordTable, chordTable, GRID_PER_MM } from './chords.js';
import { clip, type Operation, type Ring, type Rule, ringsOf, uniteGroups } from './clip.js';
import { cornersOf } from './corners.js';
import { contourOf } from './emit.js';
import { throughVertices } from './junctions.js';
import { withoutSlivers } from './mend.js';
import { runsOf } from './runs.js';
import { Sources } from './sources.js';
import { isFaithful, looseArea, type Overlap, overlapOf, ringArea } from './verify.js';

/**
 * Booleans that keep curves. The contours are cut into chords on an integer grid, the chords are
 * clipped as polygons (Clipper2, after B. R. Vatti, A generic solution to polygon clipping, CACM
 * 35(7), 1992), every run of chords of one cubic in the result becomes that part of the cubic
 * again, and the corners move to the curves' true crossings. Then the result is verified.
 */

/**
 * Chord tolerance (mm) of large and of small problems. Slivers thinner than twice this are decided
 * by the chords, not by the curves; finer chords cost time, which small problems can afford.
 */
const [CHORD_MM, FINE_CHORD_MM] = [1e-2, 2.5e-3];
/** So many cubics make a small problem. */
const SMALL = 300;
/** The tolerance is divided by these in turn until a result passes its verification. */
const DIVISORS = [1, 6, 36];

/** Pieces and holes smaller than this (mm2) are rounding, not shape. */
const MIN_AREA_MM2 = 1e-4;

/** Largest piece or hole (mm2) that may vanish because it is inside out on the true curves. */
const TURNED_MM2 = 1e-2;
/** Overlap (mm2) that a result may have with itself: near-tangent slivers stay below it. */
const MAX_OVERLAP_MM2 = 1e-4;
/** Overlap (mm2) up to which the result is sound but for slivers; more calls for a new start. */
const TRIM_MM2 = 0.2;

/** Mending takes off no more area than this share of the slivers, chord error allowed for. */
const LOST_SHARE = 1.5;

/** The contours of one boolean, grouped by the region that they belong to. */
export interface Problem {
  readonly operation: Operation;
  readonly rule: Rule;
  readonly subjects: readonly (readonly Cubics[])[];
  readonly clips: readonly (readonly Cubics[])[];
}

export interface Solution {
  /** Outers with positive area (clockwise on screen), holes negative. */
  readonly contours: readonly Cubics[];
  /** Whether all curves were kept and verified; else these are polylines within 0.01 mm. */
  readonly exact: boolean;
}

export function solve(given: Problem): Solution {
  const problem = thinned(given);
  let polylines: readonly Cubics[] = [];
  let open = problem;
  const coarsestMm = cubicCount(problem) > SMALL ? CHORD_MM : FINE_CHORD_MM;
  for (const divisor of DIVISORS) {
    const toleranceMm = coarsestMm / divisor;
    const contours = [...open.subjects, ...open.clips].flat();
    const table = throughVertices(chordTable(contours, toleranceMm));
    const rings = clipped(open, table).filter((ring) => Math.abs(ringArea(ring)) > MIN_AREA_MM2);
    if (polylines.length === 0) polylines = rings.map(polylineOf);
    const curves = curvesOf(rings, table, toleranceMm);
    const overlap = curves && overlapOf(curves, toleranceMm);
    if (curves && overlap) {
      if (overlap.areaMm2 < MAX_OVERLAP_MM2) return { contours: curves, exact: true };
      const mended = mend(curves, overlap, toleranceMm);
      if (mended) return { contours: mended, exact: true };
    }
    // A few slivers are trimmed off the result, which is far less to clip than the whole problem.
    const few = curves && open === problem && overlap && overlap.areaMm2 < TRIM_MM2;
    open = few ? trimming(curves) : problem;
  }
  return { contours: polylines, exact: false };
}

const cubicCount = ({ subjects, clips }: Problem): number =>
  [...subjects, ...clips].flat().reduce((sum, c) => sum + c.length / 8, 0);

/** A union without the shapes that others hide. */
const thinned = (problem: Problem): Problem =>
  problem.operation === 'union' && problem.rule === 'nonzero' && problem.clips.length === 0
    ? { ...problem, subjects: withoutBuried(problem.subjects) }
    : problem;

/** The contours without their slivers, or null where that does not leave a sound result. */
function mend(
  contours: readonly Cubics[],
  { areaMm2, slivers, table }: Overlap,
  toleranceMm: number,
): readonly Cubics[] | null {
  if (!slivers || areaMm2 > TRIM_MM2) return null;
  const mended = withoutSlivers(contours, slivers, table);
  if (!mended) return null;
  const lost = total(contours) - total(mended);
  const isFaithful = Math.abs(lost) <= LOST_SHARE * areaMm2 + MIN_AREA_MM2 * (slivers.length + 1);
  return isFaithful && overlapOf(mended, toleranceMm).areaMm2 < MAX_OVERLAP_MM2 ? mended : null;
}

const total = (contours: readonly Cubics[]): number =>
  contours.reduce((sum, c) => sum + contourArea(c), 0);

const trimming = (contours: readonly Cubics[]): Problem => ({
  operation: 'union',
  rule: 'positive',
  subjects: [contours],
  clips: [],
});

function clipped(problem: Problem, table: ChordTable): Ring[] {
  let contour = 0;
  const rings = (group: readonly Cubics[]): Ring[] => {
    const from = contour;
    contour += group.length;
    return ringsOf(table, from, contour);
  };
  const subjects = problem.subjects.map(rings);
  const clips = problem.clips.map(rings);
  const { operation, rule } = problem;
  if (rule !== 'nonzero' || operation === 'xor') {
    return clip(operation, subjects.flat(), clips.flat(), rule);
  }
  if (operation === 'union') return uniteGroups([...subjects, ...clips]);
  const cutters = clips.length > 1 ? uniteGroups(clips) : clips.flat();
  return clip(operation, subjects.flat(), cutters, rule);
}

/** The rings with their curves put back, or null where one of them does not come out right. */
function curvesOf(rings: readonly Ring[], table: ChordTable, toleranceMm: number): Cubics[] | null {
  const sources = new Sources(table);
  const contours: Cubics[] = [];
  for (const ring of rings) {
    const hits = sources.edgeHits(ring);
    if (!hits) return null;
    const runs = runsOf(ring, hits, table);
    const loose = looseArea(runs, table);
    tidyRuns(runs, table, toleranceMm);
    const contour = contourOf(runs, cornersOf(runs, table, toleranceMm), table);
    if (!isFaithful(contour, ring, loose, toleranceMm)) return null;
    const area = contourArea(contour);
    // A sliver between chords may turn inside out on the true curves, where it does not exist.
    const insideOut = area * ringArea(ring) < 0;
    if (insideOut && Math.abs(area) > TURNED_MM2) return null;
    if (!insideOut && Math.abs(area) > MIN_AREA_MM2) contours.push(contour);
  }
  return contours;
}

/** A ring as it is, with straight edges. */
export const polylineOf = (ring: Ring): Cubics =>
  polygon(ring.map((p) => ({ x: p.x / GRID_PER_MM, y: p.y / GRID_PER_MM })));
