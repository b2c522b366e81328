import { describe, expect, it } from 'vitest';
import { intersect } from '../../../src/geometry/boolean/boolean.js';
import { distanceTo } from '../../../src/geometry/components.js';
import { flatten, regionArea, regionBounds } from '../../../src/geometry/measure.js';
import type { Region } from '../../../src/geometry/types.js';
import { BUNDLED_FONTS } from '../../../src/scenery/lettering/fonts.js';
import { alongContour, arched, setOn } from '../../../src/scenery/lettering/guide.js';
import { leastReadableMm, leastStencilHeightMm } from '../../../src/scenery/lettering/legible.js';
import { lineOfText } from '../../../src/scenery/lettering/line-of-text.js';
import { asSeen } from '../../../src/scenery/lettering/reading-order.js';
import { WINDOWS } from '../plots.js';
import { BUNDLED, letters } from './letters.js';

const roman = BUNDLED_FONTS.fontNamed('roman')!;
const sans = BUNDLED_FONTS.fontNamed('sans')!;

const leastApart = (a: Region, b: Region): number =>
  Math.min(
    ...a.contours.flatMap((c) => flatten(c, 0.01)).map((p) => distanceTo(b, p)?.distanceMm ?? 99),
  );

describe('a line of text', () => {
  it.each(BUNDLED)('sets capitals of %s as high as asked', (name) => {
    const [h] = letters(name, 'H', 17);
    expect(-regionBounds(h.shape).minY).toBeCloseTo(17, 6);
  });

  it('keeps the gap between neighbours, and natural spacing where that is wider', () => {
    for (const gapMm of [0.5, 1.5, 3]) {
      const { letters: set } = lineOfText(sans, 'AVToLJ', { capHeightMm: 12, gapMm });
      for (let i = 1; i < set.length; i++) {
        const apart = leastApart(set[i - 1].shape, set[i].shape);
        expect(apart).toBeGreaterThanOrEqual(gapMm - 0.01);
      }
    }
    const width = (gapMm: number) => lineOfText(sans, 'HIH', { capHeightMm: 20, gapMm }).widthMm;
    expect(width(0.1)).toBe(width(0));
    expect(width(8)).toBeGreaterThan(width(0));
  });

  it('lets letters touch where they read, and keeps stems apart', () => {
    const set = (text: string) =>
      lineOfText(sans, text, { capHeightMm: 20, gapMm: 2, overlapMm: 0.9 }).letters;
    const overlap = ([a, b]: { shape: Region }[]) => regionArea(intersect(a.shape, b.shape));
    expect(overlap([...set('OO')])).toBeGreaterThan(0);
    expect(overlap([...set('HI')])).toBe(0);
  });

  it('composes accents, whichever way they are written', () => {
    const set = (text: string) => lineOfText(roman, text, { capHeightMm: 10, gapMm: 1 });
    expect(set('A\u030angstro\u0308m')).toEqual(set('\u00c5ngstr\u00f6m'));
    const [ring] = letters('roman', 'Å', 10);
    const [bare] = letters('roman', 'A', 10);
    expect(regionBounds(ring.shape).minY).toBeLessThan(regionBounds(bare.shape).minY - 2);
  });

  it('names the characters that the font does not have', () => {
    const set = () => lineOfText(roman, 'tide שלום', { capHeightMm: 10, gapMm: 1 });
    expect(set).toThrow('"ש" (U+05E9)');
    expect(() => lineOfText(sans, '→', { capHeightMm: 10, gapMm: 1 })).toThrow('"→" (U+2192)');
  });

  // UAX #9, Unicode Bidirectional Algorithm: a run of Hebrew is seen from right to left, a number
  // in it from left to right, brackets mirrored.
  it('turns right-to-left writing as it is seen, and refuses what has to be joined', () => {
    expect(asSeen('lock 24')).toBe('lock 24');
    expect(asSeen('שלום')).toBe('םולש');
    expect(asSeen('tide שלום pool')).toBe('tide םולש pool');
    expect(asSeen('(שער) 24')).toBe('24 (רעש)');
    expect(() => asSeen('باب')).toThrow(/joined/);
  });

  // Circular segment, radius = h/2 + c^2/(8h): c = 40, h = 10 gives r = 25. CRC Standard
  // Mathematical Tables (from memory).
  it('rises on an arc as a circle does', () => {
    const guide = arched(0, 0, 40, 10);
    const half = (53.130102354 * Math.PI * 25) / 180;
    expect(guide(half).at.x).toBeCloseTo(20, 6);
    expect(guide(half).at.y).toBeCloseTo(10, 6);
    expect(guide(half).degrees).toBeCloseTo(53.130102, 5);
    expect(guide(0).at).toEqual({ x: 0, y: 0 });
  });

  it('follows a circle, each letter square on it', () => {
    const guide = alongContour(WINDOWS.circle.contours[0], 0, false)!;
    const line = lineOfText(sans, 'ROUND', { capHeightMm: 8, gapMm: 1 });
    const set = setOn(line, guide);
    expect(set[0].degrees).toBeLessThan(-5);
    expect(set[4].degrees).toBeGreaterThan(5);
    for (const mm of [-30, 0, 30]) {
      const { at, degrees } = guide(mm);
      expect(Math.hypot(at.x, at.y + 60)).toBeCloseTo(46, 1);
      expect(degrees).toBeCloseTo((mm / 46) * (180 / Math.PI), 0);
    }
  });
});

describe('how large letters must be', () => {
  // ISO 9241-3: at least 16, preferably 20 to 22 minutes of arc, read at 400 mm.
  it('to be read', () => {
    expect(leastReadableMm(400)).toBeCloseTo(1.8617, 4);
    expect(leastReadableMm(400, 20)).toBeCloseTo(2.3271, 4);
    expect(leastReadableMm(400, 22)).toBeCloseTo(2.5598, 4);
  });

  it('found on the letters themselves, whatever the size they are drawn at', () => {
    const knife = { smallestWeb: 1.5, smallestHole: 2, smallestSlot: 1 };
    const least = (cap: number) => leastStencilHeightMm(letters('sans', 'e', cap), cap, knife);
    expect(least(40)).toBe(40);
    expect(least(6)).toBeGreaterThan(10);
    expect(least(6) / least(9)).toBeGreaterThan(0.93);
    expect(least(6) / least(9)).toBeLessThan(1.07);
    expect(leastStencilHeightMm(letters('sans', 'I', 6), 6, knife)).toBeLessThan(8);
  });
});
