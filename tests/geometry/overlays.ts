import { areaPaths, Clipper64, ClipType, FillRule, type Path64 } from 'clipper2-ts';
import InteriorPointArea from 'jsts/org/locationtech/jts/algorithm/InteriorPointArea.js';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import type LinearRing from 'jsts/org/locationtech/jts/geom/LinearRing.js';
import SnapIfNeededOverlayOp from 'jsts/org/locationtech/jts/operation/overlay/snap/SnapIfNeededOverlayOp.js';
import Polygonizer from 'jsts/org/locationtech/jts/operation/polygonize/Polygonizer.js';
import UnaryUnionOp from 'jsts/org/locationtech/jts/operation/union/UnaryUnionOp.js';
import * as polyclip from 'polyclip-ts';
import { withoutSpikes } from '../../src/geometry/boolean/spikes.js';
import { chordCount } from '../../src/geometry/cubic.js';
import { contourArea, flatten, pointAt } from '../../src/geometry/measure.js';
import type { Cubics, Line, Point, Region } from '../../src/geometry/types.js';

/**
 * Booleans of finely flattened shapes by libraries that share nothing with ours: JSTS (the
 * JavaScript port of the JTS Topology Suite) and polyclip-ts (after F. Martínez et al., A new
 * algorithm for computing Boolean operations on polygons, Computers & Geosciences 35, 2009).
 */

/**
 * A closed chain as a polygon of the same area: each chord within `toleranceMm` becomes two edges
 * that enclose what its arc does, by Simpson's rule (their corner lies a third of the sagitta
 * outside). Plain chords would lose up to 2/3 of the tolerance times the length.
 */
export function evenPolygon(c: Cubics, toleranceMm: number): Point[] {
  const points: Point[] = [];
  for (let i = 0; i < c.length; i += 8) {
    const n = chordCount(c, i, toleranceMm);
    for (let k = 0; k < n; k++) {
      const start = k === 0 ? { x: c[i], y: c[i + 1] } : pointAt(c, i, k / n);
      const end = k === n - 1 ? { x: c[i + 6], y: c[i + 7] } : pointAt(c, i, (k + 1) / n);
      const arc = pointAt(c, i, (k + 0.5) / n);
      points.push(rounded(start.x, start.y));
      points.push(rounded((8 * arc.x - start.x - end.x) / 6, (8 * arc.y - start.y - end.y) / 6));
    }
  }
  return points;
}

/** Coincident arcs evaluated from their two ends must not differ by the last bit. */
const rounded = (x: number, y: number): Point => ({
  x: Math.round(x * 1e7) / 1e7,
  y: Math.round(y * 1e7) / 1e7,
});

export type Overlay = 'union' | 'subtract' | 'intersect' | 'xor';

const factory = new GeometryFactory();

const linearRing = (points: readonly Point[]): LinearRing =>
  factory.createLinearRing([...points, points[0]].map((p) => new Coordinate(p.x, p.y)));

/** A region of one piece; its outer contour first. */
const jstsPolygon = (region: Region, toleranceMm: number): Geometry => {
  const [outer, ...holes] = region.contours.map((c) => linearRing(evenPolygon(c, toleranceMm)));
  return factory.createPolygon(outer, holes) as unknown as Geometry;
};

/** A region of one piece or several, holes after the outer contour that they lie in. */
export function jstsRegion(region: Region, toleranceMm: number): Geometry {
  const pieces = region.contours.filter((c) => contourArea(c) > 0).map((c) => ({ contours: [c] }));
  const holes = region.contours.filter((c) => contourArea(c) < 0).map((c) => ({ contours: [c] }));
  const solid = UnaryUnionOp.union(
    factory.createGeometryCollection(pieces.map((r) => jstsPolygon(r, toleranceMm))),
  );
  return holes.reduce(
    (all, hole) => SnapIfNeededOverlayOp.difference(all, jstsPolygon(hole, toleranceMm)),
    solid,
  );
}

export const jstsLine = (lines: readonly Line[], toleranceMm: number): Geometry =>
  factory.createMultiLineString(
    lines.map(({ cubics: c }) =>
      factory.createLineString(
        [...evenPolygon(c, toleranceMm), { x: c[c.length - 2], y: c[c.length - 1] }].map(
          (p) => new Coordinate(p.x, p.y),
        ),
      ),
    ),
  ) as unknown as Geometry;

