import { BOUNDS } from './bounds.js';
import { DEFAULTS } from './defaults.js';
import type { ElementDescription } from './parameter.js';
import { UNITS, type Unit } from './scene.js';

/** What must be known of a file before its other values can be understood. */
export interface SceneContext {
  /** The unit of bare numbers. */
  readonly unit: Unit;
  /** Undefined when the file's own number is wrong, or for the schema of all files. */
  readonly panels: number | undefined;
  readonly stockNames: readonly string[];
  readonly elements: readonly ElementDescription[];
}

/** Reads ahead. Whatever is wrong here is passed over: the schema will say it. */
export function contextOf(
  file: Readonly<Record<string, unknown>>,
  elements: readonly ElementDescription[],
): SceneContext {
  const { stocks } = file;
  return {
    unit: UNITS.find((unit) => unit === file.unit) ?? DEFAULTS.unit,
    panels: panelsOf(file.panels),
    stockNames: typeof stocks === 'object' && stocks !== null ? Object.keys(stocks) : [],
    elements,
  };
}

function panelsOf(said: unknown): number | undefined {
  if (said === undefined) return DEFAULTS.panels;
  const { min, max } = BOUNDS.panels;
  return typeof said === 'number' && Number.isInteger(said) && said >= min && said <= max
    ? said
    : undefined;
}
