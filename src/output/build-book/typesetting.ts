import { rectangle } from '../../geometry/primitives.js';
import { reversed } from '../../geometry/transform.js';
import { PRINT_FONTS } from '../../scenery/lettering/fonts.js';
import type { Glyph, LetterFont } from '../../scenery/lettering/read-font.js';

export type Face = 'text' | 'bold' | 'title';

export interface TextStyle {
  readonly face: Face;
  readonly emMm: number;
  /** `#rrggbb`. */
  readonly colour: string;
  /** All figures as wide as the widest, so that columns of numbers stand in line. */
  readonly evenFigures?: boolean;
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

export const fontOf = (face: Face): LetterFont => PRINT_FONTS.fontNamed(face)!;

/** A character as it is printed: its glyph, or an empty box where the font has none. */
export const printed = (font: LetterFont, character: string): PrintedGlyph =>
  glyphOf(font, character) ?? MISSING;

const glyphOf = (font: LetterFont, character: string): Glyph | null =>
  font.hasCharacter(character) ? font.glyphs(character)[0] : null;

/** Advance and contours for an em. */
type PrintedGlyph = Pick<Glyph, 'advance' | 'contours'>;

const MISSING: PrintedGlyph = {
  advance: 0.6,
  contours: (emMm) => [
    rectangle(0.06 * emMm, -0.66 * emMm, 0.48 * emMm, 0.66 * emMm).contours[0],
    reversed(rectangle(0.1 * emMm, -0.62 * emMm, 0.4 * emMm, 0.58 * emMm).contours[0]),
  ],
};

const FIGURES = '0123456789';
const isFigure = (character: string): boolean => FIGURES.includes(character);

/** One line of text, kerned. */
export function setText(text: string, { face, evenFigures = false }: TextStyle): SetText {
  const font = fontOf(face);
  const figureEm = Math.max(...Array.from(FIGURES, (f) => printed(font, f).advance));
  let pen = 0;
  let before: Glyph | null = null;
  const characters: SetCharacter[] = [];
  for (const character of text) {
    const glyph = glyphOf(font, character);
    const now = glyph ?? MISSING;
    const isEven = evenFigures && isFigure(character);
    if (before && glyph && !isEven) pen += font.kern(before, glyph);
    const advance = isEven ? figureEm : now.advance;
    characters.push({ character, xEm: pen + (advance - now.advance) / 2 });
    pen += advance;
    before = isEven ? null : glyph;
  }
  return { characters, widthEm: pen };
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
