import { contourArea, middleOfBox, regionBounds } from '../measure.js';
import { outlineOf } from '../outline.js';
import { rectangle } from '../primitives.js';
import { reversed } from '../transform.js';
import type { Point, Region } from '../types.js';
import { type FreeEnd, freeEnds } from './free-ends.js';
import { type EdgeSamples, edgeSamples } from './inscribed.js';
import { findNecks, type Neck } from './necks.js';

/**
 * A place narrower than asked.
 * - `neck`: there is more on both ends of it, at least a tenth wider: a web that something hangs on.
 *   `widthMm` is its narrowest width, measured straight across, and `at` the middle of that. Where
 *   two corners touch in a point that is 0.
 * - `tip`: one end is free, as in a blade of grass. `widthMm` is its mean width and `at` lies
 *   near its end. Some stretch of it is 1.5 times as long as wide and 2 mm long: corners and stubs
 *   are not tips.
 * - `whole`: all of the part is that narrow, and ends freely all round. `widthMm` is the mean.
 *
 * `lengthMm` is the length over which it is narrower than asked, 0 between two sharp corners.
 */
export interface NarrowPlace {
  readonly kind: 'neck' | 'tip' | 'whole';
  readonly at: Point;
  readonly widthMm: number;
  readonly lengthMm: number;
  /** Of a neck, the middles of its card from end to end; of others only `at`. */
  readonly axis: readonly Point[];
}

/** A place counts if narrower than asked by this (mm): card drawn just as wide must pass. */
export const WIDTH_SLACK_MM = 0.01;
/** Tips shorter than this (mm) bend no more than any corner. */
const LEAST_TIP_MM = 2;
/** Samples lie this share of the width apart, within bounds: fewer miss shapes, more cost time. */
const SPACING_SHARE = 0.25;
/** The narrowest web is looked for finely first: samples for wide webs miss narrow ones. */
const SEARCH_WIDTHS_MM = [1, 1.5, 3];
const [LEAST_SPACING_MM, MOST_SPACING_MM] = [0.05, 0.4];

/**
 * Where the card is narrower than `widthMm`; narrowest necks first, then the others along the
 * outline. Widths are true to about 0.01 mm. A place comes once, however long it is; where strips
 * of narrow card branch, each branch is a place. What is listed for one width is listed for any
 * larger one, or lies on a longer place that is: all but about one neck in a hundred, which hardly
 * widens by its tenth, and three tips in a hundred, hardly longer than they must be.
 */
export function narrowWebs(region: Region, widthMm: number): NarrowPlace[] {
  const samples = samplesFor(region, widthMm);
  const belowMm = widthMm - WIDTH_SLACK_MM;
  const necks = findNecks(outlineOf(region), samples, belowMm);
  const places = apart(necks.places, SAME_PLACE * belowMm).sort((a, b) => a.widthMm - b.widthMm);
  return [
    ...places.map(asPlace),
    ...freeEnds(samples, necks.taken, belowMm, LEAST_TIP_MM).map(asEnd),
  ];
}

/** Necks nearer to each other than this share of the width asked for are one place to a maker. */
const SAME_PLACE = 0.5;

function apart(necks: readonly Neck[], leastMm: number): Neck[] {
  const kept: Neck[] = [];
  for (const neck of necks) {
    const isNear = ({ at }: Neck): boolean =>
      Math.hypot(at.x - neck.at.x, at.y - neck.at.y) < leastMm;
    if (neck.side.length === 0 || !kept.some(isNear)) kept.push(neck);
  }
  return kept;
}

/**
 * The narrowest neck of card up to `upToMm` wide, or null. Tips and parts that are narrow all over
 * do not count, as nothing hangs on them.
 */
export function narrowestWeb(
  region: Region,
  upToMm: number,
): { readonly widthMm: number; readonly at: Point } | null {
  let wideEnoughMm = 0;
  for (const widthMm of [...SEARCH_WIDTHS_MM.filter((w) => w < upToMm), upToMm]) {
    const { places } = findNecks(outlineOf(region), samplesFor(region, widthMm), widthMm);
    // A finer search has found none narrower than the last width: what a coarse one sees is a tip.
    const narrowest = places
      .filter((place) => place.widthMm >= wideEnoughMm - WIDTH_SLACK_MM)
      .sort((a, b) => a.widthMm - b.widthMm)[0];
    if (narrowest) return { widthMm: narrowest.widthMm, at: narrowest.at };
    wideEnoughMm = widthMm;
  }
  return null;
}

/**
 * Where the openings are narrower than `widthMm`: the webs of what is not card. That includes the
 * space round the card, so gaps between separate parts and inlets of the outer edge count: a neck
 * is a gap between two wider openings, a tip is the end of a notch, whole is a slot of one width.
 */
export const narrowSlots = (region: Region, widthMm: number): NarrowPlace[] =>
  region.contours.length === 0 ? [] : narrowWebs(openings(region, widthMm), widthMm);

/** A hole smaller than asked, as the shape that would fill it. */
export interface SmallHole {
  readonly at: Point;
  /** Diameter of the circle of the same area. */
  readonly diameterMm: number;
  readonly hole: Region;
}

/** The holes with less area than a circle of `diameterMm`, smallest first. */
export const smallHoles = (region: Region, diameterMm: number): SmallHole[] =>
  region.contours
    .map((contour) => ({ contour, diameter: Math.sqrt((-4 / Math.PI) * contourArea(contour)) }))
    .filter(({ diameter }) => diameter < diameterMm)
    .sort((a, b) => a.diameter - b.diameter)
    .map(({ contour, diameter }): SmallHole => {
      const hole = { contours: [reversed(contour)] };
      return { at: middleOfBox(regionBounds(hole)), diameterMm: diameter, hole };
    });

/** Samples fine enough for places narrower than `widthMm`. */
export const samplesFor = (region: Region, widthMm: number): EdgeSamples => {
  const spacing = Math.max(LEAST_SPACING_MM, Math.min(MOST_SPACING_MM, SPACING_SHARE * widthMm));
  // A neck's ends are a tenth wider than it is, and that must still be seen.
  return edgeSamples(outlineOf(region), spacing, 1.2 * widthMm);
};

/** A neck as told to others. */
export const asPlace = ({ at, widthMm, lengthMm, axis }: Neck): NarrowPlace => ({
  kind: 'neck',
  at,
  widthMm,
  lengthMm,
  axis,
});

/** A free end as told to others. */
const asEnd = ({ kind, at, widthMm, lengthMm }: FreeEnd): NarrowPlace => ({
  kind,
  at,
  widthMm,
  lengthMm,
  axis: [at],
});

/** All that is not card, out to a frame far enough away to make no narrow place. */
export function openings(region: Region, widthMm: number): Region {
  const { minX, minY, maxX, maxY } = regionBounds(region);
  const room = 3 * widthMm;
  const all = rectangle(minX - room, minY - room, maxX - minX + 2 * room, maxY - minY + 2 * room);
  return { contours: [...all.contours, ...region.contours.map(reversed)] };
}
