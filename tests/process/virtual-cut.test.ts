import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { stroke } from '../../src/geometry/offset/offset.js';
import { chainsFromPathData } from '../../src/geometry/path/path-read.js';
import type { Point, Region } from '../../src/geometry/types.js';
import { sharpCorners } from '../../src/geometry/width/sharp-corners.js';
import { bladeMark } from '../../src/process/knife/blade-marks.js';
import { kerfPath } from '../../src/process/laser/kerf.js';
import { directionAtStart, tipDistance, traceAfter } from './knife/tip-distance.js';
import { cardLeft, furthest } from './laser/burn.js';

const EXAMPLES = path.resolve(import.meta.dirname, '..', '..', 'out-examples');
const KERF_MM = 0.2;
const BLADE = { offsetMm: 0.25, overcutMm: 0.5, compensate: true };

/** The pieces of the example books, as designed. */
const FILES = readdirSync(EXAMPLES).flatMap((book) =>
  ['panels', 'spine', 'loose'].flatMap((folder) =>
    readdirSync(EXAMPLES, { recursive: true, encoding: 'utf8' })
      .filter((file) => path.dirname(file) === path.join(book, folder))
      .filter((file) => file.endsWith('.svg') && !file.endsWith('-back.svg')),
  ),
);

/** The designed card, from the file of its piece. */
async function cardIn(file: string): Promise<Region> {
  const [, cut] = readFileSync(path.join(EXAMPLES, file), 'utf8').split('<g id="cut"');
  const data = [...cut.split('</g>')[0].matchAll(/ d="([^"]+)"/g)].map((match) => match[1]);
  const chains = await Promise.all(data.map(chainsFromPathData));
  return { contours: chains.flatMap(({ closed }) => closed) };
}

const between = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

describe('a book burnt with a kerf of 0.2 mm', () => {
  it.each(FILES)('leaves %s as designed', async (file) => {
    const card = await cardIn(file);
    const { cut, slits, lost } = kerfPath(card, KERF_MM);
    expect(lost).toEqual([]);
    const left = subtract(cardLeft(cut, KERF_MM), [stroke(slits, KERF_MM)]);
    // No round beam of radius r reaches to the end of a notch: r (1 / sin(a / 2) - 1) is left, more
    // than 0.05 mm below 84 degrees. Such notches, and openings narrower than the beam, may be off by
    // up to 0.1 mm, all else by 0.05 mm.
    const [there, back] = [furthest(card, left), furthest(left, card)];
    expect(there.mm).toBeLessThan(0.1);
    expect(back.mm).toBeLessThan(0.1);
    const corners = sharpCorners(card, KERF_MM / 2).filter(({ kind }) => kind === 'notch');
    const notches = corners.filter(
      (corner) =>
        corner.angleDeg > 360 - 84 ||
        corners.some((other) => other !== corner && between(corner.at, other.at) < KERF_MM),
    );
    const isExcused = (p: Point) =>
      notches.some(({ at }) => between(at, p) < 0.5) ||
      slits.some(({ cubics }) =>
        Array.from({ length: cubics.length / 2 }, (_, k) => cubics.subarray(2 * k, 2 * k + 2)).some(
          ([x, y]) => Math.hypot(x - p.x, y - p.y) < 0.5,
        ),
      );
    expect(furthest(card, left, (p) => !isExcused(p)).mm).toBeLessThanOrEqual(0.05);
    expect(furthest(left, card, (p) => !isExcused(p)).mm).toBeLessThanOrEqual(0.05);
  });
});

describe('a book cut by a blade that trails its swivel by 0.25 mm, the file swinging it', () => {
  it.each(FILES)('leaves %s within 0.005 mm of its design', async (file) => {
    const { contours } = await cardIn(file);
    for (const contour of contours) {
      const { cubics } = bladeMark({ cubics: contour, closed: true }, BLADE);
      const tips = traceAfter(cubics, directionAtStart(cubics), BLADE, 0);
      expect(tipDistance(tips, contour)).toBeLessThan(0.005);
    }
  });
});
