import { clip, grown, type Ring } from '../geometry/boolean/clip.js';
import { withoutSpikes } from '../geometry/boolean/spikes.js';
import { boundsOf, contourArea, flatten, regionBounds } from '../geometry/measure.js';
import type { Cubics, Point } from '../geometry/types.js';
import type { Piece } from '../panel/piece.js';
import { coarsened } from './coarsen.js';
import { ceilMicrometres, FINE, floorMicrometres, MICROMETRES_PER_MM } from './micrometres.js';

/** A box in whole micrometres. The origin is the top left, y down. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The room that a card takes up on a sheet: rings of few corners that cover all of it, in fine units
 * from the top left of its box. Outer rings have positive area, holes negative.
 */
export interface Footprint {
  /** The same for cards of the same outline. */
  readonly key: string;
  readonly width: number;
  readonly height: number;
  readonly rings: readonly Ring[];
  /** Nothing but a rectangle, but for its holes. */
  readonly isPlain: boolean;
}

/** How far, in mm, an outline may stand off from its card, to be simple enough to reckon with. */
const COARSENESS_MM = 0.4;

/** A ring with more corners than this is made coarser still: what is reckoned grows with their square. */
const MOST_CORNERS = 40;

/** Chords of curves stay this near to them, mm. */
const CHORD_MM = 0.01;

/** What chords and the rounding of places to whole micrometres may be out, in fine units. */
const SLACK = (CHORD_MM * MICROMETRES_PER_MM + 2) * FINE;

/** The box round a piece's card, in whole micrometres of its page. */
export function cardBox(piece: Piece): Box {
  if (piece.card.contours.length === 0) throw new Error(`${piece.name} has no card left to cut.`);
  const { minX, minY, maxX, maxY } = regionBounds(piece.card);
  const x = floorMicrometres(minX);
  const y = floorMicrometres(minY);
  return { x, y, width: ceilMicrometres(maxX) - x, height: ceilMicrometres(maxY) - y };
}

/** What a straight edge's corners may be out, mm. */
const STRAIGHT_MM = 1e-3;

/**
 * The footprint of a card upright. Holes too small for a box of `least` width and height (in
 * micrometres) count as card.
 */
export function footprint(
  piece: Piece,
  box: Box,
  least: { readonly width: number; readonly height: number },
): Footprint {
  const frame = frameOf(box);
  const outers = piece.card.contours.filter((c) => contourArea(c) > 0);
  const holes = piece.card.contours.filter((c) => contourArea(c) < 0 && holds(c, least));
  const isPlain = outers.some((c) => fills(c, box));
  const rings = [
    ...(isPlain ? [frame] : outers.flatMap((c) => grown(clean(covering(c, box)), slackOf(c)))),
    ...holes.flatMap((c) => closedUp(clean(covering(c, box).toReversed()), slackOf(c))),
  ];
  return footprintOf(box, clip('intersect', rings, [frame], 'positive'), isPlain);
}

/** The same turned by half. */
export const turnedByHalf = (print: Footprint): Footprint =>
  footprintOf(
    print,
    print.rings.map((ring) =>
      ring.map(({ x, y }) => ({ x: print.width * FINE - x, y: print.height * FINE - y })),
    ),
    print.isPlain,
  );

type Size = Pick<Box, 'width' | 'height'>;

function footprintOf({ width, height }: Size, rings: readonly Ring[], isPlain: boolean): Footprint {
  const started = rings.map(fromTopLeft).toSorted((a, b) => nearerTop(a[0], b[0]));
  return { key: JSON.stringify([width, height, started]), width, height, rings: started, isPlain };
}

/** Starts a ring at its topmost corner, so that equal outlines are written alike. */
function fromTopLeft(ring: Ring): Ring {
  const start = ring.reduce((best, p, i) => (nearerTop(p, ring[best]) < 0 ? i : best), 0);
  return [...ring.slice(start), ...ring.slice(0, start)].map(({ x, y }) => ({ x, y }));
}

const nearerTop = (a: Point, b: Point): number => a.y - b.y || a.x - b.x;

const frameOf = ({ width, height }: Size): Ring => {
  const [right, foot] = [width * FINE, height * FINE];
  return [
    { x: 0, y: 0 },
    { x: right, y: 0 },
    { x: right, y: foot },
    { x: 0, y: foot },
  ];
};

/** Whether a contour is the whole box: what covers all of its area can have no other outline. */
function fills(contour: Cubics, { width, height }: Size): boolean {
  const [w, h] = [width / MICROMETRES_PER_MM, height / MICROMETRES_PER_MM];
  return contourArea(contour) >= w * h - STRAIGHT_MM * (w + h);
}

function holds(hole: Cubics, least: Size): boolean {
  const { minX, minY, maxX, maxY } = boundsOf([hole]);
  const [width, height] = [maxX - minX, maxY - minY];
  return width * MICROMETRES_PER_MM >= least.width && height * MICROMETRES_PER_MM >= least.height;
}

/** Edges along the sheet's own are exact; all others may be a little out. */
function slackOf(contour: Cubics): number {
  const points = flatten(contour, CHORD_MM);
  const isSquare = points.every(
    (p, i) => i === 0 || p.x === points[i - 1].x || p.y === points[i - 1].y,
  );
  return isSquare ? 0 : SLACK;
}

/** A ring of few corners round a contour's card. */
function covering(contour: Cubics, box: Box): Ring {
  const points = flatten(contour, CHORD_MM).slice(1);
  const fine = points.map((p) => ({
    x: (p.x * MICROMETRES_PER_MM - box.x) * FINE,
    y: (p.y * MICROMETRES_PER_MM - box.y) * FINE,
  }));
  let coarseness = COARSENESS_MM * MICROMETRES_PER_MM * FINE;
  let ring = coarsened(fine, coarseness);
  while (ring.length > MOST_CORNERS) {
    coarseness *= 1.5;
    ring = coarsened(ring, coarseness);
  }
  return ring.map((p) => ({ x: Math.round(p.x), y: Math.round(p.y) }));
}

const clean = (ring: Ring): Ring[] => clip('union', [withoutSpikes(ring)], [], 'positive');

/** Openings, drawn as if they were card, made smaller all round and turned into holes. */
const closedUp = (openings: readonly Ring[], distance: number): Ring[] =>
  grown(openings, -distance).map((ring) => ring.toReversed());
