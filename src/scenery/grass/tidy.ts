import { union } from '../../geometry/boolean.js';
import { contourArea, regionArea } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset.js';
import { circle } from '../../geometry/primitives.js';
import { reversed } from '../../geometry/transform.js';
import type { Cubics, Region } from '../../geometry/types.js';
import { narrowWebs } from '../../geometry/webs.js';

/**
 * The region with every crease between its parts rounded to `radiusMm`, and with its eyelets filled:
 * the holes smaller than a disc of `eyeletMm` across, and those that one of `holeMm` does not fit in.
 */
export function tidied(region: Region, radiusMm: number, eyeletMm: number, holeMm: number): Region {
  const closed = offset(offset(region, radiusMm), -radiusMm);
  const smallest = (Math.PI / 4) * eyeletMm ** 2;
  return {
    contours: closed.contours.filter((contour) => {
      const area = contourArea(contour);
      return area > 0 || (-area > smallest && fits(contour, holeMm));
    }),
  };
}

const fits = (hole: Cubics, discMm: number): boolean =>
  regionArea(offset({ contours: [reversed(hole)] }, -discMm / 2)) > 0;

/** A drop's radius in smallest webs: broader than the web that it must become. */
const DROP = 0.66;
/** Parts that only just touch are joined by drops of card; each round of them may bare others. */
const ROUNDS = 4;

/** The region with its necks narrower than the smallest web filled out with drops of card. */
export function tied(region: Region, smallestWeb: number): Region {
  let card = region;
  for (let round = 0; round < ROUNDS; round++) {
    const necks = narrowWebs(card, smallestWeb).filter((place) => place.kind === 'neck');
    if (necks.length === 0) break;
    const drops = necks.map(({ at }) => circle(at.x, at.y, DROP * smallestWeb));
    card = union([card, ...drops]);
  }
  return card;
}
