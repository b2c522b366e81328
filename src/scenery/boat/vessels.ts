import { fishingBoat } from './fishing.js';
import type { Kind } from './kit.js';
import { narrowboat } from './narrowboat.js';
import { rowingBoat } from './rowing.js';
import { sailingBoat } from './sailing.js';
import type { Vessel } from './vessel.js';

/** The boats there are. */
export const VESSELS: Record<Kind, Vessel> = {
  narrowboat,
  rowing: rowingBoat,
  sailing: sailingBoat,
  fishing: fishingBoat,
};
