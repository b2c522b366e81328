import type { Line, Region } from '../geometry/types.js';
import type { NarrowPlace } from '../geometry/width/webs.js';
import type { Stock } from '../scene/scene.js';
import type { GrowthFault, Relief } from '../scenery/family.js';
import type { Attached } from './attached.js';
import type { Score } from './score.js';
import type { Stencil } from './stencil-forms.js';

/** One panel composed. Panel coordinates: mm from the panel's top left, y down. */
export interface Panel {
  readonly number: number;
  readonly stock: Stock;
  /** Frame and scenery in one: what is left when all is cut. */
  readonly card: Region;
  readonly scores: readonly Score[];
  readonly reliefs: readonly Relief[];
  /** Pieces of their own that are glued to it. */
  readonly attached: readonly Attached[];
  /** Never cut: the panel's number as ticks on its left flap, the places of what is glued on. */
  readonly guides: readonly Line[];
  /** Webs that were narrower than the process allows and have been thickened. */
  readonly braces: readonly NarrowPlace[];
  /** What plates of board press of it, where the scene asks for them. */
  readonly stencils?: readonly Stencil[];
  /** What elements were asked for and could not draw. */
  readonly faults?: readonly GrowthFault[];
}
