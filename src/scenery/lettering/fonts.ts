import { ROMAN_WOFF } from './fonts/roman.js';
import { SANS_WOFF } from './fonts/sans.js';
import { SCRIPT_WOFF } from './fonts/script.js';
import { TEXT_WOFF } from './fonts/text.js';
import { type LetterFont, readFont } from './read-font.js';

/** Where a family finds the fonts that scenes name. */
export interface FontSource {
  readonly names: readonly string[];
  fontNamed(name: string): LetterFont | undefined;
}

/** Read when first asked for, then kept. */
function fontsFrom(files: ReadonlyMap<string, () => ArrayBuffer>): FontSource {
  const read = new Map<string, LetterFont>();
  return {
    names: [...files.keys()],
    fontNamed: (name) => {
      const file = files.get(name);
      if (!read.has(name) && file) read.set(name, readFont(file()));
      return read.get(name);
    },
  };
}

/** A roman with serifs, a sturdy sans and a joined script: see fonts.md. */
export const BUNDLED_FONTS: FontSource = fontsFrom(
  new Map([
    ['roman', () => bytesOf(ROMAN_WOFF)],
    ['sans', () => bytesOf(SANS_WOFF)],
    ['script', () => bytesOf(SCRIPT_WOFF)],
  ]),
);

/** What the build book is set in: too light to be cut. */
export const PRINT_FONTS: FontSource = fontsFrom(
  new Map([
    ['text', () => bytesOf(TEXT_WOFF)],
    ['bold', () => bytesOf(SANS_WOFF)],
    ['title', () => bytesOf(ROMAN_WOFF)],
  ]),
);

const bytesOf = (base64: string): ArrayBuffer =>
  Uint8Array.from(atob(base64), (c) => c.charCodeAt(0)).buffer;
