import { BOUNDS } from './bounds.js';
import type { Reading } from './length.js';
import { quote, suggestion } from './words.js';

/** Words for panels that scenery can stand in. */
export const PANEL_WORDS = ['all', 'front', 'backdrop'] as const;
/** A run of panels: `2 to 4`. */
export const PANEL_RUN_PATTERN = '^\\d+\\s+to\\s+\\d+$';

const RUN = /^(\d+)\s+to\s+(\d+)$/;

/** What the file may say: a number, `2 to 4`, a list of numbers, or one of the words. */
export type PanelsSaid = number | string | readonly number[];

/**
 * Panel numbers, ascending and each once. `all` is every panel with a window, that is every one
 * but the backdrop. `count` is the book's number of panels; undefined when the file's own is wrong.
 */
export function readPanels(said: PanelsSaid, count: number | undefined): Reading<number[]> {
  const last = count ?? BOUNDS.panels.max;
  const numbers =
    typeof said === 'string' ? readWords(said.trim(), last) : { value: [said].flat() };
  if ('problem' in numbers) return numbers;
  if (numbers.value.length === 0) return { problem: 'an empty list; name at least one panel' };
  const stray = numbers.value.find((n) => !Number.isInteger(n) || n < 1 || n > last);
  if (stray !== undefined) return { problem: sayStray(stray, last) };
  return { value: [...new Set(numbers.value)].sort((a, b) => a - b) };
}

function readWords(text: string, last: number): Reading<number[]> {
  if (text === 'all') return { value: run(1, last - 1) };
  if (text === 'front') return { value: [1] };
  if (text === 'backdrop') return { value: [last] };
  const [, first, end] = RUN.exec(text) ?? [];
  if (first === undefined) {
    const near = suggestion(text, PANEL_WORDS);
    return { problem: `${quote(text)} names no panel${near} Give ${PANELS_ALLOWED}` };
  }
  const [from, to] = [Number(first), Number(end)];
  if (from > to) return { problem: `${quote(text)} runs backwards; say "${to} to ${from}"` };
  // The ends alone tell whether the run fits, and a run may be far too long to be written out.
  if (from < 1 || to > last) return { problem: sayStray(from < 1 ? from : to, last) };
  return { value: run(from, to) };
}

export const PANELS_ALLOWED =
  'a number, a run such as "2 to 4", a list such as [1, 3], or one of all, front, backdrop';

function sayStray(panel: number, last: number): string {
  if (!Number.isInteger(panel)) return `panel ${quote(panel)} is not a whole number`;
  return `panel ${panel} is not in this book; its panels are 1 (front) to ${last} (backdrop)`;
}

const run = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i);
