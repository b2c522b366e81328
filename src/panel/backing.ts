import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { components } from '../geometry/components.js';
import { contourArea, regionArea } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { EMPTY_REGION, type Region } from '../geometry/types.js';
import type { Backing } from '../scene/scene.js';
import type { Attached } from './attached.js';
import type { Drawn } from './draw.js';
import { glueZone, pieceName } from './loose.js';
import { keepBox, type Setting } from './place/place.js';

/** A backing ends this far within the card that hides it. */
const HIDDEN_MM = 0.5;

/**
 * The pieces of one backing in one panel: one for each hole, or for several that lie near each
 * other. All but what lies behind the holes is hidden by the panel's card.
 * @param drawn the elements cut into the panel.
 * @param gluable where the panel's finished card takes glue.
 */
export function backingPieces(
  { book, plan, limits }: Setting,
  backing: Backing,
  drawn: readonly Drawn[],
  panelCard: Region,
  gluable: Region,
): Attached[] {
  if (plan.window === null) return [];
  const openings = subtract(openedBy(backing, drawn, plan.window.outline), [panelCard]);
  const hidden = union([openings, offset(panelCard, -HIDDEN_MM)]);
  const wide = intersect(offset(openings, backing.glue), keepBox(book));
  // The opening itself closes the hair's breadth along its edge that the card's inset leaves.
  const card = intersect(wide, offset(offset(hidden, HIDDEN_MM), -HIDDEN_MM));
  // Strips that the process cannot hold are left off, and scraps behind no hole worth the name.
  const stout = offset(offset(card, -limits.smallestWeb / 2), limits.smallestWeb / 2);
  const parts = components(stout).filter(
    (part) => regionArea(intersect(part, openings)) > limits.smallestHole ** 2,
  );
  return parts.map((part, i) => ({
    name: pieceName(backing.id, plan.number, parts.length > 1 ? `${i + 1}` : ''),
    panel: plan.number,
    kind: 'backing',
    place: 'behind',
    mount: 'flat',
    standOffMm: 0,
    stock: backing.card,
    copies: 1,
    card: part,
    scores: [],
    reliefs: [],
    glue: glueZone(part, gluable),
    mark: backing.mark,
  }));
}

function openedBy({ behind, part }: Backing, drawn: readonly Drawn[], window: Region): Region {
  if (behind === null) return window;
  const own = drawn.filter(({ element }) => element.id === behind);
  const holes = own.map(({ growth }) =>
    part === null ? growth.holes : intersect(growth.holes, filled(growth.parts?.[part])),
  );
  return intersect(union(holes), window);
}

/** A part with its holes, which are what a backing is wanted for. */
const filled = (part: Region = EMPTY_REGION): Region => ({
  contours: part.contours.filter((contour) => contourArea(contour) > 0),
});
