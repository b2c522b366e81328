import { addLayers, addPage, newPdf, type Pdf, type PdfAbout, pdfBytes } from '../pdf/document.js';
import { colour, inLayer, inMillimetres, lineWidth } from '../pdf/operators.js';
import type { Box, Item, Leaf, Picture, Rule, Text } from './leaf.js';
import { addFont, type PdfFont, showText } from './print-font.js';
import type { Paper } from './style.js';
import { type Face, setText } from './typesetting.js';

const FACES: readonly Face[] = ['text', 'bold', 'title'];
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
    Font: Object.fromEntries([...fonts].map(([face, { ref }]) => [face, ref])),
    XObject: { [PREVIEW]: image.ref },
    Properties: addLayers(pdf, [GUIDE]),
  };
  for (const leaf of leaves) {
    const content = leaf.map((item) => operatorsOf(item, fonts)).join('');
    addPage(pdf, width, height, inMillimetres(height) + content, resources);
  }
  return pdfBytes(pdf);
}

/** Each face with the characters that are set in it. */
function addFonts(pdf: Pdf, leaves: readonly Leaf[]): ReadonlyMap<Face, PdfFont> {
  const texts = leaves.flat().filter((item) => item.kind === 'text');
  return new Map(
    FACES.flatMap((face) => {
      const written = texts.filter(({ style }) => style.face === face).map((t) => t.text);
      const characters = [...new Set(written.join(''))].sort();
      return characters.length === 0 ? [] : [[face, addFont(pdf, face, characters)]];
    }),
  );
}

function operatorsOf(item: Item, fonts: ReadonlyMap<Face, PdfFont>): string {
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

function textOperators(item: Text, fonts: ReadonlyMap<Face, PdfFont>): string {
  const { x, baseline, style, align } = item;
  const set = setText(item.text, style);
  const font = fonts.get(style.face);
  if (!font) return '';
  const shift = { left: 0, centre: 0.5, right: 1 }[align] * set.widthEm * style.emMm;
  return (
    colour(style.colour, 'rg') +
    showText(set, style.face, font, style.face, style.emMm, x - shift, baseline)
  );
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