/** Area by JSTS of the first region with all the others, each a single piece. */
export function jstsArea(
  overlay: Overlay,
  regions: readonly Region[],
  toleranceMm: number,
): number {
  const [first, ...others] = regions.map((r) => jstsPolygon(r, toleranceMm));
  const operation = {
    union: SnapIfNeededOverlayOp.union,
    subtract: SnapIfNeededOverlayOp.difference,
    intersect: SnapIfNeededOverlayOp.intersection,
    xor: SnapIfNeededOverlayOp.symDifference,
  }[overlay];
  return others.reduce((all, one) => operation(all, one), first).getArea();
}

/** Area by JSTS of the union of many regions at once. */
export const jstsUnionArea = (regions: readonly Region[], toleranceMm: number): number =>
  UnaryUnionOp.union(
    factory.createGeometryCollection(regions.map((r) => jstsPolygon(r, toleranceMm))),
  ).getArea();

/** Area by polyclip-ts of the first region with all the others. */
export function polyclipArea(
  overlay: Overlay,
  regions: readonly Region[],
  toleranceMm: number,
): number {
  const [first, ...others] = regions.map((r) =>
    r.contours.map((c) => evenPolygon(c, toleranceMm).map((p): [number, number] => [p.x, p.y])),
  );
  const operation = {
    union: polyclip.union,
    subtract: polyclip.difference,
    intersect: polyclip.intersection,
    xor: polyclip.xor,
  }[overlay];
  return operation(first, ...others)
    .flat()
    .reduce((sum, ring) => sum + shoelace(ring.map(([x, y]) => ({ x, y }))), 0);
}

