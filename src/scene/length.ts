import type { Extent } from './parameter.js';
import { UNITS, type Unit } from './scene.js';
import { oneOf, quote } from './words.js';

/** The inch is exact: international yard and pound agreement, 1959. */
const MM_PER: Readonly<Record<Unit, number>> = { mm: 1, cm: 10, in: 25.4 };

/** A value read from text, or what is wrong with the text. */
export type Reading<T> = { readonly value: T } | { readonly problem: string };

const NUMBER = '[+-]?(?:\\d+\\s+\\d+/\\d+|\\d+/\\d+|\\d+(?:\\.\\d*)?|\\.\\d+)';

/** A length in text: `14 cm`, `140mm`, `5 1/2 in`, `3/8"`; no unit means the file's own. */
export const LENGTH_PATTERN = `^${NUMBER}\\s*(?:mm|cm|in|"|\u2033)?$`;
/** A share of an edge: `30%`. */
export const SHARE_PATTERN = '^[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)\\s*%$';

const LENGTH = new RegExp(LENGTH_PATTERN);
const SHARE = new RegExp(SHARE_PATTERN);
const NUMBER_THEN_WORD = new RegExp(`^(${NUMBER})\\s*(.*)$`);

/** Millimetres from what the file says; a bare number is in the file's unit. */
export function readLength(said: number | string, unit: Unit): Reading<number> {
  if (typeof said === 'number') return { value: said * MM_PER[unit] };
  const text = said.trim();
  const [, number, word] = NUMBER_THEN_WORD.exec(text) ?? [];
  if (number === undefined || !LENGTH.test(text)) return { problem: sayNoLength(text, word) };
  const value = readNumber(number);
  if (!Number.isFinite(value)) return { problem: `${quote(text)} divides by nothing` };
  return { value: value * MM_PER[readUnit(word) ?? unit] };
}

/** A length, or a share such as `30%`. */
export function readExtent(said: number | string, unit: Unit): Reading<Extent> {
  if (typeof said === 'string' && SHARE.test(said.trim())) {
    return { value: { share: Number(said.replace('%', '')) / 100 } };
  }
  const length = readLength(said, unit);
  return 'problem' in length ? length : { value: { mm: length.value } };
}

function readUnit(word: string | undefined): Unit | undefined {
  if (word === '"' || word === '\u2033') return 'in';
  return UNITS.find((unit) => unit === word);
}

/** `5 1/2`, `3/8`, `5.5`; the sign holds for the whole. */
function readNumber(text: string): number {
  const sign = text.startsWith('-') ? -1 : 1;
  const sum = text
    .replace(/^[+-]/, '')
    .split(/\s+/)
    .map((part) => {
      const [over, under = '1'] = part.split('/');
      return Number(over) / Number(under);
    })
    .reduce((a, b) => a + b, 0);
  return sign * sum;
}

function sayNoLength(text: string, word: string | undefined): string {
  if (/^[+-]?\d+,\d/.test(text)) return `${quote(text)}: write decimals with a point, not a comma`;
  if (word === '%') return `${quote(text)}: a share is not possible here, give a length`;
  if (word) return `${quote(text)}: ${quote(word)} is not a unit; use ${oneOf(UNITS)}`;
  return `${quote(text)} is not a length such as 60, "6 cm" or "2 1/2 in"`;
}

/** Decimals shown in each unit, for about a hundredth of a millimetre. */
const DECIMALS: Readonly<Record<Unit, number>> = { mm: 2, cm: 3, in: 3 };

/**
 * A length in the file's own unit, without the unit's name. A bound is rounded towards what is
 * allowed, so that the figure shown can be typed in.
 */
export function sayInUnit(mm: number, unit: Unit, round: 'nearest' | 'up' | 'down'): string {
  const scale = 10 ** DECIMALS[unit];
  const scaled = (mm / MM_PER[unit]) * scale;
  // Takes off the rounding error of the division, which must not push a bound to the next step.
  const clean = Number(scaled.toPrecision(12));
  const turn = { nearest: Math.round, up: Math.ceil, down: Math.floor }[round];
  return String(turn(clean) / scale);
}

/** An extent as text that reads the same whatever the file's unit. */
export const sayExtent = (extent: Extent): string =>
  'mm' in extent ? `${extent.mm} mm` : `${Number((extent.share * 100).toPrecision(12))}%`;
