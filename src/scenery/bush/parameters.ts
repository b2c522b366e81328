import type { Parameters, ValuesOf } from '../../scene/parameter.js';

export const BUSH_PARAMETERS = {
  fruit: {
    kind: 'choice',
    options: ['none', 'berries', 'blossom'],
    default: 'none',
    says: 'What it bears: nothing, round berries or five-petalled blossom.',
  },
  raised: {
    kind: 'flag',
    default: false,
    says: 'Whether berries and blossom are embossed rather than scored.',
  },
  stems: {
    kind: 'number',
    default: 4,
    min: 2,
    max: 7,
    whole: true,
    says: 'How many stems show at its foot, as far as there is room for the light between them.',
  },
  clear: {
    kind: 'number',
    default: 0.17,
    min: 0.06,
    max: 0.4,
    says: 'Share of the height at which its leaves begin.',
  },
  light: {
    kind: 'number',
    default: 0.08,
    min: 0,
    max: 0.2,
    says: 'Share of sky that shows through its head.',
  },
} as const satisfies Parameters;

export type BushValues = ValuesOf<typeof BUSH_PARAMETERS>;
