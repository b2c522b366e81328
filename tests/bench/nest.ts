import { regionArea, regionBounds } from '../../src/geometry/measure.js';
import type { Piece } from '../../src/panel/piece.js';
import type { Process } from '../../src/process/process.js';
import { NEST_DEFAULTS, type NestOptions, nest } from '../../src/sheet/nest.js';
import { usableBox } from '../../src/sheet/room.js';
import { pressedOf } from '../../src/sheet/sheet.js';
import { designExample } from '../support/example-book.js';
import { bottomLeftSheets, type Size, shelfSheets } from './boxes.js';
import { leastSheets } from './sheet-bound.js';
import { short, table } from './table.js';

/** How many sheets the example books take, several copies of each, against what others take. */

/** A sheet for a run of many books (A2, ISO 216), on a bed that holds it. */
const LARGE = { name: 'A2', width: 420, height: 594 };
const LARGE_BED = { widthMm: 700, heightMm: 700 };

export interface NestRow {
  readonly book: string;
  readonly sheet: string;
  readonly copies: number;
  readonly pieces: number;
  readonly effort: number;
  /** Sheets taken with that effort, and with none. */
  readonly ours: number;
  readonly first: number;
  readonly shelves: number;
  readonly bottomLeft: number;
  /** The card's area, of what of sheets can be used, each stock rounded up. */
  readonly byArea: number;
  /** The same, or what large pieces need since they leave strips, if that is more. */
  readonly least: number;
  /** Card on our sheets, of what of them can be used. */
  readonly density: number;
  readonly cpuSeconds: number;
}

type Designed = { readonly pieces: readonly Piece[]; readonly process: Process };

export async function nestRows(
  books: readonly string[],
  copies: readonly number[],
  effort: number,
): Promise<NestRow[]> {
  const rows: NestRow[] = [];
  for (const book of books) {
    console.error(`sheets: designing ${book}`);
    const designed = await designExample(book, { nest: { effort: 0 } });
    const large = onLarge(designed);
    for (const set of [designed, large, onOneCard(large)]) {
      for (const n of copies) {
        console.error(`sheets: ${book}, ${set.pieces[0].stock.sheet.name}, copies: ${n}`);
        rows.push({ book, ...nestRow(set, { copies: n, effort }) });
      }
    }
  }
  return rows;
}

const onLarge = ({ pieces, process: made }: Designed): Designed => ({
  pieces: pieces.map((piece) => ({ ...piece, stock: { ...piece.stock, sheet: LARGE } })),
  process: { ...made, bed: { ...made.bed, ...LARGE_BED } },
});

/** Every piece from the same card, as a plain white book is cut. */
const onOneCard = ({ pieces, process: made }: Designed): Designed => {
  const [{ stock }] = pieces;
  const sheet = { ...stock.sheet, name: `${stock.sheet.name}, one card` };
  return {
    pieces: pieces.map((piece) => ({ ...piece, stock: { ...stock, sheet } })),
    process: made,
  };
};

function nestRow(
  { pieces, process: made }: Designed,
  options: Pick<NestOptions, 'copies' | 'effort'>,
): Omit<NestRow, 'book'> {
  const { spacing } = NEST_DEFAULTS;
  const first = nest(pieces, made, { ...options, effort: 0 }).sheets.length;
  const before = process.cpuUsage().user;
  const { sheets } = nest(pieces, made, options);
  const cpuSeconds = (process.cpuUsage().user - before) / 1e6;
  const runs = byStock(pieces).map((group) => stockRun(group, made, options.copies));
  const total = (of: (run: StockRun) => number) => runs.reduce((sum, run) => sum + of(run), 0);
  const usableArea = sheets.reduce((sum, { placements }) => {
    const { width, height } = usableSize(
      placements.map((p) => p.piece),
      made,
    );
    return sum + width * height;
  }, 0);
  return {
    sheet: pieces[0].stock.sheet.name,
    ...options,
    pieces: total(({ boxes }) => boxes.length),
    ours: sheets.length,
    first,
    shelves: total(({ boxes, usable }) => shelfSheets(boxes, usable, spacing)),
    bottomLeft: total(({ boxes, usable }) => bottomLeftSheets(boxes, usable, spacing)),
    byArea: total(({ byArea }) => byArea),
    least: total(({ byArea, least }) => Math.max(byArea, least)),
    density: total(({ areaMm2 }) => areaMm2) / usableArea,
    cpuSeconds,
  };
}

function byStock(pieces: readonly Piece[]): Piece[][] {
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = JSON.stringify(piece.stock);
    groups.set(key, [...(groups.get(key) ?? []), piece]);
  }
  return [...groups.values()];
}

interface StockRun {
  readonly usable: Size;
  readonly boxes: readonly Size[];
  readonly areaMm2: number;
  readonly byArea: number;
  readonly least: number;
}

function stockRun(group: readonly Piece[], made: Process, copies: number): StockRun {
  const all = group.flatMap((p) => Array.from({ length: p.copies * copies }, () => p));
  const usable = usableSize(group, made);
  const areaMm2 = all.reduce((sum, piece) => sum + regionArea(piece.card), 0);
  return {
    usable,
    boxes: all.map(({ card }) => sizeOf(card)),
    areaMm2,
    byArea: Math.ceil(areaMm2 / (usable.width * usable.height)),
    least: leastSheets(all, usable, NEST_DEFAULTS.spacing),
  };
}

function sizeOf(card: Piece['card']): Size {
  const { minX, minY, maxX, maxY } = regionBounds(card);
  return { width: maxX - minX, height: maxY - minY };
}

/** What of a sheet can be used, mm. */
function usableSize(pieces: readonly Piece[], made: Process): Size {
  const { width, height } = usableBox(pieces[0].stock, pressedOf(pieces), made);
  return { width: width / 1000, height: height / 1000 };
}

/** The bench's section of sheets, as Markdown. */
export function nestReport(rows: readonly NestRow[], effort: number): string {
  return `## Sheets of the example books

All copies of a whole book, each stock on its own sheets, pieces upright or turned by half, 3 mm apart:
on the scenes' own sheets, on A2 with a bed that holds it, and there all from one card. Ours with effort
${effort} and, in brackets, the first layout; boxes on shelves and boxes as far up and left as they go, tallest first. "By area": net
card, windows and all holes left out, against what of the sheets can be used, each stock rounded up; no
layout need reach it. "At least": the same, or what large pieces need because they leave strips, where
that is more; no layout does with less.

${nestTable(rows)}
`;
}

function nestTable(rows: readonly NestRow[]): string {
  const lines = rows.map((row) => [
    row.book,
    row.sheet,
    row.copies,
    row.pieces,
    `${row.ours} (${row.first})`,
    row.shelves,
    row.bottomLeft,
    row.byArea,
    row.least,
    short(row.ours / row.byArea),
    short(row.ours / row.least),
    `${(100 * row.density).toFixed(1)} %`,
    short(row.cpuSeconds),
  ]);
  const columns = ['ours', 'shelves', 'up and left', 'by area', 'at least'];
  const ratios = [
    'ours / by area (aim at 12: at most 1.15)',
    'ours / at least',
    'density',
    'CPU s',
  ];
  return table([['book', 'sheet', 'copies', 'pieces', ...columns, ...ratios], ...lines]);
}
