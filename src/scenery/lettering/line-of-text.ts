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
import { asSeen } from './reading-order.js';

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
const LONGEST_MEETING = 0.35;
/** ... if neither has a stem on that side, a plumb run of more than this, within the other share, */
const LONGEST_STEM = 0.5;
const PLUMB = 0.03;
/** ... and if the room between them elsewhere is so many gaps wide on the whole. */
const LEAST_MEAN_GAP = 0.8;

/**
 * A line of text: kerned, with the font's standard ligatures, accents composed, right-to-left
 * writing turned as it is seen. Where letters would
 * come nearer than the gap, all are spaced out alike, so that the line stays even, and only the few
 * that need yet more get it; letters of a joined script that run into each other stay so. With an
 * overlap, letters that would meet for a short stretch touch, as a foot and a knee do, and those
 * with a stem on that side keep the gap.
 * @throws LetteringError naming the characters that the font does not have, or that need joining.
 */
export function lineOfText(font: LetterFont, text: string, options: TextOptions): LineOfText {
  const glyphs = glyphsOf(font, text);
  const emMm = options.capHeightMm / font.capHeight;
  const shapes = glyphs.map((glyph) => glyph.shape(emMm));
  const pairs = neighbours(shapes, options.capHeightMm / ROWS);
  const { spacingMm = 0 } = options;
  const natural = pensOf(font, glyphs, emMm, spacingMm);
  const isEven = !font.isJoined && options.overlapMm === undefined;
  const evenMm = isEven ? evenSpacing(pairs, natural, options.gapMm) : 0;
  const pens = pensOf(font, glyphs, emMm, spacingMm + evenMm);
  const placed = spacedOut(pens, pairs, (pair, usualMm) =>
    font.isJoined ? joinedPair(pair, usualMm, options) : apart(pair, usualMm, options),
  );
  return lineFrom(glyphs, shapes, placed, emMm);
}

/** Where the pen stands for each glyph by the font, with `extraMm` between all. */
function pensOf(font: LetterFont, glyphs: readonly Glyph[], emMm: number, extraMm: number) {
  let x = 0;
  return glyphs.map((glyph, i) => {
    if (i > 0) {
      const before = glyphs[i - 1];
      x += (before.advance + font.kern(before, glyph)) * emMm + extraMm;
    }
    return x;
  });
}

/** What must be added between all letters so that most pairs keep the gap. */
function evenSpacing(pairs: readonly Pair[], pens: readonly number[], gapMm: number): number {
  const short = pairs
    .map(({ first, second, left, right }) => {
      const wanted = leastShift(left, right, gapMm);
      return Math.max(0, wanted - (pens[second] - pens[first])) / (second - first);
    })
    .sort((a, b) => a - b);
  return short[Math.floor(EVEN * (short.length - 1))] ?? 0;
}

/** The pens with each pair set as far apart as asked, and all that follows moved along. */
function spacedOut(
  pens: readonly number[],
  pairs: readonly Pair[],
  apartMm: (pair: Pair, usualMm: number) => number,
): number[] {
  let moved = 0;
  const bySecond = new Map(pairs.map((pair) => [pair.second, pair]));
  const placed: number[] = [];
  pens.forEach((pen, i) => {
    const pair = bySecond.get(i);
    if (pair) {
      const usualMm = pen - pens[pair.first];
      moved += apartMm(pair, usualMm) - usualMm;
    }
    placed.push(pen + moved);
  });
  return placed;
}

/** In a joined script letters that overlap are meant to; others keep the gap. */
function joinedPair({ left, right }: Pair, usualMm: number, { gapMm }: TextOptions): number {
  const isMeant = leastShift(left, right, 0) > usualMm;
  return isMeant ? usualMm : Math.max(usualMm, leastShift(left, right, gapMm));
}

/** How far the second of a pair stands from the first, `usualMm` by the font. */
function apart(pair: Pair, usualMm: number, options: TextOptions): number {
  const leastMm = leastShift(pair.left, pair.right, options.gapMm);
  const isSpaced = pair.second > pair.first + 1;
  if (options.overlapMm === undefined || isSpaced) return Math.max(usualMm, leastMm);
  const fusedMm = leastShift(pair.left, pair.right, 0) - options.overlapMm;
  const mayMeet = readsWhenMet(pair, fusedMm, options);
  return (mayMeet ? fusedMm : leastMm) + (options.spacingMm ?? 0);
}

/** Whether two letters can touch so and still be told apart. */
function readsWhenMet({ left, right }: Pair, shiftMm: number, options: TextOptions): boolean {
  const { capHeightMm, gapMm } = options;
  const within = PLUMB * capHeightMm;
  const stemMm = Math.max(rightStemMm(left, within), leftStemMm(right, within));
  const { lengthMm, meanGapMm } = meetingOf(left, right, shiftMm);
  return (
    stemMm <= LONGEST_STEM * capHeightMm &&
    lengthMm <= LONGEST_MEETING * capHeightMm &&
    meanGapMm >= LEAST_MEAN_GAP * gapMm
  );
}

/** The letters at their pens, the first one's left edge at x = 0. */
function lineFrom(
  glyphs: readonly Glyph[],
  shapes: readonly Region[],
  pens: readonly number[],
  emMm: number,
): LineOfText {
  const drawn = glyphs.flatMap((_, i) => (shapes[i].contours.length > 0 ? [i] : []));
  if (drawn.length === 0) return { letters: [], widthMm: 0 };
  const boxes = drawn.map((i) => regionBounds(shapes[i]));
  const left = Math.min(...drawn.map((i, k) => pens[i] + boxes[k].minX));
  const right = Math.max(...drawn.map((i, k) => pens[i] + boxes[k].maxX));
  const letters = drawn.map((i) => ({
    shape: moveRegion(shapes[i], translation(pens[i] - left, 0)),
    middle: pens[i] - left + (glyphs[i].advance * emMm) / 2,
  }));
  return { letters, widthMm: right - left };
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
  return font.glyphs(asSeen(composed));
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
