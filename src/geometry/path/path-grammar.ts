/**
 * SVG path data taken apart after the grammar of SVG 2, section 9.3.9, numbers run together and
 * arc flags without separators included.
 */

/** One command with its numbers, repeats written out: "M0 0 5 5" gives an M and an L. */
export interface PathSegment {
  readonly command: string;
  readonly numbers: readonly number[];
}

/** What was read and, where reading had to stop, why: "at character 12: ..." (the first is 1). */
export interface PathSegments {
  readonly segments: PathSegment[];
  readonly fault: string | null;
}

/** How many numbers each command takes at a time. */
const NUMBERS: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};

const SPACE = /[\t\n\f\r ]*/y;
const COMMA = /[\t\n\f\r ]*,?[\t\n\f\r ]*/y;
const NUMBER = /[+-]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][+-]?\d+)?/y;
const FLAG = /[01]/y;

/**
 * Reads as far as the data is sound and drops the rest, as section 9.5.4 demands of whoever draws
 * it: a command cut short counts as not given. Never throws.
 */
export function readSegments(d: string): PathSegments {
  const segments: PathSegment[] = [];
  const reader = new Reader(d);
  reader.take(SPACE);
  while (!reader.isDone) {
    const at = reader.at;
    const letter = d[at];
    const command = letter.toUpperCase();
    const count = NUMBERS[command];
    if (count === undefined) return { segments, fault: faultAt(at, `"${letter}" is no command`) };
    if (segments.length === 0 && command !== 'M') {
      return { segments, fault: faultAt(at, `a path starts with M, not "${letter}"`) };
    }
    reader.at++;
    const fault = count === 0 ? null : readGroups(reader, letter, count, segments);
    if (count === 0) segments.push({ command: letter, numbers: [] });
    if (fault !== null) return { segments, fault };
    reader.take(SPACE);
  }
  return { segments, fault: null };
}

/** Reads the numbers of a command, as often as they repeat. */
function readGroups(
  reader: Reader,
  letter: string,
  count: number,
  segments: PathSegment[],
): string | null {
  let command = letter;
  let hasComma = false;
  reader.take(SPACE);
  for (let first = true; ; first = false) {
    const numbers: number[] = [];
    while (numbers.length < count) {
      const isFlag = letter.toUpperCase() === 'A' && (numbers.length === 3 || numbers.length === 4);
      const text = reader.take(isFlag ? FLAG : NUMBER);
      if (text === '') {
        const isEnd = numbers.length === 0 && !first && !hasComma;
        const missing = isFlag ? 'an arc flag (0 or 1)' : 'a number';
        return isEnd ? null : faultAt(reader.at, `${missing} is missing for "${letter}"`);
      }
      const value = Number(text);
      if (!Number.isFinite(value)) return faultAt(reader.at - text.length, `${text} is too large`);
      numbers.push(value);
      hasComma = reader.take(COMMA).includes(',');
    }
    segments.push({ command, numbers });
    if (command === 'M') command = 'L';
    if (command === 'm') command = 'l';
  }
}

const faultAt = (at: number, what: string): string => `at character ${at + 1}: ${what}`;

class Reader {
  at = 0;

  constructor(private readonly text: string) {}

  get isDone(): boolean {
    return this.at >= this.text.length;
  }

  /** The text that a sticky pattern matches here, stepped over; empty where it does not match. */
  take(pattern: RegExp): string {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text)?.[0] ?? '';
    this.at += found.length;
    return found;
  }
}
