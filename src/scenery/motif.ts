import { intersect, union } from '../geometry/boolean/boolean.js';
import { linesInside } from '../geometry/clip-lines.js';
import { components } from '../geometry/components.js';
import { regionBounds } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import { simplifyRegion } from '../geometry/tidy/simplify.js';
import { EMPTY_REGION, type Region } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { bodyAndHoles } from './body-and-holes.js';
import { family, type Growth, type Plot } from './family.js';
import { fitted } from './motif/fitted.js';
import { sorted } from './motif/sorted.js';

const parameters = {
  file: {
    kind: 'file',
    of: 'drawing',
    default: '',
    says: 'An SVG drawing: a file beside the scene such as heron.svg, or a name of the shipped library such as shore/crab.',
  },
  foot: {
    kind: 'choice',
    options: ['bottom', 'top', 'left', 'right'],
    default: 'bottom',
    says: 'The side of the drawing that is rooted in the frame.',
  },
  rooted: {
    kind: 'flag',
    default: true,
    says: 'Draws its foot out into the frame; not so, it stands as drawn.',
  },
  keep: {
    kind: 'text',
    default: '',
    maxCharacters: 200,
    says: 'Keeps only these, by id, class or fill, commas between: "heron, #000000". Empty: all.',
  },
  erase: {
    kind: 'text',
    default: '',
    maxCharacters: 200,
    says: 'Leaves these out, by id, class or fill; also a zone such as "left half" or "lower 20%".',
  },
  scored: {
    kind: 'text',
    default: '',
    maxCharacters: 200,
    says: 'What becomes score lines, by id, class or fill; strokes that are not filled always do.',
  },
  raised: {
    kind: 'text',
    default: '',
    maxCharacters: 200,
    says: 'What is pressed up, by id, class or fill.',
  },
  pierced: {
    kind: 'text',
    default: 'white',
    maxCharacters: 200,
    says: 'What is cut out of what lies below it, by id, class or fill.',
  },
  outline: {
    kind: 'length',
    default: 0,
    min: 0,
    max: 10,
    says: 'Makes strokes into card so wide instead of score lines; 0 leaves them lines.',
  },
  simplify: {
    kind: 'length',
    default: 0,
    min: 0,
    max: 1,
    says: 'How far an outline may be moved to be drawn with fewer curves.',
  },
} as const;

/** A drawing from a file, fitted into its box in its own proportions. */
export const motif = family({
  name: 'motif',
  says: 'A drawing of your own or of the shipped library, from an SVG file.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { mm: 40 }, height: { mm: 40 } },
  made: {
    cut: 'what is filled, and what is pierced in it',
    scored: 'strokes, and what is named as scored',
    embossed: 'what is named as raised',
  },
  parameters,
  stance: 'turned',
  grow,
});

const NOTHING: Growth = { body: EMPTY_REGION, holes: EMPTY_REGION, scores: [], reliefs: [] };
/** How deep a raised part is pressed. Common practice, no source: about one caliper. */
const RELIEF_MM = 0.3;

function grow(plot: Plot, values: ValuesOf<typeof parameters>): Growth {
  if (plot.drawing === undefined) return NOTHING;
  const roles = sorted(fitted(plot.drawing, plot, values.foot), values);
  const drawn = values.simplify > 0 ? simplifyRegion(roles.card, values.simplify) : roles.card;
  const card = values.rooted ? union([drawn, ...rootsOf(drawn, plot.root)]) : drawn;
  return {
    ...bodyAndHoles(card),
    scores: linesInside(roles.scores, card),
    reliefs: components(intersect(roles.raised, card)).map((region) => ({
      region,
      side: 'raised' as const,
      depthMm: RELIEF_MM,
    })),
  };
}

/** Height of the slice that shows where the drawing stands on the ground, mm. */
const SLICE_MM = 0.4;

/** Card from each foot down into the frame. */
function rootsOf(card: Region, rootMm: number): Region[] {
  if (card.contours.length === 0 || rootMm <= 0) return [];
  const { minX, maxX, maxY } = regionBounds(card);
  const slice = intersect(card, rectangle(minX, maxY - SLICE_MM, maxX - minX, SLICE_MM));
  const feet = components(slice).map(regionBounds);
  return feet.map((foot) =>
    rectangle(foot.minX, maxY - SLICE_MM / 2, foot.maxX - foot.minX, rootMm - maxY + SLICE_MM / 2),
  );
}
