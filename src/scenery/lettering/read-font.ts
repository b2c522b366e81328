import opentype from 'opentype.js';
import { cleanRegion } from '../../geometry/boolean/boolean.js';
import { regionBounds } from '../../geometry/measure.js';
import { Pen } from '../../geometry/pen.js';
import { moveRegion, scaling } from '../../geometry/transform.js';
import type { Cubics, Region } from '../../geometry/types.js';
import { LetteringError } from './fault.js';

/** A font that lines of text can be set in. Lengths in ems, y down, baseline at 0. */
export interface LetterFont {
  /** Height of a flat capital, and of a flat small letter. */
  readonly capHeight: number;
  readonly xHeight: number;
  /** Whether its small letters run into each other, as in a script. */
  readonly isJoined: boolean;
  /**
   * The glyphs of a text, all of whose characters the font has, in the order given: figures lining,
   * standard ligatures taken. Forms that depend on their neighbours otherwise are not chosen.
   */
  glyphs(text: string): readonly Glyph[];
  hasCharacter(character: string): boolean;
  /** How much nearer (negative) or further the second stands to the first than their advances say. */
  kern(first: Glyph, second: Glyph): number;
}

export interface Glyph {
  readonly index: number;
  readonly advance: number;
  /** Its outline for an em of `emMm`, pen at the origin. Empty for a space. */
  shape(emMm: number): Region;
  /** The same as the font has it, for print: contours may cross each other (nonzero rule). */
  contours(emMm: number): readonly Cubics[];
}

/** Outlines are made proper at this size and scaled from there: fine enough for any sign, mm. */
const DRAWN_EM_MM = 100;
/** Where a font tells no height of its capitals or small letters, as shares of the em. */
const USUAL = { capHeight: 0.7, xHeight: 0.5 };

/**
 * A font from the bytes of a TTF, OTF or WOFF file. WOFF2 is not read.
 * @throws LetteringError when the bytes are no such font.
 */
export function readFont(bytes: ArrayBuffer): LetterFont {
  const font = parsed(bytes);
  const ems = 1 / font.unitsPerEm;
  const known = new Map<number, Glyph>();
  const glyphAt = (index: number): Glyph => {
    const glyph = known.get(index) ?? drawnGlyph(font.glyphs.get(index), index, ems);
    known.set(index, glyph);
    return glyph;
  };
  const lookups = kerningOf(font);
  const lining = substitutions(font, 'lnum');
  const ligatures = ligaturesOf(font);
  const indexOf = (c: string): number => font.charToGlyphIndex(c);
  const heightOf = (c: string, usual: number): number => {
    const height = -regionBounds(glyphAt(indexOf(c)).shape(1)).minY;
    return indexOf(c) > 0 && height > 0 ? height : usual;
  };
  const n = glyphAt(indexOf('n'));
  return {
    capHeight: heightOf('H', USUAL.capHeight),
    xHeight: heightOf('x', USUAL.xHeight),
    isJoined: indexOf('n') > 0 && regionBounds(n.shape(1)).maxX > n.advance,
    hasCharacter: (c) => indexOf(c) > 0,
    glyphs: (text) =>
      ligated(
        Array.from(text, indexOf).map((index) => lining.get(index) ?? index),
        ligatures,
      ).map(glyphAt),
    kern: (a, b) => kerningBetween(font, lookups, a.index, b.index) * ems,
  };
}

function parsed(bytes: ArrayBuffer): opentype.Font {
  try {
    return opentype.parse(bytes);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new LetteringError(
      `The font cannot be read: ${why}`,
      'Give a TTF, OTF or WOFF file; a WOFF2 file has to be turned into one of these first.',
    );
  }
}

function drawnGlyph(glyph: opentype.Glyph, index: number, ems: number): Glyph {
  let drawn: Region | null = null;
  return {
    index,
    advance: (glyph.advanceWidth ?? 0) * ems,
    shape: (emMm) => {
      drawn ??= cleanRegion(contoursOf(glyph.path.commands, DRAWN_EM_MM * ems));
      return moveRegion(drawn, scaling(emMm / DRAWN_EM_MM));
    },
    contours: (emMm) => contoursOf(glyph.path.commands, emMm * ems),
  };
}

/** A font's outline has y up and may cross itself. */
function contoursOf(commands: readonly opentype.PathCommand[], scale: number): Cubics[] {
  const contours: Cubics[] = [];
  let pen = new Pen();
  const close = (): void => {
    const contour = pen.close();
    if (contour.length > 0) contours.push(contour);
  };
  const at = (x: number, y: number): [number, number] => [x * scale, -y * scale];
  for (const c of commands) {
    if (c.type === 'M') {
      close();
      pen = new Pen().moveTo(...at(c.x, c.y));
    } else if (c.type === 'L') pen.lineTo(...at(c.x, c.y));
    else if (c.type === 'Q') pen.quadTo(...at(c.x1, c.y1), ...at(c.x, c.y));
    else if (c.type === 'C') pen.curveTo(...at(c.x1, c.y1), ...at(c.x2, c.y2), ...at(c.x, c.y));
  }
  close();
  return contours;
}

