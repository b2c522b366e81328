import { regionBounds } from '../../geometry/measure.js';
import { moveRegion, translation } from '../../geometry/transform.js';
import type { Region } from '../../geometry/types.js';
import { LetteringError } from './fault.js';
import {
  leastShift,
  leftStemMm,
  meetingOf,
  type Profile,
  profileOf,
  rightStemMm,
} from './profile.js';
import type { Glyph, LetterFont } from './read-font.js';

/** A letter in its place on a straight line: baseline at y = 0, y down, the line from x = 0. */
export interface Letter {
  readonly shape: Region;
  /** Middle of its advance. */
  readonly middle: number;
}

export interface LineOfText {
  readonly letters: readonly Letter[];
  /** From the left edge of the first letter, at x = 0, to the right edge of the last. */
  readonly widthMm: number;
}

export interface TextOptions {
  readonly capHeightMm: number;
  /** The least distance between neighbours that do not touch by the font's own design. */
  readonly gapMm: number;
  /** Added between all letters. */
  readonly spacingMm?: number;
  /** How far neighbours are pushed into each other where they meet for a short stretch only. */
  readonly overlapMm?: number;
}

/** Rows a letter's sides are measured on, a capital's height. */
const ROWS = 60;
/** All are spaced out by what this share of the pairs need at most. */
const EVEN = 0.75;
/** Letters may touch along so much of a capital's height ... */
const LONGEST_MEETING = 0.3;
/** ... if neither has a stem on that side, a plumb run of more than this, within the other share, */
const LONGEST_STEM = 0.5;
const PLUMB = 0.03;
/** ... and if the room between them elsewhere is so many gaps wide on the whole. */
const LEAST_MEAN_GAP = 0.8;

/**
 * A line of text: kerned, with the font's standard ligatures, accents composed. Where letters
 * would come nearer than the gap, all are spaced out alike, so that the line stays even, and only
 * the few that need yet more get it; letters of
 * a joined script that run into each other stay so, and only the others are set apart. With an
 * overlap, letters that would meet for a short stretch touch, as a foot and a knee do, and those
 * with a stem on that side keep the gap.
 * @throws LetteringError naming the characters that the font does not have.
 */
export function lineOfText(font: LetterFont, text: string, options: TextOptions): LineOfText {
  const glyphs = glyphsOf(font, text);
  const emMm = options.capHeightMm / font.capHeight;
  const shapes = glyphs.map((glyph) => glyph.shape(emMm));
  const pairs = neighbours(shapes, options.capHeightMm / ROWS);
  const { overlapMm } = options;
  const isPairwise = font.isJoined || overlapMm !== undefined;
  const spacing = (options.spacingMm ?? 0) + (isPairwise ? 0 : evenSpacing());
  return placed(pensAt(spacing));

  /** Where the pen stands for each letter, with `extraMm` between all; whether gaps are kept. */
  function pensAt(extraMm: number, isKept = true): number[] {
    const pens: number[] = [];
    let x = 0;
    glyphs.forEach((glyph, i) => {
      if (i > 0) x += extraMm + font.kern(glyphs[i - 1], glyph) * emMm;
      const pair = isKept ? pairs.find((p) => p.second === i) : undefined;
      if (pair) x = pens[pair.first] + apart(pair, x - pens[pair.first]);
      pens.push(x);
      x += glyph.advance * emMm;
    });
    return pens;
  }

  /** How far the second of a pair stands from the first, `usualMm` by the font alone. */
  function apart({ first, second, left, right }: Pair, usualMm: number): number {
    if (font.isJoined) {
      const isMeant = leastShift(left, right, 0) > usualMm;
      return isMeant ? usualMm : Math.max(usualMm, leastShift(left, right, options.gapMm));
    }
    if (overlapMm === undefined) {
      return Math.max(usualMm, leastShift(left, right, options.gapMm));
    }
    const isSpaced = second > first + 1;
    const fused = leastShift(left, right, 0) - overlapMm;
    const meeting = meetingOf(left, right, fused);
    const within = PLUMB * options.capHeightMm;
    const stemMm = Math.max(rightStemMm(left, within), leftStemMm(right, within));
    const mayMeet =
      stemMm <= LONGEST_STEM * options.capHeightMm &&
      meeting.lengthMm <= LONGEST_MEETING * options.capHeightMm &&
      meeting.meanGapMm >= LEAST_MEAN_GAP * options.gapMm;
    if (!isSpaced && mayMeet) return fused;
    return Math.max(isSpaced ? usualMm : -Infinity, leastShift(left, right, options.gapMm));
  }

  function evenSpacing(): number {
    const pens = pensAt(0, false);
    const short = pairs
      .map((pair) => {
        const have = pens[pair.second] - pens[pair.first];
        const wanted = leastShift(pair.left, pair.right, options.gapMm);
        return Math.max(0, wanted - have) / (pair.second - pair.first);
      })
      .sort((a, b) => a - b);
    return short[Math.floor(EVEN * (short.length - 1))] ?? 0;
  }

  function placed(pens: readonly number[]): LineOfText {
    const letters = glyphs.flatMap((glyph, i): Letter[] =>
      shapes[i].contours.length === 0
        ? []
        : [
            {
              shape: moveRegion(shapes[i], translation(pens[i], 0)),
              middle: pens[i] + (glyph.advance * emMm) / 2,
            },
          ],
    );
    if (letters.length === 0) return { letters, widthMm: 0 };
    const boxes = letters.map(({ shape }) => regionBounds(shape));
    const left = Math.min(...boxes.map((b) => b.minX));
    const right = Math.max(...boxes.map((b) => b.maxX));
    return {
      letters: letters.map(({ shape, middle }) => ({
        shape: moveRegion(shape, translation(-left, 0)),
        middle: middle - left,
      })),
      widthMm: right - left,
    };
  }
}

const SOFT_HYPHENS = /\u00ad/g;

function glyphsOf(font: LetterFont, text: string): readonly Glyph[] {
  const composed = text.normalize('NFC').replace(/\s/g, ' ').replace(SOFT_HYPHENS, '').trim();
  const missing = [...new Set(composed)].filter((c) => c !== ' ' && !font.hasCharacter(c));
  if (missing.length > 0) {
    throw new LetteringError(
      `The font has no ${missing.map(named).join(', ')}.`,
      'Write it with other characters, or name a font that has it.',
    );
  }
  return font.glyphs(composed);
}

const named = (character: string): string =>
  `"${character}" (U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')})`;

/** Two letters with nothing but space between them. */
interface Pair {
  readonly first: number;
  readonly second: number;
  readonly left: Profile;
  readonly right: Profile;
}

function neighbours(shapes: readonly Region[], stepMm: number): Pair[] {
  const drawn = shapes.flatMap((shape, i) => (shape.contours.length > 0 ? [i] : []));
  const profiles = new Map(drawn.map((i) => [i, profileOf(shapes[i], stepMm)]));
  return drawn.slice(1).map((second, k): Pair => {
    const first = drawn[k];
    return { first, second, left: profiles.get(first)!, right: profiles.get(second)! };
  });
}
