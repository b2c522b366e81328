import type { Parameters, ValuesOf } from '../../scene/parameter.js';

export const IVY_PARAMETERS = {
  leaf: {
    kind: 'choice',
    options: ['ivy', 'vine'],
    default: 'ivy',
    says: 'The shape of its leaves: ivy with blunt lobes, or vine with toothed ones.',
  },
  strands: {
    kind: 'number',
    default: 0.75,
    min: 0,
    max: 1,
    says: 'How many strands trail from the band, from none to as many as there is room for.',
  },
  band: {
    kind: 'number',
    default: 0.35,
    min: 0.15,
    max: 0.7,
    says: 'Share of the height that the band of leaves along the edge takes up.',
  },
  uneven: {
    kind: 'number',
    default: 0.5,
    min: 0,
    max: 1,
    says: 'How much the strands differ in length.',
  },
} as const satisfies Parameters;

export type IvyValues = ValuesOf<typeof IVY_PARAMETERS>;
