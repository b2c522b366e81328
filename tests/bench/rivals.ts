import {
  EndType,
  FillRule,
  inflatePaths,
  JoinType,
  type Path64,
  union as unionOf,
} from 'clipper2-ts';
import load, { type Clipper2, type Paths64 } from 'clipper2-wasm';
import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import BoundaryOp from 'jsts/org/locationtech/jts/operation/BoundaryOp.js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import UnaryUnionOp from 'jsts/org/locationtech/jts/operation/union/UnaryUnionOp.js';
import paper from 'paper-jsdom';
import * as polyclip from 'polyclip-ts';
import { unionChecked } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { contourArea, flatten, pointAt, regionArea } from '../../src/geometry/measure.js';
import { offset } from '../../src/geometry/offset/offset.js';
import { polygon } from '../../src/geometry/pen.js';
import type { Cubics, Point, Region } from '../../src/geometry/types.js';

/** Libraries that unite and offset, each from our regions to its own kind of result. */

/** Chords of those that know polygons only (mm): the tolerance that ours starts from too. */
const CHORD_MM = 1e-2;
const UNITS = 1e5;

/** What a run made, in terms all can be asked for. */
export interface Outcome {
  readonly areaMm2: number;
  /** Curve segments, or corners of polygons. */
  readonly nodes: number;
  /** Outer contours. */
  readonly pieces: number;
  /** Places along its outlines, for measuring. */
  readonly places: () => Point[];
}

export interface Rival {
  readonly name: string;
  /** More leaves than this take minutes. */
  readonly most: number;
  /** Gets ready what does not count as work, and returns the work. */
  readonly union: (leaves: readonly Region[]) => () => Outcome;
  readonly offset?: (region: Region, distanceMm: number) => () => Outcome;
}

const outcomeOf = (region: Region): Outcome => ({
  areaMm2: regionArea(region),
  nodes: region.contours.reduce((sum, c) => sum + c.length / 8, 0),
  pieces: region.contours.filter((c) => contourArea(c) > 0).length,
  places: () => region.contours.flatMap(alongCurves),
});

const alongCurves = (c: Cubics): Point[] =>
  Array.from({ length: c.length / 2 }, (_, k) => pointAt(c, 8 * (k >> 2), (k & 3) / 4));

/** Corners of a polygon and the middles of its edges. */
const alongEdges = (ring: readonly Point[]): Point[] =>
  ring.flatMap((p, k) => {
    const q = ring[(k + 1) % ring.length];
    return [p, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }];
  });

const ours: Rival = {
  name: 'ours',
  most: Infinity,
  union: (leaves) => () => outcomeOf(unionChecked(leaves).region),
  offset: (region, distanceMm) => () => outcomeOf(offset(region, distanceMm)),
};

/** A closed chain's corners, the last of which `flatten` repeats. */
const corners = (c: Cubics): Point[] => flatten(c, CHORD_MM).slice(0, -1);

const gridPaths = (regions: readonly Region[]): Path64[] =>
  regions.flatMap((region) =>
    region.contours.map((c) =>
      corners(c).map((p) => ({ x: Math.round(p.x * UNITS), y: Math.round(p.y * UNITS) })),
    ),
  );

/** Outer rings run clockwise on screen, holes the other way. */
function polygonsOutcome(rings: readonly Point[][]): Outcome {
  const areas = rings.map((ring) => contourArea(polygon(ring)));
  return {
    areaMm2: areas.reduce((sum, area) => sum + area, 0),
    nodes: rings.reduce((sum, ring) => sum + ring.length, 0),
    pieces: areas.filter((area) => area > 0).length,
    places: () => rings.flatMap(alongEdges),
  };
}

const pathsOutcome = (paths: Path64[]): Outcome =>
  polygonsOutcome(paths.map((path) => path.map((p) => ({ x: p.x / UNITS, y: p.y / UNITS }))));

const clipperTs: Rival = {
  name: 'clipper2-ts, one call',
  most: Infinity,
  union: (leaves) => () => pathsOutcome(unionOf(gridPaths(leaves), FillRule.NonZero)),
  offset: (region, distanceMm) => () =>
    pathsOutcome(
      inflatePaths(
        gridPaths([region]),
        distanceMm * UNITS,
        JoinType.Round,
        EndType.Polygon,
        2,
        CHORD_MM * UNITS,
      ),
    ),
};

