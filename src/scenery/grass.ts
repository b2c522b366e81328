import { union } from '../geometry/boolean/boolean.js';
import { regionOf } from '../geometry/pen.js';
import { EMPTY_REGION } from '../geometry/types.js';
import { aboveRoot } from './above-root.js';
import { family } from './family.js';
import { bladeContours, rib, TIP_RADIUS_MM } from './grass/blade.js';
import { groundUnder } from './grass/ground.js';
import { HABITS, KINDS } from './grass/kinds.js';
import { creased, tied } from './grass/tidy.js';
import { tuftsOf } from './grass/tuft.js';
import { tiedUp } from './net.js';

/** Eyelets between crossing blades are filled below this. Common practice, no source. */
const EYELET_MM = 2;

const PARAMETERS = {
  kind: {
    kind: 'choice',
    options: KINDS,
    default: 'meadow',
    says: 'Fine meadow grass with ears, reeds with cigar heads, broad arching sedge, or tussocks.',
  },
  wind: {
    kind: 'number',
    default: 8,
    min: -35,
    max: 35,
    says: 'How far the wind bends every blade, in degrees; positive to the right.',
  },
} as const;

export const grass = family({
  name: 'grass',
  says: 'A living edge of grass, reeds or sedge in place of a straight one.',
  sides: ['sill', 'head', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { mm: 14 } },
  made: {
    cut: 'blades, heads and the ground they grow from',
    scored: 'creases of a few broad blades',
    embossed: null,
  },
  stance: 'turned',
  parameters: PARAMETERS,
  grow: (plot, values, random) => {
    const habit = HABITS[values.kind];
    const tufts = tuftsOf(plot, habit, values.wind, random.branch('tufts'));
    const ground = groundUnder(plot, tufts, habit.moundMm, random.branch('ground'));
    const contours = tufts.flatMap((tuft, i) =>
      tuft.blades.flatMap((blade) =>
        bladeContours(blade, ground.footY[i], plot.smallestWeb, habit.fullness),
      ),
    );
    const mass = union([ground.contour, ...contours].map((contour) => regionOf(contour)));
    const body = tied(creased(mass, TIP_RADIUS_MM), { ...plot, eyelet: EYELET_MM });
    const scores = tufts.flatMap((tuft, i) =>
      tuft.blades.filter((blade) => blade.ribbed).map((blade) => rib(blade, ground.footY[i])),
    );
    return tiedUp(
      { body: aboveRoot(body, plot.root), holes: EMPTY_REGION, scores, reliefs: [] },
      plot,
    );
  },
});
