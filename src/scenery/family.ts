import type { ImportedDrawing } from '../geometry/svg/import.js';
import type { Bounds, Line, Region } from '../geometry/types.js';
import type { ElementDescription, Parameters, Side, ValuesOf } from '../scene/parameter.js';
import type { LetterFont } from './lettering/read-font.js';
import type { Random } from './random.js';

/**
 * The room an element is given, in the element's own coordinates: the origin is the middle of its
 * foot on the window's edge, x runs along the edge, y is negative into the window and positive
 * into the frame that it is rooted in. Lengths in mm.
 */
export interface Plot {
  readonly side: Side;
  /** Along the edge; the element keeps to -width/2 .. width/2, leaves and twigs a little beyond. */
  readonly width: number;
  /** How far into the window it reaches. */
  readonly height: number;
  /** How far into the frame its foot must run so that it is held (y from 0 to root). */
  readonly root: number;
  /** Narrowest card the process may leave, and smallest hole it can cut. */
  readonly smallestWeb: number;
  readonly smallestHole: number;
  /** Narrowest slot it can cut; as wide as the smallest hole where it is not said. */
  readonly smallestSlot?: number;
  /** How fine its detail is: 0 coarse, 0.5 middling, 1 fine. The process's limits hold for all. */
  readonly fineness: number;
  /** What a file that the element names holds: a drawing, or a font of the maker's own. */
  readonly drawing?: ImportedDrawing;
  readonly font?: LetterFont;
  /** The card round the window in the same coordinates, hinge margins taken off. */
  readonly frame: { readonly card: Region; readonly bounds: Bounds; readonly window: Region };
}

/** What an element draws, in its plot's coordinates. */
export interface Growth {
  /** Card: kept where it stands in the window. */
  readonly body: Region;
  /** Cut out of the body. */
  readonly holes: Region;
  /** Detail lines on the body and on the frame. */
  readonly scores: readonly Line[];
  /** Areas to press, raised or sunk. */
  readonly reliefs: readonly Relief[];
  /** The places of its named parts, each a name of the family's `parts`. */
  readonly parts?: Readonly<Record<string, Region>>;
  /** Cut through the card of the frame, clear of its hinges and edges. */
  readonly pierced?: Region;
  /** What it was asked for and could not draw. */
  readonly faults?: readonly GrowthFault[];
}

/** Something that an element could not draw as asked, for the maker. */
export interface GrowthFault {
  readonly severity: 'error' | 'warning';
  readonly message: string;
  readonly cure: string;
  readonly measuredMm: number;
  readonly wantedMm: number;
}

export interface Relief {
  readonly region: Region;
  readonly side: 'raised' | 'sunk';
  readonly depthMm: number;
  /** Strokes of a pattern that it is pressed with, in place of its outline. */
  readonly strokes?: readonly Line[];
}

/** A kind of scenery: what it can be told and how it is drawn. */
export interface Family<P extends Parameters = Parameters> extends ElementDescription {
  readonly parameters: P;
  /**
   * How it lies to its side. `turned`: its foot is turned to the side it grows from. `upright`: it
   * stands upright whatever the side; on a jamb its axis (x = 0) stands on the jamb's edge.
   * `frame`: it works the frame all round; its plot spans the whole panel, origin at the window's
   * centre foot, and what of its body stands in the window is added to the card.
   */
  readonly stance: 'turned' | 'upright' | 'frame';
  grow(plot: Plot, values: ValuesOf<P>, random: Random): Growth;
}

/** Keeps the parameters' own types while a family is written down. */
export const family = <const P extends Parameters>(definition: Family<P>): Family<P> => definition;