const clipperWasm = (library: Clipper2): Rival => {
  /** Hands over integers as halves of 64 bits, which is much faster than as big ones. */
  const wasmPaths = (paths: readonly Path64[]): Paths64 => {
    const all = new library.Paths64();
    const one = new library.Path64();
    for (const path of paths) {
      const halves = new Int32Array(path.length * 6);
      path.forEach(({ x, y }, k) => {
        halves.set([x, x < 0 ? -1 : 0, y, y < 0 ? -1 : 0], k * 6);
      });
      one.assign(new BigInt64Array(halves.buffer));
      all.push_back(one);
    }
    one.delete();
    return all;
  };
  const read = (paths: Paths64): Path64[] => {
    const out: Path64[] = [];
    for (let k = 0; k < paths.size(); k++) {
      const path = paths.get(k);
      const view = path.view();
      const halves = new Int32Array(view.buffer, view.byteOffset, view.length * 2);
      const ring: Path64 = [];
      for (let i = 0; i < halves.length; i += 6) ring.push({ x: halves[i], y: halves[i + 2] });
      out.push(ring);
      path.delete();
    }
    return out;
  };
  const worked = (paths: readonly Path64[], work: (all: Paths64) => Paths64): Outcome => {
    const all = wasmPaths(paths);
    const made = work(all);
    const rings = read(made);
    all.delete();
    made.delete();
    return pathsOutcome(rings);
  };
  const { FillRule: rules, JoinType: joins, EndType: ends } = library;
  return {
    name: 'clipper2-wasm, one call',
    most: Infinity,
    union: (leaves) => () =>
      worked(gridPaths(leaves), (all) => library.UnionSelf64(all, rules.NonZero)),
    offset: (region, distanceMm) => () =>
      worked(gridPaths([region]), (all) =>
        library.InflatePaths64(
          all,
          distanceMm * UNITS,
          joins.Round,
          ends.Polygon,
          2,
          CHORD_MM * UNITS,
        ),
      ),
  };
};

/** Unites neighbours in a row two by two, then the results, and so on. */
function paperTree(items: readonly paper.PathItem[]): paper.PathItem {
  let level = [...items];
  while (level.length > 1) {
    const next: paper.PathItem[] = [];
    for (let k = 0; k < level.length; k += 2) {
      const pair = level.slice(k, k + 2);
      next.push(pair.length > 1 ? pair[0].unite(pair[1], { insert: false }) : pair[0]);
    }
    level = next;
  }
  return level[0];
}

const paperPath = (c: Cubics): paper.Path => {
  const path = new paper.Path({ insert: false, closed: true });
  for (let i = 0; i < c.length; i += 8) {
    const before = (i + c.length - 8) % c.length;
    const at = new paper.Point(c[i], c[i + 1]);
    path.add(
      new paper.Segment(
        at,
        new paper.Point(c[before + 4], c[before + 5]).subtract(at),
        new paper.Point(c[i + 2], c[i + 3]).subtract(at),
      ),
    );
  }
  return path;
};

const paperJs: Rival = {
  name: 'paper.js, tree of pairs',
  most: 1500,
  union: (leaves) => {
    paper.setup(new paper.Size(1, 1));
    // Sorted, so that neighbours are united first.
    const paths = leaves
      .flatMap((leaf) => leaf.contours.map(paperPath))
      .sort((a, b) => a.bounds.x - b.bounds.x);
    return () => {
      const united = paperTree(paths);
      const parts = (united.children ?? [united]) as paper.Path[];
      const nodes = parts.reduce((sum, part) => sum + part.curves.length, 0);
      const pieces = parts.filter((part) => part.clockwise).length;
      return { areaMm2: (united as paper.CompoundPath).area, nodes, pieces, places: () => [] };
    };
  },
};

const polyclipTs: Rival = {
  name: 'polyclip-ts',
  most: 1500,
  union: (leaves) => () => {
    const [first, ...others] = leaves.map((leaf) =>
      leaf.contours.map((c) => corners(c).map(({ x, y }): [number, number] => [x, y])),
    );
    const rings = polyclip
      .union(first, ...others)
      .flat()
      .map((ring) => ring.slice(0, -1).map(([x, y]) => ({ x, y })));
    return polygonsOutcome(rings);
  },
};

const factory = new GeometryFactory();

const jstsPolygon = (region: Region): Geometry => {
  const rings = region.contours.map((c) =>
    factory.createLinearRing(
      [...corners(c), { x: c[0], y: c[1] }].map((p) => new Coordinate(p.x, p.y)),
    ),
  );
  return factory.createPolygon(rings[0], rings.slice(1)) as unknown as Geometry;
};

const jstsOutcome = (made: Geometry): Outcome => {
  const outline = BoundaryOp.getBoundary(made);
  const rings = Array.from({ length: outline.getNumGeometries() }, (_, k): Point[] =>
    outline.getGeometryN(k).getCoordinates().slice(1),
  );
  return { ...polygonsOutcome(rings), areaMm2: made.getArea(), pieces: made.getNumGeometries() };
};

/** Segments a quarter circle: chords of the largest circle asked for stay within 0.01 mm. */
const QUARTER_SEGMENTS = 8;

const jsts: Rival = {
  name: 'JSTS',
  most: Infinity,
  union: (leaves) => () =>
    jstsOutcome(UnaryUnionOp.union(factory.createGeometryCollection(leaves.map(jstsPolygon)))),
  offset: (region, distanceMm) => () => {
    const whole = factory.createMultiPolygon(components(region).map(jstsPolygon));
    return jstsOutcome(
      BufferOp.bufferOp(whole as unknown as Geometry, distanceMm, QUARTER_SEGMENTS),
    );
  },
};

export const rivals = async (): Promise<Rival[]> => [
  ours,
  clipperWasm(await load()),
  clipperTs,
  paperJs,
  polyclipTs,
  jsts,
];
