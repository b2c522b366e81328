import { subtract, union } from '../geometry/boolean/boolean.js';
import { EMPTY_REGION } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import type { Random } from './random.js';
import { farEdgeOf } from './water/far-edge.js';
import { surfaceOf } from './water/surface.js';

const parameters = {
  light: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How much of the surface is cut out as glints of light.',
  },
  streaks: {
    kind: 'number',
    whole: true,
    default: 1,
    min: 0,
    max: 3,
    says: 'Places where something bright is mirrored in a broken upright streak.',
  },
  chop: {
    kind: 'number',
    default: 0.4,
    min: 0,
    max: 1,
    says: 'How rough the far edge is: 0 still, 1 a breeze.',
  },
  work: {
    kind: 'choice',
    options: ['cut', 'score'],
    default: 'cut',
    says: 'Glints cut out, or only drawn; on a backdrop they are always drawn.',
  },
} as const;

/** Ripples keep this clear of cut edges, mm. */
const CLEAR_MM = 1.2;

/** Water along the sill: broken horizontals, longer towards the viewer. */
export const water = family({
  name: 'water',
  says: 'Water along the sill: glints and ripples, longer towards the viewer.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { mm: 11 } },
  made: {
    cut: 'its far edge, and slits of light',
    scored: 'ripples',
    embossed: null,
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const far = farEdgeOf(plot, values.chop, random.branch('edge'));
  const { light, streaks } = values;
  // On a backdrop there is nothing to see through to.
  const cut = values.work === 'cut' && plot.frame.window.contours.length > 0;
  const surface = surfaceOf(plot, far, light, streaks, cut, random.branch('surface'));
  const holes = surface.glints.length > 0 ? union(surface.glints) : EMPTY_REGION;
  const card = subtract(far.body, [holes]);
  const scores = keptClear(surface.ripples, card, CLEAR_MM);
  return { body: far.body, holes, scores, reliefs: [] };
}
