import { regionArea } from '../measure.js';
import { outlineOf } from '../outline.js';
import type { Point, Region } from '../types.js';
import { freeEnds } from './free-ends.js';
import { findNecks } from './necks.js';
import { type Cut, parted, placeOfSample } from './parting.js';
import { openings, samplesFor, WIDTH_SLACK_MM } from './webs.js';

/** A long thin piece of card, or of what is not card. */
export interface Sliver {
  /** `tip`: runs out from more. `whole`: all there is. `gap`: open to more at both ends. */
  readonly kind: 'tip' | 'whole' | 'gap';
  /** The piece, cut straight off where it gets as wide as asked. */
  readonly region: Region;
  readonly areaMm2: number;
  /** Half the outline that it has without its cuts. */
  readonly lengthMm: number;
  /** Mean width: area by length. */
  readonly widthMm: number;
  /** In the middle of it, where it is narrowest. */
  readonly at: Point;
}

/** What is shorter than this many mean widths is stubby, not a sliver; 3 is a point of 37 degrees. */
const SLIVER_LENGTHS = 3;
/** What is shorter than this (mm) is a rough edge, whatever its width. */
const LEAST_MM = 0.5;

/**
 * Card narrower than `widthMm` and long for its width that holds nothing: what an opening by half
 * the width would take off, as pieces to look at, cut off or thicken. Where `narrowWebs` names places
 * on which card hangs or ends, this gives the pieces themselves, and no webs. Largest first.
 */
export function slivers(region: Region, widthMm: number, leastLengths = SLIVER_LENGTHS): Sliver[] {
  return longest(freeSlivers(region, widthMm), leastLengths);
}

/**
 * Openings narrower than `widthMm` and long for their width: slits, the ends of notches, and gaps
 * between shapes that all but meet, such as booleans of near copies leave. The region is what would
 * fill them. Largest first.
 */
export function sliverGaps(
  region: Region,
  widthMm: number,
  leastLengths = SLIVER_LENGTHS,
): Sliver[] {
  if (region.contours.length === 0) return [];
  const empty = openings(region, widthMm);
  return longest([...freeSlivers(empty, widthMm), ...gapsIn(empty, widthMm)], leastLengths);
}

const longest = (found: readonly Sliver[], leastLengths: number): Sliver[] =>
  found.filter((s) => s.lengthMm >= leastLengths * s.widthMm).sort((a, b) => b.areaMm2 - a.areaMm2);

function freeSlivers(region: Region, widthMm: number): Sliver[] {
  const outline = outlineOf(region);
  const samples = samplesFor(region, widthMm);
  const belowMm = widthMm - WIDTH_SLACK_MM;
  const { taken } = findNecks(outline, samples, belowMm);
  return freeEnds(samples, taken, belowMm, LEAST_MM).flatMap(
    ({ kind, run, at, lengthMm }): Sliver[] => {
      const [first, last] = [run[0], run[run.length - 1]].map((s) =>
        placeOfSample(outline, samples, s),
      );
      const contour =
        kind === 'whole' ? [region.contours[first.contour]] : pieceAfter(region, [[first, last]]);
      return sliver(kind, contour, lengthMm, at, widthMm);
    },
  );
}

function gapsIn(empty: Region, widthMm: number): Sliver[] {
  const outline = outlineOf(empty);
  const samples = samplesFor(empty, widthMm);
  const { places } = findNecks(outline, samples, widthMm - WIDTH_SLACK_MM);
  return places.flatMap(({ side, at, lengthMm }): Sliver[] => {
    if (side.length < 2) return [];
    const [a, b] = [side[0], side[side.length - 1]];
    const { contour, first, opposite } = samples;
    const isRing = side.length >= first[contour[a] + 1] - first[contour[a]];
    const place = (s: number) => placeOfSample(outline, samples, s);
    const contours = isRing
      ? [contour[a], contour[opposite[a]]].map((k) => empty.contours[k])
      : pieceAfter(empty, [
          [place(a), place(opposite[a])],
          [place(b), place(opposite[b])],
        ]);
    return sliver('gap', contours, lengthMm, at, widthMm);
  });
}

/** What the cuts part off along the outline after the first one's first place. */
function pieceAfter({ contours }: Region, cuts: readonly Cut[]): Region['contours'] {
  const cut = parted(contours, cuts);
  return [cut.contours[cut.after[0][0]]];
}

/** The sliver, or none where the cuts did not part off what is narrow and no more. */
function sliver(
  kind: Sliver['kind'],
  contours: Region['contours'],
  lengthMm: number,
  at: Point,
  belowMm: number,
): Sliver[] {
  const region = { contours };
  const areaMm2 = regionArea(region);
  if (!(areaMm2 > 0 && areaMm2 <= belowMm * lengthMm)) return [];
  return [{ kind, region, areaMm2, lengthMm, widthMm: areaMm2 / lengthMm, at }];
}
