import { rectangle } from '../../src/geometry/primitives.js';
import type { Plot } from '../../src/scenery/family.js';
import { TREE_PARAMETERS, type TreeValues } from '../../src/scenery/tree/parameters.js';

/** The habits that bear leaves in rounded or tiered masses; the others have tests of their own. */
export const HABIT_NAMES = ['broadleaf', 'conifer', 'willow', 'alder'] as const;

/** What a drag knife and a laser leave standing, and the smallest hole of each, in mm. */
export const KNIFE = { smallestWeb: 1.5, smallestHole: 2 };
export const LASER = { smallestWeb: 1, smallestHole: 1 };

export const plotOf = (over: Partial<Plot> = {}): Plot => ({
  side: 'sill',
  width: 62,
  height: 88,
  root: 8,
  ...KNIFE,
  fineness: 0.3,
  frame: {
    card: { contours: [] },
    bounds: { minX: -90, minY: -150, maxX: 90, maxY: 30 },
    window: rectangle(-75, -135, 150, 135),
  },
  ...over,
});

export const valuesOf = (over: Partial<TreeValues> = {}): TreeValues => ({
  habit: TREE_PARAMETERS.habit.default,
  lean: TREE_PARAMETERS.lean.default,
  trunk: TREE_PARAMETERS.trunk.default,
  girth: TREE_PARAMETERS.girth.default,
  light: TREE_PARAMETERS.light.default,
  exponent: TREE_PARAMETERS.exponent.default,
  ...over,
});
