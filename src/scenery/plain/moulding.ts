import { subtract } from '../../geometry/boolean/boolean.js';
import { offset } from '../../geometry/offset/offset.js';
import { polyline } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Bounds, Cubics, Line, Point, Region } from '../../geometry/types.js';
import { inset, stationsRound } from '../window/walk.js';

/** A run of parallel lines: closed contours, and the mitres across them. */
export interface Moulding {
  readonly lines: readonly Cubics[];
  readonly mitres: readonly Line[];
}

/** Corners that open by less than this much of their distance are no mitres. */
const LEAST_MITRE = 1.01;
/** A pitch that divides no side: only the corners are asked for. */
const CORNERS_ONLY_MM = 1e4;

/** Lines round a window at these distances from it, nearest first. */
export function roundWindow(window: Region, distancesMm: readonly number[]): Moulding {
  const lines = distancesMm.flatMap((mm) => offset(window, mm, 'mitre').contours);
  const corners = window.contours
    .flatMap((contour) => stationsRound(contour, CORNERS_ONLY_MM, 1))
    .filter((station) => station.mitre > LEAST_MITRE);
  const at = distancesMm.slice(-1)[0];
  const mitres = corners.map((corner) =>
    polyline([inset(corner, -distancesMm[0] * corner.mitre), inset(corner, -at * corner.mitre)]),
  );
  return { lines, mitres: distancesMm.length > 1 ? mitres : [] };
}

/**
 * Lines within a card's box at these distances from its edges, outermost first. A round of more
 * than 0 cuts that radius out of every corner, all lines about one centre.
 */
export function withinCard(card: Bounds, distancesMm: readonly number[], round: number): Moulding {
  const [first, last] = [distancesMm[0], distancesMm[distancesMm.length - 1]];
  const centres = cornersOf(card, first);
  const lines = distancesMm.flatMap((mm) => {
    const box = boxWithin(card, mm);
    if (round <= 0) return box.contours;
    const radius = round + mm - first;
    return subtract(
      box,
      centres.map(({ x, y }) => circle(x, y, radius)),
    ).contours;
  });
  const inner = cornersOf(card, last);
  const mitres = centres.map((corner, i) => polyline([corner, inner[i]]));
  return { lines, mitres: round > 0 || distancesMm.length < 2 ? [] : mitres };
}

function boxWithin({ minX, minY, maxX, maxY }: Bounds, mm: number): Region {
  return rectangle(minX + mm, minY + mm, maxX - minX - 2 * mm, maxY - minY - 2 * mm);
}

/** The corners of a box drawn in, clockwise from the top left. */
export function cornersOf({ minX, minY, maxX, maxY }: Bounds, mm: number): Point[] {
  return [
    { x: minX + mm, y: minY + mm },
    { x: maxX - mm, y: minY + mm },
    { x: maxX - mm, y: maxY - mm },
    { x: minX + mm, y: maxY - mm },
  ];
}
