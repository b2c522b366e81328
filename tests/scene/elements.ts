import type { ElementDescription } from '../../src/scene/parameter.js';

/** Two made-up elements, with a parameter of every kind. */
export const hedge: ElementDescription = {
  name: 'hedge',
  says: 'A hedge along a towpath.',
  sides: ['sill'],
  defaultSide: 'sill',
  defaultSize: { width: { share: 1 }, height: { mm: 30 } },
  made: { cut: 'its outline', scored: null, embossed: null },
  parameters: {
    form: {
      kind: 'choice',
      says: 'Clipped or left to grow.',
      options: ['clipped', 'loose'],
      default: 'clipped',
    },
    batter: { kind: 'number', says: 'Lean of its faces in degrees.', default: 3, min: 0, max: 10 },
    stems: { kind: 'number', whole: true, says: 'Number of stems.', default: 4, min: 0, max: 20 },
    bumps: { kind: 'length', says: 'Depth of its bumps.', default: 0.5, min: 0.1, max: 5 },
    flowers: { kind: 'flag', says: 'In flower.', default: false },
  },
};

export const tree: ElementDescription = {
  name: 'tree',
  says: 'A tree.',
  sides: ['sill', 'left', 'right'],
  defaultSide: 'left',
  defaultSize: { width: { mm: 40 }, height: { share: 0.8 } },
  made: { cut: 'its outline', scored: null, embossed: null },
  parameters: {
    lean: { kind: 'number', says: 'Lean in degrees.', default: 5, min: -30, max: 30 },
  },
};

export const elements: readonly ElementDescription[] = [hedge, tree];
