import { EMPTY_REGION } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { frameAnchors } from './brick/anchors.js';
import { cellsInside } from './brick/cells.js';
import { frameWallOf } from './brick/frame-wall.js';
import { drawJoints } from './brick/joints.js';
import { inPart, PARTS, type Part } from './brick/parts.js';
import { patches } from './brick/patches.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';
import { KINDS, type Kind, tilesOver } from './tiles/courses.js';
import { drawScales } from './tiles/scales.js';

/** How much smaller the backdrop's tiles are than the front's. */
const FINER_AT_BACK = 0.28;
const LEAST_SEEN = 0.3;
/** A roof has no arch over its window. */
const NO_RING = { depths: [], voussoir: 1 };

const parameters = {
  kind: {
    kind: 'choice',
    options: KINDS,
    default: 'fish-scale',
    says: 'Plain tiles, slates that get smaller towards the ridge, or tiles with round tails.',
  },
  part: {
    kind: 'choice',
    options: PARTS,
    default: 'all',
    says: 'Which part of the frame is tiled.',
  },
  gauge: {
    kind: 'length',
    default: 4.5,
    min: 3,
    max: 10,
    says: 'Height of what is seen of a tile on the front panel; smaller towards the back.',
  },
  coverage: {
    kind: 'number',
    default: 0.6,
    min: 0.1,
    max: 1,
    says: 'Share of the roof whose tiles are drawn.',
  },
} as const;

/** Roof tiles on the card of the frame. */
export const tiles = family({
  name: 'tiles',
  says: 'Roof tiles or slates on the frame, each half over two of the course below.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'head',
  defaultSize: { width: { share: 1 }, height: { share: 1 } },
  made: { cut: null, scored: 'tiles, in patches', embossed: null },
  parameters,
  stance: 'frame',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const kind = values.kind as Kind;
  const gaugeMm = values.gauge * (1 - FINER_AT_BACK * plot.fineness);
  const { bounds, opening, window, wall } = frameWallOf(plot, gaugeMm, NO_RING);
  const laid = tilesOver(bounds, kind, gaugeMm).filter((c) =>
    inPart(values.part as Part, c, bounds, window, gaugeMm),
  );
  const seen = cellsInside(laid, wall, LEAST_SEEN);
  const anchors = frameAnchors(bounds, opening, gaugeMm);
  const shown = patches(seen, anchors, values.coverage, gaugeMm, random.branch('patches'));
  const draw = kind === 'fish-scale' ? drawScales : drawJoints;
  const scores = draw(shown, wall, random.branch('joints'));
  return { body: EMPTY_REGION, holes: EMPTY_REGION, scores, reliefs: [] };
}
