import type { Cubics, Line, Region } from '../types.js';

/**
 * SVG path data (SVG 2, section 9.3) in its shortest sound form. Short: of each command the shorter
 * of the absolute and the relative form, H and V for level and plumb lines, S where the first
 * handle is the last one's exact reflection, repeated letters, leading and trailing zeros left out.
 *
 * Sound, so that the plainest machine's reader sees what is meant:
 * - Every number is set off from the one before it by a letter, a space or its minus: "0.5 0.5" is
 *   ".5 .5" and never ".5.5". No commas, exponents, plus signs or minus zeros.
 * - Each chain starts with an absolute M of its own, and the command after it has its letter. So
 *   chains can be strung together or taken apart, and no reader has to know where Z leaves the pen.
 * - Only M, L, H, V, C, S and Z; S only right after C or S. No arcs or quadratic curves.
 * - Nothing drifts: all decisions are taken on coordinates already rounded, and relative numbers are
 *   differences of those. What is read back and written again gives the same text.
 *
 * Straight cubics become lines. Cubics all of which is rounded to a single point are left out; a
 * loop that starts and ends there stays. The order, starts and directions of chains are kept.
 */

/**
 * Farthest that the handles of what is written as a line may lie off it, in units of the last place:
 * as far as rounding moves the handles of a line, so that lines stay lines when read again.
 */
const LINE_UNITS = 0.71;

/** Path data of closed chains, `decimals` places of a millimetre. */
export const regionPathData = (region: Region, decimals = 3): string =>
  region.contours.map((c) => chainPathData(c, true, decimals)).join('');

/** Path data of an open line. */
export const linePathData = (line: Line, decimals = 3): string =>
  chainPathData(line.cubics, false, decimals);

/** Path data of one chain; '' where all of it is rounded to a single point. */
export function chainPathData(c: Cubics, closed: boolean, decimals = 3): string {
  const pieces = writtenPieces(c, closed, decimals);
  if (pieces.length === 0) return '';
  const { x0, y0 } = pieces[0];
  let text = `M${spaced([x0, y0], decimals)}`;
  let letter = 'M';
  pieces.forEach((piece, k) => {
    const [absolute, relative] = formsOf(piece, pieces[k - 1]).map(([command, ...numbers]) => {
      const digits = spaced(numbers, decimals);
      if (command !== letter) return { command, written: command + digits };
      return { command, written: digits.startsWith('-') ? digits : ` ${digits}` };
    });
    const { command, written } =
      absolute.written.length < relative.written.length ? absolute : relative;
    text += written;
    letter = command;
  });
  return closed ? `${text}Z` : text;
}

/** A cubic from (x0, y0) to (x, y), rounded, in units of the last place. */
export interface WrittenPiece {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly x: number;
  readonly y: number;
  readonly isLine: boolean;
}

/**
 * What is written of a chain, in any format: its cubics rounded, those left out that come to
 * nothing, and a straight way home left to the closing. None where all is rounded to one point.
 */
export function writtenPieces(c: Cubics, closed: boolean, decimals: number): WrittenPiece[] {
  const pieces = piecesOf(c, 10 ** decimals);
  const [first] = pieces;
  const last = pieces.at(-1);
  if (closed && last?.isLine && last.x === first.x0 && last.y === first.y0) pieces.pop();
  return pieces;
}

function piecesOf(c: Cubics, unitsPerMm: number): WrittenPiece[] {
  const pieces: WrittenPiece[] = [];
  for (let i = 0; i < c.length; i += 8) {
    // Adding 0 makes a plain zero of a minus zero.
    const [x0, y0, x1, y1, x2, y2, x, y] = c
      .subarray(i, i + 8)
      .map((v) => Math.round(v * unitsPerMm) + 0);
    const isLine = isLineTo(x - x0, y - y0, [x1 - x0, y1 - y0], [x2 - x0, y2 - y0]);
    if (isLine && x === x0 && y === y0) continue;
    pieces.push({ x0, y0, x1, y1, x2, y2, x, y, isLine });
  }
  return pieces;
}

/** Whether handles lie on the line from the origin to (dx, dy), between its ends. */
function isLineTo(dx: number, dy: number, ...handles: [number, number][]): boolean {
  const length = Math.hypot(dx, dy);
  if (length === 0) return handles.every(([ux, uy]) => Math.hypot(ux, uy) <= LINE_UNITS);
  return handles.every(([ux, uy]) => {
    const along = (ux * dx + uy * dy) / length;
    const aside = Math.abs(ux * dy - uy * dx) / length;
    return aside <= LINE_UNITS && along >= -LINE_UNITS && along <= length + LINE_UNITS;
  });
}

/** A command's letter and its numbers, in units of the last place. */
type Command = readonly [letter: string, ...numbers: number[]];

/** The piece as an absolute and as a relative command, after the piece `before` it. */
function formsOf(piece: WrittenPiece, before: WrittenPiece | undefined): [Command, Command] {
  const { x0, y0, x1, y1, x2, y2, x, y } = piece;
  const [dx, dy] = [x - x0, y - y0];
  if (piece.isLine && dy === 0)
    return [
      ['H', x],
      ['h', dx],
    ];
  if (piece.isLine && dx === 0)
    return [
      ['V', y],
      ['v', dy],
    ];
  if (piece.isLine)
    return [
      ['L', x, y],
      ['l', dx, dy],
    ];
  const rest = [x2 - x0, y2 - y0, dx, dy];
  if (before && !before.isLine && x1 === 2 * x0 - before.x2 && y1 === 2 * y0 - before.y2) {
    return [
      ['S', x2, y2, x, y],
      ['s', ...rest],
    ];
  }
  return [
    ['C', x1, y1, x2, y2, x, y],
    ['c', x1 - x0, y1 - y0, ...rest],
  ];
}

/** Numbers with as few signs between them as keep them apart. */
const spaced = (numbers: readonly number[], decimals: number): string =>
  numbers
    .map((n) => numeral(n, decimals))
    .reduce((text, digits) => text + (digits.startsWith('-') ? '' : ' ') + digits);

/** A whole number of units of the last place, as a decimal of millimetres without needless zeros. */
export function numeral(units: number, decimals: number): string {
  const digits = String(Math.abs(units)).padStart(decimals + 1, '0');
  const point = digits.length - decimals;
  const whole = digits.slice(0, point);
  const fraction = digits.slice(point).replace(/0+$/, '');
  const sign = units < 0 ? '-' : '';
  if (fraction === '') return sign + whole;
  return `${sign}${whole === '0' ? '' : whole}.${fraction}`;
}

/** A number without exponent, trailing zeros or minus zero. */
export function plain(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
}
