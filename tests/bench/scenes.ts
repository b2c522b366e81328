import {
  areaPaths,
  EndType,
  FillRule,
  inflatePaths,
  JoinType,
  type Path64,
  union,
} from 'clipper2-ts';
import { inOrder, moveRegion, rotation, translation } from '../../src/geometry/transform.js';
import type { Region } from '../../src/geometry/types.js';
import { onGrid } from '../geometry/overlays.js';
import { leaf, seeded } from '../geometry/shapes.js';

const SEED = 7;
const LOOSE_EACH_MM2 = 72;

/** Leaves of 4 to 12 mm on one crown of 60 x 50 mm, where most lie under others. */
export const denseLeaves = (count: number): Region[] => leavesOn(count, 60, 50);

/** The same on 120 x 60 mm. */
export const strewnLeaves = (count: number): Region[] => leavesOn(count, 120, 60);

/** The same with so much room each that they touch only here and there. */
export function looseLeaves(count: number): Region[] {
  const height = Math.sqrt((count * LOOSE_EACH_MM2) / 2);
  return leavesOn(count, 2 * height, height);
}

function leavesOn(count: number, width: number, height: number): Region[] {
  const random = seeded(SEED);
  return Array.from({ length: count }, () => {
    const length = 4 + 8 * random();
    const place = translation(width * random(), height * random());
    const shape = leaf(length, length * (0.15 + 0.2 * random()));
    return moveRegion(shape, inOrder(rotation(360 * random()), place));
  });
}

/** Coarser and finer chords of the references (mm): corners of offsets take finer ones. */
const UNION_MM = [8e-3, 2e-3] as const;
const OFFSET_MM = [5e-4, 1.25e-4] as const;
const UNITS = 1e5;

/**
 * An area at chords of no length, from Clipper2 on two sets of chords. Their polygons enclose what
 * the arcs do; what is still out (corners, arcs of offsets) is in proportion to the tolerance.
 */
function extrapolated(
  [coarseMm, fineMm]: readonly [number, number],
  areaAt: (chordMm: number) => number,
): number {
  const [coarse, fine] = [areaAt(coarseMm), areaAt(fineMm)];
  return fine + (fine - coarse) / (coarseMm / fineMm - 1);
}

export const unionArea = (leaves: readonly Region[]): number =>
  extrapolated(UNION_MM, (chordMm) => unitedArea(leaves, chordMm));

export const offsetArea = (region: Region, distanceMm: number): number =>
  extrapolated(OFFSET_MM, (chordMm) => {
    const paths = region.contours.map((c) => onGrid(c, chordMm));
    const [join, end] = [JoinType.Round, EndType.Polygon];
    const grown = inflatePaths(paths, distanceMm * UNITS, join, end, 2, chordMm * UNITS);
    return areaPaths(grown) / UNITS ** 2;
  });

/** Leaves in one call: each call's time grows faster than they do. */
const GROUP = 40;

function unitedArea(leaves: readonly Region[], chordMm: number): number {
  // Neighbours first, so that what they hide is soon gone.
  const sorted = [...leaves].sort((a, b) => a.contours[0][0] - b.contours[0][0]);
  let level = sorted.map((one) => one.contours.map((c) => onGrid(c, chordMm)));
  while (level.length > 1) {
    const next: Path64[][] = [];
    for (let k = 0; k < level.length; k += GROUP) {
      next.push(union(level.slice(k, k + GROUP).flat(), FillRule.NonZero));
    }
    level = next;
  }
  return areaPaths(level[0]) / UNITS ** 2;
}
