import { subtract } from '../geometry/boolean/boolean.js';
import { linesInside } from '../geometry/clip-lines.js';
import { lengthInside, lineLength } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { type Affine, IDENTITY, moveLine, moveRegion } from '../geometry/transform.js';
import { type Bounds, EMPTY_REGION, type Line, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { casingOf } from './boards/casing.js';
import { boardsOver, sectionsOf } from './boards/layout.js';
import { endJoints, grainOf, nailHeads, shownIn } from './boards/timber.js';
import { frameAnchors } from './brick/anchors.js';
import { cellsInside } from './brick/cells.js';
import { CLEAR_MM } from './brick/frame-wall.js';
import { drawBeds } from './brick/joints.js';
import { openingOf } from './brick/opening.js';
import { type Anchor, patches } from './brick/patches.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';

/** How much narrower the backdrop's boards are than the front's. */
const FINER_AT_BACK = 0.28;
const LEAST_SEEN = 0.3;
const SHORTEST_STROKE_MM = 1;
/** What lies on the boards keeps this far from the casing's edge: nearer, it looks drawn twice. */
const APART_MM = 0.9;
/** Patches are as large as those of a wall with courses of this many boards. */
const PATCH_BOARDS = 0.75;
/** Swaps x and y: boards are laid level, and the frame is turned for upright ones. */
const SWAPPED: Affine = { a: 0, b: 1, c: 1, d: 0, e: 0, f: 0 };

const parameters = {
  run: {
    kind: 'choice',
    options: ['upright', 'level'],
    default: 'upright',
    says: 'Which way the boards run.',
  },
  board: {
    kind: 'length',
    default: 7,
    min: 4,
    max: 14,
    says: 'Width of a board on the front panel; narrower towards the back.',
  },
  grain: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How much grain and how many knots the timber shows, 0 for none.',
  },
  nails: {
    kind: 'flag',
    default: true,
    says: 'Nail heads over the studs behind.',
  },
  coverage: {
    kind: 'number',
    default: 0.65,
    min: 0.1,
    max: 1,
    says: 'Share of the boards that is drawn.',
  },
} as const;

/** Timber boarding on the card of the frame. */
export const boards = family({
  name: 'boards',
  says: 'Timber boards on the frame with a casing round the window, nail heads and knots.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: { cut: null, scored: 'joints, casing, nail heads and grain, in patches', embossed: null },
  parameters,
  stance: 'frame',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const { card, bounds, window } = plot.frame;
  const boardMm = values.board * (1 - FINER_AT_BACK * plot.fineness);
  const casing = casingOf(window, bounds, boardMm, random.branch('casing'));
  const clear = offset(card, -CLEAR_MM);
  const turn = values.run === 'upright' ? SWAPPED : IDENTITY;
  const face = moveRegion(subtract(clear, [offset(casing.band, APART_MM)]), turn);
  const box = turn === IDENTITY ? bounds : swappedBox(bounds);

  const laid = boardsOver(box, boardMm, random.branch('laid'));
  const sections = cellsInside(sectionsOf(laid, box, boardMm), face, LEAST_SEEN);
  const reach = PATCH_BOARDS * boardMm;
  const anchors = frameAnchors(bounds, openingOf(window), reach).map((a) =>
    turn === IDENTITY ? a : swappedAnchor(a),
  );
  const shown = patches(sections, anchors, values.coverage, reach, random.branch('patches'));
  const isShown = shownIn(shown);
  const { knots, runs } = grainOf(
    laid,
    boardMm,
    box,
    values.grain,
    isShown,
    random.branch('grain'),
  );
  const nails = values.nails ? nailHeads(laid, boardMm, box, isShown, random.branch('nails')) : [];
  const across = [
    ...linesInside([...endJoints(laid, isShown, random.branch('ends')), ...runs], face),
    ...[...knots, ...nails].filter((ring) => isWhole(ring, face)),
  ];
  const lines = [...drawBeds(shown, face, random.branch('beds')), ...across];
  const scores = [
    ...lines.map((line) => moveLine(line, turn)),
    ...linesInside(casing.lines, clear),
  ].filter((line) => lineLength(line) >= SHORTEST_STROKE_MM);
  return { body: EMPTY_REGION, holes: EMPTY_REGION, scores, reliefs: [] };
}

/** A knot or a nail head is drawn all round or not at all. */
const isWhole = (ring: Line, face: Region): boolean =>
  lengthInside(ring, face) > lineLength(ring) - 0.01;

const swappedBox = (b: Bounds): Bounds => ({
  minX: b.minY,
  maxX: b.maxY,
  minY: b.minX,
  maxY: b.maxX,
});

const swappedAnchor = (a: Anchor): Anchor => ({ ...a, x0: a.y0, x1: a.y1, y0: a.x0, y1: a.x1 });
