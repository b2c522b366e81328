import type { Scene, Stock } from '../../src/scene/scene.js';

export const CARD: Stock = {
  name: 'slate',
  colour: '#3b4252',
  gramsPerM2: 240,
  caliperMm: 0.3,
  sheet: { name: 'A4', width: 210, height: 297 },
  margin: 6,
};

/** A plain scene by hand, for tests of the rooms behind the scene file. */
export function sceneWith(changes: Partial<Scene> = {}): Scene {
  const panels = changes.panels ?? 5;
  return {
    title: 'Tide pool',
    unit: 'mm',
    seed: 1,
    process: 'knife',
    panel: { width: 190, height: 135 },
    panels,
    spacing: 20,
    readingDistance: 400,
    windows: {
      first: { shape: 'rectangle', radius: 0, width: 105, height: 105 },
      step: { width: 10, height: 10 },
      hold: [],
    },
    spine: { tab: 12, scoring: 'both' },
    cards: Array.from({ length: panels }, () => CARD),
    spineCard: CARD,
    detail: 'coarse in front',
    ballMm: 1,
    scenery: [],
    backings: [],
    stencils: null,
    strokes: {},
    ...changes,
  };
}
