import type { Book } from '../book/book.js';
import { perspectiveOf, planeAt } from '../book/perspective.js';
import { subtract, union } from '../geometry/boolean/boolean.js';
import { linesInside, linesOutside, outlineLines } from '../geometry/clip-lines.js';
import { distanceTo } from '../geometry/components.js';
import { lineLength, pointAt } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { inverse, movePoint, moveRegion } from '../geometry/transform.js';
import { EMPTY_REGION, type Line, type Point, type Region } from '../geometry/types.js';
import type { Panel } from '../panel/panel.js';

/** Edges nearer than this in the picture cannot be told apart. Common practice, no source. */
export const NEAR_MM = 0.8;

/** A stretch of a card's edge that is seen all but on the edge of a card before it. */
export interface SeenEdge {
  /** The panel whose edge it is, and the one before it. */
  readonly deep: number;
  readonly front: number;
  readonly lengthMm: number;
  /** In the deep panel's own coordinates. */
  readonly at: Point;
  /** It comes near the other edge and leaves it again without passing behind it. */
  readonly touches: boolean;
}

/**
 * Edges seen beside the edges of the panel before them, from the reading position: found in the
 * picture plane from the silhouettes of all panels.
 */
export function seenEdges(book: Book, panels: readonly Panel[]): SeenEdge[] {
  const view = perspectiveOf(book);
  const planes = book.panels.map(({ depthMm }) => planeAt(view, depthMm));
  const seen = panels.map(({ card }, i) => moveRegion(card, planes[i]));
  const found: SeenEdge[] = [];
  let hiding: Region = EMPTY_REGION;
  for (let i = 1; i < seen.length - 1; i++) {
    const front = seen[i - 1];
    hiding = union([hiding, front]);
    const band = subtract(offset(front, NEAR_MM), [hiding]);
    const outline = linesOutside(outlineLines(seen[i]), hiding);
    const toPanel = inverse(planes[i]);
    for (const line of linesInside(outline, band)) {
      found.push({
        deep: i + 1,
        front: i,
        lengthMm: lineLength(line),
        at: movePoint(middleOf(line), toPanel),
        touches: endsOf(line).every((end) => isFar(front, end)),
      });
    }
  }
  return found;
}

function middleOf({ cubics }: Line): Point {
  return pointAt(cubics, 8 * Math.floor(cubics.length / 16), 0);
}

const endsOf = ({ cubics }: Line): Point[] => [
  { x: cubics[0], y: cubics[1] },
  { x: cubics[cubics.length - 2], y: cubics[cubics.length - 1] },
];

/** At the outer rim of the band, where an edge leaves it. */
const isFar = (front: Region, p: Point): boolean =>
  (distanceTo(front, p)?.distanceMm ?? 0) > 0.75 * NEAR_MM;
