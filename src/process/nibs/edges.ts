import { isClosed } from '../../geometry/chain.js';
import { containsPoint, distanceTo } from '../../geometry/components.js';
import { contourArea } from '../../geometry/measure.js';
import type { Cubics, Point, Region } from '../../geometry/types.js';
import { GLUE_MARGIN_MM } from '../../panel/loose.js';
import type { Piece } from '../../panel/piece.js';

/**
 * What is made of an edge: `plain` where nobody looks at it, `frame` where it is seen but plain,
 * `scenery` where it is what is looked at.
 */
export type Edge = 'plain' | 'frame' | 'scenery';

/** Places are held against lines within this (mm): the glue margin and rounding of drawn curves. */
const NEAR_MM = 0.1;

/**
 * What kind of edge a contour of the piece is at a point near it, no further off than `offMm`.
 * - A panel's and a strip's outer edges are plain: hidden by the spine, or the straight edge of a
 *   card. All edges of a piece that is glued between others are plain too.
 * - Where holes of a panel run along its window they are frame; all of them if the window is not
 *   known. Their other edges are scenery.
 * - A loose piece's edge is plain beside the glue zone that its guides show, where the panel hides
 *   it; everywhere else, in its holes too, it is scenery.
 */
export function edgeOf(piece: Piece, contour: Cubics, offMm: number): (at: Point) => Edge {
  const isHole = contourArea(contour) < 0;
  if (piece.hidden) return () => 'plain';
  if (piece.folder === 'loose') {
    const glue = glueZone(piece);
    const reach = GLUE_MARGIN_MM + offMm + NEAR_MM;
    return (at) => (isNear(glue, at, reach) ? 'plain' : 'scenery');
  }
  if (!isHole) return () => 'plain';
  const { window } = piece;
  if (window === undefined) return () => 'frame';
  return (at) =>
    (distanceTo(window, at)?.distanceMm ?? Infinity) <= offMm + NEAR_MM ? 'frame' : 'scenery';
}

/** The closed guides of a loose piece go round where it is glued behind its panel. */
const glueZone = ({ guides }: Piece): Region => ({
  contours: guides.map(({ cubics }) => cubics).filter(isClosed),
});

const isNear = (region: Region, at: Point, reachMm: number): boolean =>
  region.contours.length > 0 &&
  (containsPoint(region, at) || (distanceTo(region, at)?.distanceMm ?? Infinity) <= reachMm);
