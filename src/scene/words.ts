import { nearestWord } from './nearest-word.js';

/** Longer values are cut off when they are quoted. */
const LONGEST_QUOTE = 40;

/** The offending value as the maker would recognise it. */
export function quote(value: unknown): string {
  if (typeof value === 'string') {
    return JSON.stringify(
      value.length > LONGEST_QUOTE ? `${value.slice(0, LONGEST_QUOTE)}...` : value,
    );
  }
  if (typeof value === 'number') return yamlNumber(value);
  if (Array.isArray(value)) return 'a list';
  if (value === null) return 'nothing';
  return typeof value === 'object' ? 'a group of keys' : String(value);
}

function yamlNumber(value: number): string {
  if (Number.isNaN(value)) return '.nan';
  if (!Number.isFinite(value)) return value < 0 ? '-.inf' : '.inf';
  return String(value);
}

/** `a, b or c`. */
export function oneOf(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

/** `; did you mean "hedge"?`, or a full stop when no known word is near. */
export function suggestion(word: unknown, known: readonly string[]): string {
  const nearest = typeof word === 'string' ? nearestWord(word, known) : undefined;
  return nearest === undefined ? '.' : `; did you mean ${quote(nearest)}?`;
}

/** What is wrong with a word that is not among the allowed ones: the nearest, and all of them. */
export const notAmong = (word: unknown, allowed: readonly string[]): string =>
  `${quote(word)} is not known here${suggestion(word, allowed)} Allowed: ${allowed.join(', ')}`;
