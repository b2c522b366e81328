import type { Face } from '../../process/layers.js';
import type { WorkedOperation } from '../../process/process.js';
import type { QuoteRow } from '../../sheet/quote.js';

/** What one step of a sheet takes. */
export interface EstimateRow {
  /** The sheet's name. */
  readonly sheet: string;
  readonly face: Face;
  readonly operation: WorkedOperation;
  /** Length of what is worked, whatever the operation, all passes. */
  readonly cutMm: number;
  readonly travelMm: number;
  readonly corners: number;
  readonly seconds: number;
}

/** The card of one stock, all its sheets together. */
export interface CardUse {
  readonly stock: string;
  readonly sheets: number;
  readonly usedMm2: number;
  readonly wastedMm2: number;
}

/** What making one book takes, and what orders of several come to. */
export interface Costs {
  readonly steps: readonly EstimateRow[];
  /** Changing tools and turning sheets. */
  readonly stopSeconds: number;
  readonly cards: readonly CardUse[];
  /** Empty where the maker has set no rates. */
  readonly quote: readonly QuoteRow[];
  /** '' where the maker names none. */
  readonly currency: string;
}
