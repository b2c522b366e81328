import type { Detail, Scene, SceneElement } from '../../scene/scene.js';

const SAID: Readonly<Record<Exclude<Detail, 'auto'>, number>> = { coarse: 0, medium: 0.5, fine: 1 };

/** How fine an element is drawn in a panel, 0 coarse to 1 fine: as said, or by the book's order. */
export function finenessOf(
  { detail, panels }: Scene,
  element: SceneElement,
  panel: number,
): number {
  if (element.detail !== 'auto') return SAID[element.detail];
  const depth = (panel - 1) / (panels - 1);
  switch (detail) {
    case 'coarse in front':
      return depth;
    case 'fine in front':
      return 1 - depth;
    case 'even':
      return SAID.medium;
  }
}