/** What of OpenType's layout tables is used, as the parser leaves it (OpenType 1.9, GSUB and GPOS). */
interface LayoutTable {
  readonly scripts: readonly {
    readonly tag: string;
    readonly script: { readonly defaultLangSys?: { readonly featureIndexes: readonly number[] } };
  }[];
  readonly features: readonly {
    readonly tag: string;
    readonly feature: { readonly lookupListIndexes: readonly number[] };
  }[];
  readonly lookups: readonly Lookup[];
}

interface Lookup {
  readonly lookupType: number;
  // biome-ignore lint/suspicious/noExplicitAny: subtables of many kinds, told apart by their format.
  readonly subtables: readonly any[];
}

/** Scripts whose default features are used: the first of these that the font has. */
const SCRIPTS = ['latn', 'DFLT'];

/** The lookups of one type that a feature asks for, in the order in which they are applied. */
function lookupsOf(table: LayoutTable | undefined, tag: string, type: number): Lookup[] {
  if (!table) return [];
  const known = SCRIPTS.flatMap((name) => table.scripts.filter((s) => s.tag === name));
  const used = (known[0] ?? table.scripts[0])?.script.defaultLangSys?.featureIndexes ?? [];
  const features = used.map((i) => table.features[i]).filter((f) => f.tag === tag);
  const wanted = new Set(features.flatMap((f) => f.feature.lookupListIndexes));
  return table.lookups.filter((lookup, i) => wanted.has(i) && lookup.lookupType === type);
}

const tableOf = (font: opentype.Font, name: string): LayoutTable | undefined =>
  font.tables[name] as unknown as LayoutTable | undefined;

const PAIRS = 2;
const SINGLE_SUBSTITUTION = 1;
const LIGATURE_SUBSTITUTION = 4;

const kerningOf = (font: opentype.Font): Lookup[] =>
  lookupsOf(tableOf(font, 'gpos'), 'kern', PAIRS);

/** The pair's kern in the font's units: from GPOS where it has one, from the kern table otherwise. */
function kerningBetween(
  font: opentype.Font,
  lookups: readonly Lookup[],
  first: number,
  second: number,
): number {
  if (lookups.length === 0) return font.kerningPairs[`${first},${second}`] ?? 0;
  // The type declarations leave out `position`, which knows pairs and classes.
  const { position } = font as unknown as {
    position: { getKerningValue(l: readonly Lookup[], a: number, b: number): number };
  };
  return position.getKerningValue(lookups, first, second);
}

/** Glyphs that a feature puts in the place of others, one for one. */
function substitutions(font: opentype.Font, tag: string): ReadonlyMap<number, number> {
  const found = new Map<number, number>();
  for (const { subtables } of lookupsOf(tableOf(font, 'gsub'), tag, SINGLE_SUBSTITUTION)) {
    for (const { substFormat, coverage, deltaGlyphId, substitute } of subtables) {
      covered(coverage).forEach((index, i) => {
        found.set(index, substFormat === 1 ? (index + deltaGlyphId) & 0xffff : substitute[i]);
      });
    }
  }
  return found;
}

interface Coverage {
  readonly format: number;
  readonly glyphs?: readonly number[];
  readonly ranges?: readonly { readonly start: number; readonly end: number }[];
}

const covered = ({ glyphs, ranges }: Coverage): number[] =>
  glyphs
    ? [...glyphs]
    : (ranges ?? []).flatMap(({ start, end }) =>
        Array.from({ length: end - start + 1 }, (_, i) => start + i),
      );

interface Ligature {
  readonly parts: readonly number[];
  readonly glyph: number;
}

/** The font's standard ligatures (feature liga), a list a lookup, each in the font's order. */
const ligaturesOf = (font: opentype.Font): Ligature[][] =>
  lookupsOf(tableOf(font, 'gsub'), 'liga', LIGATURE_SUBSTITUTION).map(({ subtables }) =>
    subtables.flatMap(({ coverage, ligatureSets }) =>
      covered(coverage).flatMap((first, i) =>
        (ligatureSets[i] as { components: number[]; ligGlyph: number }[]).map(
          ({ components, ligGlyph }): Ligature => ({
            parts: [first, ...components],
            glyph: ligGlyph,
          }),
        ),
      ),
    ),
  );

/** One lookup after the other goes over the glyphs and takes the first ligature that fits. */
const ligated = (indexes: readonly number[], lookups: readonly Ligature[][]): readonly number[] =>
  lookups.reduce(taken, indexes);

function taken(indexes: readonly number[], ligatures: readonly Ligature[]): number[] {
  const result: number[] = [];
  let i = 0;
  while (i < indexes.length) {
    const start = i;
    const found = ligatures.find(({ parts }) => parts.every((p, k) => indexes[start + k] === p));
    result.push(found ? found.glyph : indexes[i]);
    i += found ? found.parts.length : 1;
  }
  return result;
}
