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
import { union } from '../../../src/geometry/boolean/boolean.js';
import { chordCount, jetAt } from '../../../src/geometry/cubic.js';
import { perimeter } from '../../../src/geometry/measure.js';
import { type Join, offsetChecked } from '../../../src/geometry/offset/offset.js';
import type { Cubics, Region } from '../../../src/geometry/types.js';
import { seeded, shapes, strewnLeaves } from '../shapes.js';

/**
 * Offsets of random regions against Clipper2's own offset of fine polygons, an algorithm that
 * shares nothing with ours but the clipper that both end in.
 */

/** Chords of the reference (mm), and units of its grid a millimetre. */
const FINE_MM = 5e-4;
const GRID_PER_MM = 1e6;
/** Clipper2 cuts off longer mitres in another way, so that shapes with sharper corners are round. */
const MITRE_LIMIT = 3;
const SHARPEST = 2.7;
/** Area (mm2) that may differ, a millimetre of outline and in all. */
const PER_MM = 2e-3;
const MM2 = 5e-3;

export interface OffsetCase {
  readonly seed: number;
  readonly shape: Region;
  readonly distanceMm: number;
  readonly join: Join;
}

/** A union of leaves or of other shapes, grown or shrunk by 0.05 to 3 mm. */
export function offsetCase(seed: number): OffsetCase {
  const random = seeded(9000 + seed);
  const layout = (['grid', 'turned', 'free'] as const)[seed % 3];
  const parts = seed % 4 === 0 ? strewnLeaves(30, seed) : shapes(random, layout, 5);
  const distanceMm = (random() < 0.5 ? -1 : 1) * 0.05 * 60 ** random();
  const shape = union(parts);
  const join = (['round', 'mitre', 'bevel'] as const)[Math.floor(3 * random())];
  const isSharp = shape.contours.some((c) => sharpestReach(c) > SHARPEST);
  return { seed, shape, distanceMm, join: isSharp && join === 'mitre' ? 'round' : join };
}

/** How far the longest mitre of a contour would reach, in distances: 1 / cos(turn / 2). */
function sharpestReach(c: Cubics): number {
  let longest = 1;
  for (let i = 0; i < c.length; i += 8) {
    const next = (i + 8) % c.length;
    const [ux, uy] = [c[i + 6] - c[i + 4], c[i + 7] - c[i + 5]];
    const [vx, vy] = [c[next + 2] - c[next], c[next + 3] - c[next + 1]];
    const turn = Math.atan2(ux * vy - uy * vx, ux * vx + uy * vy);
    longest = Math.max(longest, 1 / Math.max(1e-9, Math.cos(turn / 2)));
  }
  return longest;
}

/** What is wrong with an offset; empty where nothing is. */
export function offsetFault({ shape, distanceMm, join }: OffsetCase): string {
  const { region, exact } = offsetChecked(shape, distanceMm, join, MITRE_LIMIT);
  if (!exact) return 'is not exact';
  const wanted = inflatePaths(
    paths(shape),
    distanceMm * GRID_PER_MM,
    { round: JoinType.Round, mitre: JoinType.Miter, bevel: JoinType.Bevel }[join],
    EndType.Polygon,
    MITRE_LIMIT,
    FINE_MM * GRID_PER_MM,
  );
  const clipper = new Clipper64();
  clipper.addSubject(wanted);
  clipper.addClip(paths(region));
  const difference: Path64[] = [];
  clipper.execute(ClipType.Xor, FillRule.NonZero, difference);
  const xorMm2 = areaPaths(difference) / GRID_PER_MM ** 2;
  const allowedMm2 = MM2 + PER_MM * (perimeter(shape) + perimeter(region));
  return xorMm2 <= allowedMm2 ? '' : `differs by ${xorMm2} mm2, allowed ${allowedMm2}`;
}

const paths = (region: Region): Path64[] => region.contours.map(finePolygon);

/** Near a node its chords must run as the curves do there, for corners to be joined alike. */
const BESIDE_NODE_T = 5e-4;

function finePolygon(c: Cubics): Path64 {
  const path: Path64 = [];
  for (let i = 0; i < c.length; i += 8) {
    const n = chordCount(c, i, FINE_MM);
    const ts = Array.from({ length: n - 1 }, (_, k) => (k + 1) / n);
    for (const t of [0, BESIDE_NODE_T, ...ts, 1 - BESIDE_NODE_T]) {
      const { x, y } = jetAt(c, i, t);
      path.push({ x: Math.round(x * GRID_PER_MM), y: Math.round(y * GRID_PER_MM) });
    }
  }
  return path;
}
