import { contourArea, pointAt, regionArea } from './measure.js';
import { curveFoot, nearestChord, type Outline, outlineOf, sideOf, windingAt } from './outline.js';
import type { Bounds, Cubics, Point, Region } from './types.js';

/**
 * Whether a point lies on the card (nonzero rule). A point on the outline, or within 0.001 mm of
 * it, is on the card.
 */
export const containsPoint = (region: Region, point: Point): boolean =>
  sideOf(outlineOf(region), point.x, point.y) !== 'outside';

/** The nearest point of an outline to some other point. */
export interface Nearest {
  readonly distanceMm: number;
  readonly point: Point;
}

/**
 * The point of the outline nearest to `point`, and how far away it is (never negative, inside or
 * out). Where two places are equally near to 0.002 mm either may come back; null where the region
 * has no outline.
 */
export function distanceTo(region: Region, point: Point): Nearest | null {
  const outline = outlineOf(region);
  const foot = nearestChord(outline, point.x, point.y);
  if (foot === null) return null;
  const { cubics, i, t } = curveFoot(outline, foot, point.x, point.y);
  const nearest = pointAt(cubics, i, t);
  return { distanceMm: Math.hypot(nearest.x - point.x, nearest.y - point.y), point: nearest };
}

/** How many holes the card has: with n pieces, its Euler characteristic is n less this. */
export const holeCount = (region: Region): number =>
  region.contours.filter((c) => contourArea(c) < 0).length;

/**
 * The separate pieces of card, largest first: each is one outer contour with the holes in it. An
 * island within a hole is a piece of its own. Pieces that touch in a point only are not joined.
 */
export function components(region: Region): Region[] {
  const rings = region.contours.map(
    (contour): Ring => ({
      contour,
      region: { contours: [contour] },
      area: contourArea(contour),
      box: hullBox(contour),
    }),
  );
  const outers = rings.filter(({ area }) => area > 0).sort((a, b) => a.area - b.area);
  const holes = new Map(outers.map((outer) => [outer, [] as Cubics[]]));
  for (const hole of rings) {
    if (hole.area >= 0) continue;
    const outer = outerRound(hole, outers);
    if (outer) holes.get(outer)!.push(hole.contour);
  }
  return outers
    .map((outer): Region => ({ contours: [outer.contour, ...holes.get(outer)!] }))
    .map((part) => ({ part, area: regionArea(part) }))
    .sort((a, b) => b.area - a.area)
    .map(({ part }) => part);
}

interface Ring {
  readonly contour: Cubics;
  /** The contour alone, so that its outline is built once however many holes ask for it. */
  readonly region: Region;
  readonly area: number;
  readonly box: Bounds;
}

/** The smallest outer ring round a hole has it, as outers nest only with a hole between them. */
function outerRound(hole: Ring, risingOuters: readonly Ring[]): Ring | undefined {
  const able = risingOuters.filter((o) => o.area >= -hole.area && meet(o.box, hole.box));
  if (able.length < 2) return able[0];
  const { x, y } = pointWithin(outlineOf(hole.region));
  return able.find((o) => windingAt(outlineOf(o.region), x, y) !== 0);
}

/** A box round the handles too, so a little wide at times. */
function hullBox(c: Cubics): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < c.length; i += 2) {
    minX = Math.min(minX, c[i]);
    maxX = Math.max(maxX, c[i]);
    minY = Math.min(minY, c[i + 1]);
    maxY = Math.max(maxY, c[i + 1]);
  }
  return { minX, minY, maxX, maxY };
}

const meet = (a: Bounds, b: Bounds): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

/** Off the middle, so that the line across a drawn shape seldom runs through its corners. */
const ACROSS = 0.4837;

/** A point well inside a contour: the middle of the widest stretch on a level line across it. */
function pointWithin({ ay, by, ax, bx }: Outline): Point {
  const top = ay.reduce((low, v) => Math.min(low, v), Infinity);
  const bottom = ay.reduce((high, v) => Math.max(high, v), -Infinity);
  const y = top + ACROSS * (bottom - top);
  const crossings: number[] = [];
  for (let k = 0; k < ay.length; k++) {
    if (ay[k] > y === by[k] > y) continue;
    crossings.push(ax[k] + ((y - ay[k]) / (by[k] - ay[k])) * (bx[k] - ax[k]));
  }
  crossings.sort((a, b) => a - b);
  let widest = { x: ax[0], y: ay[0] };
  let width = -1;
  for (let k = 0; k + 1 < crossings.length; k += 2) {
    if (crossings[k + 1] - crossings[k] <= width) continue;
    width = crossings[k + 1] - crossings[k];
    widest = { x: (crossings[k] + crossings[k + 1]) / 2, y };
  }
  return widest;
}
