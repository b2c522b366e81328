import type { Book } from '../book/book.js';
import type { Panel } from '../panel/panel.js';
import type { Piece } from '../panel/piece.js';
import type { ProcessLimits, Scene } from '../scene/scene.js';

/** What a careful maker would have noticed before cutting. */
export interface Finding {
  /** The rule's name, such as `drop-out`. */
  readonly rule: string;
  /** `error`: it will not work; `warning`: it may well not; `hint`: it would look better otherwise. */
  readonly severity: Severity;
  readonly where: Place;
  /** What was found and what is wanted, in `unit`. */
  readonly measured: number;
  readonly wanted: number;
  readonly unit: 'mm' | 'mm2' | 'mm/mm2' | 'deg' | 'L*' | '%' | 'parts';
  /** What is wrong, where and how much, in a sentence. */
  readonly message: string;
  /** What to do about it. */
  readonly cure: string;
}

export type Severity = 'error' | 'warning' | 'hint';

/** A place in a piece's own file or in a sheet's (mm from its top left), or in the scene file. */
export interface Place {
  readonly piece?: string;
  /** The place is in this sheet's file, not in the piece's. */
  readonly sheet?: string;
  readonly x?: number;
  readonly y?: number;
  /** Keys into the scene file. */
  readonly scene?: readonly (string | number)[];
}

/** All that a rule may look at. */
export interface Checked {
  readonly scene: Scene;
  readonly book: Book;
  readonly panels: readonly Panel[];
  readonly pieces: readonly Piece[];
  readonly limits: ProcessLimits;
}

export type Rule = (checked: Checked) => Finding[];

/** Two decimals, as a maker reads lengths. */
export const rounded = (value: number): number => Math.round(value * 100) / 100;

const GRAVITY: Record<Severity, number> = { error: 0, warning: 1, hint: 2 };

export const gravestFirst = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]);
