import { contourArea, lineBounds, lineLength, middleOfBox } from '../measure.js';
import type { Line, Point, Region } from '../types.js';

/** How small is too small: an area, or the diameter of the circle of that area. */
export type SpeckSize = { readonly areaMm2: number } | { readonly diameterMm: number };

/** A piece of card or a hole that was dropped. */
export interface Speck {
  readonly kind: 'piece' | 'hole';
  /** The middle of its box. */
  readonly at: Point;
  /** What its own contour encloses, whatever lies in it. */
  readonly areaMm2: number;
  /** Diameter of the circle of the same area. */
  readonly diameterMm: number;
}

export interface Speckless {
  readonly region: Region;
  /** Smallest first. */
  readonly dropped: readonly Speck[];
}

/**
 * The region without pieces and holes smaller than `size`, and what was dropped. All that lies in
 * something dropped goes with it. A thin strip counts by its area, however long; the contours that
 * stay are the same bit for bit.
 */
export function dropSpecks(region: Region, size: SpeckSize): Speckless {
  const leastMm2 = 'areaMm2' in size ? size.areaMm2 : (Math.PI / 4) * size.diameterMm ** 2;
  // What lies in a contour is smaller still, so that nothing is left behind in a dropped one.
  const isSmall = (area: number): boolean => Math.abs(area) < leastMm2;
  const areas = region.contours.map(contourArea);
  const contours = region.contours.filter((_, k) => !isSmall(areas[k]));
  const dropped = region.contours
    .flatMap((cubics, k) => (isSmall(areas[k]) ? [speck({ cubics }, areas[k])] : []))
    .sort((a, b) => a.areaMm2 - b.areaMm2);
  return { region: dropped.length === 0 ? region : { contours }, dropped };
}

const speck = (line: Line, area: number): Speck => ({
  kind: area < 0 ? 'hole' : 'piece',
  at: middleOfBox(lineBounds(line)),
  areaMm2: Math.abs(area),
  diameterMm: Math.sqrt((4 / Math.PI) * Math.abs(area)),
});

/** A line that was dropped. */
export interface SpeckLine {
  /** The middle of its box. */
  readonly at: Point;
  readonly lengthMm: number;
}

export interface SpecklessLines {
  readonly lines: readonly Line[];
  /** Shortest first. */
  readonly dropped: readonly SpeckLine[];
}

/** The lines at least `lengthMm` long, and what was dropped. */
export function dropSpeckLines(lines: readonly Line[], lengthMm: number): SpecklessLines {
  const lengths = lines.map(lineLength);
  const dropped = lines
    .flatMap((line, k): SpeckLine[] =>
      lengths[k] < lengthMm && line.cubics.length > 0
        ? [{ at: middleOfBox(lineBounds(line)), lengthMm: lengths[k] }]
        : [],
    )
    .sort((a, b) => a.lengthMm - b.lengthMm);
  return { lines: lines.filter((_, k) => !(lengths[k] < lengthMm)), dropped };
}
