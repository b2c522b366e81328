import type { Extent } from '../scene/parameter.js';
import type { Carried, SceneElement } from '../scene/scene.js';

/** How far along its panels an element is in `panel`: 0 in its front one, 1 in its deepest. */
export function carriedShare(element: SceneElement, panel: number): number {
  const first = element.panels[0];
  const last = element.panels[element.panels.length - 1];
  return last === first ? 0 : (panel - first) / (last - first);
}

export const carriedNumber = (value: Carried<number>, share: number): number =>
  value.from + (value.to - value.from) * share;

/** An extent part way, in mm; shares are of `wholeMm`. */
export const carriedLength = (value: Carried<Extent>, share: number, wholeMm: number): number =>
  carriedNumber({ from: inMm(value.from, wholeMm), to: inMm(value.to, wholeMm) }, share);

const inMm = (extent: Extent, wholeMm: number): number =>
  'mm' in extent ? extent.mm : extent.share * wholeMm;

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
