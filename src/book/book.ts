import type { Bounds, Region } from '../geometry/types.js';
import type { Stock, WindowShape } from '../scene/scene.js';

/** Every number of the structure. Panel coordinates: mm from the panel's top left, y down. */
export interface Book {
  readonly title: string;
  /** The closed block: width from outer fold to outer fold, height of panels and spine. */
  readonly width: number;
  readonly height: number;
  readonly spacing: number;
  readonly readingDistance: number;
  readonly panels: readonly PanelPlan[];
  readonly spine: SpinePlan;
  /** Windows, scenery and texture stay in this box: clear of the hinges and of the edges. */
  readonly keep: Bounds;
}

export interface PanelPlan {
  /** 1 = front. */
  readonly number: number;
  /** How far it hangs behind the front panel in the open book. */
  readonly depthMm: number;
  readonly card: Stock;
  /** The uncut card with its two flaps. */
  readonly blank: Region;
  /** Null on the backdrop. */
  readonly window: WindowPlan | null;
  readonly hinge: HingePlan;
}

export interface WindowPlan {
  readonly shape: WindowShape;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly outline: Region;
}

/** The two upright scores at which a panel's flaps fold, as seen from the front. */
export interface HingePlan {
  readonly leftX: number;
  readonly rightX: number;
  /** Flaps fold back (mountain) on every panel but the backdrop, whose flaps fold forward. */
  readonly fold: FoldKind;
}

export type FoldKind = 'mountain' | 'valley';

/** One concertina strip; the left and the right one are alike. */
export interface SpinePlan {
  readonly pitchMm: number;
  /** Inside angle between neighbouring faces when the book stands open at its spacing. */
  readonly angleDeg: number;
  readonly cells: number;
  readonly faces: number;
  readonly tabMm: number;
  /** The folds between faces, front to back, seen from outside: mountain first. */
  readonly folds: readonly FoldKind[];
  /** How far the outer folds stand out beyond the inner ones in the open book. */
  readonly reachMm: number;
  readonly lengthMm: number;
  readonly scoring: 'both' | 'front';
  readonly card: Stock;
}
