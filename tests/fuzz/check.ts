import { jetAt } from '../../src/geometry/cubic.js';
import type { Cubics, Region } from '../../src/geometry/types.js';
import { type Case, contoursOf } from '../cases/case.js';
import { chainFaults } from '../geometry/overlays.js';
import type { Random } from './kinds.js';
import { polygonFaults } from './polygons.js';
import { DISTANCE_ERROR_MM, distanceFrom, windingOf } from './sides.js';

/** How far (mm) an outline may lie from where it belongs. */
const STRAY_MM = { exact: 0.012, polyline: 0.02 };
/** Points sampled near outlines lie this far from them (mm), at the least and at the most. */
const LEAST_MM = 0.0125;
const MOST_MM = 0.5;
const POINTS = { source: 16, result: 16, nodes: 12, box: 8, strays: 24 };

/** What is wrong with a result, in words; empty where nothing is. */
export function faultsOf(c: Case, region: Region, exact: boolean, random: Random): string[] {
  const faults = chainFaults(region);
  if (faults.length > 0) return faults;
  const strayMm = exact ? STRAY_MM.exact : STRAY_MM.polyline;
  const sources = contoursOf(c.shapes);
  return [
    ...sideFaults(c, region, strayMm, random),
    ...strayFaults(c, sources, region, strayMm, random),
    ...polygonFaults(c, region, exact, random),
  ];
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Points whose side of the result is not what the source curves themselves say. */
function sideFaults(c: Case, region: Region, strayMm: number, random: Random): string[] {
  const sources = contoursOf(c.shapes);
  const spots = [
    ...beside(sources, POINTS.source, random),
    ...beside(region.contours, POINTS.result, random),
    ...roundNodes(region.contours, POINTS.nodes, random),
    ...anywhere(sources, POINTS.box, random),
  ];
  for (const { x, y } of spots) {
    const wanted = wantedAt(c, sources, x, y, strayMm + DISTANCE_ERROR_MM);
    if (wanted === null) continue;
    const winding = windingOf(region.contours, x, y);
    if (winding !== (wanted ? 1 : 0)) {
      return [`winding ${winding} at ${x} ${y}, which should be ${wanted ? 'inside' : 'outside'}`];
    }
  }
  return [];
}

/** Whether a point is inside what is asked for, or null where it is too near to an edge to tell. */
function wantedAt(
  c: Case,
  sources: readonly Cubics[],
  x: number,
  y: number,
  marginMm: number,
): boolean | null {
  if (c.operation === 'offset') return wantedOfOffset(c, sources, x, y, marginMm);
  if (distanceFrom(sources, x, y, marginMm) < marginMm) return null;
  if (c.operation === 'nonzero') return windingOf(sources, x, y) !== 0;
  if (c.operation === 'even-odd') return windingOf(sources, x, y) % 2 !== 0;
  const [first, ...others] = c.shapes.map((shape) => windingOf(shape.contours, x, y) !== 0);
  if (c.operation === 'subtract') return first && !others.includes(true);
  if (c.operation === 'union') return first || others.includes(true);
  return c.operation === 'intersect' ? first && others[0] : first !== others[0];
}

/** Mitred corners reach up to this many distances out; sharper ones are bevelled. */
const MITRE_REACH = 4;
/** Feet this near to a node (mm) may be its own, and corners are joined in more ways than one. */
const NODE_MM = 2e-3;

/** By the distance from the source: growing covers what is outside, shrinking what is inside. */
function wantedOfOffset(
  { distanceMm, join }: Case & { operation: 'offset' },
  sources: readonly Cubics[],
  x: number,
  y: number,
  marginMm: number,
): boolean | null {
  const reach = Math.abs(distanceMm);
  const farthest = join === 'mitre' ? MITRE_REACH * reach : reach;
  const distance = distanceFrom(sources, x, y, farthest + 2 * marginMm);
  const grows = distanceMm > 0;
  const isIn = windingOf(sources, x, y) !== 0;
  if (isIn === grows && distance > marginMm) return isIn;
  const ahead = isIn === grows ? -distance : distance;
  if (ahead > farthest + marginMm) return isIn;
  if (ahead > reach - marginMm) return null;
  return join === 'round' || !isByNode(sources, x, y, distance) ? grows : null;
}

/** Whether the nearest place of the sources is a node of theirs. */
const isByNode = (
  sources: readonly Cubics[],
  x: number,
  y: number,
  distance: number,
  slackMm = NODE_MM,
): boolean =>
  sources.some((c) => {
    for (let i = 0; i < c.length; i += 8) {
      if (Math.hypot(c[i] - x, c[i + 1] - y) < distance + slackMm) return true;
    }
    return false;
  });

/** A place on the result's outline that is not where an outline should be. */
function strayFaults(
  c: Case,
  sources: readonly Cubics[],
  { contours }: Region,
  strayMm: number,
  random: Random,
): string[] {
  if (contours.length === 0) return [];
  const [reach, join] = c.operation === 'offset' ? [Math.abs(c.distanceMm), c.join] : [0, 'round'];
  const slack = strayMm + DISTANCE_ERROR_MM;
  const farthest = (join === 'mitre' ? MITRE_REACH * reach : reach) + slack;
  for (let k = 0; k < POINTS.strays; k++) {
    const { cubics, i } = anyCubic(contours, random);
    const { x, y } = jetAt(cubics, i, random());
    const distance = distanceFrom(sources, x, y, 2 * farthest);
    const isTooNear = distance < reach - slack;
    if (
      distance > farthest ||
      (isTooNear && (join === 'round' || !isByNode(sources, x, y, distance, slack)))
    ) {
      return [`outline at ${x} ${y} is ${distance} mm from the source's`];
    }
  }
  return [];
}

function anyCubic(contours: readonly Cubics[], random: Random): { cubics: Cubics; i: number } {
  const cubics = contours[Math.floor(contours.length * random())];
  return { cubics, i: 8 * Math.floor((cubics.length / 8) * random()) };
}

const offset = (random: Random): number => LEAST_MM * (MOST_MM / LEAST_MM) ** (random() ** 2);

/** Points a little to either side of outlines. */
function beside(contours: readonly Cubics[], count: number, random: Random): Spot[] {
  const spots: Spot[] = [];
  for (let k = 0; k < count && contours.length > 0; k++) {
    const { cubics, i } = anyCubic(contours, random);
    const { x, y, dx, dy } = jetAt(cubics, i, random());
    const speed = Math.hypot(dx, dy) || 1;
    const aside = (random() < 0.5 ? 1 : -1) * offset(random);
    spots.push({ x: x - (dy / speed) * aside, y: y + (dx / speed) * aside });
  }
  return spots;
}

function roundNodes(contours: readonly Cubics[], count: number, random: Random): Spot[] {
  const spots: Spot[] = [];
  for (let k = 0; k < count && contours.length > 0; k++) {
    const { cubics, i } = anyCubic(contours, random);
    const angle = 2 * Math.PI * random();
    const r = offset(random);
    spots.push({ x: cubics[i] + r * Math.cos(angle), y: cubics[i + 1] + r * Math.sin(angle) });
  }
  return spots;
}

/** Points anywhere in the box round all handles. */
function anywhere(contours: readonly Cubics[], count: number, random: Random): Spot[] {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const c of contours) {
    for (let i = 0; i < c.length; i += 2) {
      [minX, maxX] = [Math.min(minX, c[i]), Math.max(maxX, c[i])];
      [minY, maxY] = [Math.min(minY, c[i + 1]), Math.max(maxY, c[i + 1])];
    }
  }
  return Array.from({ length: count }, () => ({
    x: minX + (maxX - minX) * random(),
    y: minY + (maxY - minY) * random(),
  }));
}
