import { asRun } from '../process/prepare.js';
import type { SheetEstimate } from '../sheet/estimate.js';
import { estimatesFor, isPriced, type QuoteRow, quoteOf } from '../sheet/quote.js';
import type { CardUse, Costs } from './build-book/costs.js';
import type { DesignedBook } from './design-book.js';

/** What the sheets take, for the build book. */
export function costsOf(
  { jobs, process }: DesignedBook,
  estimates: readonly SheetEstimate[],
  quote: readonly QuoteRow[],
): Costs {
  return {
    steps: estimates.flatMap(({ sheet, steps }) =>
      steps.map(({ face, operation, lengthMm, passes, travelMm, corners, seconds }) => ({
        sheet,
        face,
        operation,
        cutMm: lengthMm * passes,
        travelMm: travelMm * passes,
        corners: corners * passes,
        seconds,
      })),
    ),
    stopSeconds: estimates.reduce((sum, { stops }) => sum + stops * process.motion.stopS, 0),
    cards: cardsUsed(
      jobs.map(({ sheet }) => sheet.stock.name),
      estimates,
    ),
    quote,
    currency: process.rates.currency,
  };
}

/** Each stock by itself, in the order of the sheets. */
function cardsUsed(stocks: readonly string[], estimates: readonly SheetEstimate[]): CardUse[] {
  return [...new Set(stocks)].map((stock) => {
    const own = estimates.filter((_, i) => stocks[i] === stock);
    return {
      stock,
      sheets: own.length,
      usedMm2: own.reduce((sum, { usedMm2 }) => sum + usedMm2, 0),
      wastedMm2: own.reduce((sum, { wastedMm2 }) => sum + wastedMm2, 0),
    };
  });
}

/**
 * What orders of several copies come to; none where the maker has set no rates.
 * @param estimates of the sheets that the book is made with: they are not laid out again.
 */
export const quoteFor = (
  { pieces, process, scene, nesting }: DesignedBook,
  estimates: readonly SheetEstimate[],
): QuoteRow[] =>
  isPriced(process.rates)
    ? quoteOf(process.rates, (copies) =>
        copies === nesting.copies
          ? estimates
          : estimatesFor(pieces.map(asRun), copies, { process, ballMm: scene.ballMm }),
      )
    : [];
