import { regionArea, regionBounds } from '../../../src/geometry/measure.js';
import {
  drawingRegion,
  type ImportedDrawing,
  type ImportOptions,
  importSvg,
} from '../../../src/geometry/svg/import.js';

/** A file with a page of 100 x 100 mm, a user unit being a millimetre, unless told otherwise. */
export const page = (
  inner: string,
  attributes = 'width="100mm" height="100mm" viewBox="0 0 100 100"',
): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>` +
  `${inner}</svg>`;

/** What is drawn on such a page. */
export const drawn = (inner: string, options?: ImportOptions): Promise<ImportedDrawing> =>
  importSvg(page(inner), options);

/** The area in mm2 of all that is inked on such a page, strokes outlined. */
export const inked = async (inner: string): Promise<number> =>
  regionArea(drawingRegion(await drawn(inner, { strokes: 'outlines' })));

/** The box round all that is inked in a file, in thousandths of a mm: left, top, right, bottom. */
export async function boxOf(svg: string): Promise<number[]> {
  const { minX, minY, maxX, maxY } = regionBounds(
    drawingRegion(await importSvg(svg, { strokes: 'outlines' })),
  );
  return [minX, minY, maxX, maxY].map((v) => Math.round(v * 1000) / 1000 + 0);
}

/** What was warned of, by name and count. */
export const losses = ({ warnings }: ImportedDrawing): Record<string, number> =>
  Object.fromEntries(warnings.map(({ what, count }) => [what, count]));
