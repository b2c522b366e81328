import { union } from '../../geometry/boolean/boolean.js';
import { contourArea, regionArea } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { circle } from '../../geometry/primitives.js';
import { reversed } from '../../geometry/transform.js';
import type { Cubics, Region } from '../../geometry/types.js';
import { stripsAlongNecks } from '../../geometry/width/strip.js';
import { narrowWebs } from '../../geometry/width/webs.js';

/** What may be left of a drawing. Lengths in mm. */
export interface Fineness {
  readonly smallestWeb: number;
  /** A disc of this diameter must go through a hole. */
  readonly smallestHole: number;
  /** A hole must be at least as large as a disc of this diameter, whatever its shape. */
  readonly eyelet: number;
}

/** The region with every crease between its parts rounded to `radiusMm`. */
export const creased = (region: Region, radiusMm: number): Region =>
  offset(offset(region, radiusMm), -radiusMm);

/**
 * Drops beside each other can leave a new neck between them, which the next round fills. Necks too
 * long for so many drops are filled along all their length after that.
 */
const ROUNDS = { drops: 8, strips: 4 } as const;
/** A drop's radius in smallest webs: broader than the web that it must become. */
const DROP = 0.66;

/** The region made fit to cut: its necks filled out with drops of card, its eyelets filled. */
export function tied(region: Region, fineness: Fineness): Region {
  const { smallestWeb } = fineness;
  let card = withoutEyelets(region, fineness);
  for (let round = 0; round < ROUNDS.drops + ROUNDS.strips; round++) {
    const filling =
      round < ROUNDS.drops ? dropsIn(card, smallestWeb) : stripsAlongNecks(card, smallestWeb);
    if (filling.length === 0) break;
    card = withoutEyelets(union([card, ...filling]), fineness);
  }
  return card;
}

const dropsIn = (card: Region, smallestWeb: number): Region[] =>
  narrowWebs(card, smallestWeb)
    .filter(({ kind }) => kind === 'neck')
    .map(({ at }) => circle(at.x, at.y, DROP * smallestWeb));

function withoutEyelets(region: Region, { smallestHole, eyelet }: Fineness): Region {
  const least = (Math.PI / 4) * eyelet ** 2;
  return {
    contours: region.contours.filter((contour) => {
      const area = contourArea(contour);
      return area > 0 || (-area > least && fits(contour, smallestHole));
    }),
  };
}

const fits = (hole: Cubics, discMm: number): boolean =>
  regionArea(offset({ contours: [reversed(hole)] }, -discMm / 2)) > 0;
