import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../src/geometry/boolean/boolean.js';
import { regionBounds } from '../../src/geometry/measure.js';
import { polygon, regionOf } from '../../src/geometry/pen.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { inOrder, moveRegion, rotation, translation } from '../../src/geometry/transform.js';
import type { Region } from '../../src/geometry/types.js';
import type { Piece } from '../../src/panel/piece.js';
import { STARTING } from '../../src/process/starting.js';
import { type Random, randomFrom } from '../../src/scenery/random.js';
import { type NestOptions, nest as nestFor } from '../../src/sheet/nest.js';
import { blob } from '../geometry/reference.js';
import { leaf } from '../geometry/shapes.js';
import { A2, A4, gate, LETTER, plainPiece, sky } from '../process/lock-pieces.js';
import { expectAllPlaced, expectSoundSheets, placedCards } from './sound.js';

const { knife, laser } = STARTING;
const nest = (pieces: readonly Piece[], options?: Partial<NestOptions>) =>
  nestFor(pieces, knife, options);

/** A piece of any outline, its page 1 mm larger all round, as loose pieces have it. */
function cut(name: string, region: Region): Piece {
  const { minX, minY, maxX, maxY } = regionBounds(region);
  const card = moveRegion(region, translation(1 - minX, 1 - minY));
  return { ...plainPiece(name, maxX - minX + 2, maxY - minY + 2), card };
}

const frame = (width: number, height: number, edge: number): Piece => ({
  ...plainPiece('frame', width, height),
  card: subtract(rectangle(0, 0, width, height), [
    rectangle(edge, edge, width - 2 * edge, height - 2 * edge),
  ]),
});

const triangle = (name: string, width: number, height: number): Piece =>
  cut(
    name,
    regionOf(
      polygon([
        { x: 0, y: 0 },
        { x: width, y: 0 },
        { x: 0, y: height },
      ]),
    ),
  );

describe('true outlines', () => {
  it('stay apart by the spacing, inside the margins, whatever they are', () => {
    for (const seed of [1, 2, 100, 132]) {
      const pieces = reedBed(seed);
      const spacing = [3, 1, 0.5, 5][seed % 4];
      const { sheets, problems } = nest(pieces, { spacing, effort: 5 });
      expect(problems).toEqual([]);
      expectAllPlaced(sheets, pieces);
      expectSoundSheets(sheets, spacing);
    }
  });

  it('use the scrap between outlines: a half turn lays two sails into each other', () => {
    const sails = [triangle('sail-1', 190, 270), triangle('sail-2', 190, 270)];
    const { sheets } = nest(sails);
    // Two boxes of 190 mm lie nowhere beside each other on 198 mm; the slanted edges pass at
    // 3 mm when one is moved by 3 x 330.2 / 270 = 3.67 mm (Pythagoras).
    expect(sheets).toHaveLength(1);
    expectSoundSheets(sheets, 3);
    expect(sheets[0].placements.map((p) => p.halfTurn ?? false).toSorted()).toEqual([false, true]);
  });

  it('lie in the windows of frames of the same card', () => {
    const pads = { ...plainPiece('pad', 20, 20), copies: 12 };
    const window = frame(198, 285, 20);
    const { sheets } = nest([window, pads]);
    expect(sheets).toHaveLength(1);
    expectAllPlaced(sheets, [window, pads]);
    expectSoundSheets(sheets, 3);
    const blue = { ...pads, stock: { ...A4, name: 'water blue' } };
    expect(nest([window, blue]).sheets).toHaveLength(2);
  });

  it('fill a window to its edges less the spacing, and no further', () => {
    const window = frame(198, 285, 60);
    const inner = plainPiece('lamp', 78 - 6, 165 - 6);
    const { sheets } = nest([window, inner]);
    expect(sheets).toHaveLength(1);
    const [, lamp] = sheets[0].placements;
    expect([lamp.dx, lamp.dy]).toEqual([6 + 60 + 3, 6 + 60 + 3]);
    expect(nest([window, plainPiece('lamp', 78 - 5.99, 165 - 6)]).sheets).toHaveLength(2);
  });

  it('may lie round a piece that is there first', () => {
    // Lower than the post, the frame is laid out after it by any order of heights.
    const window = frame(180, 100, 10);
    const pieces = [window, plainPiece('post', 170, 180), plainPiece('pad', 150, 70)];
    const { sheets } = nest(pieces);
    expect(sheets).toHaveLength(1);
    expectSoundSheets(sheets, 3);
  });

  it('hold parts that lie loose in a window of their own piece', () => {
    const post = { ...frame(100, 100, 10) };
    const pieces = [
      { ...post, card: union([post.card, circle(50, 50, 20)]) },
      { ...plainPiece('pad', 12, 12), copies: 8 },
    ];
    const { sheets } = nest(pieces, { spacing: 2 });
    expectAllPlaced(sheets, pieces);
    expectSoundSheets(sheets, 2);
  });

  it('are never turned by a quarter', () => {
    for (const { placements } of nest(reedBed(3)).sheets) {
      for (const p of placements) expect(Object.keys(p)).not.toContain('turnDeg');
    }
    // 140 mm wide pieces would lie two by two on Letter, held sideways.
    const planks = Array.from({ length: 4 }, (_, i) => plainPiece(`plank-${i}`, 140, 95));
    const { sheets } = nest(planks.map((p) => ({ ...p, stock: LETTER })));
    for (const card of sheets.flatMap(placedCards)) {
      expect(card.getEnvelopeInternal().getWidth()).toBeCloseTo(140, 6);
    }
  });
});

