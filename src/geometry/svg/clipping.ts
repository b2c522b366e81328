import type { Cubics } from '../types.js';
import { type Element, referred } from './document.js';
import type { Drawing } from './drawing.js';
import { notInDrawing } from './losses.js';
import type { Place } from './walk.js';

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

/** What `place` is clipped by, the element's own clip-path included. */
export function clippedBy(
  drawing: Drawing,
  element: Element,
  place: Place,
  user: ClipUser,
): Clipping | null {
  const text = drawing.cascade(element).get('clip-path')?.trim() ?? 'none';
  if (/^(?:|none|inherit|initial|unset)$/.test(text)) return place.clip;
  const target = /^url\(\s*["']?([^"')]*)["']?\s*\)$/.exec(text)?.[1];
  const clipPath = referred(drawing.document, target);
  if (clipPath?.name === 'clipPath') return { outer: place.clip, clipPath, user };
  // A reference to nothing clips nothing (CSS Masking Level 1, section 5.1).
  const loss =
    target === undefined
      ? 'its clip-path by a basic shape is left out. Clip it by a clipPath element.'
      : `its clip-path is left out: ${notInDrawing(target)}`;
  drawing.warnings.add('clip-path', element, loss);
  return place.clip;
}
