import type { Element } from './element.js';

/** What is wrong with a drawing, where, and what to do about it, in sentences for its maker. */
export class SvgImportError extends Error {
  override readonly name = 'SvgImportError';
}

/** An element as its maker finds it in the file: `<path id="roof"> on line 12`. */
export function nameOf(element: Element): string {
  const id = element.attributes.get('id');
  return `<${element.name}${id === undefined ? '' : ` id="${shortened(id)}"`}> on line ${element.line}`;
}

/** Text as it can be quoted in a sentence, at most 40 characters of it. */
export const shortened = (text: string): string => {
  const plain = text.replace(/\s+/g, ' ').trim();
  return plain.length > 40 ? `${plain.slice(0, 39)}…` : plain;
};
