import { addLayers, addPage, newPdf, type Pdf, type PdfAbout, pdfBytes } from '../pdf/document.js';
import { colour, inLayer, inMillimetres, lineWidth } from '../pdf/operators.js';
import type { Box, Item, Leaf, Picture, Rule, Text } from './leaf.js';
import { addFont, type PdfFont, showText, typeName } from './print-font.js';
import type { Paper } from './style.js';
import { widthOf } from './typesetting.js';

const GUIDE = 'guide';
const PREVIEW = 'preview';

/** The pages as a PDF document. `preview` is a PNG. */
export async function writeLeaves(
  leaves: readonly Leaf[],
  { width, height }: Paper,
  preview: Uint8Array,
  about: PdfAbout,
): Promise<Uint8Array> {
  const pdf = await newPdf(about);
  const fonts = addFonts(pdf, leaves);
  const image = await pdf.document.embedPng(preview);
  const resources = {
    Font: Object.fromEntries([...fonts].map(([name, { ref }]) => [name, ref])),
    XObject: { [PREVIEW]: image.ref },
    Properties: addLayers(pdf, [GUIDE]),
  };
  for (const leaf of leaves) {
    const content = leaf.map((item) => operatorsOf(item, fonts)).join('');
    addPage(pdf, width, height, inMillimetres(height) + content, resources);
  }
  return pdfBytes(pdf);
}

type Fonts = ReadonlyMap<string, PdfFont>;

/** Each type by its name, with the characters that are set in it. */
function addFonts(pdf: Pdf, leaves: readonly Leaf[]): Fonts {
  const texts = leaves.flat().filter((item) => item.kind === 'text');
  const names = new Set(texts.map(({ style }) => typeName(style)));
  return new Map(
    Array.from(names, (name) => {
      const set = texts.filter(({ style }) => typeName(style) === name);
      const characters = new Set(set.map((item) => item.text).join(''));
      return [name, addFont(pdf, set[0].style, [...characters].sort())];
    }),
  );
}

function operatorsOf(item: Item, fonts: Fonts): string {
  switch (item.kind) {
    case 'text':
      return textOperators(item, fonts);
    case 'rule':
      return item.isGuide ? inLayer(GUIDE, ruleOperators(item)) : ruleOperators(item);
    case 'box':
      return boxOperators(item);
    case 'picture':
      return pictureOperators(item);
  }
}

function textOperators({ x, baseline, text, style, align }: Text, fonts: Fonts): string {
  const font = fonts.get(typeName(style));
  if (!font) throw new Error(`"${text}" is set in a type that was not added.`);
  const shift = { left: 0, centre: 0.5, right: 1 }[align] * widthOf(text, style);
  return colour(style.colour, 'rg') + showText(text, style, font, x - shift, baseline);
}

const at = (...mm: readonly number[]): string => mm.map((v) => v.toFixed(3)).join(' ');

const ruleOperators = ({ from, to, widthMm, colour: hex }: Rule): string =>
  `${colour(hex, 'RG')}${lineWidth(widthMm)}${at(...from)} m\n${at(...to)} l\nS\n`;

function boxOperators({ x, y, width, height, colour: hex, outlineMm }: Box): string {
  const path = `${at(x, y, width, height)} re\n`;
  return outlineMm === undefined
    ? `${colour(hex, 'rg')}${path}f\n`
    : `${colour(hex, 'RG')}${lineWidth(outlineMm)}${path}S\n`;
}

/** A picture is drawn into a square of 1 with y up. */
const pictureOperators = ({ x, y, width, height }: Picture): string =>
  `q\n${at(width, 0, 0, -height, x, y + height)} cm\n/${PREVIEW} Do\nQ\n`;
