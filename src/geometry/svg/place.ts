import type { Affine } from '../transform.js';
import type { Cubics } from '../types.js';
import type { Element } from './element.js';
import type { Style } from './style.js';
import type { Size } from './viewport.js';

/** Where and how an element is drawn. */
export interface Place {
  /** From the user units inside the element to millimetres of the page. */
  readonly matrix: Affine;
  readonly style: Style;
  /** What hides parts of it; null where nothing does. */
  readonly clip: Clipping | null;
  /** Whether opacity 0 hides it. */
  readonly isClear: boolean;
  /** Ids of the elements round it, outermost first. */
  readonly groups: readonly string[];
  /** What percentages refer to, in user units. */
  readonly viewport: Size;
  readonly depth: number;
  /** Elements that are being drawn through a reference to them. */
  readonly referred: readonly Element[];
}

/** Something that hides parts of what it holds, and what hides parts of it in turn. */
export type Clipping = { readonly outer: Clipping | null } & (
  | {
      /** A viewport's edge, in mm of the page. */ readonly edge: Cubics;
      readonly viewport: Element;
    }
  | { readonly clipPath: Element; readonly user: ClipUser }
);

/** An element that a clipPath is used on: where it stands, and its surroundings. */
export interface ClipUser {
  readonly element: Element;
  readonly place: Place;
  readonly outer: Place;
}
