import { boundsOf, contourArea, middleOfBox } from '../../geometry/measure.js';
import type { Cubics, Point, Region } from '../../geometry/types.js';
import { type SharpCorner, sharpCorners } from '../../geometry/width/sharp-corners.js';
import type { Blade } from '../process.js';
import { largestLateral, settlingTravel } from './tractrix.js';

/** A tip this near to its line (mm) is back on it: less does not show in cut card. */
export const SETTLED_MM = 0.05;
/** Holes smaller across than this many offsets come out torn. Common practice, no source. */
const LEAST_HOLE_OFFSETS = 8;

/** A detail finer than a dragged blade can turn. */
export interface BladeSpot {
  readonly at: Point;
  /**
   * `corner`: a bend tighter than the blade's offset, measured by its radius. `short`: a run between
   * two corners on which the tip does not come into line, measured by its length. `hole`: measured by
   * its larger side.
   */
  readonly kind: 'corner' | 'short' | 'hole';
  readonly measuredMm: number;
  /** The least that the blade can turn. */
  readonly wantedMm: number;
}

/**
 * Where a region's outline asks more of a blade than it can turn, contour by contour. Runs between
 * corners must be as long as the offset where the file swings the blade, else as long as the tip
 * needs to come back within 0.05 mm of its line.
 */
export function bladeLimits(region: Region, blade: Blade): BladeSpot[] {
  return region.contours.flatMap((contour) => {
    const alone = { contours: [contour] };
    return [
      ...smallHole(contour, blade),
      ...tightBends(sharpCorners(alone, blade.offsetMm), blade),
      ...shortRuns(sharpCorners(alone, 0), blade),
    ];
  });
}

function smallHole(contour: Cubics, { offsetMm }: Blade): BladeSpot[] {
  if (contourArea(contour) >= 0) return [];
  const box = boundsOf([contour]);
  const { minX, minY, maxX, maxY } = box;
  const measuredMm = Math.max(maxX - minX, maxY - minY);
  const wantedMm = LEAST_HOLE_OFFSETS * offsetMm;
  if (measuredMm >= wantedMm) return [];
  return [{ at: middleOfBox(box), kind: 'hole', measuredMm, wantedMm }];
}

const tightBends = (corners: readonly SharpCorner[], { offsetMm }: Blade): BladeSpot[] =>
  corners
    .filter(({ radiusMm }) => radiusMm > 0 && radiusMm < offsetMm)
    .map(({ at, radiusMm }) => ({
      at,
      kind: 'corner',
      measuredMm: radiusMm,
      wantedMm: offsetMm,
    }));

/** Runs from one corner to the next, corners that take the tip no way off its line left out. */
function shortRuns(corners: readonly SharpCorner[], { offsetMm, compensate }: Blade): BladeSpot[] {
  const felt = corners.filter((c) => largestLateral(turnOf(c), offsetMm) > SETTLED_MM);
  if (felt.length < 2) return [];
  return felt.flatMap((corner, k): BladeSpot[] => {
    const next = felt[(k + 1) % felt.length];
    const measuredMm = Math.hypot(next.at.x - corner.at.x, next.at.y - corner.at.y);
    const wantedMm = compensate ? offsetMm : settlingTravel(turnOf(corner), offsetMm, SETTLED_MM);
    if (measuredMm >= wantedMm) return [];
    const at = { x: (corner.at.x + next.at.x) / 2, y: (corner.at.y + next.at.y) / 2 };
    return [{ at, kind: 'short', measuredMm, wantedMm }];
  });
}

const turnOf = ({ turnDeg }: SharpCorner): number => (Math.abs(turnDeg) * Math.PI) / 180;

/** What a file that leaves out the swing leaves at a corner, where the machine does not swing either. */
export interface CornerError {
  readonly at: Point;
  /** By how much the outline turns; never negative. */
  readonly turnDeg: number;
  /** How far the tip gets from the line of the run after the corner. */
  readonly lateralMm: number;
  /** Travel until it stays within 0.05 mm; Infinity straight back. */
  readonly overMm: number;
}

/**
 * What an uncompensated cut leaves at each corner of a closed contour, in order round it: turns of 5
 * degrees or more. By the tractrix, so for a straight run long enough for the blade to settle.
 */
export const cornerErrors = (contour: Cubics, { offsetMm }: Blade): CornerError[] =>
  sharpCorners({ contours: [contour] }, 0).map((corner) => ({
    at: corner.at,
    turnDeg: Math.abs(corner.turnDeg),
    lateralMm: largestLateral(turnOf(corner), offsetMm),
    overMm: settlingTravel(turnOf(corner), offsetMm, SETTLED_MM),
  }));
