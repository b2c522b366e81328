import { areaPaths } from 'clipper2-ts';
import { straightCubic, subCubic } from '../cubic.js';
import { contourArea } from '../measure.js';
import type { Cubics } from '../types.js';
import { type ChordTable, chordTable, GRID_PER_MM } from './chords.js';
import { clip, type Ring, ringsOf } from './clip.js';
import { crossingsOf } from './crossings.js';
import { throughVertices } from './junctions.js';
import type { Run } from './runs.js';
import { isOverlap, type Sliver, sliversOf } from './slivers.js';
import { vertexCount } from './vertex-index.js';

/** The check looks through chords this many times finer than those of the boolean itself. */
const FINER = 20;
/** Past this number of crossings a full clip is the cheaper judge. */
const MANY_CROSSINGS = 40;
/** Nodes this near (grid units) touch: corners that were bridged lie up to 20 apart. */
const TOUCH_UNITS = 30;
/** Crossings that enclose less than this (mm2) are not asked what they enclose. */
const CRUMB_MM2 = 2e-5;
/** Area (mm2) that working out true corners may move: this much in all, and this much a corner. */
const CORNERS_MM2 = 5e-3;
const PER_CORNER_MM2 = 1e-2;
/**
 * Area between a chord and its arc, as a share of tolerance times length: 2/3 for a parabola, with
 * room for chords that were cut short.
 */
const BULGE = 1.2;

/** Area of a clipped ring, mm2; outers positive. */
export function ringArea(ring: Ring): number {
  let sum = 0;
  const { x: x0, y: y0 } = ring[0];
  for (let k = 0, j = ring.length - 1; k < ring.length; j = k++) {
    sum += (ring[j].x - x0) * (ring[k].y - y0) - (ring[k].x - x0) * (ring[j].y - y0);
  }
  return sum / (2 * GRID_PER_MM * GRID_PER_MM);
}

/** Area of a contour of untouched runs, their loose ends joined by straight edges, mm2. */
export function looseArea(runs: readonly Run[], table: ChordTable): number {
  const chain = new Float64Array(runs.length * 16);
  runs.forEach((run, k) => {
    chain.set(subCubic(table.cubics, run.segment * 8, run.from, run.to), k * 16);
  });
  for (let k = 0; k < chain.length; k += 16) {
    const next = (k + 16) % chain.length;
    chain.set(straightCubic(chain[k + 6], chain[k + 7], chain[next], chain[next + 1]), k + 8);
  }
  return contourArea(chain);
}

/** Whether a contour encloses what its ring does, chord error and true corners allowed for. */
export function isFaithful(
  contour: Cubics,
  ring: Ring,
  looseMm2: number,
  toleranceMm: number,
): boolean {
  const corners = CORNERS_MM2 + PER_CORNER_MM2 * (contour.length / 8);
  if (!(Math.abs(contourArea(contour) - looseMm2) <= corners)) return false;
  const bulge = BULGE * toleranceMm * ringLength(ring);
  return Math.abs(looseMm2 - ringArea(ring)) <= bulge + CORNERS_MM2;
}

/** Length of a clipped ring, mm. */
export function ringLength(ring: Ring): number {
  let sum = 0;
  for (let k = 0, j = ring.length - 1; k < ring.length; j = k++) {
    sum += Math.hypot(ring[k].x - ring[j].x, ring[k].y - ring[j].y);
  }
  return sum / GRID_PER_MM;
}

/** What contours cover more than once or the wrong way round. */
export interface Overlap {
  readonly areaMm2: number;
  /** All of it as slivers on the chords of `table`; null where it is more, or not known. */
  readonly slivers: readonly Sliver[] | null;
  readonly table: ChordTable;
}

/**
 * The overlap of contours, seen through fine chords. For contours that follow rings that do not
 * overlap: an overlap is then bounded by crossings of chords, or by nodes that touch.
 */
export function overlapOf(contours: readonly Cubics[], toleranceMm: number): Overlap {
  const table = chordTable(contours, toleranceMm / FINER);
  const crossings = crossingsOf(table, MANY_CROSSINGS);
  const slivers = crossings && sliversOf(crossings, table);
  const count = vertexCount(table);
  if (slivers?.every((s) => s.areaMm2 < CRUMB_MM2 || isOverlap(s, table, count))) {
    const areaMm2 = slivers.reduce((sum, s) => sum + s.areaMm2, 0);
    if (areaMm2 > CRUMB_MM2 || !nodesTouch(table)) return { areaMm2, slivers, table };
  }
  const rings = ringsOf(throughVertices(table), 0, contours.length);
  const united = clip('union', rings, [], 'nonzero');
  const areaMm2 = Math.abs(areaPaths(united) - areaPaths(rings)) / GRID_PER_MM ** 2;
  return { areaMm2, slivers: null, table };
}

/** Whether somewhere two nodes, other than the two ends of one segment, all but meet. */
function nodesTouch(table: ChordTable): boolean {
  const { x, y, t0, segment, nextSegment } = table;
  const count = vertexCount(table);
  const nodes: number[] = [];
  for (let v = 0; v < count; v++) {
    if (t0[v] === 0) nodes.push(v);
  }
  nodes.sort((a, b) => x[a] - x[b]);
  for (let k = 1; k < nodes.length; k++) {
    for (let j = k - 1; j >= 0 && x[nodes[k]] - x[nodes[j]] <= TOUCH_UNITS; j--) {
      if (Math.abs(y[nodes[k]] - y[nodes[j]]) > TOUCH_UNITS) continue;
      const [a, b] = [segment[nodes[k]], segment[nodes[j]]];
      if (nextSegment[a] !== b && nextSegment[b] !== a) return true;
    }
  }
  return false;
}