const shoelace = (points: readonly Point[]): number =>
  points.reduce((sum, p, k) => {
    const q = points[(k + 1) % points.length];
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);

/**
 * Area that closed chains enclose under a fill rule: JSTS nodes the lines and finds the faces, and
 * each face is in or out by the winding number of a point in it, counted here.
 */
export function facesArea(
  chains: readonly Cubics[],
  isInside: (winding: number) => boolean,
  toleranceMm: number,
): number {
  const polygons = chains.map((c) => evenPolygon(c, toleranceMm));
  const lines = polygons.map((points) =>
    factory.createLineString([...points, points[0]].map((p) => new Coordinate(p.x, p.y))),
  );
  const noded = UnaryUnionOp.union(factory.createGeometryCollection(lines));
  const polygonizer = new Polygonizer();
  polygonizer.add(noded);
  const faces: Geometry[] = polygonizer.getPolygons().toArray();
  return faces.reduce((sum, face) => {
    const at: Coordinate = new InteriorPointArea(face).getInteriorPoint();
    return isInside(winding(polygons, at)) ? sum + face.getArea() : sum;
  }, 0);
}

function winding(polygons: readonly Point[][], at: Point): number {
  let turns = 0;
  for (const points of polygons) {
    points.forEach((p, k) => {
      const q = points[(k + 1) % points.length];
      if (p.y <= at.y === q.y <= at.y) return;
      const x = p.x + ((at.y - p.y) / (q.y - p.y)) * (q.x - p.x);
      if (x > at.x) turns += q.y > p.y ? 1 : -1;
    });
  }
  return turns;
}

interface Edge {
  readonly top: Point;
  readonly bottom: Point;
  readonly turn: 1 | -1;
}

/**
 * The same by horizontal slabs: between the heights of all corners and crossings no edges cross, so
 * that a slab is trapezia, whose area is its height times the widths half-way up. Slow, but it has
 * nothing to go wrong on edges that fall together or fold back.
 */
export function slabArea(
  chains: readonly Cubics[],
  isInside: (winding: number) => boolean,
  toleranceMm: number,
): number {
  const polygons = chains.map((c) => evenPolygon(c, toleranceMm));
  const edges = polygons
    .flatMap((points) => points.map((p, k) => edgeOf(p, points[(k + 1) % points.length])))
    .filter((e) => e.top.y < e.bottom.y)
    .sort((a, b) => a.top.y - b.top.y);
  const heights = new Set(polygons.flat().map((p) => p.y));
  edges.forEach((a, j) => {
    for (let k = j + 1; k < edges.length && edges[k].top.y < a.bottom.y; k++) {
      const y = crossingHeight(a, edges[k]);
      if (y !== null) heights.add(y);
    }
  });
  const levels = [...heights].sort((a, b) => a - b);
  let area = 0;
  let open: Edge[] = [];
  let next = 0;
  for (let k = 0; k + 1 < levels.length; k++) {
    const middle = (levels[k] + levels[k + 1]) / 2;
    while (next < edges.length && edges[next].top.y <= levels[k]) open.push(edges[next++]);
    open = open.filter((e) => e.bottom.y > middle);
    area += (levels[k + 1] - levels[k]) * insideWidth(open, middle, isInside);
  }
  return area;
}

const edgeOf = (p: Point, q: Point): Edge =>
  p.y < q.y ? { top: p, bottom: q, turn: -1 } : { top: q, bottom: p, turn: 1 };

function crossingHeight(a: Edge, b: Edge): number | null {
  const [ux, uy] = [a.bottom.x - a.top.x, a.bottom.y - a.top.y];
  const [vx, vy] = [b.bottom.x - b.top.x, b.bottom.y - b.top.y];
  const det = ux * vy - uy * vx;
  if (det === 0) return null;
  const [wx, wy] = [b.top.x - a.top.x, b.top.y - a.top.y];
  const s = (wx * vy - wy * vx) / det;
  const t = (wx * uy - wy * ux) / det;
  return s > 0 && s < 1 && t > 0 && t < 1 ? a.top.y + s * uy : null;
}

function insideWidth(
  edges: readonly Edge[],
  y: number,
  isInside: (winding: number) => boolean,
): number {
  const passed = edges
    .filter((e) => e.top.y <= y)
    .map(({ top, bottom, turn }) => {
      const f = (y - top.y) / (bottom.y - top.y);
      return { x: top.x + f * (bottom.x - top.x), turn };
    })
    .sort((a, b) => a.x - b.x);
  let [width, winding] = [0, 0];
  for (let k = 0; k + 1 < passed.length; k++) {
    winding += passed[k].turn;
    if (isInside(winding)) width += passed[k + 1].x - passed[k].x;
  }
  return width;
}

const UNITS = 1e5;

/** An even polygon in Clipper2's integers, 1e5 a millimetre. */
export const onGrid = (c: Cubics, toleranceMm: number): Path64 =>
  evenPolygon(c, toleranceMm).map((p) => ({
    x: Math.round(p.x * UNITS),
    y: Math.round(p.y * UNITS),
  }));

const integers = (chains: readonly Cubics[], toleranceMm: number): Path64[] =>
  chains.map((c) => onGrid(c, toleranceMm));

function clipped(type: ClipType, subjects: Path64[], clips: Path64[]): Path64[] {
  const clipper = new Clipper64();
  // Clipper2 may never end on a spike, which a fine cusp can become on the grid.
  clipper.addSubject(subjects.map(withoutSpikes).filter((ring) => ring.length > 0));
  clipper.addClip(clips.map(withoutSpikes).filter((ring) => ring.length > 0));
  const out: Path64[] = [];
  clipper.execute(type, FillRule.NonZero, out);
  return out;
}

/** The overlay itself by Clipper2 on fine chords, as a region of polygons. */
export function fineOverlay(
  overlay: Overlay,
  regions: readonly Region[],
  toleranceMm: number,
): Path64[] {
  const [first, ...others] = regions.map((r) => integers(r.contours, toleranceMm));
  if (overlay === 'union') return clipped(ClipType.Union, [first, ...others].flat(), []);
  const type = {
    subtract: ClipType.Difference,
    intersect: ClipType.Intersection,
    xor: ClipType.Xor,
  }[overlay];
  return clipped(type, first, others.flat());
}

/** Area (mm2) between a region and polygons of the same shape. */
export const strayArea = (region: Region, polygons: Path64[], toleranceMm: number): number =>
  Math.abs(areaPaths(clipped(ClipType.Xor, integers(region.contours, toleranceMm), polygons))) /
  UNITS ** 2;

/** Area (mm2) that a region's contours cover more than once, or with the wrong winding. */
export function overlapArea(region: Region, toleranceMm: number): number {
  const paths = integers(region.contours, toleranceMm);
  return Math.abs(areaPaths(clipped(ClipType.Union, paths, [])) - areaPaths(paths)) / UNITS ** 2;
}

/** What is wrong with a region's contours as chains, in words; empty where nothing is. */
export function chainFaults(region: Region): string[] {
  const faults: string[] = [];
  region.contours.forEach((c, k) => {
    if (c.length === 0 || c.length % 8 !== 0) faults.push(`contour ${k} has ${c.length} numbers`);
    if (!c.every(Number.isFinite)) faults.push(`contour ${k} is not finite`);
    for (let i = 0; i < c.length; i += 8) {
      const next = (i + 8) % c.length;
      if (c[i + 6] !== c[next] || c[i + 7] !== c[next + 1])
        faults.push(`contour ${k} gapes at ${i}`);
    }
  });
  return faults;
}

/** Length of a region's outline (mm), from chords within 1e-5 mm. */
export const outlineLength = (region: Region): number =>
  region.contours.reduce((sum, c) => {
    const points = flatten(c, 1e-5);
    return points.reduce((length, p, k) => {
      const q = points[Math.max(0, k - 1)];
      return length + Math.hypot(p.x - q.x, p.y - q.y);
    }, sum);
  }, 0);
