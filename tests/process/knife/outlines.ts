import { pen, polygon } from '../../../src/geometry/pen.js';
import { circle, roundedRectangle } from '../../../src/geometry/primitives.js';
import { moveCubics, reversed, translation } from '../../../src/geometry/transform.js';
import type { Cubics } from '../../../src/geometry/types.js';
import { leaf } from '../../geometry/shapes.js';
import { archway, hole, plainPiece } from '../lock-pieces.js';

/** Steps given as rows of x and y, so that outlines stay readable. */
const through = (...places: readonly (readonly [number, number])[]): Cubics =>
  polygon(places.map(([x, y]) => ({ x, y })));

/** The broken end of the lock's wall: courses of 3 mm, toothed by 2.25 mm. */
const toothedWall = through(
  ...([
    [0, 0],
    [40, 0],
  ] as const),
  ...[0, 1, 2, 3].flatMap(
    (k) =>
      [
        [40, 3 + 6 * k],
        [37.75, 3 + 6 * k],
        [37.75, 6 + 6 * k],
        [40, 6 + 6 * k],
      ] as const,
  ),
  ...([
    [40, 27],
    [0, 27],
  ] as const),
);

/** Spikes of a gate's guard: points of 28 degrees, 1 mm apart at the foot. */
const spikes = through(
  [0, 20],
  ...[0, 1, 2, 3, 4].flatMap(
    (k) =>
      [
        [5 * k, 8],
        [5 * k + 2, 0],
        [5 * k + 4, 8],
      ] as const,
  ),
  [24, 20],
);

/** A thorn whose point is a cusp within one cubic: the curve comes to rest there and turns back. */
const thorn = pen(0, 0).curveTo(10, -10, 0, -10, 10, 0).lineTo(10, 4).lineTo(0, 4).close();

/** Handles drawn in onto their nodes, as old drawings have them. */
const pebble = pen(0, 0).curveTo(0, 0, 6, -4, 9, 0).curveTo(12, 4, 3, 6, 0, 0).close();

/** A torn edge in facets far shorter than any blade's offset. */
const torn = through(
  [0, 8],
  ...Array.from({ length: 60 }, (_, k) => [0.15 * k, 0.12 * ((k * 7) % 5)] as const),
  [9, 8],
);

/** Outlines of the lock's book, each with its own trouble for a blade. */
export const OUTLINES: readonly { readonly name: string; readonly contour: Cubics }[] = [
  { name: 'a card', contour: plainPiece('card', 60, 40).card.contours[0] },
  { name: 'an arch', contour: archway(70, 40, 40, 50).contours[0] },
  { name: "an arch's hole", contour: hole(archway(70, 40, 12, 9)) },
  { name: 'a toothed wall', contour: toothedWall },
  { name: 'spikes', contour: spikes },
  { name: 'a leaf', contour: leaf(18, 4).contours[0] },
  { name: 'a slender leaf', contour: moveCubics(leaf(9, 0.8).contours[0], translation(3, 4)) },
  { name: 'a thorn with a cusp', contour: thorn },
  { name: 'a pebble with handles drawn in', contour: pebble },
  { name: 'a torn edge', contour: torn },
  { name: 'a paddle hole', contour: hole(circle(140, 30, 3)) },
  { name: 'a rivet hole', contour: hole(circle(140, 30, 1)) },
  {
    name: 'a soft-cornered plate',
    contour: reversed(roundedRectangle(0, 0, 9, 5, 0.6).contours[0]),
  },
];
