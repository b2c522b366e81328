import type { Parameters, ValuesOf } from '../../scene/parameter.js';

export const TREE_PARAMETERS = {
  habit: {
    kind: 'choice',
    options: ['broadleaf', 'conifer', 'willow', 'alder', 'birch', 'poplar', 'palm', 'winter'],
    default: 'broadleaf',
    says: 'The kind of tree: round-headed, tiered, weeping, slender with a straight trunk, slender with hanging locks, a flame, a palm, or bare.',
  },
  lean: {
    kind: 'number',
    default: 0,
    min: -20,
    max: 20,
    says: 'Degrees that the trunk leans to the right, on top of the lean natural to the tree.',
  },
  trunk: {
    kind: 'number',
    default: 0.25,
    min: 0.08,
    max: 0.5,
    says: 'Share of the height that the trunk rises clear before it branches.',
  },
  girth: {
    kind: 'number',
    default: 1,
    min: 0.6,
    max: 1.6,
    says: 'How stout the trunk is, as a multiple of what is natural to the tree.',
  },
  light: {
    kind: 'number',
    default: 0.2,
    min: 0.12,
    max: 0.26,
    says: 'Share of sky that shows through the crown; of a palm or a bare tree, how wide apart its leaflets or twigs stand.',
  },
  exponent: {
    kind: 'number',
    default: 2,
    min: 1.8,
    max: 2.3,
    says: "Exponent of Leonardo's rule: the higher, the thicker the boughs for the same trunk; a palm has none.",
  },
} as const satisfies Parameters;

export type TreeValues = ValuesOf<typeof TREE_PARAMETERS>;
