import type { Growth, Plot } from '../family.js';
import type { Random } from '../random.js';
import { alderPlan, alderPlot } from './alder.js';
import { birchPlan, birchPlot } from './birch.js';
import type { Branch } from './branches.js';
import { broadleafPlan } from './broadleaf.js';
import { coniferBranches, coniferPlan, drawConifer } from './conifer.js';
import { drawLeafy, type LeafyPlan, leafyBranches } from './leafy.js';
import { drawPalm, palmPlan, palmPlot } from './palm.js';
import type { TreeValues } from './parameters.js';
import { poplarPlan, poplarPlot } from './poplar.js';
import { drawWillow, willowBranches } from './weeping.js';
import { willowPlan } from './willow.js';
import { drawWinter, winterBranches, winterPlan, winterPlot } from './winter.js';

/** A kind of tree. The same plot, values and random stream give the same tree to both. */
export interface Habit {
  /** Its wood as planned: trunk first, parents before children; twigs may end in leaves. */
  branches(plot: Plot, values: TreeValues, random: Random): Branch[];
  draw(plot: Plot, values: TreeValues, random: Random): Growth;
}

/** A leafy tree that is planned by `planned` on the part of its plot that `own` takes. */
const leafy = (
  planned: (plot: Plot, values: TreeValues, random: Random) => LeafyPlan,
  own: (plot: Plot) => Plot = (plot) => plot,
): Habit => ({
  branches: (plot, values, random) =>
    leafyBranches(planned(own(plot), values, random), own(plot), values.exponent),
  draw: (plot, values, random) =>
    drawLeafy(planned(own(plot), values, random), own(plot), values, random.branch('draw')),
});

export const HABITS: Readonly<Record<TreeValues['habit'], Habit>> = {
  broadleaf: leafy(broadleafPlan),
  alder: leafy(alderPlan, alderPlot),
  birch: leafy(birchPlan, birchPlot),
  poplar: leafy(poplarPlan, poplarPlot),
  palm: {
    branches: (plot, values, random) => [palmPlan(palmPlot(plot), values, random).trunk],
    draw: (plot, values, random) => {
      const own = palmPlot(plot);
      return drawPalm(palmPlan(own, values, random), own, values, random.branch('draw'));
    },
  },
  winter: {
    branches: (plot, values, random) => {
      const own = winterPlot(plot);
      return winterBranches(winterPlan(own, values, random), own, values.exponent);
    },
    draw: (plot, values, random) => {
      const own = winterPlot(plot);
      return drawWinter(winterPlan(own, values, random), own, values, random.branch('draw'));
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
