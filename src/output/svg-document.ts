import { chainPathData, plain } from '../geometry/path/path-data.js';
import type { Mark } from '../process/layers.js';
import type { LayerColours } from '../scene/layer-colours.js';
import type { Page, PageLayer, Run } from './page.js';

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
export function svgDocument({ width, height, face, layers }: Page, colours: LayerColours): string {
  const layerText = ({ operation, passes = 1, runs }: PageLayer, pen: string): string => {
    const passText = passes > 1 ? ` data-passes="${passes}"` : '';
    return group(
      `id="${operation}"${pen}${passText} stroke="${escaped(colours[operation])}"`,
      runs.map(runText),
    );
  };
  const isScore = ({ operation }: PageLayer) => operation === 'fold' || operation === 'detail';
  const scores = layers.filter(isScore);
  const children = layers.map((layer) => {
    if (!isScore(layer)) return layerText(layer, ` ${PEN}`);
    if (layer !== scores[0]) return '';
    return group(
      `id="score" ${PEN}`,
      scores.map((score) => layerText(score, '')),
    );
  });
  const w = plain(width, DECIMALS);
  const h = plain(height, DECIMALS);
  const root = [
    'xmlns="http://www.w3.org/2000/svg"',
    `width="${w}mm" height="${h}mm" viewBox="0 0 ${w} ${h}"`,
    `data-face="${face}"`,
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

function runText({ piece, copy, marks }: Run): string {
  const paths = marks.map(pathText);
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
