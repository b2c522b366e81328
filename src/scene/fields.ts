import { z } from 'zod';
import type { Range } from './bounds.js';
import {
  LENGTH_PATTERN,
  type Reading,
  readExtent,
  readLength,
  SHARE_PATTERN,
  sayInUnit,
} from './length.js';
import type { Extent } from './parameter.js';
import type { Carried, Unit } from './scene.js';
import { notAmong, quote, suggestion } from './words.js';

// The building blocks of the scene's schema. Each says what is allowed when a value is not.

type Issue = z.core.$ZodRawIssue;

/** Free of control characters and half characters, which no XML file can hold. */
const PRINTABLE = /^[^\p{Cc}\p{Cs}]*$/u;

export const LENGTHS = 'a length such as 60, "6 cm" or "2 1/2 in"';
export const EXTENTS = 'a length such as 60 or "6 cm", or a share such as 30%';

/** What is said of a value of the wrong kind altogether, or of none. */
export function sayWrongKind(said: unknown, allowed: string): string {
  if (said === undefined) return `missing; give ${allowed}`;
  if (said === null) return `left empty; give ${allowed}, or take the line out`;
  return `${quote(said)} will not do; give ${allowed}`;
}

/** The same as an error map. */
export const wants =
  (allowed: string) =>
  (issue: Issue): string =>
    sayWrongKind(issue.input, allowed);

/** Keys of which no others are allowed; `whose` completes "is no key of ...". */
export function group<S extends z.ZodRawShape>(whose: string, shape: S) {
  const known = Object.keys(shape);
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? // One line for each key, since each stands in another place of the file.
          issue.keys.map((key) => sayUnknownKey(key, whose, known)).join('\n')
        : sayWrongKind(issue.input, `keys with values, such as "${known[0]}: ..."`),
  });
}

const sayUnknownKey = (key: string, whose: string, known: readonly string[]): string =>
  `${quote(key)} is no key of ${whose}${suggestion(key, known)} Allowed: ${known.join(', ')}`;

export function text(maxCharacters: number) {
  const range = { error: `must have 1 to ${maxCharacters} characters` };
  return z
    .string({ error: (issue) => sayNoText(issue.input) })
    .min(1, range)
    .max(maxCharacters, range)
    .refine((said) => PRINTABLE.test(said), {
      error: 'must be one line without control characters',
    });
}

export function sayNoText(said: unknown): string {
  if (typeof said !== 'number' && typeof said !== 'boolean') return sayWrongKind(said, 'text');
  return `${quote(said)} is not text; put it in quotes, "${said}"`;
}

/** A name that the maker gives; it goes into file names and into SVG ids. */
export const name = () =>
  z.string({ error: ({ input }) => sayNoText(input) }).regex(/^[A-Za-z][A-Za-z0-9_-]{0,59}$/, {
    error: ({ input }) =>
      `${quote(input)} is no name: begin with a letter, go on with letters, digits, - or _ (60 at most)`,
  });

export function choice<const T extends readonly string[]>(options: T) {
  return z.enum(options, {
    error: ({ input }) =>
      typeof input === 'string'
        ? notAmong(input, options)
        : sayWrongKind(input, `one of ${options.join(', ')}`),
  });
}

export const flag = () => z.boolean({ error: wants('true or false') });

/** A number without a length's unit; `sign` is written behind it in messages. */
export function number(range: Range, sign = '') {
  const error = (issue: Issue) => sayNumberOutside(issue.input as number, range, sign, '');
  return z
    .number({ error: wants(`a number from ${range.min} to ${range.max}${sign}`) })
    .min(range.min, { error })
    .max(range.max, { error });
}

/** A whole number; `why` tells what the bounds are for. */
export function whole(range: Range, why = '') {
  const error = (issue: Issue) => sayNumberOutside(issue.input as number, range, '', why);
  return z
    .int({ error: wants(`a whole number from ${range.min} to ${range.max}`) })
    .min(range.min, { error })
    .max(range.max, { error });
}

const sayNumberOutside = (said: number, { min, max }: Range, sign: string, why: string): string =>
  sayOutside(said, said < min, `${min} to ${max}${sign}`, why);

const sayOutside = (said: unknown, low: boolean, range: string, why: string): string =>
  `${quote(said)} is too ${low ? 'small' : 'large'}; it may be ${range}${why && `: ${why}`}`;

