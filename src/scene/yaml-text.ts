import {
  Composer,
  type CST,
  type Document,
  Lexer,
  LineCounter,
  Parser,
  type YAMLError,
} from 'yaml';
import { type Positions, positionsIn } from './positions.js';
import type { Position, Problem } from './problem.js';
import { sayYamlError } from './say-yaml-error.js';
import { treeOf } from './yaml-tree.js';

/** A scene is a page or two, settings are less; these keep a hostile or mistaken file from taking the machine down. */
const MAX_CHARACTERS = 1_000_000;
/** The YAML library recurses; some hundred levels deep it could run out of stack. */
const MAX_DEPTH = 30;
const MAX_VALUES = 20_000;
/** A value takes about eight tokens with its key, spaces and line end. */
const MAX_TOKENS = 10 * MAX_VALUES;
/** One slip often makes many lines look wrong. */
const MAX_SYNTAX_PROBLEMS = 20;

/** A YAML text read: its plain value, where everything stands, and what is wrong with the YAML. */
export interface YamlText {
  /** Undefined when the text cannot be read at all. */
  readonly value: unknown;
  readonly positions: Positions;
  readonly problems: readonly Problem[];
}

export function readYaml(text: string): YamlText {
  if (text.length > MAX_CHARACTERS) {
    const millions = (text.length / 1_000_000).toFixed(1);
    return unreadable(`the file holds ${millions} million characters, 1 million at most`);
  }
  if (hasTooManyTokens(text)) {
    return unreadable(`the file holds more than ${MAX_TOKENS} words and signs, too many`);
  }
  const lines = new LineCounter();
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  const tooDeep = firstDeeperThan(MAX_DEPTH, tokens);
  if (tooDeep !== undefined) {
    const { line, col } = lines.linePos(tooDeep);
    const message = `lists and keys are nested more than ${MAX_DEPTH} deep, too deep`;
    return unreadable(message, { line, column: col });
  }
  return compose(text, tokens, lines);
}

/** Whether a value read is a group of keys. */
export const isGroup = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function compose(text: string, tokens: CST.Token[], lines: LineCounter): YamlText {
  const options = { uniqueKeys: false, resolveKnownTags: false, prettyErrors: false } as const;
  const documents = [...new Composer(options).compose(tokens, true, text.length)];
  const document = documents[0] as Document.Parsed;
  const errors: YAMLError[] = [...document.errors, ...document.warnings];
  const { root, problems } = treeOf(document, MAX_VALUES);
  const positions = positionsIn(root, lines);
  if (errors.length > 0) {
    return { value: undefined, positions, problems: syntaxProblems(errors, text, positions) };
  }
  const found = problems.map(({ path, at, message }) => ({
    path,
    ...positions.offset(at),
    message,
  }));
  if (documents.length > 1) {
    const message = 'a second document begins after the line "---"; a file holds one only';
    found.push({ path: [], ...positions.offset(documents[1].range[0]), message });
  }
  return { value: root.value, positions, problems: found };
}

/** The first problem of each line, since the rest usually follows from it. */
function syntaxProblems(errors: YAMLError[], text: string, positions: Positions): Problem[] {
  const byLine = new Map<number, Problem>();
  for (const error of errors) {
    const position = positions.offset(error.pos[0]);
    if (byLine.size === MAX_SYNTAX_PROBLEMS || byLine.has(position.line)) continue;
    byLine.set(position.line, { path: [], ...position, message: sayYamlError(error, text) });
  }
  return [...byLine.values()];
}

function unreadable(message: string, position: Position = { line: 1, column: 1 }): YamlText {
  const positions = positionsIn({ value: undefined, at: 0 }, new LineCounter());
  return { value: undefined, positions, problems: [{ path: [], ...position, message }] };
}

function hasTooManyTokens(text: string): boolean {
  let count = 0;
  for (const _ of new Lexer().lex(text)) if (++count > MAX_TOKENS) return true;
  return false;
}

/** Offset of the first value found deeper than `depth`, by a stack of our own: no recursion. */
function firstDeeperThan(depth: number, tokens: readonly CST.Token[]): number | undefined {
  const open = tokens.map((token) => ({ token, level: 0 }));
  while (open.length > 0) {
    const { token, level } = open.pop()!;
    if (level > depth) return token.offset;
    if (token.type === 'document' && token.value) open.push({ token: token.value, level });
    if (!('items' in token)) continue;
    for (const { key, value } of token.items) {
      if (key) open.push({ token: key, level: level + 1 });
      if (value) open.push({ token: value, level: level + 1 });
    }
  }
  return undefined;
}
