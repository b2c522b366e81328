import type { ValuesOf } from '../scene/parameter.js';
import { finished } from './built/finish.js';
import { family, type Growth, type Plot } from './family.js';
import { climberOn } from './pergola/climber.js';
import { rowOf } from './pergola/row.js';
import { ENDS, type End } from './pergola/timber.js';
import { walkOf } from './pergola/walk.js';
import type { Random } from './random.js';

const parameters = {
  form: {
    kind: 'choice',
    options: ['row', 'path', 'hoops'],
    default: 'row',
    says: 'How it is seen: from the side, or along a path under beams or under hoops.',
  },
  climber: {
    kind: 'number',
    default: 0.45,
    min: 0,
    max: 1,
    says: 'How much has climbed it and hangs from it, 0 for bare timber.',
  },
  bays: {
    kind: 'number',
    default: 3,
    min: 2,
    max: 6,
    whole: true,
    says: 'Bays along it, or frames one behind another, as far as there is room for them.',
  },
  ends: {
    kind: 'choice',
    options: ENDS,
    default: 'ogee',
    says: 'How the ends of its beams are shaped; hoops have none.',
  },
} as const;

/** A pergola. */
export const pergola = family({
  name: 'pergola',
  says: 'A pergola in a garden, from the side or along its path, with a climber hanging from it.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.8 }, height: { share: 0.55 } },
  made: {
    cut: 'posts, beams, braces, leaves and trails',
    scored: 'grain of the beam, edges and joints of the path',
    embossed: null,
  },
  parts: ['timber', 'climber'],
  parameters,
  stance: 'upright',
  grow,
});

function grow(plot: Plot, values: ValuesOf<typeof parameters>, random: Random): Growth {
  const { form, bays, climber } = values;
  const end = values.ends as End;
  const built =
    form === 'row'
      ? rowOf(plot, bays, end, random.branch('row'))
      : walkOf(plot, bays, form === 'hoops', end, random.branch('walk'));
  const leaves = climberOn(plot, built.support, climber, random.branch('climber'));
  return finished(
    {
      solids: [...built.solids, ...leaves],
      cuts: [],
      lines: built.lines,
      parts: { timber: built.solids, climber: leaves },
    },
    plot,
    { x: built.foot, y: plot.root },
  );
}
