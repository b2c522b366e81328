import { chordTable } from '../boolean/chords.js';
import { clip, type Ring, ringsOf } from '../boolean/clip.js';
import { crossingsOf } from '../boolean/crossings.js';
import { ringArea } from '../boolean/verify.js';
import type { Cubics, Region } from '../types.js';
import { CHORD_MM, MOST_CROSSINGS } from './crossing-count.js';
import { fitCubics } from './fit.js';

/** Area (mm2) that a proper region may seem to lack in its own union: rounding, but no contour. */
const ROUNDING_MM2 = 1e-3;
const CONTOUR_SHARE = 0.5;

/**
 * The region with few cubics in each contour, within `toleranceMm` of it; see `fitCubics`. Contours
 * that would come to cross themselves or others stay as they are. Pieces and holes keep their order.
 */
export function simplifyRegion(region: Region, toleranceMm = 0.02): Region {
  const given = region.contours;
  const contours = given.map((c) => fitCubics(c, toleranceMm));
  // Each round gives up at least one fitted contour.
  for (let round = 0; round <= given.length; round++) {
    const crossed = crossedContours(contours);
    if (crossed === null) return region;
    const changed = crossed.filter((k) => contours[k] !== given[k]);
    if (changed.length === 0) return lacksNothing(contours) ? { contours } : region;
    for (const k of changed) contours[k] = given[k];
  }
  return region;
}

/** Which contours cross themselves or each other; null where it is too many times to tell. */
function crossedContours(contours: readonly Cubics[]): number[] | null {
  const table = chordTable(contours, CHORD_MM);
  const crossings = crossingsOf(table, MOST_CROSSINGS);
  if (crossings === null) return null;
  const ofChord = new Int32Array(table.x.length);
  contours.forEach((_, q) => {
    ofChord.fill(q, table.contourStart[q], table.contourStart[q + 1]);
  });
  return [...new Set(crossings.flatMap(({ a, b }) => [ofChord[a], ofChord[b]]))];
}

/** Whether contours that do not cross still lie in each other as they should: none has jumped. */
function lacksNothing(contours: readonly Cubics[]): boolean {
  const rings = ringsOf(chordTable(contours, CHORD_MM), 0, contours.length);
  const least = rings.reduce((min, ring) => Math.min(min, Math.abs(ringArea(ring))), Infinity);
  const slack = Math.min(ROUNDING_MM2, CONTOUR_SHARE * least);
  const area = (some: readonly Ring[]): number =>
    some.reduce((sum, ring) => sum + ringArea(ring), 0);
  return Math.abs(area(clip('union', rings, [], 'nonzero')) - area(rings)) <= slack;
}
