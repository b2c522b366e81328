import type { FoldKind } from '../../book/book.js';
import type { Line } from '../../geometry/types.js';
import { linesPath, n } from './markup.js';

const LINE_MM = 0.5;
/** Element lengths in line widths, from memory: dash 12, gap 3, dot 0.5. ISO 128-20:1996. */
const DASH = 12;
const GAP = 3;
const DOT = 0.5;

/**
 * Dashes of a fold line, in mm, for lines so wide. Valley dashed, mountain dash-dot:
 * Yoshizawa-Randlett system.
 */
export const foldDashes = (kind: FoldKind, lineMm = LINE_MM): number[] =>
  (kind === 'valley' ? [DASH, GAP] : [DASH, GAP, DOT, GAP]).map((length) => length * lineMm);

export function foldMarkup(kind: FoldKind, lines: readonly Line[], ink: string): string {
  if (lines.length === 0) return '';
  return (
    `<path class="${kind}" d="${linesPath(lines)}" fill="none" stroke="${ink}" ` +
    `stroke-width="${LINE_MM}" stroke-dasharray="${foldDashes(kind).map(n).join(' ')}"/>`
  );
}
