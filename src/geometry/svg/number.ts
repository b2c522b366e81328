import type { Element } from './element.js';
import { nameOf, SvgImportError, shortened } from './error.js';

/**
 * Numbers and lengths of attributes and properties. The grammar is that of CSS Values and Units
 * Level 4: what is not a number is refused, since nobody can tell what was meant.
 */

const NUMBER = '[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?';
const LENGTH = new RegExp(`^\\s*(${NUMBER})([a-zA-Z]+|%)?\\s*$`);

/** One px: 1/96 inch (CSS Values and Units Level 4, section 6.2). */
export const MM_PER_PX = 25.4 / 96;

/** Millimetres per unit of length. */
const MM_PER: Readonly<Record<string, number>> = {
  px: MM_PER_PX,
  in: 25.4,
  cm: 10,
  mm: 1,
  q: 0.25,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
};

/** A property or attribute where it stands, for messages. */
export interface Given {
  readonly element: Element;
  readonly property: string;
  readonly text: string;
}

/** A number with its unit: '' where there is none, in lower case. */
interface Measure {
  readonly value: number;
  readonly unit: string;
}

function measureOf(given: Given): Measure {
  const found = LENGTH.exec(given.text);
  const value = Number(found?.[1] ?? Number.NaN);
  if (found === null || !Number.isFinite(value)) throw malformed(given, 'is no number');
  return { value, unit: (found[2] ?? '').toLowerCase() };
}

/** The given value in px, that is user units; percentages are of `wholePx`. */
export function lengthPx(given: Given, wholePx: number): number {
  const { value, unit } = measureOf(given);
  if (unit === '' || unit === 'px') return value;
  if (unit === '%') return (value / 100) * wholePx;
  return (value * mmPer(unit, given)) / MM_PER_PX;
}

/** The given value in mm of the page; null for a percentage, which depends on who shows it. */
export function lengthMm(given: Given): number | null {
  const { value, unit } = measureOf(given);
  return unit === '%' ? null : value * mmPer(unit === '' ? 'px' : unit, given);
}

function mmPer(unit: string, given: Given): number {
  if (Object.hasOwn(MM_PER, unit)) return MM_PER[unit];
  throw malformed(given, `has the unit "${unit}", whose size depends on a font or a screen`);
}

/** A plain number, or a percentage as a share of 1. */
export function numberOf(given: Given): number {
  const { value, unit } = measureOf(given);
  if (unit === '') return value;
  if (unit === '%') return value / 100;
  throw malformed(given, 'is no plain number');
}

/** Numbers separated by spaces or commas; empty text gives none. */
export function numbersOf(given: Given): number[] {
  return partsOf(given).map((text) => numberOf({ ...given, text }));
}

const ITEM = new RegExp(`\\s*(?:,\\s*)?(${NUMBER}(?:[a-zA-Z]+|%)?)`, 'y');
const REST = /^\s*$/;

/**
 * The items of a list of numbers with or without units, separated by spaces, commas or nothing but
 * a sign or point. What is none of these comes last, as it stands.
 */
export function partsOf({ text }: Given): string[] {
  const parts: string[] = [];
  ITEM.lastIndex = 0;
  for (let at = 0; ; at = ITEM.lastIndex) {
    const item = ITEM.exec(text);
    const isOdd = item === null || (at === 0 && /^\s*,/.test(item[0]));
    if (!isOdd) parts.push(item[1]);
    else if (REST.test(text.slice(at))) return parts;
    else return [...parts, text.slice(at)];
  }
}

/** The error for a value that cannot be read. */
export const malformed = ({ element, property, text }: Given, why: string): SvgImportError =>
  new SvgImportError(
    `${nameOf(element)}: ${property}="${shortened(text)}" ${why}. Write a plain number, or a ` +
      'length in mm, cm, in, pt, pc, Q or px.',
  );
