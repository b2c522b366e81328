import type { Block } from './flow.js';
import { type Align, type Item, rule, text } from './leaf.js';
import { BODY, HAIRLINE, INK, LABEL, NOTE, STRONG } from './style.js';
import { fitted, type TextStyle } from './typesetting.js';

/** A column of a table; its place is that of its left edge. Lengths in mm. */
export interface Column {
  readonly title: string;
  readonly x: number;
  readonly width: number;
  readonly align?: Align;
  readonly style?: TextStyle;
}

/** The columns of those widths between two edges, what is left over given to the one that is 0 wide. */
export function columns(
  left: number,
  right: number,
  wanted: readonly Omit<Column, 'x'>[],
): Column[] {
  const rest = right - left - wanted.reduce((sum, { width }) => sum + width, 0);
  let x = left;
  return wanted.map((column) => {
    const width = column.width === 0 ? rest : column.width;
    const placed = { ...column, x, width };
    x += width;
    return placed;
  });
}

/** What a cell shows: words, or a drawing given the cell's left edge and baseline. */
export type Cell = string | ((x: number, baseline: number) => readonly Item[]);

const HEAD_MM = 7;
const ROW_MM = 5.6;
/** From a row's upper edge to its baseline. */
const BASELINE_MM = 3.9;
const GAP_MM = 2;

const across = (cols: readonly Column[]): [number, number] => {
  const last = cols[cols.length - 1];
  return [cols[0].x, last.x + last.width];
};

/** The titles of the columns over a line. */
export const headOf = (cols: readonly Column[]): Block => ({
  heightMm: HEAD_MM,
  keepsNext: true,
  draw: (top) => [
    ...cols.flatMap((column) => cellItems(column, column.title, LABEL, top + BASELINE_MM)),
    rule(...across(cols), top + HEAD_MM - 1, 0.25, INK),
  ],
});

/** A row of cells over a hairline. */
export const rowOf = (
  cols: readonly Column[],
  cells: readonly Cell[],
  { head, keepsNext, style }: { head: Block; keepsNext?: boolean; style?: TextStyle },
): Block => ({
  heightMm: ROW_MM,
  head,
  keepsNext,
  draw: (top) => [
    ...cols.flatMap((column, i) =>
      cellItems(column, cells[i], style ?? column.style ?? BODY, top + BASELINE_MM),
    ),
    rule(...across(cols), top + ROW_MM, 0.1, HAIRLINE),
  ],
});

/** What the rows below it belong to, with a note beside it. */
export const groupOf = (
  cols: readonly Column[],
  name: string,
  note: string,
  head: Block,
): Block => ({
  heightMm: ROW_MM + GAP_MM,
  head,
  keepsNext: true,
  draw: (top) => {
    const [left, right] = across(cols);
    const baseline = top + GAP_MM + BASELINE_MM;
    const noteX = left + NAME_MM;
    return [
      text(left, baseline, fitted(name, STRONG, NAME_MM - 2), STRONG),
      text(noteX, baseline, fitted(note, NOTE, right - noteX), NOTE),
      rule(left, right, top + GAP_MM + ROW_MM, 0.1, HAIRLINE),
    ];
  },
});

const NAME_MM = 24;

function cellItems(
  { x, width, align = 'left' }: Column,
  cell: Cell,
  style: TextStyle,
  baseline: number,
): readonly Item[] {
  if (typeof cell === 'function') return cell(x, baseline);
  if (cell === '') return [];
  const at = { left: x, centre: x + width / 2, right: x + width }[align];
  const room = align === 'left' ? width - GAP_MM : width;
  return [text(at, baseline, fitted(cell, style, room), style, align)];
}
