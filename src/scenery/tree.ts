import { family } from './family.js';
import { alderPlan } from './tree/alder.js';
import { broadleafPlan } from './tree/broadleaf.js';
import { coniferPlan, drawConifer } from './tree/conifer.js';
import { drawLeafy } from './tree/leafy.js';
import { TREE_PARAMETERS } from './tree/parameters.js';
import { drawWillow } from './tree/weeping.js';
import { willowPlan } from './tree/willow.js';

/** A tree cut with its boughs crossing the light. */
export const tree = family({
  name: 'tree',
  says: 'A tree whose boughs show in the gaps of its leaves: broadleaf, conifer, willow or alder.',
  stance: 'upright',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.5 }, height: { share: 0.75 } },
  parameters: TREE_PARAMETERS,
  grow: (plot, values, random) => {
    const draw = random.branch('draw');
    if (values.habit === 'conifer')
      return drawConifer(coniferPlan(plot, values, random), plot, values, draw);
    if (values.habit === 'willow')
      return drawWillow(willowPlan(plot, values, random), plot, values, draw);
    if (values.habit === 'alder')
      return drawLeafy(alderPlan(plot, values, random), plot, values, draw);
    return drawLeafy(broadleafPlan(plot, values, random), plot, values, draw);
  },
});
