import type { Book } from '../book/book.js';
import type { Extent } from '../scene/parameter.js';
import type { Carried, GroupBox, SceneElement } from '../scene/scene.js';

/** What runs through panels: an element, or a group that carries its members. */
export type Runner = Pick<GroupBox, 'panels' | 'carry' | 'height'>;

import { openingOf } from './place/opening.js';

/** How far along its panels an element is in `panel`: 0 in its front one, 1 in its deepest. */
export function carriedShare(book: Book, element: Runner, panel: number): number {
  const first = element.panels[0];
  const last = element.panels[element.panels.length - 1];
  if (last === first) return 0;
  const even = (panel - first) / (last - first);
  return element.carry === 'perspective' ? perspectiveShare(book, element, panel) : even;
}

/** Heights that differ by less than this share of themselves run away no faster than the cards. */
const SAME_HEIGHT = 1e-9;

/**
 * How far along what runs straight away from the eye is. Things of one true height h, seen at
 * distances that grow evenly, have the apparent heights h / (1 + g z) at depth z behind the first;
 * drawn on a card that hangs z deep they are (D + z) / D times that, D being the eye's distance from
 * the first card (similar triangles). The heights drawn first and last settle g, and all that
 * changes with them follows the heights.
 */
function perspectiveShare(book: Book, element: Runner, panel: number): number {
  const plans = element.panels.map((number) => book.panels[number - 1]);
  const [first, last] = [plans[0], plans[plans.length - 1]];
  const near = carriedLength(element.height, 0, openingOf(book, first).height);
  const far = carriedLength(element.height, 1, openingOf(book, last).height);
  const eyeMm = book.readingDistance + first.depthMm;
  const deepMm = last.depthMm - first.depthMm;
  const depthMm = book.panels[panel - 1].depthMm - first.depthMm;
  if (Math.abs(far - near) < SAME_HEIGHT * near) return depthMm / deepMm;
  const growth = ((near / far) * (1 + deepMm / eyeMm) - 1) / deepMm;
  const height = (near * (1 + depthMm / eyeMm)) / (1 + growth * depthMm);
  return (height - near) / (far - near);
}

export const carriedNumber = (value: Carried<number>, share: number): number =>
  value.from + (value.to - value.from) * share;

/** An extent part way, in mm; shares are of `wholeMm`, lengths are multiplied by `scale`. */
export const carriedLength = (
  value: Carried<Extent>,
  share: number,
  wholeMm: number,
  scale = 1,
): number => {
  const inMm = (extent: Extent): number =>
    'mm' in extent ? extent.mm * scale : extent.share * wholeMm;
  return carriedNumber({ from: inMm(value.from), to: inMm(value.to) }, share);
};

/** The family's parameters as they are in this panel. */
export function carriedValues(
  element: SceneElement,
  share: number,
): Record<string, number | string | boolean> {
  const values: Record<string, number | string | boolean> = {};
  for (const [name, value] of Object.entries(element.values)) {
    values[name] = typeof value === 'object' ? carriedNumber(value, share) : value;
  }
  return values;
}
