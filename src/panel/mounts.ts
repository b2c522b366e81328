import { components } from '../geometry/components.js';
import { regionArea, regionBounds } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { polyline } from '../geometry/pen.js';
import { rectangle } from '../geometry/primitives.js';
import type { Line, Region } from '../geometry/types.js';
import type { Attached } from './attached.js';
import type { Score } from './score.js';

/** A mount's own card, in coordinates of its own. */
export interface MountPiece {
  readonly name: string;
  readonly copies: number;
  readonly card: Region;
  readonly scores: readonly Score[];
}

/** A pad stays this far within the glue zone where that leaves this much of it (mm2). */
const PAD_INSET_MM = 1;
const LEAST_PAD_MM2 = 8;
/** Leaf at each end of a spacer that is glued, and its usual breadth, mm. */
const LEAF_MM = 6;
const SPACER_MM = 10;
/** Two strips fold against each other and so do not lean. */
const SPACERS = 2;

/** How many layers of the piece's own card make up the pad. */
export const padLayers = ({ standOffMm, stock }: Pick<Attached, 'standOffMm' | 'stock'>): number =>
  Math.max(1, Math.round(standOffMm / stock.caliperMm));

/** What holds a loose piece off its panel, to be cut from the same card as the piece. */
export function mountPieces(attached: Attached): MountPiece[] {
  switch (attached.mount) {
    case 'flat':
      return [];
    case 'pad':
      return pads(attached);
    case 'spacer':
      return [spacer(attached)];
  }
}

/** A stack of layers under each part of the glue zone that has room for one. */
function pads(attached: Attached): MountPiece[] {
  const roomy = (region: Region) =>
    components(region).filter((part) => regionArea(part) >= LEAST_PAD_MM2);
  const inset = offset(attached.glue, -PAD_INSET_MM);
  const zones = roomy(inset).length > 0 ? roomy(inset) : roomy(offset(inset, PAD_INSET_MM));
  return zones.map((card, i) => ({
    name: `${attached.name}-pad${zones.length > 1 ? `-${i + 1}` : ''}`,
    copies: attached.copies * padLayers(attached),
    card,
    scores: [],
  }));
}

/** A strip folded like a Z: a leaf on the panel, a wall, a leaf on the piece. */
function spacer(attached: Attached): MountPiece {
  const { minX, maxX } = regionBounds(attached.glue);
  const breadth = Math.min(SPACER_MM, Math.max(3, (maxX - minX) / 2));
  const wall = attached.standOffMm;
  const across = (y: number): Line =>
    polyline([
      { x: 0, y },
      { x: breadth, y },
    ]);
  return {
    name: `${attached.name}-spacer`,
    copies: attached.copies * SPACERS,
    card: rectangle(0, 0, breadth, 2 * LEAF_MM + wall),
    scores: [
      { line: across(LEAF_MM), kind: 'mountain' },
      { line: across(LEAF_MM + wall), kind: 'valley' },
    ],
  };
}
