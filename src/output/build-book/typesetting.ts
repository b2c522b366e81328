import { rectangle } from '../../geometry/primitives.js';
import { moveCubics, reversed, translation } from '../../geometry/transform.js';
import { PRINT_FONTS } from '../../scenery/lettering/fonts.js';
import type { Glyph } from '../../scenery/lettering/read-font.js';

/** A font as it is set. */
export interface Type {
  readonly face: 'text' | 'bold' | 'title';
  /** All figures as wide as the widest, so that columns of numbers stand in line. */
  readonly evenFigures?: boolean;
}

export interface TextStyle extends Type {
  readonly emMm: number;
  /** `#rrggbb`. */
  readonly colour: string;
}

/** A character in its place on a line that starts at 0. */
export interface SetCharacter {
  readonly character: string;
  readonly xEm: number;
}

export interface SetText {
  readonly characters: readonly SetCharacter[];
  readonly widthEm: number;
}

/** The advance, in ems, and the contours of a character as it is printed. */
export type Printed = Pick<Glyph, 'advance' | 'contours'>;

/** An empty box, for what a font has not. */
const MISSING: Printed = {
  advance: 0.6,
  contours: (emMm) => [
    rectangle(0.06 * emMm, -0.66 * emMm, 0.48 * emMm, 0.66 * emMm).contours[0],
    reversed(rectangle(0.1 * emMm, -0.62 * emMm, 0.4 * emMm, 0.58 * emMm).contours[0]),
  ],
};

const FIGURES = '0123456789';
const isEven = (character: string, { evenFigures }: Type): boolean =>
  evenFigures === true && FIGURES.includes(character);

export function printed(character: string, type: Type): Printed {
  const glyph = glyphOf(character, type) ?? MISSING;
  if (!isEven(character, type)) return glyph;
  const advance = Math.max(...Array.from(FIGURES, (f) => glyphOf(f, type)?.advance ?? 0));
  const aside = (advance - glyph.advance) / 2;
  return {
    advance,
    contours: (emMm) =>
      glyph.contours(emMm).map((contour) => moveCubics(contour, translation(aside * emMm, 0))),
  };
}

function glyphOf(character: string, { face }: Type): Glyph | null {
  const font = PRINT_FONTS.fontNamed(face);
  return font?.hasCharacter(character) ? font.glyphs(character)[0] : null;
}

/** One line of text, kerned. */
export function setText(text: string, type: Type): SetText {
  let pen = 0;
  let before = '';
  const characters = Array.from(text, (character) => {
    pen += kern(before, character, type);
    const xEm = pen;
    pen += printed(character, type).advance;
    before = character;
    return { character, xEm };
  });
  return { characters, widthEm: pen };
}

/** Figures that stand in columns are not moved. */
function kern(before: string, character: string, type: Type): number {
  if (before === '' || isEven(before, type) || isEven(character, type)) return 0;
  const [first, second] = [glyphOf(before, type), glyphOf(character, type)];
  return first && second ? (PRINT_FONTS.fontNamed(type.face)?.kern(first, second) ?? 0) : 0;
}

export const widthOf = (text: string, style: TextStyle): number =>
  setText(text, style).widthEm * style.emMm;

/** The text, its end left off where it is wider than there is room for. */
export function fitted(text: string, style: TextStyle, widthMm: number): string {
  if (widthOf(text, style) <= widthMm) return text;
  const characters = Array.from(text);
  while (characters.length > 0 && widthOf(`${characters.join('').trimEnd()}…`, style) > widthMm) {
    characters.pop();
  }
  return `${characters.join('').trimEnd()}…`;
}

/** The text in lines no wider than that, broken between words. */
export function wrapped(text: string, style: TextStyle, widthMm: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && widthOf(longer, style) <= widthMm) lines[lines.length - 1] = longer;
    else lines.push(fitted(word, style, widthMm));
  }
  return lines;
}
