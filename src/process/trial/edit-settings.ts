import type { Node } from 'yaml';
import { isMap, isScalar, type Pair, parseDocument, type YAMLMap } from 'yaml';
import { type Said, STARTING_MARK, sayValue } from '../process-text.js';

const MEASURED = 'measured: ';

/**
 * The text of a settings file with one value written into it and a remark at the end of its line;
 * every other character stays as it is. What the file does not say yet is added: to its group where
 * there is one, else at the end. Null where that cannot be done, as where a group is an alias.
 * @param text must be good YAML whose root is a group of keys.
 */
export function withSetting(
  text: string,
  path: readonly string[],
  value: Said,
  measured: string,
): string | null {
  const note = `${MEASURED}${measured}`;
  const root = parseDocument(text).contents as YAMLMap;
  const { group, rest, pair } = deepest(root, path);
  if (pair && rest.length > 0) return null;
  if (pair?.value) {
    const [start, end] = extent(text, pair.value as Node);
    const said = sayValue(value);
    const longer = said.length - (end - start);
    return `${text.slice(0, start)}${said}${remarked(text.slice(end), note, longer)}`;
  }
  const [key, ...inner] = rest;
  const nested = inner.reduceRight<Said>((held, name) => ({ [name]: held }), value);
  return added(text, group, group === root, `${key}: ${sayValue(nested)}`, note);
}

interface Deepest {
  readonly group: YAMLMap;
  /** The keys of the path that are not there. */
  readonly rest: readonly string[];
  /** Where all are there. */
  readonly pair?: Pair;
}

function deepest(group: YAMLMap, path: readonly string[]): Deepest {
  const [key, ...rest] = path;
  const pair = group.items.find((item) => isScalar(item.key) && String(item.key.value) === key);
  if (pair === undefined) return { group, rest: path };
  if (rest.length > 0 && isMap(pair.value)) return deepest(pair.value, rest);
  return { group, rest, pair };
}

/** From the first character of a value to behind its last. */
function extent(text: string, node: Node): [number, number] {
  const [start, end] = node.range!;
  return [start, start + text.slice(start, end).trimEnd().length];
}

function added(text: string, group: YAMLMap, isRoot: boolean, entry: string, note: string): string {
  const [start] = group.range!;
  if (group.flow) {
    const more = group.items.length > 0 ? ',' : '';
    return `${text.slice(0, start + 1)} ${entry}${more}${remarked(text.slice(start + 1), note)}`;
  }
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const indent = text.slice(lineStart, start);
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  const line = `${isRoot ? '' : indent}${entry}  # ${note}${end}`;
  if (!isRoot) return `${text.slice(0, lineStart)}${line}${text.slice(lineStart)}`;
  return `${text}${text.endsWith('\n') ? '' : end}${line}`;
}

/**
 * The rest of a text with a note at the end of its first line, after the maker's own remark; where
 * there was a remark, in its column, although what comes before is `longer` than it was.
 */
function remarked(rest: string, note: string, longer = 0): string {
  const [line] = /^[^\r\n]*/.exec(rest)!;
  const [, code, space = '', said = ''] = /^(.*?)(?:(^|\s+)#(.*))?$/.exec(line)!;
  const own = said
    .replace(STARTING_MARK, '')
    .replace(new RegExp(`;?\\s*${MEASURED}.*$`), '')
    .trim();
  const remark = own === '' ? note : `${own}; ${note}`;
  const gap = ' '.repeat(Math.max(2, space.length - longer));
  return `${code.trimEnd()}${gap}# ${remark}${rest.slice(line.length)}`;
}