/** A length in the file's unit or with its own; gives mm. */
export function length(unit: Unit, range: Range, why = '') {
  return z
    .union([bareNumber(range), z.string().meta({ pattern: LENGTH_PATTERN })], {
      error: wants(LENGTHS),
    })
    .transform((said, context) =>
      settle(context, readLength(said, unit), (mm) => sayLengthOutside(said, mm, unit, range, why)),
    );
}

export interface ExtentRange {
  readonly mm: Range;
  readonly share: Range;
}

/** A length, a share of the edge such as `30%`, or one of `words` that stand for a share. */
export function extent(
  unit: Unit,
  range: ExtentRange,
  words: Readonly<Record<string, number>> = {},
) {
  const names = Object.keys(words);
  const pattern = `(?:${LENGTH_PATTERN})|(?:${SHARE_PATTERN})`;
  const named = names.length > 0 ? [z.enum(names)] : [];
  return z
    .union([bareNumber(range.mm), ...named, z.string().meta({ pattern })], {
      error: wants([EXTENTS, ...names].join(', or ')),
    })
    .transform((said, context) => {
      const share = Object.hasOwn(words, said) ? words[said] : undefined;
      if (share !== undefined) return { share };
      return settle(context, withNearest(readExtent(said, unit), said, names), (value) =>
        sayExtentOutside(said, value, unit, range),
      );
    });
}

function withNearest<T>(reading: Reading<T>, said: unknown, names: readonly string[]): Reading<T> {
  if (!('problem' in reading) || names.length === 0) return reading;
  const near = suggestion(said, names);
  return { problem: `${reading.problem}${near} Words allowed: ${names.join(', ')}` };
}

/** One value throughout, or `{ from, to }` to change evenly from the first panel to the last. */
export function carried<T>(allowed: string, field: z.ZodType<T, number | string>) {
  const both = group('a value that changes', {
    from: field.meta({ description: 'In the first of its panels.' }),
    to: field.meta({ description: 'In the last of its panels.' }),
  });
  return z.union([field.transform((value): Carried<T> => ({ from: value, to: value })), both], {
    error: wants(`${allowed}, or { from, to }`),
  });
}

/** The sign can be told without knowing the file's unit: this is for editors; reading a length
 * looks at its bounds once it is in mm. */
function bareNumber({ min }: Range) {
  if (min < 0) return z.number();
  return z.number().meta(min > 0 ? { exclusiveMinimum: 0 } : { minimum: 0 });
}

/** Ends a transform with the value read, or with what is wrong with it. */
export function settle<T>(
  context: z.core.$RefinementCtx,
  reading: Reading<T>,
  fault: (value: T) => string | undefined = () => undefined,
): T {
  const message = 'problem' in reading ? reading.problem : fault(reading.value);
  if ('value' in reading && message === undefined) return reading.value;
  context.addIssue({ code: 'custom', message });
  return z.NEVER;
}

/**
 * A rule on several keys of a group, checked even when others of its keys are wrong: what it is
 * given need not be valid. `key` is the one that the message points at.
 */
export function rule<S extends z.ZodType>(
  schema: S,
  key: string,
  fault: (said: Readonly<Record<string, unknown>>) => string | undefined,
): S {
  return schema.refine((said) => fault(said as Record<string, unknown>) === undefined, {
    path: [key],
    when: ({ value }) => typeof value === 'object' && value !== null,
    error: ({ input }) => fault(input as Record<string, unknown>),
  });
}

function sayLengthOutside(
  said: unknown,
  mm: number,
  unit: Unit,
  range: Range,
  why: string,
): string | undefined {
  if (mm >= range.min && mm <= range.max) return undefined;
  const bounds = `${sayInUnit(range.min, unit, 'up')} to ${sayInUnit(range.max, unit, 'down')} ${unit}`;
  return sayOutside(said, mm < range.min, bounds, why);
}

function sayExtentOutside(
  said: unknown,
  value: Extent,
  unit: Unit,
  { mm, share }: ExtentRange,
): string | undefined {
  if ('mm' in value) return sayLengthOutside(said, value.mm, unit, mm, '');
  if (value.share >= share.min && value.share <= share.max) return undefined;
  const bounds = `${share.min * 100}% to ${share.max * 100}%`;
  return sayOutside(said, value.share < share.min, bounds, '');
}
