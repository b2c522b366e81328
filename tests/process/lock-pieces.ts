import type { FoldKind } from '../../src/book/book.js';
import { pen, polyline } from '../../src/geometry/pen.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { reversed } from '../../src/geometry/transform.js';
import type { Cubics, Line, Region } from '../../src/geometry/types.js';
import type { Piece } from '../../src/panel/piece.js';
import type { Stock } from '../../src/scene/scene.js';

// Pieces of a small book about a canal lock, drawn by hand for the tests.

export const A4: Stock = {
  name: 'lock-wall grey',
  colour: '#8d8f8a',
  gramsPerM2: 240,
  caliperMm: 0.3,
  sheet: { name: 'A4', width: 210, height: 297 },
  margin: 6,
};
export const LETTER: Stock = { ...A4, sheet: { name: 'Letter', width: 215.9, height: 279.4 } };
export const SQUARE: Stock = { ...A4, sheet: { name: '305 mm square', width: 305, height: 305 } };

export const A2: Stock = { ...A4, sheet: { name: 'A2', width: 420, height: 594 } };

export const hole = (region: Region): Cubics => reversed(region.contours[0]);

export const upright = (x: number, height: number): Line =>
  polyline([
    { x, y: 0 },
    { x, y: height },
  ]);

/** A round-topped opening: `width` wide, straight for `jamb`, under a half circle. */
export const archway = (x: number, y: number, width: number, jamb: number): Region => ({
  contours: [
    pen(x, y + width / 2)
      .arcAround(x + width / 2, y + width / 2, 180)
      .lineTo(x + width, y + width / 2 + jamb)
      .lineTo(x, y + width / 2 + jamb)
      .close(),
  ],
});

const BLANK = {
  folder: 'panels',
  stock: A4,
  copies: 1,
  width: 187,
  height: 135,
  scores: [],
  reliefs: [],
  guides: [],
  scoring: 'both',
} as const;

/** A plain card of the given size, cut and nothing else. */
export const plainPiece = (name: string, width: number, height: number): Piece => ({
  ...BLANK,
  name,
  width,
  height,
  card: rectangle(0, 0, width, height),
});

const hinges = (kind: FoldKind) => [15, 172].map((x) => ({ line: upright(x, 135), kind }));

/**
 * The lock's bridge: a round-topped window 40 x 70 mm, a paddle hole of 6 mm and, in the window, a
 * mooring post that is not joined to anything. Scored and sunk from the front only.
 */
export const bridge: Piece = {
  ...BLANK,
  name: 'panel-01',
  // The outer contour comes first, so that the working order has something to put right.
  card: {
    contours: [
      rectangle(0, 0, 187, 135).contours[0],
      hole(archway(70, 40, 40, 50)),
      circle(90, 90, 5).contours[0],
      hole(circle(140, 30, 3)),
    ],
  },
  scores: [
    {
      line: polyline([
        { x: 30, y: 20 },
        { x: 60, y: 20 },
      ]),
      kind: 'detail',
    },
    ...hinges('mountain'),
  ],
  reliefs: [{ region: circle(45, 60, 8), side: 'sunk', depthMm: 0.3 }],
  guides: [
    polyline([
      { x: 2, y: 2 },
      { x: 8, y: 2 },
    ]),
  ],
};

/** The lock gate: hinges from the front, a raised ring of a balance beam from the back. */
export const gate: Piece = {
  ...BLANK,
  name: 'panel-02',
  card: { contours: [rectangle(0, 0, 187, 135).contours[0], hole(archway(75, 50, 30, 40))] },
  scores: hinges('mountain'),
  reliefs: [
    {
      region: { contours: [circle(45, 60, 8).contours[0], hole(circle(45, 60, 4))] },
      side: 'raised',
      depthMm: 0.25,
    },
  ],
};

/** The sky behind the lock: no window, its hinges fold forward, so all is worked from the back. */
export const sky: Piece = {
  ...BLANK,
  name: 'panel-03',
  card: rectangle(0, 0, 187, 135),
  scores: hinges('valley'),
  reliefs: [{ region: circle(60, 40, 12), side: 'raised', depthMm: 0.3 }],
};

/** A concertina strip: tabs of 12 mm, folds 15 mm apart, mountain first. */
export const spine = (name: string, faces: number): Piece => {
  const width = faces * 15 + 24;
  return {
    ...BLANK,
    name,
    folder: 'spine',
    width,
    card: rectangle(0, 0, width, 135),
    scores: Array.from({ length: faces + 1 }, (_, i) => ({
      line: upright(12 + i * 15, 135),
      kind: i % 2 === 0 ? ('valley' as const) : ('mountain' as const),
    })),
  };
};
