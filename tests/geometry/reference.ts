import Coordinate from 'jsts/org/locationtech/jts/geom/Coordinate.js';
import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import GeometryFactory from 'jsts/org/locationtech/jts/geom/GeometryFactory.js';
import type LinearRing from 'jsts/org/locationtech/jts/geom/LinearRing.js';
import BoundaryOp from 'jsts/org/locationtech/jts/operation/BoundaryOp.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import RelateOp from 'jsts/org/locationtech/jts/operation/relate/RelateOp.js';
import { cleanRegion } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { flatten } from '../../src/geometry/measure.js';
import { smoothContour, smoothLine } from '../../src/geometry/pen.js';
import type { Cubics, Line, Point, Region } from '../../src/geometry/types.js';
import type { Random } from '../../src/scenery/random.js';

/** Our shapes as geometries of JSTS (the JavaScript port of the JTS Topology Suite), chords within 4e-4 mm. */
const factory = new GeometryFactory();
const CHORD_MM = 4e-4;

const coordinates = (points: readonly Point[]): Coordinate[] =>
  points.map((p) => new Coordinate(p.x, p.y));

const ring = (c: Cubics): LinearRing => {
  const points = flatten(c, CHORD_MM);
  points[points.length - 1] = points[0];
  return factory.createLinearRing(coordinates(points));
};

export const jtsLine = (line: Line): Geometry =>
  factory.createLineString(coordinates(flatten(line.cubics, CHORD_MM)));

export const jtsRegion = (region: Region): Geometry =>
  // The type declarations forget that a collection of polygons is a geometry.
  factory.createMultiPolygon(
    components(region).map(({ contours: [outer, ...holes] }) =>
      factory.createPolygon(ring(outer), holes.map(ring)),
    ),
  ) as unknown as Geometry;

const jtsPoint = (p: Point): Geometry => factory.createPoint(new Coordinate(p.x, p.y));

export const jtsContains = (shape: Geometry, p: Point): boolean =>
  RelateOp.contains(shape, jtsPoint(p));

/** A geometry's own boundary: a region's outline as JSTS has it. */
export const jtsBoundary = (shape: Geometry): Geometry => BoundaryOp.getBoundary(shape);

export const jtsDistance = (shape: Geometry, p: Point): number =>
  DistanceOp.distance(shape, jtsPoint(p));

/** A lumpy, star-shaped contour round a point. */
export function blob(random: Random, at: Point, radius: number): Cubics {
  const count = random.whole(5, 14);
  return smoothContour(
    Array.from({ length: count }, (_, k) => {
      const a = ((k + random.between(-0.3, 0.3)) / count) * 2 * Math.PI;
      const r = radius * random.between(0.5, 1);
      return { x: at.x + r * Math.cos(a), y: at.y + r * Math.sin(a) };
    }),
  );
}

/** A proper region of a few blobs in 100 x 100 mm, with holes where they overlap. */
export const blobs = (random: Random): Region =>
  cleanRegion(
    Array.from({ length: random.whole(1, 6) }, () =>
      blob(random, anywhere(random), random.between(8, 35)),
    ),
    'even-odd',
  );

export const anywhere = (random: Random): Point => ({
  x: random.between(0, 100),
  y: random.between(0, 100),
});

/** A smooth wandering line in 100 x 100 mm. */
export const wanderer = (random: Random): Line =>
  smoothLine(Array.from({ length: random.whole(2, 8) }, () => anywhere(random)));
