import { referred } from './document.js';
import type { Drawing } from './drawing.js';
import type { Element } from './element.js';
import { notInDrawing } from './losses.js';
import type { Clipping, ClipUser, Place } from './place.js';

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