describe('copies of the whole book', () => {
  it('are all there, numbered through', () => {
    const pads = { ...plainPiece('pad', 20, 15), copies: 2 };
    const pieces = [gate, sky, pads];
    const { sheets } = nest(pieces, { copies: 12 });
    expectAllPlaced(sheets, pieces, 12);
    expectSoundSheets(sheets, 3);
    // No more than two panels lie on A4; two pads lie in each window of the gate.
    expect(sheets).toHaveLength(12);
  });
});

describe('effort', () => {
  const pieces = [...reedBed(7), ...reedBed(8).map((p) => ({ ...p, name: `b-${p.name}` }))];

  it('spent again gives the same sheets, however it is counted out', () => {
    let asked = 0;
    const goOn = (effort: number) => {
      asked = effort;
      return effort < 24;
    };
    const inRounds = nest(pieces, { effort: 4, goOn });
    expect([inRounds.effort, asked]).toEqual([24, 24]);
    expect(nest(pieces, { effort: 24 })).toEqual(inRounds);
  });

  it('never makes sheets or faces more', () => {
    const weight = (effort: number) => {
      const { sheets } = nest(pieces, { effort });
      return sheets.length * 1000 + sheets.reduce((sum, s) => sum + s.faces.length, 0);
    };
    const weights = [0, 5, 30].map(weight);
    expect(weights.toSorted((a, b) => b - a)).toEqual(weights);
  });
});

describe('the bed', () => {
  const bed = (origin: typeof knife.bed.origin) => ({
    ...knife,
    bed: { widthMm: 250, heightMm: 300, marginMm: 4, origin },
  });
  const post = { ...plainPiece('post', 30, 30), stock: A2, copies: 40 };

  // A2 is 420 x 594 mm (ISO 216).
  it.each([
    ['top left', 4, 4],
    ['top right', 420 - 250 + 4, 4],
    ['bottom left', 4, 594 - 300 + 4],
    ['bottom right', 420 - 250 + 4, 594 - 300 + 4],
  ] as const)('with its origin at the %s limits a larger sheet', (origin, left, top) => {
    const stock = { ...A2, margin: 0 };
    const { sheets } = nestFor([{ ...post, stock }], bed(origin));
    expect(sheets.length).toBe(1);
    for (const card of sheets.flatMap(placedCards)) {
      const box = card.getEnvelopeInternal();
      expect(box.getMinX()).toBeGreaterThanOrEqual(left - 1e-6);
      expect(box.getMaxX()).toBeLessThanOrEqual(left + 242 + 1e-6);
      expect(box.getMinY()).toBeGreaterThanOrEqual(top - 1e-6);
      expect(box.getMaxY()).toBeLessThanOrEqual(top + 292 + 1e-6);
    }
  });

  it('reaches a sheet worked from both faces only where it reaches both', () => {
    const narrow = { ...bed('top left'), bed: { ...bed('top left').bed, widthMm: 300 } };
    const panel = { ...gate, stock: { ...A2, margin: 0 } };
    // From the front up to 296 mm, from the back, turned over, from 420 - 296 = 124 mm on: 172 mm.
    const { sheets, problems } = nestFor([panel], narrow);
    expect(sheets).toEqual([]);
    expect(problems[0]).toMatchObject({ usableWidth: 172, usableHeight: 292 });
    expect(problems[0].message).toContain('on a bed of 300 x 300 mm holds at most 172 x 292 mm');
    expect(problems[0].cure).toBe('Use a larger bed, or make the piece 15 mm narrower.');
  });

  it('does not limit a sheet that it holds', () => {
    const [sheet] = nestFor([plainPiece('sky', 198, 285)], bed('bottom right')).sheets;
    expect(sheet.placements[0]).toMatchObject({ dx: 6, dy: 6 });
  });
});

