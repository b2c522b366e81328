import type { PDFRef } from '@cantoo/pdf-lib';
import { moveCubics, scaling } from '../../geometry/transform.js';
import type { Pdf } from '../pdf/document.js';
import { chainPath } from '../pdf/operators.js';
import { printed, setText, type TextStyle, type Type } from './typesetting.js';

/** A font in a document: each character as a byte. */
export interface PdfFont {
  /** What content calls it. */
  readonly name: string;
  readonly ref: PDFRef;
  /** Two hexadecimal digits. */
  code(character: string): string;
}

/** Glyphs are drawn in thousandths of an em. */
const UNITS = 1000;
/** Bytes from 1. A book has fewer unless its title is absurd; the rest is then shown as empty boxes. */
const MOST_CHARACTERS = 255;
const BOX = '\ufffd';

/**
 * Adds the outlines of these characters as a font of type 3 (ISO 32000-1, 9.6.5) with the text that
 * they stand for, so that the text can be found and copied.
 */
export function addFont(
  { library, document }: Pdf,
  type: Type,
  characters: readonly string[],
): PdfFont {
  const { context } = document;
  const used =
    characters.length > MOST_CHARACTERS
      ? [...characters.slice(0, MOST_CHARACTERS - 1), BOX]
      : characters;
  const names = used.map((_, i) => `c${i + 1}`);
  const widths = used.map((c) => Math.round(printed(c, type).advance * UNITS));
  const drawings = used.map((character, i) => {
    const path = printed(character, type)
      .contours(UNITS)
      .map((contour) => chainPath(moveCubics(contour, scaling(1, -1)), true, 0))
      .join('');
    // `d1`: a glyph without a colour of its own, inside a box that none of them reaches.
    const box = `${widths[i]} 0 -${UNITS} -${UNITS} ${2 * UNITS} ${2 * UNITS} d1\n`;
    return context.register(context.flateStream(path === '' ? box : `${box}${path}f\n`));
  });
  const ref = context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'Type3',
      FontBBox: [0, 0, 0, 0],
      FontMatrix: [1 / UNITS, 0, 0, 1 / UNITS, 0, 0],
      CharProcs: Object.fromEntries(names.map((name, i) => [name, drawings[i]])),
      Encoding: { Type: 'Encoding', Differences: [1, ...names.map((n) => library.PDFName.of(n))] },
      FirstChar: 1,
      LastChar: used.length,
      Widths: widths,
      Resources: {},
      ToUnicode: context.register(context.flateStream(toUnicode(used))),
    }),
  );
  const codes = new Map(used.map((character, i) => [character, byte(i + 1)]));
  return {
    name: typeName(type),
    ref,
    code: (character) => codes.get(character) ?? byte(used.length),
  };
}

const byte = (n: number): string => n.toString(16).padStart(2, '0');

/** ISO 32000-1, 9.10.3. */
function toUnicode(characters: readonly string[]): string {
  const utf16 = (text: string): string =>
    Array.from({ length: text.length }, (_, i) =>
      text.charCodeAt(i).toString(16).padStart(4, '0'),
    ).join('');
  const BLOCK = 100;
  const blocks: string[] = [];
  for (let i = 0; i < characters.length; i += BLOCK) {
    const rows = characters.slice(i, i + BLOCK).map((c, k) => `<${byte(i + k + 1)}> <${utf16(c)}>`);
    blocks.push(`${rows.length} beginbfchar\n${rows.join('\n')}\nendbfchar`);
  }
  return [
    '/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap',
    '/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def',
    '1 begincodespacerange\n<00> <ff>\nendcodespacerange',
    ...blocks,
    'endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n',
  ].join('\n');
}

export const typeName = ({ face, evenFigures }: Type): string =>
  evenFigures ? `${face}-figures` : face;

/** Shows a line of text from (x, baseline) on a page with y down. */
export function showText(
  text: string,
  style: TextStyle,
  font: PdfFont,
  x: number,
  baseline: number,
): string {
  const { characters } = setText(text, style);
  if (characters.length === 0) return '';
  const parts = characters.map(({ character, xEm }, i) => {
    const next = characters[i + 1];
    const advance = Math.round(printed(character, style).advance * UNITS);
    const apart = next === undefined ? 0 : Math.round((next.xEm - xEm) * UNITS) - advance;
    return `<${font.code(character)}>${apart === 0 ? '' : ` ${-apart} `}`;
  });
  // Text stands upright although the page's y runs down.
  const place = `1 0 0 -1 ${x.toFixed(3)} ${baseline.toFixed(3)} Tm`;
  const shown = `[${parts.join('').replaceAll('><', '')}] TJ`;
  return `BT\n/${font.name} ${style.emMm.toFixed(4)} Tf\n${place}\n${shown}\nET\n`;
}
