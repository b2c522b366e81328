import { subtract, union } from '../geometry/boolean/boolean.js';
import { EMPTY_REGION, type Line } from '../geometry/types.js';
import type { ValuesOf } from '../scene/parameter.js';
import { keptClear } from './brick/craft.js';
import { family, type Growth, type Plot } from './family.js';
import { hillsOf } from './hills/crests.js';
import { fieldLines } from './hills/fields.js';
import { fitToCut } from './land/fit.js';
import { CLEAR_MM, landUnder } from './land/ground.js';
import type { Random } from './random.js';

const parameters = {
  crests: {
    kind: 'number',
    whole: true,
    default: 2,
    min: 1,
    max: 3,
    says: 'How many hills lie one behind the other; no two crests run alike.',
  },
  roll: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How much a crest rises and falls on its way: 0 one long back, 1 shoulders and dips.',
  },
  nearCrests: {
    kind: 'flag',
    default: true,
    says: 'The crests of nearer hills scored where they lie before a farther one.',
  },
  fields: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How closely the slopes are parted into fields and furrows by scored lines, 0 for none.',
  },
} as const;

/** Hills along the sill, one behind the other. */
export const hills = family({
  name: 'hills',
  says: 'Rolling hills along the sill, one behind the other, with fields on their slopes.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { share: 0.25 } },
  made: {
    cut: 'the crests',
    scored: 'fields, furrows and nearer crests',
    embossed: null,
  },
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const all = hillsOf(plot, values.crests, values.roll, random.branch('crests'));
  const lands = all.map((hill) => landUnder(hill.crest, plot.root));
  const { body } = fitToCut(union(lands), plot);
  const scores: Line[] = [];
  all.forEach((hill, i) => {
    // A hill shows only above the nearer ones, and its fields stay clear of their crests.
    const shown = subtract(lands[i], lands.slice(i + 1));
    const luck = random.branch(`fields ${i}`);
    scores.push(...keptClear(fieldLines(plot, hill, values.fields, luck), shown, CLEAR_MM));
    if (values.nearCrests && i > 0) {
      const open = subtract(body, lands.slice(i + 1));
      scores.push(...keptClear([hill.crest], open, CLEAR_MM));
    }
  });
  return {
    body,
    holes: EMPTY_REGION,
    scores: keptClear(scores, body, CLEAR_MM),
    reliefs: [],
  };
}
