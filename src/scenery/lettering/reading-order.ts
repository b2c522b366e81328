import bidiModule from 'bidi-js';
import { LetteringError } from './fault.js';

/** The package's types call its one export `default`; as a module it is the function itself. */
const bidiFactory = bidiModule as unknown as typeof bidiModule.default;

const RIGHT_TO_LEFT = /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufeff]/;
/** Scripts whose letters change shape with their neighbours, and marks that have to be placed. */
const NEEDS_SHAPING =
  /[\p{Script=Arabic}\p{Script=Syriac}\p{Script=Nko}\p{Script=Devanagari}\p{Script=Bengali}\p{Script=Tamil}\p{Script=Thai}\p{Script=Khmer}\p{M}]/u;

/**
 * The characters of a line from left to right as they are seen: the Unicode Bidirectional Algorithm
 * (UAX #9), brackets mirrored.
 * @throws LetteringError for writing whose letters would have to be joined or stacked.
 */
export function asSeen(text: string): string {
  const hard = NEEDS_SHAPING.exec(text);
  if (hard) {
    throw new LetteringError(
      `"${hard[0]}" belongs to writing that has to be joined or stacked, which lettering cannot do.`,
      'Draw the word in a drawing program and bring its outlines in as a shape.',
    );
  }
  if (!RIGHT_TO_LEFT.test(text)) return text;
  const bidi = bidiFactory();
  return bidi.getReorderedString(text, bidi.getEmbeddingLevels(text));
}