describe('plain rectangles', () => {
  const strips = { ...plainPiece('strip', 48, 95), copies: 12 };

  it('may touch where a laser cuts the shared edge once', () => {
    const shared = { ...laser, sharedEdges: true };
    const { sheets } = nestFor([strips], shared);
    // Four times 48 mm and three times 95 mm fill 192 x 285 of 198 x 285 mm.
    expect(sheets).toHaveLength(1);
    expectSoundSheets(sheets, 0);
    expect(nestFor([strips], laser).sheets).toHaveLength(2);
  });

  it('keep the spacing from all else', () => {
    const floats = { ...cut('float', circle(0, 0, 12)), copies: 10 };
    const window = frame(60, 60, 12);
    const { sheets } = nest([strips, floats, window], { touching: 0 });
    expectSoundSheets(sheets, 0);
    for (const sheet of sheets) {
      const cards = placedCards(sheet);
      sheet.placements.forEach((a, i) => {
        if (a.piece !== floats) return;
        cards.forEach((card, k) => {
          if (k !== i) expect(DistanceOp.distance(card, cards[i])).toBeGreaterThan(3 - 0.002);
        });
      });
    }
  });

  it('keep the spacing from the edge of a window that they lie in', () => {
    const window = frame(198, 285, 60);
    expect(nest([window, plainPiece('lamp', 72, 159)], { touching: 0 }).sheets).toHaveLength(1);
    expect(nest([window, plainPiece('lamp', 73, 159)], { touching: 0 }).sheets).toHaveLength(2);
    const small = plainPiece('lamp', 60, 60);
    expectSoundSheets(nest([window, small], { touching: 0 }).sheets, 3);
  });
});

/** Leaves, lumps, combs, rings and frames with ragged windows. */
function reedBed(seed: number): Piece[] {
  const random = randomFrom('reed bed', seed);
  return Array.from({ length: 16 }, (_, i) => cut(`part-${i}`, anyRegion(random)));
}

function anyRegion(random: Random): Region {
  const size = random.between(12, 55);
  const turn = (region: Region) => moveRegion(region, rotation(random.between(0, 360)));
  switch (random.whole(0, 4)) {
    case 0:
      return turn(leaf(2 * size, size * 0.4));
    case 1:
      return turn({ contours: [blob(random, { x: 0, y: 0 }, size)] });
    case 2:
      return turn(comb(size, random.whole(2, 5)));
    case 3:
      return subtract(circle(0, 0, size), [circle(0, 0, size * random.between(0.3, 0.8))]);
    default:
      return subtract(rectangle(0, 0, 2 * size, 1.6 * size), [
        moveRegion(
          { contours: [blob(random, { x: 0, y: 0 }, size * 0.7)] },
          inOrder(translation(size, 0.8 * size)),
        ),
      ]);
  }
}

const comb = (size: number, teeth: number): Region =>
  union([
    rectangle(0, 0, size, size / 4),
    ...Array.from({ length: teeth }, (_, k) =>
      rectangle((k * size) / teeth, 0, size / (2 * teeth), size),
    ),
  ]);
