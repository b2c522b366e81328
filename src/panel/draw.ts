import type { Book, PanelPlan } from '../book/book.js';
import { rectangle } from '../geometry/primitives.js';
import { moveLine, moveRegion } from '../geometry/transform.js';
import type { Region } from '../geometry/types.js';
import type { ProcessLimits, Scene, SceneElement } from '../scene/scene.js';
import type { Family, Growth } from '../scenery/family.js';
import { randomFrom } from '../scenery/random.js';
import { carriedShare, carriedValues } from './carry.js';
import { placeElement } from './place.js';

/** An element drawn for one panel, in panel coordinates. */
export interface Drawn {
  readonly element: SceneElement;
  readonly growth: Growth;
  /** All that lies on the window's side of its foot: what of it may be pressed on the frame. */
  readonly aboveGround: Region;
}

/** Larger than any panel: half planes are drawn as boxes of this size, mm. */
const FAR_MM = 5000;

/**
 * Draws one element in one panel. Its random stream follows from the scene's seed and the
 * element's own id and seed alone: neither other elements nor the panel's number disturb it, so
 * that an element carried through several panels stays kin.
 */
export function drawElement(
  scene: Scene,
  book: Book,
  plan: PanelPlan,
  element: SceneElement,
  family: Family,
  limits: ProcessLimits,
): Drawn {
  const { plot, toPanel } = placeElement(book, plan, element, family, limits);
  const values = carriedValues(element, carriedShare(book, element, plan.number));
  const random = randomFrom(scene.seed, element.id, element.seed);
  const grown = family.grow(plot, values, random);
  return {
    element,
    growth: {
      body: moveRegion(grown.body, toPanel),
      holes: moveRegion(grown.holes, toPanel),
      scores: grown.scores.map((line) => moveLine(line, toPanel)),
      reliefs: grown.reliefs.map((r) => ({ ...r, region: moveRegion(r.region, toPanel) })),
    },
    aboveGround: moveRegion(rectangle(-FAR_MM, -FAR_MM, 2 * FAR_MM, FAR_MM), toPanel),
  };
}
