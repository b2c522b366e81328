import { subtract } from '../../geometry/boolean/boolean.js';
import type { Cubics, Region } from '../../geometry/types.js';
import { limb } from '../limb.js';
import type { Branch } from './branches.js';

/** Bark that cutting has rounded off belongs to the trunk all the same. */
const BARK = 1.1;

/** The trunk up to its first fork with its spreading foot, and all the rest as the crown. */
export function partsOf(
  card: Region,
  trunk: Branch,
  collar: Cubics,
): { readonly crown: Region; readonly trunk: Region } {
  const stem = limb(trunk.points.map((p) => ({ ...p, thickness: BARK * trunk.thickness })));
  const crown = subtract(card, [{ contours: [stem] }, { contours: [collar] }]);
  return { crown, trunk: subtract(card, [crown]) };
}
