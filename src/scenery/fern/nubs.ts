import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { contourArea } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { reversed } from '../../geometry/transform.js';
import type { Region } from '../../geometry/types.js';
import { rounded } from '../brick/craft.js';
import type { Plot } from '../family.js';

/** Radius that every tip must hold, in smallest webs: less than half of one, so that webs stay. */
const HELD = 0.4;
/** So near to the frame, in smallest holes, fillets of gaps are left as they are. */
const NEAR_FRAME = 1.5;

/** Without the stubs that are left of tips where the notch beside them had to be filled. */
export function withoutNubs(
  body: Region,
  holes: Region,
  plot: Plot,
): { body: Region; holes: Region } {
  const card = subtract(body, [holes]);
  const atFrame = intersect(card, offset(plot.frame.card, NEAR_FRAME * plot.smallestHole));
  const { contours } = union([rounded(card, HELD * plot.smallestWeb), atFrame]);
  return {
    body: { contours: contours.filter((c) => contourArea(c) > 0) },
    holes: { contours: contours.filter((c) => contourArea(c) < 0).map(reversed) },
  };
}
