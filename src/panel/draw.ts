import { intersect } from '../geometry/boolean/boolean.js';
import { regionBounds } from '../geometry/measure.js';
import { rectangle } from '../geometry/primitives.js';
import { type Affine, moveLine, moveRegion } from '../geometry/transform.js';
import type { Region } from '../geometry/types.js';
import type { SceneElement } from '../scene/scene.js';
import type { Family, Growth, Plot } from '../scenery/family.js';
import { randomFrom } from '../scenery/random.js';
import { carriedValues } from './carry.js';
import { type Placement, placeElement, type Setting } from './place/place.js';
import { shareOf } from './place/room.js';
import { FAR_MM, standing, type Works, worksOf } from './works.js';

/** An element drawn for one panel, in panel coordinates. */
export interface Drawn {
  readonly element: SceneElement;
  /** Tells several of one element apart; empty for the only one. */
  readonly key: string;
  readonly growth: Growth;
  readonly works: Works;
  /** What of its body hides what is behind it, and closes holes there. */
  readonly standing: Region;
  /** All that lies on the window's side of its foot: what of it may be pressed on the frame. */
  readonly aboveGround: Region;
}

/**
 * Draws one element in one panel, once for each of its places there. Its random stream follows
 * from the scene's seed and the element's own id and seed alone: neither other elements nor the
 * panel's number disturb it, so that an element carried through several panels stays kin.
 */
export function drawElement(setting: Setting, element: SceneElement, family: Family): Drawn[] {
  const { scene, book, plan } = setting;
  const values = carriedValues(element, shareOf(book, element, plan.number));
  return placeElement(setting, element, family).map(({ plot, toPanel, key }) => {
    const luck = key === '' ? [] : [key];
    const random = randomFrom(scene.seed, element.id, element.seed, ...luck);
    const growth = moved(family.grow(plot, values, random), toPanel);
    const works = worksOf(element, growth, boxIn(plot, toPanel, family), plan);
    return {
      element,
      key,
      growth,
      works,
      standing: standing(growth.body, works, plan),
      aboveGround: moveRegion(rectangle(-FAR_MM, -FAR_MM, 2 * FAR_MM, FAR_MM), toPanel),
    };
  });
}

const moved = (grown: Growth, toPanel: Placement['toPanel']): Growth => ({
  body: moveRegion(grown.body, toPanel),
  holes: moveRegion(grown.holes, toPanel),
  scores: grown.scores.map((line) => moveLine(line, toPanel)),
  reliefs: grown.reliefs.map((r) => ({ ...r, region: moveRegion(r.region, toPanel) })),
  ...(grown.pierced ? { pierced: moveRegion(grown.pierced, toPanel) } : {}),
  ...(grown.faults ? { faults: grown.faults } : {}),
  ...(grown.parts === undefined
    ? {}
    : {
        parts: Object.fromEntries(
          Object.entries(grown.parts).map(([name, part]) => [name, moveRegion(part, toPanel)]),
        ),
      }),
});

/** The box that an element was given, in panel coordinates. */
function boxIn(plot: Plot, toPanel: Affine, { stance }: Family) {
  if (stance === 'frame') return regionBounds(moveRegion(plot.frame.card, toPanel));
  const box = rectangle(-plot.width / 2, -plot.height, plot.width, plot.height);
  return regionBounds(moveRegion(box, toPanel));
}

/** What of it is cut out as card in the window, and the holes that go through it there. */
export const cutOf = ({ growth, works }: Drawn) => ({
  body: intersect(growth.body, works.cut),
  holes: intersect(growth.holes, works.cut),
});
