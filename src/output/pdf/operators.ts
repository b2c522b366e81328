import { numeral, plain, writtenPieces } from '../../geometry/path/path-data.js';
import type { Cubics } from '../../geometry/types.js';

// Operators of PDF content streams, as text: ISO 32000-1, 8.4.4 and 8.5.2.

/** 1 in = 25.4 mm = 72 points (ISO 32000-1, 8.3.2.3). */
export const POINTS_PER_MM = 72 / 25.4;

/** To the micrometre, as in the SVG files. */
const DECIMALS = 3;

/** From here on lengths are millimetres from the page's top left, y down. */
export const inMillimetres = (heightMm: number): string => {
  const scale = plain(POINTS_PER_MM, 9);
  return `${scale} 0 0 -${scale} 0 ${plain(heightMm * POINTS_PER_MM, 6)} cm\n`;
};

/** `RG` for strokes, `rg` for areas. */
export const colour = (hex: string, operator: 'RG' | 'rg'): string =>
  `${[1, 3, 5].map((at) => plain(Number.parseInt(hex.slice(at, at + 2), 16) / 255, 4)).join(' ')} ${operator}\n`;

export const lineWidth = (mm: number): string => `${plain(mm, DECIMALS)} w\n`;

/** Solid where there are no dashes. */
export const dashes = (mm: readonly number[]): string =>
  `[${mm.map((length) => plain(length, 4)).join(' ')}] 0 d\n`;

/** A chain as a path yet to be painted, the very curves of the SVG; '' where it is but a point. */
export function chainPath(cubics: Cubics, closed: boolean, decimals = DECIMALS): string {
  const pieces = writtenPieces(cubics, closed, decimals);
  if (pieces.length === 0) return '';
  const at = (...units: number[]) => units.map((n) => numeral(n, decimals)).join(' ');
  const segments = pieces.map(({ x1, y1, x2, y2, x, y, isLine }) =>
    isLine ? `${at(x, y)} l` : `${at(x1, y1, x2, y2, x, y)} c`,
  );
  const start = `${at(pieces[0].x0, pieces[0].y0)} m`;
  return [start, ...segments, ...(closed ? ['h'] : []), ''].join('\n');
}

/** What belongs to a layer, named as in the page's properties (ISO 32000-1, 8.11.3). */
export const inLayer = (name: string, content: string): string =>
  content === '' ? '' : `/OC /${name} BDC\nq\n${content}Q\nEMC\n`;
