import { intersect, union } from '../geometry/boolean/boolean.js';
import { EMPTY_REGION } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { frameAnchors } from './brick/anchors.js';
import { cellsInside } from './brick/cells.js';
import { BONDS, type Bond } from './brick/courses.js';
import { frameWallOf, ringFaces, ringScores, ringStones } from './brick/frame-wall.js';
import { drawJoints } from './brick/joints.js';
import { masonry } from './brick/masonry.js';
import { inPart, type Part } from './brick/parts.js';
import { patches } from './brick/patches.js';
import { brickFace, pressed } from './brick/pressed.js';
import { setOut } from './brick/setting-out.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';

/** How much lower the backdrop's courses are than the front's. */
const FINER_AT_BACK = 0.28;
/** The least share of a brick's length in sight for it to count as part of the wall. */
const LEAST_SEEN = 0.2;

const { part, work, coverage } = masonry('brick', 'brick');

const parameters = {
  part,
  bond: {
    kind: 'choice',
    options: BONDS,
    default: 'english',
    says: 'How the bricks overlap from course to course.',
  },
  work,
  course: {
    kind: 'length',
    default: 3.5,
    min: 2.4,
    max: 6,
    says: 'Height of a course on the front panel, joint included; finer towards the back.',
  },
  coverage,
} as const;

type Values = ValuesOf<typeof parameters>;

/** Brickwork on the card of the frame. */
export const brick = family({
  name: 'brick',
  says: 'Brickwork on the frame: true bonds, drawn in patches, with an arch over the window.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: {
    cut: null,
    scored: 'joints, in patches',
    embossed: 'single bricks, where asked',
  },
  parameters,
  stance: 'frame',
  grow,
});

function grow(plot: Plot, values: Values, random: Random): Growth {
  const courseMm = values.course * (1 - FINER_AT_BACK * plot.fineness);
  const part = values.part as Part;
  const frame = frameWallOf(plot, courseMm);
  const { bounds, opening, window, wall, clear } = frame;
  const laid = setOut(bounds, opening, values.bond as Bond, courseMm).filter((c) =>
    inPart(part, c, bounds, window, courseMm),
  );
  const cells = cellsInside(laid, wall, LEAST_SEEN);
  const anchors = frameAnchors(bounds, opening, courseMm);
  const shown = patches(cells, anchors, values.coverage, courseMm, random.branch('patches'));
  const stones = ringStones(frame, part, values.coverage, random.branch('stones'));

  if (values.work === 'score') {
    const scores = [
      ...drawJoints(shown, wall, random.branch('joints')),
      ...ringScores(frame, stones, random.branch('ring')),
    ];
    return { body: EMPTY_REGION, holes: EMPTY_REGION, scores, reliefs: [] };
  }
  const faces = [
    intersect(union(shown.map(brickFace)), wall),
    intersect(union(ringFaces(frame, stones)), clear),
  ];
  const side = values.work === 'raise' ? 'raised' : 'sunk';
  const reliefs = pressed(faces, side, courseMm);
  return { body: EMPTY_REGION, holes: EMPTY_REGION, scores: [], reliefs };
}
