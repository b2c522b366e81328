import { PARTS } from './parts.js';

/** What brick and stone on a frame can both be told; `one` is a single brick or stone. */
export const masonry = (material: string, one: string) =>
  ({
    part: {
      kind: 'choice',
      options: PARTS,
      default: 'all',
      says: `Which part of the frame is built of ${material}.`,
    },
    work: {
      kind: 'choice',
      options: ['score', 'raise', 'sink'],
      default: 'score',
      says: `Joints as score lines, or each ${one} pressed up or down.`,
    },
    coverage: {
      kind: 'number',
      default: 0.5,
      min: 0.1,
      max: 1,
      says: `Share of the wall whose joints are drawn; 0.4 to 0.6 suggests ${material} best.`,
    },
  }) as const;
