import { chainPathData, plain } from '../geometry/path/path-data.js';
import type { Face, Layers, Mark, Operation } from '../process/layers.js';
import type { LayerColours } from '../scene/layer-colours.js';

/** Marks that belong together, already in the page's coordinates: a placed piece's, if named. */
export interface Batch {
  readonly piece?: string;
  readonly copy?: number;
  readonly layers: Layers;
}

export interface Page {
  readonly width: number;
  readonly height: number;
  /** The face of the card that lies up. */
  readonly face: Face;
  readonly batches: readonly Batch[];
}

/** Hairline: what programs read as a line to follow, not as an area to fill. */
const PEN = 'fill="none" stroke-width="0.1"';

/** To the micrometre, finer than any cutter's step. */
const DECIMALS = 3;

/**
 * A page as SVG at true size: one user unit is one millimetre, origin top left, y down (SVG 2,
 * chapter 8). Its children are the groups `emboss`, `score` (with `fold` and `detail`), `cut` and
 * `guide` in working order, empty ones left out. Nothing is filled, transformed, clipped or styled,
 * so that the plainest reader sees it all.
 */
export function svgDocument(page: Page, colours: LayerColours): string {
  const layer = (operation: Operation, pen = ''): string =>
    group(
      `id="${operation}"${pen} stroke="${escaped(colours[operation])}"`,
      page.batches.map((batch) => batchText(batch, operation)),
    );
  const children = [
    layer('emboss', ` ${PEN}`),
    group(`id="score" ${PEN}`, [layer('fold'), layer('detail')]),
    layer('cut', ` ${PEN}`),
    layer('guide', ` ${PEN}`),
  ];
  const width = plain(page.width, DECIMALS);
  const height = plain(page.height, DECIMALS);
  const root = [
    'xmlns="http://www.w3.org/2000/svg"',
    `width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`,
    `data-face="${page.face}"`,
  ];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>\n',
    `<svg ${root.join(' ')}>\n`,
    ...children,
    '</svg>\n',
  ].join('');
}

/** A group round its children, or nothing when there are none. */
function group(attributes: string, children: readonly string[]): string {
  const content = children.join('');
  return content === '' ? '' : `<g ${attributes}>\n${content}</g>\n`;
}

function batchText({ piece, copy, layers }: Batch, operation: Operation): string {
  const paths = layers[operation].map(pathText);
  if (piece === undefined) return paths.join('');
  const copyText = copy === undefined ? '' : ` data-copy="${copy}"`;
  return group(`data-piece="${escaped(piece)}"${copyText}`, paths);
}

function pathText({ cubics, closed, kind, relief }: Mark): string {
  const d = chainPathData(cubics, closed, DECIMALS);
  if (d === '') return '';
  const kindText = kind ? ` data-kind="${kind}"` : '';
  const reliefText = relief
    ? ` data-side="${relief.side}" data-depth="${plain(relief.depthMm, DECIMALS)}"`
    : '';
  return `<path${kindText}${reliefText} d="${d}"/>\n`;
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;');
