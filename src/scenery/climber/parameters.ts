import type { Parameters, ValuesOf } from '../../scene/parameter.js';

export const CLIMBER_PARAMETERS = {
  kind: {
    kind: 'choice',
    options: ['ivy', 'rose', 'vine'],
    default: 'ivy',
    says: 'What climbs: ivy with berries, a rose with its blooms, or a vine with grapes.',
  },
  leaves: {
    kind: 'number',
    default: 1,
    min: 0.5,
    max: 1.5,
    says: 'How thickly it is in leaf, as a multiple of what is natural to it.',
  },
  bearing: {
    kind: 'number',
    default: 0.3,
    min: 0,
    max: 0.7,
    says: 'Share of the places that bear berries, blooms or grapes instead of a leaf.',
  },
  winding: {
    kind: 'number',
    default: 1,
    min: 0,
    max: 2,
    says: 'How far its stem winds off what it climbs, 0 for not at all.',
  },
} as const satisfies Parameters;

export type ClimberValues = ValuesOf<typeof CLIMBER_PARAMETERS>;
