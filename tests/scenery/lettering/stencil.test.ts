import { describe, expect, it } from 'vitest';
import { subtract } from '../../../src/geometry/boolean/boolean.js';
import { components, holeCount } from '../../../src/geometry/components.js';
import { regionBounds } from '../../../src/geometry/measure.js';
import { rectangle } from '../../../src/geometry/primitives.js';
import type { Region } from '../../../src/geometry/types.js';
import { narrowWebs } from '../../../src/geometry/width/webs.js';
import { stencil } from '../../../src/scenery/lettering/stencil.js';
import { BUNDLED, letters, printableLatin1 } from './letters.js';

const KNIFE = { smallestWeb: 1.5, smallestHole: 2, smallestSlot: 1 };
const LASER = { smallestWeb: 1, smallestHole: 1, smallestSlot: 0.2 };

/** A sheet of card with the holes cut out of it. */
function sheetWith(holes: Region): Region {
  const { minX, minY, maxX, maxY } = regionBounds(holes);
  return subtract(rectangle(minX - 8, minY - 8, maxX - minX + 16, maxY - minY + 16), [holes]);
}

/** Components less holes: the Euler characteristic of a flat sheet. */
const chi = (sheet: Region): number => components(sheet).length - holeCount(sheet);

const narrow = (sheet: Region, webMm: number) =>
  narrowWebs(sheet, webMm - 0.02).filter((place) => place.kind !== 'tip');

describe('a stencil', () => {
  // Euler characteristic of a sheet: any topology text. That every island is tied: common
  // practice, no source.
  it.each(BUNDLED)(
    'keeps the sheet in one with every printable Latin-1 letter of %s, no bridge too narrow',
    (name) => {
      const wrong = printableLatin1().filter((c) => {
        const sheet = sheetWith(stencil(letters(name, c, 40), KNIFE).holes);
        return components(sheet).length !== 1 || narrow(sheet, KNIFE.smallestWeb).length > 0;
      });
      expect(wrong).toEqual([]);
    },
    600_000,
  );

  // n bridges across a ring-shaped hole turn one hole and one island into n holes: derived.
  it.each([
    ['O', 2, -1],
    ['L', 0, 0],
    ['D', 2, -1],
    ['P', 2, -1],
    ['B', 3, -1],
    ['8', 3, -1],
  ] as const)('ties the islands of %s by rule', (letter, bridges, expected) => {
    const { holes, bridges: strips } = stencil(letters('sans', letter, 30), LASER);
    const sheet = sheetWith(holes);
    expect(chi(sheet)).toBe(expected);
    const distinct = new Set(strips.map((s) => Math.round(regionBounds(s).minY)));
    expect(distinct.size).toBe(bridges);
  });

  it('sets the two bridges of an O upright, one over the other, through its middle', () => {
    const [o] = letters('sans', 'O', 30);
    const { bridges, bridgeMm } = stencil([o], LASER);
    const [a, b] = bridges.map(regionBounds);
    const { minX, maxX } = regionBounds(o.shape);
    for (const strip of [a, b]) {
      expect(strip.maxX - strip.minX).toBeCloseTo(bridgeMm, 6);
      expect((strip.minX + strip.maxX) / 2).toBeCloseTo((minX + maxX) / 2, 0);
    }
    expect(a.minX).toBeCloseTo(b.minX, 6);
    expect(Math.abs(a.minY - b.minY)).toBeGreaterThan(15);
  });

  it('ties the counters of B and 8 on one axis', () => {
    for (const letter of ['B', '8']) {
      const left = stencil(letters('sans', letter, 30), LASER).bridges.map((s) =>
        regionBounds(s).minX.toFixed(3),
      );
      expect(new Set(left).size, letter).toBe(1);
    }
  });

  // A bridge is a third to a half of the stroke, and never below the web: common practice, no
  // source.
  it('makes bridges a third of the stroke, or a web where that is more', () => {
    const [h] = letters('sans', 'I', 60);
    const { minX, maxX } = regionBounds(h.shape);
    const { bridgeMm } = stencil(letters('sans', 'IO', 60), LASER);
    expect(bridgeMm / (maxX - minX)).toBeGreaterThan(0.27);
    expect(bridgeMm / (maxX - minX)).toBeLessThan(0.5);
    expect(stencil(letters('sans', 'IO', 12), LASER).bridgeMm).toBe(1);
  });

  it('keeps a web between letters, however tight the font sets them', () => {
    for (const name of BUNDLED) {
      const { holes } = stencil(letters(name, 'To AVA, fill', 14), KNIFE);
      const sheet = sheetWith(holes);
      expect(components(sheet).length, name).toBe(1);
      expect(narrow(sheet, KNIFE.smallestWeb), name).toEqual([]);
    }
  });

  it('opens the mouth of an e rather than lose it', () => {
    const e = letters('sans', 'e', 14);
    const sheet = sheetWith(stencil(e, KNIFE).holes);
    // The eye is tied above to the sheet and below to the mouth, which is open to the right.
    expect(components(sheet)).toHaveLength(1);
    expect(holeCount(sheet)).toBe(2);
  });
});
