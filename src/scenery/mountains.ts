import { subtract, union } from '../geometry/boolean/boolean.js';
import { linesOutside } from '../geometry/clip-lines.js';
import { polyline } from '../geometry/pen.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM, groundOf, landUnder } from './land/ground.js';
import { massifOf } from './mountains/massif.js';
import { ridgesOf } from './mountains/ridges.js';
import { snowHoles, snowLines, snowOver } from './mountains/snow.js';
import { heldAt } from './net.js';
import type { Random } from './random.js';

const parameters = {
  peaks: {
    kind: 'number',
    whole: true,
    default: 3,
    min: 1,
    max: 7,
    says: 'How many peaks stand side by side, fewer where there is no room for them.',
  },
  jagged: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How broken the slopes are: 0 plain flanks, 1 crags.',
  },
  snow: {
    kind: 'choice',
    options: ['none', 'scored', 'cut'],
    default: 'scored',
    says: 'Snow on the higher peaks: none, its edge scored, or cut out; on a backdrop only scored.',
  },
  ridges: {
    kind: 'number',
    default: 0.6,
    min: 0,
    max: 1,
    says: 'How many scored ridges run down from the peaks, 0 for none.',
  },
} as const;

/** Mountains along the sill. */
export const mountains = family({
  name: 'mountains',
  says: 'Irregular mountain peaks with scored ridges and snow.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.4 } },
  made: {
    cut: 'the ridge, and snow where asked',
    scored: 'ridges, gullies and snow lines',
    embossed: null,
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const ground = groundOf(plot);
  const massif = massifOf(plot, ground, values.peaks, values.jagged, random.branch('peaks'));
  const solid = landUnder(polyline(massif.skyline), plot.root);
  const ridges = massif.peaks.map((peak, i) =>
    ridgesOf(peak, values.ridges, values.jagged, random.branch(`ridge ${i}`)),
  );
  const snow = massif.peaks.map((peak, i) => snowLines(peak, random.branch(`snow ${i}`)));
  const cut = values.snow === 'cut' && plot.frame.window.contours.length > 0;
  const caps = cut ? massif.peaks.map((peak, i) => snowHoles(peak, snow[i], solid, plot)) : [];
  const drawn = subtract(solid, caps);
  const { body, holes } = fitToCut(drawn, plot, heldAt(drawn));
  const card = subtract(body, [holes]);
  // Snow hides the ridges under it.
  const drifts =
    values.snow === 'none' ? [] : snow.map((edge, i) => snowOver(massif.peaks[i], edge));
  const rocky = ridges.flat();
  const lines = drifts.length > 0 ? linesOutside(rocky, union(drifts)) : rocky;
  const edges = values.snow === 'none' || cut ? [] : snow;
  return {
    body,
    holes,
    scores: keptClear([...edges, ...lines], card, CLEAR_MM),
    reliefs: [],
  };
}
