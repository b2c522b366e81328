import type { YAMLError } from 'yaml';
import { quote } from './words.js';

/** A colour that was not put in quotes has become a comment. */
const BARE_COLOUR = /[\s,[{]#[0-9a-f]{3,6}\b/i;

const TAB = 'a tab stands at the start of this line; indent with spaces';
const NO_COLON = 'a key and its value belong on this line, with a colon and a space between them';

/** What is wrong with the YAML itself, in a maker's words where the slip is a common one. */
export function sayYamlError(error: YAMLError, text: string): string {
  const [at] = error.pos;
  switch (error.code) {
    case 'TAB_AS_INDENT':
      return TAB;
    case 'BLOCK_AS_IMPLICIT_KEY':
      return 'a second colon on this line; put text with a colon in quotes';
    case 'BAD_SCALAR_START':
      return `a value cannot start with ${quote(text[at])}; put it in quotes`;
    case 'UNEXPECTED_TOKEN':
      return `${quote(restOfLine(text, at))} does not belong here`;
    case 'TAG_RESOLVE_FAILED':
      return `there are no tags: take ${quote(text.slice(...error.pos))} out, or put it in quotes`;
  }
  if (error.message.startsWith('Flow')) return sayUnclosed(text.slice(0, at), error.message);
  if (error.message.startsWith('Missing closing')) {
    return 'the text ends inside quotes; look above for a quotation mark that is not closed';
  }
  if (error.code === 'BAD_INDENT') {
    const line = text.slice(text.lastIndexOf('\n', at - 1) + 1);
    if (/^ *\t/.test(line)) return TAB;
    return 'this line is not indented like the ones it belongs to; line them up';
  }
  if (error.message.startsWith('Implicit')) return NO_COLON;
  return `not valid YAML: ${error.message}`;
}

function sayUnclosed(before: string, message: string): string {
  const opener = Math.max(before.lastIndexOf('['), before.lastIndexOf('{'));
  if (opener >= 0 && BARE_COLOUR.test(before.slice(opener))) {
    return 'a bracket is not closed: an unquoted # begins a comment; put colours in quotes, "#20243c"';
  }
  return /map|\}/i.test(message)
    ? 'a brace { is not closed with } before this line'
    : 'a bracket [ is not closed with ] before this line';
}

const restOfLine = (text: string, at: number): string =>
  text.slice(at, text.indexOf('\n', at) >= 0 ? text.indexOf('\n', at) : undefined).trim();
