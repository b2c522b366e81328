/**
 * The simple part of CSS that drawing programs write (CSS Syntax Level 3, Selectors Level 3): rules
 * for elements, classes and ids. All else is named and left out.
 */

/** Values by property, in lower case; `!important` taken off and kept apart. */
export type Declarations = ReadonlyMap<string, Declared>;

export interface Declared {
  readonly value: string;
  readonly important: boolean;
}

/** What a selector asks for, all at once; `name` is null where any element will do. */
export interface Selector {
  readonly name: string | null;
  readonly ids: readonly string[];
  readonly classes: readonly string[];
}

export interface Rule {
  readonly selector: Selector;
  readonly declarations: Declarations;
}

export interface Sheet {
  readonly rules: readonly Rule[];
  /** Selectors and at-rules that were not understood, as written. */
  readonly ignored: readonly string[];
}

/** At-rules that change nothing in what is drawn: text is not carried over. */
const HARMLESS = /^@(?:charset|namespace|font-face)\b/i;
/** Selectors longer than this are nobody's, and a long row of classes would only cost time. */
const LONGEST_SELECTOR = 500;
const SIMPLE = /^(\*|[A-Za-z][\w-]*)?((?:[.#][^\s.#:>+~[\]()*,&|]+)*)$/;

/**
 * Reads a style sheet; faulty parts are passed over, as CSS asks. Reading ends after the rule that
 * brings the declarations above `most`.
 */
export function readSheet(text: string, most = Infinity): Sheet {
  const rules: Rule[] = [];
  const ignored: string[] = [];
  let count = 0;
  const css = withoutComments(text).replace(/<!--|-->/g, ' ');
  for (let at = 0; at < css.length && count <= most; ) {
    const { head, body, end } = nextRule(css, at);
    at = end;
    if (head === '' || HARMLESS.test(head)) continue;
    if (head.startsWith('@')) {
      ignored.push(head);
      continue;
    }
    const declarations = readDeclarations(body);
    if (declarations.size === 0) continue;
    for (const written of head.split(',').map((s) => s.trim())) {
      const selector = readSelector(written);
      if (selector) rules.push({ selector, declarations });
      else ignored.push(written);
      count += declarations.size;
    }
  }
  return { rules, ignored };
}

const withoutComments = (text: string): string => {
  const parts: string[] = [];
  for (let at = 0; at < text.length; ) {
    const start = text.indexOf('/*', at);
    parts.push(text.slice(at, start < 0 ? text.length : start), ' ');
    const end = start < 0 ? -1 : text.indexOf('*/', start + 2);
    at = end < 0 ? text.length : end + 2;
  }
  return parts.join('');
};

/** The rule that starts at `at`: what stands before its block, the block, and where it ends. */
function nextRule(css: string, at: number): { head: string; body: string; end: number } {
  const mark = /[{;]/g;
  mark.lastIndex = at;
  const found = mark.exec(css);
  const head = css.slice(at, found?.index).trim();
  if (found === null) return { head, body: '', end: css.length };
  if (found[0] === ';' && head.startsWith('@')) return { head, body: '', end: mark.lastIndex };
  if (found[0] === ';') return { head: '', body: '', end: mark.lastIndex };
  const brace = /[{}"']/g;
  brace.lastIndex = mark.lastIndex;
  for (let depth = 1; depth > 0; ) {
    const next = brace.exec(css);
    if (next === null) return { head, body: css.slice(mark.lastIndex), end: css.length };
    if (next[0] === '{') depth++;
    else if (next[0] === '}') depth--;
    else {
      const close = css.indexOf(next[0], brace.lastIndex);
      brace.lastIndex = close < 0 ? css.length : close + 1;
    }
  }
  return { head, body: css.slice(mark.lastIndex, brace.lastIndex - 1), end: brace.lastIndex };
}

function readSelector(text: string): Selector | null {
  const found = text.length > LONGEST_SELECTOR ? null : SIMPLE.exec(text);
  if (text === '' || found === null) return null;
  const [, name = '*', marks] = found;
  const marked = marks.match(/[.#][^.#]+/g) ?? [];
  const after = (mark: string): string[] =>
    marked.filter((m) => m.startsWith(mark)).map((m) => m.slice(1));
  return { name: name === '*' ? null : name, ids: after('#'), classes: after('.') };
}

/** Reads declarations as in a style attribute; of equals the last counts, if important first. */
export function readDeclarations(text: string): Declarations {
  const declarations = new Map<string, Declared>();
  for (const written of splitOutsideQuotes(withoutComments(text))) {
    const colon = written.indexOf(':');
    const property = written.slice(0, Math.max(0, colon)).trim().toLowerCase();
    const given = written.slice(colon + 1).trim();
    const value = given.replace(/\s*!\s*important$/i, '');
    if (property === '' || value === '') continue;
    const important = value !== given;
    if (declarations.get(property)?.important && !important) continue;
    declarations.set(property, { value, important });
  }
  return declarations;
}

/** Splits at semicolons that stand in neither quotes nor brackets. */
function splitOutsideQuotes(text: string): string[] {
  const parts: string[] = [];
  const mark = /[;"'(]/g;
  let start = 0;
  for (let found = mark.exec(text); found !== null; found = mark.exec(text)) {
    if (found[0] === ';') {
      parts.push(text.slice(start, found.index));
      start = mark.lastIndex;
    } else {
      const end = text.indexOf(found[0] === '(' ? ')' : found[0], mark.lastIndex);
      if (end < 0) break;
      mark.lastIndex = end + 1;
    }
  }
  return [...parts, text.slice(start)];
}

/** Whether the selector fits an element of this name, id and classes. */
export const fits = (
  { name, ids, classes }: Selector,
  element: { name: string; id: string | undefined; classes: readonly string[] },
): boolean =>
  (name === null || name === element.name) &&
  ids.every((id) => id === element.id) &&
  classes.every((c) => element.classes.includes(c));

/** Sorts before what outweighs it: ids, then classes, then names (Selectors Level 3, section 9). */
export const compareSpecificity = (a: Selector, b: Selector): number =>
  a.ids.length - b.ids.length ||
  a.classes.length - b.classes.length ||
  (a.name === null ? 0 : 1) - (b.name === null ? 0 : 1);
