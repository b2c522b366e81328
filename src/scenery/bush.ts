import { drawBush } from './bush/draw.js';
import { BUSH_PARAMETERS } from './bush/parameters.js';
import { bushPlan } from './bush/plan.js';
import { family } from './family.js';

/**
 * A shrub: several stems from one foot under a rounded head of leaves. It is one piece with the
 * ground that it stands on, fit to cut, and keeps its character at another size.
 */
export const bush = family({
  name: 'bush',
  says: 'A rounded shrub: stems at its foot, leaves all round its rim, with berries or blossom.',
  stance: 'upright',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.36 }, height: { mm: 28 } },
  made: {
    cut: 'its leafy rim, the light in it and between its stems',
    scored: 'sprigs, and berries or blossom that are scored',
    embossed: 'berries or blossom that are raised',
  },
  parts: ['crown', 'stems', 'fruit'],
  parameters: BUSH_PARAMETERS,
  grow: (plot, values, random) =>
    drawBush(bushPlan(plot, values, random), plot, values, random.branch('draw')),
});
