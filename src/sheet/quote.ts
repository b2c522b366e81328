import type { Piece } from '../panel/piece.js';
import type { Means } from '../process/prepare.js';
import type { Rates } from '../process/process.js';
import { estimateOf, type SheetEstimate, totalOf } from './estimate.js';
import { sheetJob } from './job.js';
import { nest } from './nest.js';
import type { Sheet } from './sheet.js';

/** What so many copies of a book come to. */
export interface QuoteRow {
  readonly copies: number;
  readonly sheets: number;
  /** That the machine runs, stops included. */
  readonly minutes: number;
  /** In the currency of the rates, not rounded; null while no rate is set. */
  readonly price: Price | null;
}

export interface Price {
  readonly setUp: number;
  readonly machine: number;
  readonly card: number;
  readonly total: number;
  /** For one copy. */
  readonly each: number;
}

/**
 * A row for each quantity of the rates.
 * @param estimatesFor the sheets that so many copies take when they are nested together.
 */
export const quoteOf = (
  rates: Rates,
  estimatesFor: (copies: number) => readonly SheetEstimate[],
): QuoteRow[] =>
  rates.quantities.map((copies): QuoteRow => {
    const { sheets, seconds } = totalOf(estimatesFor(copies));
    return {
      copies,
      sheets,
      minutes: seconds / 60,
      price: priceOf(rates, copies, sheets, seconds),
    };
  });

/** Whether any rate is set. */
export const isPriced = ({ setUp, hour, sheet }: Rates): boolean =>
  setUp > 0 || hour > 0 || sheet > 0;

function priceOf(rates: Rates, copies: number, sheets: number, seconds: number): Price | null {
  const { setUp, hour, sheet } = rates;
  if (!isPriced(rates)) return null;
  const machine = (hour * seconds) / 3600;
  const card = sheet * sheets;
  const total = setUp + machine + card;
  return { setUp, machine, card, total, each: total / copies };
}

/**
 * What the machine does for so many copies of a book, nested together. Sheets that hold the same
 * pieces in the same places are worked out once.
 */
export function estimatesFor(
  pieces: readonly Piece[],
  copies: number,
  means: Means,
): readonly SheetEstimate[] {
  const all = pieces.map((piece) => ({ ...piece, copies: copies * piece.copies }));
  const known = new Map<string, SheetEstimate>();
  return nest(all, means.process).sheets.map((sheet) => {
    const layout = layoutOf(sheet);
    const same = known.get(layout);
    if (same) return { ...same, sheet: sheet.name };
    const estimate = estimateOf(sheetJob(sheet, means), means.process);
    known.set(layout, estimate);
    return estimate;
  });
}

const layoutOf = ({ stock, faces, placements }: Sheet): string =>
  JSON.stringify([
    stock,
    faces,
    placements.map(({ piece, dx, dy, halfTurn }) => [piece.name, dx, dy, halfTurn]),
  ]);
