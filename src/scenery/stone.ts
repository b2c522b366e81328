import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { linesInside } from '../geometry/clip-lines.js';
import { lineLength } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import { EMPTY_REGION, type Line, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { frameAnchors } from './brick/anchors.js';
import { cellsInside } from './brick/cells.js';
import { handDrawn } from './brick/craft.js';
import {
  type FrameWall,
  frameWallOf,
  ringFaces,
  ringScores,
  ringStones,
} from './brick/frame-wall.js';
import type { RingForm } from './brick/head.js';
import { drawJoints } from './brick/joints.js';
import { masonry } from './brick/masonry.js';
import { inPart, type Part } from './brick/parts.js';
import { type Box, patches } from './brick/patches.js';
import { brickFace, pressed } from './brick/pressed.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';
import { coursedStones, type Stone } from './stone/coursed.js';
import { rubbleFace, rubbleJoints, rubbleOver } from './stone/rubble.js';

/** How much lower the backdrop's courses are than the front's. */
const FINER_AT_BACK = 0.28;
/** The least share of a stone in sight for it to count as part of the wall. */
const LEAST_SEEN = 0.25;
/** Of a field stone more: what an edge leaves of its outline says nothing. */
const LEAST_SEEN_OF_FIELD = 0.6;
/** Stones of the arch are cut larger than those of the wall. */
const STONE_RING: RingForm = { depths: [2.5, 1.5], voussoir: 1.25 };
/** Dressed stones at an opening are drawn for this much more of it than the wall. */
const QUOINS_DENSER = 0.3;
const SHORTEST_STROKE_MM = 1;
const WANDER_MM = 0.2;
const SHY_MM = 0.4;

const { part, work, coverage } = masonry('stone', 'stone');

const parameters = {
  kind: {
    kind: 'choice',
    options: ['coursed', 'rubble'],
    default: 'coursed',
    says: 'Squared stones in level courses, or field stones of any shape.',
  },
  part,
  work,
  course: {
    kind: 'length',
    default: 4.5,
    min: 2.8,
    max: 9,
    says: 'Height of a middling stone on the front panel; finer towards the back.',
  },
  coverage,
} as const;

type Values = ValuesOf<typeof parameters>;

/** Stonework on the card of the frame. */
export const stone = family({
  name: 'stone',
  says: 'Stonework on the frame, coursed or rubble, with quoins and an arch over the window.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: {
    cut: null,
    scored: 'joints, in patches',
    embossed: 'single stones, where asked',
  },
  parameters,
  stance: 'frame',
  grow,
});

/** What is drawn of a wall: strokes, or faces to press. */
interface Drawn {
  readonly lines: readonly Line[];
  readonly faces: readonly Region[];
}

function grow(plot: Plot, values: Values, random: Random): Growth {
  const courseMm = values.course * (1 - FINER_AT_BACK * plot.fineness);
  const frame = frameWallOf(plot, courseMm, STONE_RING);
  const part = values.part as Part;
  const build = values.kind === 'rubble' ? rubbleWall : coursedWall;
  const { lines, faces } = build(frame, values, courseMm, random);
  const stones = ringStones(frame, part, values.coverage, random.branch('stones'));
  if (values.work === 'score') {
    const scores = [...lines, ...ringScores(frame, stones, random.branch('ring'))];
    return { body: EMPTY_REGION, holes: EMPTY_REGION, scores, reliefs: [] };
  }
  const side = values.work === 'raise' ? 'raised' : 'sunk';
  const shapes = [
    ...faces.map((f) => intersect(f, frame.wall)),
    intersect(union(ringFaces(frame, stones)), frame.clear),
  ];
  return {
    body: EMPTY_REGION,
    holes: EMPTY_REGION,
    scores: [],
    reliefs: pressed(shapes, side, courseMm),
  };
}

function coursedWall(frame: FrameWall, values: Values, courseMm: number, random: Random): Drawn {
  const { bounds, opening, window, wall } = frame;
  const laid = coursedStones(bounds, opening, courseMm, random.branch('laid')).filter((s) =>
    inPart(values.part as Part, s, bounds, window, courseMm),
  );
  const seen = cellsInside(laid, wall, LEAST_SEEN);
  const anchors = frameAnchors(bounds, opening, courseMm);
  const shown = patches(seen, anchors, values.coverage, courseMm, random.branch('patches'));
  return {
    lines: [
      ...drawJoints(shown, wall, random.branch('joints')),
      ...splitLines(shown, wall, random.branch('splits')),
    ],
    faces: [union(shown.flatMap(stoneFaces))],
  };
}

/** Field stones, with dressed ones at the window's plumb edges. */
function rubbleWall(frame: FrameWall, values: Values, courseMm: number, random: Random): Drawn {
  const { bounds, opening, window, wall } = frame;
  const part = values.part as Part;
  const quoins = coursedStones(bounds, opening, courseMm * 1.15, random.branch('laid')).filter(
    (s) => s.at === 'opening' && inPart(part, s, bounds, window, courseMm),
  );
  const field = subtract(
    wall,
    quoins.map((q) => rectangle(q.x0, q.y0, q.x1 - q.x0, q.y1 - q.y0)),
  );
  const rubble = rubbleOver(bounds, courseMm, random.branch('mesh'));
  const own = rubble.stones.filter((s) =>
    inPart(part, { ...s, kind: 'stretcher', course: 0 }, bounds, window, courseMm),
  );
  const seen = cellsInside(own, field, LEAST_SEEN_OF_FIELD);
  const anchors = frameAnchors(bounds, opening, courseMm);
  const luck = random.branch('patches');
  const dressed = Math.min(1, values.coverage + QUOINS_DENSER);
  const shown = patches(seen, anchors, values.coverage, courseMm, luck);
  const squared = patches(quoins, [], dressed, courseMm, luck.branch('quoins'));
  return {
    lines: [
      ...rubbleJoints(rubble, shown, field, random.branch('joints')),
      ...drawJoints(squared, wall, random.branch('quoins')),
    ],
    faces: [
      intersect(union(shown.map((s) => rubbleFace(rubble, s))), field),
      union(squared.map(brickFace)),
    ],
  };
}

/** The level joints between two thin stones that lie in a course as one. */
function splitLines(stones: readonly Stone[], wall: Region, random: Random): Line[] {
  const lines = stones.flatMap(({ x0, x1, split }) => {
    if (split === null) return [];
    const ends = [x0 + SHY_MM, x1 - SHY_MM].map((x) => ({ x, y: split }));
    return [handDrawn(ends, WANDER_MM, random.branch(`${x0.toFixed(1)} ${split.toFixed(1)}`))];
  });
  return linesInside(lines, wall).filter((l) => lineLength(l) >= SHORTEST_STROKE_MM);
}

const stoneFaces = (s: Stone): Region[] => halves(s).map(brickFace);

const halves = (s: Stone): Box[] =>
  s.split === null
    ? [s]
    : [
        { ...s, y1: s.split },
        { ...s, y0: s.split },
      ];
