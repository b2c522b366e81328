import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { subtract } from '../../../src/geometry/boolean/boolean.js';
import { offset, stroke } from '../../../src/geometry/offset/offset.js';
import { chainsFromPathData } from '../../../src/geometry/path/path-read.js';
import type { Point, Region } from '../../../src/geometry/types.js';
import { sharpCorners } from '../../../src/geometry/width/sharp-corners.js';
import { kerfPath } from '../../../src/process/laser/kerf.js';
import { furthest } from './burn.js';

const BOOK = path.resolve(import.meta.dirname, '..', '..', '..', 'out-examples', 'night-train');
const KERF = 0.2;

const FILES = ['panels', 'spine', 'loose'].flatMap((folder) =>
  readdirSync(path.join(BOOK, folder))
    .filter((file) => file.endsWith('.svg') && !file.endsWith('-back.svg'))
    .map((file) => path.join(folder, file)),
);

/** The designed card, from the file of its piece. */
async function cardIn(file: string): Promise<Region> {
  const [, cut] = readFileSync(path.join(BOOK, file), 'utf8').split('<g id="cut"');
  const data = [...cut.split('</g>')[0].matchAll(/ d="([^"]+)"/g)].map((match) => match[1]);
  const chains = await Promise.all(data.map(chainsFromPathData));
  return { contours: chains.flatMap(({ closed }) => closed) };
}

describe('a whole book burnt with a kerf of 0.2 mm', () => {
  it.each(FILES)('leaves %s as designed', async (file) => {
    const card = await cardIn(file);
    const { cut, slits, lost } = kerfPath(card, KERF);
    expect(lost).toEqual([]);
    const left = subtract(offset(cut, -KERF / 2), [stroke(slits, KERF)]);
    // Only the ends of notches sharper than 75 degrees, between curves, and openings narrower than
    // the beam are further off than 0.05 mm, and those by 0.086 at most (panel 2, a notch of 31 degrees).
    const [there, back] = [furthest(card, left), furthest(left, card)];
    expect(there.mm).toBeLessThan(0.09);
    expect(back.mm).toBeLessThan(0.09);
    const notches = sharpCorners(card, KERF / 2).filter(({ angleDeg }) => angleDeg > 360 - 75);
    const isExcused = (p: Point) =>
      notches.some(({ at }) => Math.hypot(at.x - p.x, at.y - p.y) < 0.5) ||
      slits.some(({ cubics }) =>
        Array.from({ length: cubics.length / 2 }, (_, k) => cubics.subarray(2 * k, 2 * k + 2)).some(
          ([x, y]) => Math.hypot(x - p.x, y - p.y) < 0.5,
        ),
      );
    expect(furthest(card, left, (p) => !isExcused(p)).mm).toBeLessThanOrEqual(0.05);
    expect(furthest(left, card, (p) => !isExcused(p)).mm).toBeLessThanOrEqual(0.05);
  });
});
