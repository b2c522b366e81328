import type { Region } from '../geometry/types.js';
import type { PlaceMark, Stock } from '../scene/scene.js';
import type { Relief } from '../scenery/family.js';
import type { Score } from './score.js';

/** A piece of its own that is glued to a panel; coordinates are the panel's. */
export interface Attached {
  /** Such as `fish-p2`; unique in the book. */
  readonly name: string;
  readonly panel: number;
  /** A backing's card shows only through the holes that it lies behind. */
  readonly kind: 'loose' | 'backing';
  readonly place: 'front' | 'behind';
  /** How far its mount holds it off the panel, mm. */
  readonly standOffMm: number;
  readonly mount: 'flat' | 'pad' | 'spacer';
  readonly stock: Stock;
  readonly copies: number;
  readonly card: Region;
  readonly scores: readonly Score[];
  readonly reliefs: readonly Relief[];
  /** Where it lies on the panel's card and is glued, clear of both their edges. */
  readonly glue: Region;
  readonly mark: PlaceMark;
}
