import { perspectiveOf, planeAt } from '../book/perspective.js';
import { intersect, subtract } from '../geometry/boolean/boolean.js';
import { regionArea } from '../geometry/measure.js';
import { moveRegion } from '../geometry/transform.js';
import { type Rule, rounded } from './finding.js';

/**
 * Share of what the bare windows would show of the backdrop that should stay open between the
 * scenery, in percent. Starting values, common practice, no source: below the one it is a thicket,
 * above the other an empty stage.
 */
const [LEAST, MOST] = [20, 85];

/** How much of the backdrop the reader sees between what grows in the windows. */
export const openView: Rule = ({ scene, book, panels }) => {
  if (scene.scenery.length === 0) return [];
  const view = perspectiveOf(book);
  const windows = book.panels.flatMap(({ window, depthMm }) =>
    window === null ? [] : [moveRegion(window.outline, planeAt(view, depthMm))],
  );
  const cards = panels
    .slice(0, -1)
    .map((panel, i) => moveRegion(panel.card, planeAt(view, book.panels[i].depthMm)));
  const bare = windows.reduce((seen, window) => intersect(seen, window));
  const percent = rounded((100 * regionArea(subtract(bare, cards))) / regionArea(bare));
  if (percent >= LEAST && percent <= MOST) return [];
  const isClosed = percent < LEAST;
  return [
    {
      rule: 'open-view',
      severity: 'hint',
      where: { scene: ['scenery'] },
      measured: percent,
      wanted: isClosed ? LEAST : MOST,
      unit: '%',
      message: `Scenery leaves ${percent} % of the view through all windows open: ${isClosed ? 'little of the depth is seen' : 'the stage looks empty'}.`,
      cure: isClosed
        ? 'Take scenery out of the middle, or make it lower.'
        : 'Let more grow into the windows.',
    },
  ];
};
