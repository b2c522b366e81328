import type { PanelPlan } from '../book/book.js';
import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { shortestBridge } from '../geometry/bridge.js';
import { components } from '../geometry/components.js';
import { contourArea, regionArea } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { reversed } from '../geometry/transform.js';
import type { Cubics, Region } from '../geometry/types.js';
import type { ProcessLimits } from '../scene/scene.js';
import type { Drawn } from './draw.js';

/** Holes of more than this many smallest holes' area are openings, however thin they run out. */
const OPENING_HOLES = 12;

/**
 * Closes holes that cannot be cut, too small or too thin throughout: they come from edges that
 * barely fail to meet.
 */
export function fillEyelets(card: Region, limits: ProcessLimits): Region {
  const smallestMm2 = (Math.PI / 4) * limits.smallestHole ** 2;
  return {
    contours: card.contours.filter((contour) => {
      const holeMm2 = -contourArea(contour);
      if (holeMm2 < 0 || holeMm2 > OPENING_HOLES * smallestMm2) return true;
      return holeMm2 >= smallestMm2 && takesTool(contour, limits.smallestSlot);
    }),
  };
}

/** Whether a circle of `slotMm` fits somewhere into the hole. */
const takesTool = (hole: Cubics, slotMm: number): boolean =>
  regionArea(offset({ contours: [reversed(hole)] }, -slotMm / 2)) > 0;

/** Splits card into the part that holds the frame and the parts that would fall out of it. */
export function dropOutsOf(card: Region): { held: Region; dropOuts: Region[] } {
  const [held, ...dropOuts] = components(card);
  return { held, dropOuts };
}

/**
 * Deals with parts that would fall out as the elements they belong to ask: bridged to the frame,
 * dropped, or left for the check to report. Crumbs smaller than the smallest web squared are
 * dropped in any case: no process can cut them, they are waste.
 */
export function healDropOuts(
  card: Region,
  plan: PanelPlan,
  drawn: readonly Drawn[],
  limits: ProcessLimits,
): Region {
  const split = dropOutsOf(card);
  let held = split.held;
  const left: Region[] = [];
  for (const part of split.dropOuts) {
    if (regionArea(part) < limits.smallestWeb ** 2) continue;
    const heal = ownerOf(part, drawn)?.element.heal ?? 'error';
    if (heal === 'drop') continue;
    const bridge = heal === 'bridge' ? shortestBridge(part, held, limits.smallestWeb) : null;
    if (bridge === null) left.push(part);
    else held = union([held, part, withinBlank(bridge.bridge, plan)]);
  }
  return left.length === 0 ? held : { contours: [held, ...left].flatMap((r) => r.contours) };
}

const withinBlank = (bridge: Region, plan: PanelPlan): Region => intersect(bridge, plan.blank);

/** The element whose body covers most of the part. */
function ownerOf(part: Region, drawn: readonly Drawn[]): Drawn | undefined {
  let best: Drawn | undefined;
  let bestArea = 0;
  for (const candidate of drawn) {
    const area = regionArea(part) - regionArea(subtract(part, [candidate.growth.body]));
    if (area > bestArea) {
      best = candidate;
      bestArea = area;
    }
  }
  return best;
}
