import type { Face } from '../../process/layers.js';
import type { WorkedOperation } from '../../process/process.js';

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

/** An order of so many books; money in the maker's own currency. */
export interface QuoteRow {
  readonly copies: number;
  readonly sheets: number;
  readonly minutes: number;
  readonly setUp: number;
  readonly machine: number;
  readonly card: number;
  readonly total: number;
  readonly each: number;
}

/** What making one book takes, and what orders of several come to. */
export interface Costs {
  readonly steps: readonly EstimateRow[];
  /** Changing tools and turning sheets. */
  readonly stopSeconds: number;
  readonly cards: readonly CardUse[];
  readonly quote: readonly QuoteRow[];
  /** '' where the maker names none. */
  readonly currency: string;
}
