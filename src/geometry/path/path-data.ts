import type { Cubics, Line, Region } from '../types.js';

/** A cubic whose handles lie this near to its chord (mm) is written as a straight line. */
const STRAIGHT_MM = 5e-4;

/** SVG path data of closed chains, absolute, `decimals` places of a millimetre. */
export const regionPathData = (region: Region, decimals = 3): string =>
  region.contours.map((c) => chainPathData(c, true, decimals)).join('');

/** SVG path data of an open line. */
export const linePathData = (line: Line, decimals = 3): string =>
  chainPathData(line.cubics, false, decimals);

/** SVG path data of one chain; plain decimals only, as cutters' readers expect. */
export function chainPathData(c: Cubics, closed: boolean, decimals = 3): string {
  if (c.length === 0) return '';
  const at = (i: number) => `${plain(c[i], decimals)} ${plain(c[i + 1], decimals)}`;
  let d = `M${at(0)}`;
  for (let i = 0; i < c.length; i += 8) {
    const closing = closed && i + 8 === c.length;
    if (!isStraight(c, i)) d += `C${at(i + 2)} ${at(i + 4)} ${at(i + 6)}`;
    else if (!closing) d += `L${at(i + 6)}`;
  }
  return closed ? `${d}Z` : d;
}

/** A number without exponent, trailing zeros or minus zero. */
export function plain(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}

function isStraight(c: Cubics, i: number): boolean {
  const dx = c[i + 6] - c[i];
  const dy = c[i + 7] - c[i + 1];
  const length = Math.hypot(dx, dy);
  if (length < 1e-9) return true;
  for (const k of [2, 4]) {
    const ux = c[i + k] - c[i];
    const uy = c[i + k + 1] - c[i + 1];
    const along = (ux * dx + uy * dy) / length;
    if (Math.abs(ux * dy - uy * dx) / length > STRAIGHT_MM) return false;
    if (along < -STRAIGHT_MM || along > length + STRAIGHT_MM) return false;
  }
  return true;
}
