import { type Affine, IDENTITY, inOrder, scaling, translation } from '../transform.js';
import type { Element } from './element.js';
import { nameOf, SvgImportError, shortened } from './error.js';
import { type Given, lengthMm, MM_PER_PX, malformed, numbersOf } from './number.js';
import type { Warnings } from './warnings.js';

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface ViewBox extends Size {
  readonly x: number;
  readonly y: number;
}

/** The viewBox of an element; null where it has none. @throws SvgImportError unless it has area. */
export function viewBoxOf(element: Element): ViewBox | null {
  const text = element.attributes.get('viewBox');
  if (text === undefined) return null;
  const given: Given = { element, property: 'viewBox', text };
  const [x, y, width, height, ...rest] = numbersOf(given);
  if (height === undefined || rest.length > 0) throw malformed(given, 'needs four numbers');
  if (!(width > 0 && height > 0)) throw malformed(given, 'has no area, so that nothing is drawn');
  return { x, y, width, height };
}

const ALIGN = /^(?:defer\s+)?(none|x(Min|Mid|Max)Y(Min|Mid|Max))(?:\s+(meet|slice))?$/;
const SHARE: Readonly<Record<string, number>> = { Min: 0, Mid: 0.5, Max: 1 };

/**
 * Lays a viewBox into a viewport whose corner is the origin, by the element's preserveAspectRatio
 * (SVG 2, sections 8.2 and 8.6).
 */
export function viewBoxTransform(element: Element, box: ViewBox | null, viewport: Size): Affine {
  if (box === null) return IDENTITY;
  const text = element.attributes.get('preserveAspectRatio')?.trim() ?? 'xMidYMid';
  const found = ALIGN.exec(text);
  if (found === null) {
    throw new SvgImportError(
      `${nameOf(element)}: preserveAspectRatio="${shortened(text)}" is not understood. Write "none", or an ` +
        'alignment like "xMidYMid" with "meet" or "slice" after it.',
    );
  }
  const [, align, alignX, alignY, fit] = found;
  const sx = viewport.width / box.width;
  const sy = viewport.height / box.height;
  const toOrigin = translation(-box.x, -box.y);
  if (align === 'none') return inOrder(toOrigin, scaling(sx, sy));
  const s = fit === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy);
  const dx = (viewport.width - box.width * s) * SHARE[alignX];
  const dy = (viewport.height - box.height * s) * SHARE[alignY];
  return inOrder(toOrigin, scaling(s), translation(dx, dy));
}

export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  /** The map from the outermost element's user units to millimetres of the page. */
  readonly matrix: Affine;
  /** The page in user units, which percentages refer to. */
  readonly viewport: Size;
}

/** The size of a picture of which nothing is known (CSS 2.1, section 10.3.2), in px. */
const UNKNOWN_PX: Size = { width: 300, height: 150 };

/** The page of the outermost element; what its size does not say comes from its viewBox. */
export function pageOf(root: Element, warnings: Warnings): Page {
  const box = viewBoxOf(root);
  const width = pageLength(root, 'width', warnings);
  const height = pageLength(root, 'height', warnings);
  const px = box ?? UNKNOWN_PX;
  if (box === null && (width === null || height === null)) {
    warnings.add(
      'size',
      root,
      'the page has neither a size nor a viewBox; its size is a guess, but what is drawn on it is ' +
        'to scale (1 px = 1/96 inch). Give width, height and viewBox.',
    );
  }
  const ratio = px.height / px.width;
  const widthMm = width ?? (height === null ? px.width * MM_PER_PX : height / ratio);
  const heightMm = height ?? widthMm * ratio;
  const size = { width: widthMm, height: heightMm };
  const matrix = box ? viewBoxTransform(root, box, size) : scaling(MM_PER_PX);
  const viewport = box ?? { width: widthMm / MM_PER_PX, height: heightMm / MM_PER_PX };
  return { widthMm, heightMm, matrix, viewport };
}

function pageLength(root: Element, property: string, warnings: Warnings): number | null {
  const text = root.attributes.get(property);
  if (text === undefined || text.trim() === 'auto') return null;
  const given: Given = { element: root, property, text };
  const length = lengthMm(given);
  if (length === null) {
    warnings.add(
      'size',
      root,
      `${property}="${shortened(text)}" depends on the screen; the size is taken from the viewBox, 1 unit being ` +
        '1/96 inch. Give it in mm.',
    );
    return null;
  }
  if (!(length > 0)) throw malformed(given, 'is no size for a page');
  return length;
}
