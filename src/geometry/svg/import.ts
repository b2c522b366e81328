import { unionChecked } from '../boolean/boolean.js';
import { IDENTITY } from '../transform.js';
import type { Region } from '../types.js';
import { crossingsOf, tooTangled } from './crossings.js';
import { type Drawing, openDrawing } from './drawing.js';
import { MAX_CROSSINGS_BETWEEN } from './limits.js';
import { type ImportedShape, Painter } from './paint.js';
import type { Place } from './place.js';
import { INITIAL_STYLE } from './style.js';
import { type Page, pageOf } from './viewport.js';
import { placeIn, walkChildren } from './walk.js';
import type { ImportWarning } from './warnings.js';

export { SvgImportError } from './error.js';
export type { ImportedShape } from './paint.js';
export type { ImportWarning } from './warnings.js';

/** A drawing's page with its corner at the origin; what is drawn may lie beyond the page. */
export interface ImportedDrawing {
  readonly widthMm: number;
  readonly heightMm: number;
  /** In drawing order: later ones lie on top. */
  readonly shapes: readonly ImportedShape[];
  readonly warnings: readonly ImportWarning[];
  /** Curves kept throughout; false where some outlines are polylines, within 0.01 mm. */
  readonly exact: boolean;
}

export interface ImportOptions {
  /** Whether strokes become what they cover or the lines along their middle. Default: lines. */
  readonly strokes?: 'outlines' | 'lines';
}

/**
 * Reads an SVG drawing (SVG 2) as regions and lines. Curves are kept; arcs and circles become cubics
 * within 3e-4 of their radius, outlines of strokes lie within 0.005 mm.
 *
 * Carried over: paths and basic shapes, groups, `use` and symbols, inner viewports, transforms,
 * fill rules, strokes with caps, joins and dashes, clip paths, inherited properties and style sheets
 * with rules for elements, classes and ids. Left out with a warning: pictures, text, masks, filters,
 * markers, gradients and patterns (they become a solid fill), scripts and animation. What is painted
 * over is not taken away: white on black is a matter for whoever knows what the colours mean.
 * @throws SvgImportError for text that is not sound SVG, for numbers that cannot be read, for
 * references to other files or back to themselves, and above the limits in limits.ts.
 */
export async function importSvg(
  text: string,
  { strokes = 'lines' }: ImportOptions = {},
): Promise<ImportedDrawing> {
  const drawing = await openDrawing(text);
  const page = pageOf(drawing.document.root, drawing.warnings);
  const place = rootPlace(drawing, page);
  const painter = new Painter(drawing, strokes);
  if (place) walkChildren(drawing, drawing.document.root, place, painter.paint);
  const { widthMm, heightMm } = page;
  const { shapes, exact } = painter;
  return { widthMm, heightMm, shapes, warnings: drawing.warnings.list(), exact };
}

/** The inside of the outermost element; null where it draws nothing. */
function rootPlace(drawing: Drawing, { matrix, viewport }: Page): Place | null {
  const { root } = drawing.document;
  const declared = drawing.cascade(root);
  if (declared.get('display')?.trim() === 'none') return null;
  if ((declared.get('transform') ?? 'none').trim() !== 'none') {
    drawing.warnings.add(
      'transform',
      root,
      'the transform of the whole page is left out. Put it on a group within.',
    );
  }
  const outside: Place = {
    matrix,
    viewport,
    style: INITIAL_STYLE,
    clip: null,
    isClear: false,
    groups: [],
    depth: 0,
    referred: [],
  };
  return placeIn(drawing, root, outside, IDENTITY);
}

/**
 * Everything that is inked: the union of all shapes' regions.
 * @throws SvgImportError where they cross each other too often.
 */
export function drawingRegion({ shapes }: Pick<ImportedDrawing, 'shapes'>): Region {
  const regions = shapes.map((shape) => shape.region);
  const contours = regions.flatMap((region) => region.contours);
  if (crossingsOf(contours, MAX_CROSSINGS_BETWEEN) > MAX_CROSSINGS_BETWEEN) {
    throw tooTangled('The drawing', MAX_CROSSINGS_BETWEEN);
  }
  return unionChecked(regions).region;
}
