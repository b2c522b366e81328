import { family } from './family.js';
import { HABITS } from './tree/habits.js';
import { TREE_PARAMETERS } from './tree/parameters.js';

/**
 * A tree cut so that its boughs cross the light between its leaves. It is one piece from root to
 * tip, fit to cut, and keeps its character when it is drawn at another size from the same stream.
 * Leaves reach beyond the plot by a tenth of its width at most, and by less at the top.
 */
export const tree = family({
  name: 'tree',
  says: 'A tree whose boughs show in the gaps of its leaves: broadleaf, conifer, willow, palm, or bare in winter.',
  stance: 'upright',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 0.5 }, height: { share: 0.75 } },
  made: {
    cut: 'trunk, crown and the sky between the leaves',
    scored: 'bark, ribs of leaves and boughs within the crown',
    embossed: null,
  },
  parts: ['crown', 'trunk'],
  parameters: TREE_PARAMETERS,
  grow: (plot, values, random) => HABITS[values.habit].draw(plot, values, random),
});
