import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import * as hb from 'harfbuzzjs';
import { describe, expect, it } from 'vitest';
import { regionArea } from '../../../src/geometry/measure.js';
import { LetteringError } from '../../../src/scenery/lettering/fault.js';
import { BUNDLED_FONTS } from '../../../src/scenery/lettering/fonts.js';
import { type LetterFont, readFont } from '../../../src/scenery/lettering/read-font.js';
import { BUNDLED, printableLatin1 } from './letters.js';

const require = createRequire(import.meta.url);

/** The whole font files that the bundled ones were cut down from. */
const FILES = {
  roman: '@expo-google-fonts/alegreya/800ExtraBold/Alegreya_800ExtraBold.ttf',
  sans: '@expo-google-fonts/jost/700Bold/Jost_700Bold.ttf',
  script: '@expo-google-fonts/pacifico/400Regular/Pacifico_400Regular.ttf',
} as const;

const bytesOf = (name: keyof typeof FILES): ArrayBuffer =>
  Uint8Array.from(readFileSync(require.resolve(FILES[name]))).buffer;

const LINES = [
  'AVATAR To Ty We.',
  'Lock-gate 24, Vessel 7',
  'fine field, first',
  'Ångström, façade, Škoda',
];

/** Pens after each glyph in ems, by our own reading. */
function pens(font: LetterFont, text: string): number[] {
  let x = 0;
  const glyphs = font.glyphs(text);
  return glyphs.map((glyph, i) => {
    x += glyph.advance + (i + 1 < glyphs.length ? font.kern(glyph, glyphs[i + 1]) : 0);
    return x;
  });
}

/** The same by HarfBuzz, the reference for OpenType layout. */
function referencePens(bytes: ArrayBuffer, text: string): number[] {
  const face = new hb.Face(new hb.Blob(bytes));
  const buffer = new hb.Buffer();
  buffer.addText(text);
  buffer.guessSegmentProperties();
  const features = ['kern', 'liga', 'lnum', '-calt', '-clig', '-ccmp', '-locl', '-rlig'];
  hb.shape(
    new hb.Font(face),
    buffer,
    features.map((f) => hb.Feature.fromString(f)!),
  );
  let x = 0;
  return buffer.getGlyphPositions().map(({ xAdvance }) => {
    x += xAdvance;
    return x / face.upem;
  });
}

describe('the bundled fonts', () => {
  it.each(BUNDLED)('%s has the whole printable Latin-1 set', (name) => {
    const font = BUNDLED_FONTS.fontNamed(name)!;
    expect(printableLatin1().filter((c) => !font.hasCharacter(c))).toEqual([]);
  });

  it.each(BUNDLED)('%s goes with its licence, which reserves no name', (name) => {
    const file = `../../../src/scenery/lettering/fonts/${name}-licence.txt`;
    const text = readFileSync(path.resolve(import.meta.dirname, file), 'utf8');
    expect(text).toContain('SIL OPEN FONT LICENSE Version 1.1');
    const notice = text.slice(0, text.indexOf('SIL OPEN FONT LICENSE'));
    expect(notice).toMatch(/^Copyright \d{4} The \w+ Project Authors/);
    expect(notice).not.toContain('Reserved Font Name');
  });

  it.each(BUNDLED)('%s letters exactly as the whole font it was cut from', (name) => {
    const whole = readFont(bytesOf(name));
    const bundled = BUNDLED_FONTS.fontNamed(name)!;
    for (const text of LINES) {
      expect(pens(bundled, text)).toEqual(pens(whole, text));
      const areas = (font: LetterFont) => font.glyphs(text).map((g) => regionArea(g.shape(100)));
      expect(areas(bundled)).toEqual(areas(whole));
    }
  });
});

describe('reading a font', () => {
  // Source: HarfBuzz, the reference implementation of OpenType layout, with the same features.
  it.each(BUNDLED)('kerns and ligates %s as its own tables say', (name) => {
    const bytes = bytesOf(name);
    const font = readFont(bytes);
    for (const text of LINES) {
      const [own, reference] = [pens(font, text), referencePens(bytes, text)];
      expect(own.length, text).toBe(reference.length);
      for (const [i, x] of own.entries()) {
        expect(x, `${text} glyph ${i}`).toBeCloseTo(reference[i], 6);
      }
    }
  });

  it('kerns at all: A and V stand nearer than their widths', () => {
    for (const name of ['roman', 'sans']) {
      const font = BUNDLED_FONTS.fontNamed(name)!;
      const [a, v] = font.glyphs('AV');
      expect(font.kern(a, v)).toBeLessThan(-0.03);
    }
  });

  it('takes the ligature fi where the font has one', () => {
    expect(BUNDLED_FONTS.fontNamed('roman')!.glyphs('fi')).toHaveLength(1);
    expect(BUNDLED_FONTS.fontNamed('roman')!.glyphs('f.i')).toHaveLength(3);
  });

  it('says what it cannot read, and what would do', () => {
    const read = () => readFont(new TextEncoder().encode('no font at all').buffer as ArrayBuffer);
    expect(read).toThrow(LetteringError);
    expect(read).toThrow(/cannot be read/);
  });

  it("reads a maker's own font file", () => {
    expect(readFont(bytesOf('sans')).capHeight).toBeCloseTo(0.7, 2);
    expect(BUNDLED_FONTS.fontNamed('mine.ttf')).toBeUndefined();
  });
});
