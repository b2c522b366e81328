import type { Growth, Plot } from '../family.js';
import type { Random } from '../random.js';
import { alderPlan, alderPlot } from './alder.js';
import type { Branch } from './branches.js';
import { broadleafPlan } from './broadleaf.js';
import { coniferBranches, coniferPlan, drawConifer } from './conifer.js';
import { drawLeafy, leafyBranches } from './leafy.js';
import type { TreeValues } from './parameters.js';
import { drawWillow, willowBranches } from './weeping.js';
import { willowPlan } from './willow.js';

/** A kind of tree. The same plot, values and random stream give the same tree to both. */
export interface Habit {
  /** Its wood as planned: trunk first, parents before children; twigs may end in leaves. */
  branches(plot: Plot, values: TreeValues, random: Random): Branch[];
  draw(plot: Plot, values: TreeValues, random: Random): Growth;
}

export const HABITS: Readonly<Record<TreeValues['habit'], Habit>> = {
  broadleaf: {
    branches: (plot, values, random) =>
      leafyBranches(broadleafPlan(plot, values, random), plot, values.exponent),
    draw: (plot, values, random) =>
      drawLeafy(broadleafPlan(plot, values, random), plot, values, random.branch('draw')),
  },
  alder: {
    branches: (plot, values, random) => {
      const own = alderPlot(plot);
      return leafyBranches(alderPlan(own, values, random), own, values.exponent);
    },
    draw: (plot, values, random) => {
      const own = alderPlot(plot);
      return drawLeafy(alderPlan(own, values, random), own, values, random.branch('draw'));
    },
  },
  conifer: {
    branches: (plot, values, random) =>
      coniferBranches(coniferPlan(plot, values, random), plot, values.exponent),
    draw: (plot, values, random) =>
      drawConifer(coniferPlan(plot, values, random), plot, values, random.branch('draw')),
  },
  willow: {
    branches: (plot, values, random) =>
      willowBranches(willowPlan(plot, values, random), plot, values.exponent),
    draw: (plot, values, random) =>
      drawWillow(willowPlan(plot, values, random), plot, values, random.branch('draw')),
  },
};
