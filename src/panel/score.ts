import type { FoldKind } from '../book/book.js';
import type { Line } from '../geometry/types.js';

/** A line pressed, not cut: a fold, or a drawn detail that must stay weaker than a fold. */
export interface Score {
  readonly line: Line;
  readonly kind: FoldKind | 'detail';
  /**
   * The face it is worked from where that does not follow from its kind. `cut`: it goes through the
   * card, so it is worked from whichever face the card is cut from.
   */
  readonly face?: 'back' | 'cut';
}
