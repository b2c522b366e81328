import type { Checked } from '../boolean/boolean.js';
import { chordTable, GRID_PER_MM } from '../boolean/chords.js';
import { clip, type Ring, ringsOf, uniteGroups } from '../boolean/clip.js';
import { polylineOf } from '../boolean/curve-boolean.js';
import { withoutSpikes } from '../boolean/spikes.js';
import { ringArea, ringLength } from '../boolean/verify.js';
import { chordCount, jetAt } from '../cubic.js';
import { flatten } from '../measure.js';
import { reversed } from '../transform.js';
import type { Cubics, Point } from '../types.js';
import { joinOf, type Style } from './joins.js';
import { dot, elementsOf, sideElements, thereAndBack, withoutSpecks } from './offset-outline.js';
import { type Curve, tangent } from './parallel.js';
import type { Element } from './trim.js';

/** Chord tolerance (mm) of the polygons. */
const CHORD_MM = 2e-3;
/** Strips reach over the source by this (mm), which the distance covers on either side. */
const OVER_MM = 0.02;
/**
 * Area (mm2) by which the growth of a shape and that of its polygons may differ, a millimetre of
 * outline and in all: 2/3 of the tolerance where curves vanish, and slivers that only one sees.
 */
const CHECK_PER_MM = 1.4e-3;
const CHECK_MM2 = 2e-2;
/** Polygons smaller than this (mm2) are rounding, not shape. */
const MIN_AREA_MM2 = 1e-4;

/**
 * An offset or stroke as polygons, put together from all that is swept on the way out to the
 * distance, piece by piece: slow, but nothing depends on how often an outline winds round.
 */
export interface Swept {
  readonly result: Checked;
  /** Area gained, mm2. Chords cut inside convex curves; the gain is free of most of that error. */
  readonly growthMm2: number;
  /** The longer outline of before and after, mm. */
  readonly lengthMm: number;
}

/** The contours of a region, grown or shrunk. */
export function sweptRegion(contours: readonly Cubics[], distanceMm: number, style: Style): Swept {
  const before = ringsOf(chordTable(contours, CHORD_MM), 0, contours.length);
  const pieces = contours.flatMap((c) => sideOf(c, distanceMm, style));
  const after =
    distanceMm > 0
      ? uniteGroups([before, ...pieces])
      : clip('subtract', before, uniteGroups(pieces), 'nonzero');
  return summed(before, after);
}

/** Closed chains drawn with a pen. */
export const sweptRings = (chains: readonly Cubics[], distanceMm: number, style: Style): Swept =>
  summed(
    [],
    uniteGroups(
      chains.flatMap((c) => [c, reversed(c)]).flatMap((side) => sideOf(side, distanceMm, style)),
    ),
  );

/** Open chains drawn with a pen. */
export const sweptLines = (chains: readonly Cubics[], distanceMm: number, style: Style): Swept =>
  summed(
    [],
    uniteGroups(
      chains.flatMap((chain) => {
        const line = withoutSpecks(chain);
        if (line.length === 0) {
          return [polygonGroup(flatten(dot(chain, distanceMm, style.cap), CHORD_MM))];
        }
        return sideOf(thereAndBack(line), distanceMm, style, line.length / 8);
      }),
    ),
  );

/** Whether a region that gained so much area may be what the polygons are. */
export const agrees = (growthMm2: number, swept: Swept): boolean =>
  Math.abs(growthMm2 - swept.growthMm2) <= CHECK_MM2 + CHECK_PER_MM * swept.lengthMm;

const summed = (before: readonly Ring[], after: readonly Ring[]): Swept => ({
  result: {
    region: { contours: after.filter(isShape).map(unhaired).map(polylineOf) },
    exact: false,
  },
  growthMm2: total(after, ringArea) - total(before, ringArea),
  lengthMm: Math.max(total(before, ringLength), total(after, ringLength)),
});

/** Vertices this near to the one before (grid units) are one. */
const TWIN = 3;

/** A ring without hairs: seams between strips that rounding has left open at their tips. */
function unhaired(ring: Ring): Ring {
  const isTwin = (k: number): boolean => {
    const before = ring[(k + ring.length - 1) % ring.length];
    return Math.hypot(ring[k].x - before.x, ring[k].y - before.y) <= TWIN;
  };
  return withoutSpikes(ring.filter((_, k) => !isTwin(k)));
}

const isShape = (ring: Ring): boolean => Math.abs(ringArea(ring)) > MIN_AREA_MM2;

const total = (rings: readonly Ring[], of: (ring: Ring) => number): number =>
  rings.reduce((sum, ring) => sum + of(ring), 0);

/** All that is swept to the left of a closed chain, each piece a group of its own. */
function sideOf(chain: Cubics, distanceMm: number, style: Style, cubicsToCap?: number): Ring[][] {
  const line = withoutSpecks(chain);
  const elements = cubicsToCap
    ? elementsOf(line, distanceMm, style, cubicsToCap)
    : sideElements(chain, distanceMm, style);
  return elements.flatMap((element) =>
    element.kind === 'curve'
      ? strips(line, element, distanceMm)
      : [turnPolygon(element, distanceMm, style)],
  );
}

/**
 * What lies between the source and its parallel, in steps short enough for both, and a little over
 * the source, whose own chords may be others.
 */
function strips(chain: Cubics, { cubic, i, t0, t1 }: Curve, distanceMm: number): Ring[][] {
  const ownSteps = chordCount(chain, i, CHORD_MM) * (t1 - t0);
  const steps = Math.max(chordCount(cubic, 0, CHORD_MM), Math.ceil(ownSteps));
  const overMm = Math.sign(distanceMm) * Math.min(OVER_MM, Math.abs(distanceMm));
  const cut = (k: number): [Point, Point] => {
    const t = t0 + ((t1 - t0) * k) / steps;
    const { x, y } = jetAt(chain, i, t);
    const [tx, ty] = tangent(chain, i, t);
    return [
      { x: x - overMm * ty, y: y + overMm * tx },
      { x: x + distanceMm * ty, y: y - distanceMm * tx },
    ];
  };
  return Array.from({ length: steps }, (_, k) => {
    const [p, pOut] = cut(k);
    const [q, qOut] = cut(k + 1);
    return polygonGroup([p, q, qOut, pOut]);
  });
}

function turnPolygon(turn: Extract<Element, { kind: 'turn' }>, distanceMm: number, style: Style) {
  if (turn.sweep === 0) return [];
  const edge = Float64Array.from(joinOf(turn, distanceMm, style.mitreLimit));
  return polygonGroup([{ x: turn.a.px, y: turn.a.py }, ...flatten(edge, CHORD_MM)]);
}

/** A polygon as a group that runs clockwise all round, even if it crosses itself. */
function polygonGroup(points: readonly Point[]): Ring[] {
  const ring = points.map((p) => ({
    x: Math.round(p.x * GRID_PER_MM),
    y: Math.round(p.y * GRID_PER_MM),
  }));
  return ring.length > 2 ? clip('union', [ring], [], 'nonzero') : [];
}
