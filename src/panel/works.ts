import type { PanelPlan } from '../book/book.js';
import { intersect, subtract, union } from '../geometry/boolean/boolean.js';
import { rectangle } from '../geometry/primitives.js';
import { type Bounds, EMPTY_REGION, type Region } from '../geometry/types.js';
import type { SceneElement, Treatment, Work, Zone } from '../scene/scene.js';
import type { Growth } from '../scenery/family.js';

/** Where in the panel each kind of work is done of an element; none of them overlap. */
export type Works = Readonly<Record<Work, Region>>;

/** Larger than any panel: half planes are drawn as boxes of this size, mm. */
export const FAR_MM = 5000;
export const EVERYWHERE = rectangle(-FAR_MM, -FAR_MM, 2 * FAR_MM, 2 * FAR_MM);

/**
 * Cut in the window, and on the frame as its key `frame` says, unless it stands on one of the two
 * alone; then its treatments, later ones over earlier ones.
 * @param box round the element, foot left out; halves and quarters are of it, as the reader sees.
 */
export function worksOf(
  element: SceneElement,
  { parts = {} }: Pick<Growth, 'parts'>,
  box: Bounds,
  plan: PanelPlan,
): Works {
  const window = plan.window?.outline ?? EMPTY_REGION;
  const frame = subtract(EVERYWHERE, [window]);
  let works: Works = {
    cut: EMPTY_REGION,
    score: EMPTY_REGION,
    raise: EMPTY_REGION,
    sink: EMPTY_REGION,
    none: EMPTY_REGION,
  };
  const treat = (region: Region, work: Work) => {
    works = treated(works, region, work);
  };
  treat(window, element.stands === 'frame' ? 'none' : 'cut');
  treat(frame, element.stands === 'window' ? 'none' : element.frame);
  const zone = (part: Treatment['part']): Region => {
    if (part === 'window') return window;
    if (part === 'frame') return frame;
    return parts[part] ?? boxShare(part as Zone, box);
  };
  for (const { part, work } of element.treat) treat(zone(part), work);
  return works;
}

function treated(works: Works, region: Region, work: Work): Works {
  if (region.contours.length === 0) return works;
  const without = (other: Region) => subtract(other, [region]);
  return {
    cut: without(works.cut),
    score: without(works.score),
    raise: without(works.raise),
    sink: without(works.sink),
    none: without(works.none),
    [work]: union([without(works[work]), region]),
  };
}

/** A half or a quarter, reaching on beyond the box; nothing for a part that is not drawn here. */
function boxShare(zone: Zone, { minX, minY, maxX, maxY }: Bounds): Region {
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const words = zone.split(' ');
  if (!words.includes('half') && !words.includes('quarter')) return EMPTY_REGION;
  const left = words.includes('right') ? x : -FAR_MM;
  const right = words.includes('left') ? x : FAR_MM;
  const top = words.includes('lower') ? y : -FAR_MM;
  const foot = words.includes('upper') ? y : FAR_MM;
  return rectangle(left, top, right - left, foot - top);
}

/** What of an element's body is really there: where it is cut, and on the frame where it is pressed. */
export function standing(body: Region, works: Works, plan: PanelPlan): Region {
  const isPlain = works.none.contours.length === 0 && plan.window !== null;
  const notCut = [works.score, works.raise, works.sink].map((work) =>
    plan.window === null ? EMPTY_REGION : intersect(work, plan.window.outline),
  );
  if (isPlain && notCut.every(({ contours }) => contours.length === 0)) return body;
  return subtract(body, [works.none, ...notCut]);
}
