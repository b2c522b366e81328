import { describe, expect, it } from 'vitest';
import { regionBounds } from '../../src/geometry/measure.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { moveRegion, translation } from '../../src/geometry/transform.js';
import type { Piece } from '../../src/panel/piece.js';
import { STARTING } from '../../src/process/starting.js';
import type { Stock } from '../../src/scene/scene.js';
import { randomFrom } from '../../src/scenery/random.js';
import { type NestOptions, nest as nestFor } from '../../src/sheet/nest.js';
import type { Placement, Sheet } from '../../src/sheet/sheet.js';
import {
  A4,
  bridge,
  gate,
  LETTER,
  plainPiece,
  SQUARE,
  sky,
  spine,
} from '../process/lock-pieces.js';

const nest = (pieces: readonly Piece[], options?: Partial<NestOptions>) =>
  nestFor(pieces, STARTING.knife, options);

/** Files are written to the micrometre and curves measured by chords within 0.002 mm. */
const SLACK = 0.003;

const box = (p: Placement) => regionBounds(moveRegion(p.piece.card, translation(p.dx, p.dy)));

/** How far two placed cards lie apart along the axis on which they are furthest. */
function gap(a: Placement, b: Placement): number {
  const [p, q] = [box(a), box(b)];
  return Math.max(p.minX - q.maxX, q.minX - p.maxX, p.minY - q.maxY, q.minY - p.maxY);
}

function expectSound(sheets: readonly Sheet[], spacing = 3): void {
  for (const sheet of sheets) {
    const { margin } = sheet.stock;
    sheet.placements.forEach((a, i) => {
      const b = box(a);
      expect(b.minX).toBeGreaterThanOrEqual(margin - SLACK);
      expect(b.minY).toBeGreaterThanOrEqual(margin - SLACK);
      expect(b.maxX).toBeLessThanOrEqual(sheet.width - margin + SLACK);
      expect(b.maxY).toBeLessThanOrEqual(sheet.height - margin + SLACK);
      for (const other of sheet.placements.slice(i + 1)) {
        expect(gap(a, other)).toBeGreaterThanOrEqual(spacing - SLACK);
      }
    });
  }
}

const on = (stock: Stock, pieces: readonly Piece[]): Piece[] =>
  pieces.map((piece) => ({ ...piece, stock }));

const panels = (count: number): Piece[] =>
  Array.from({ length: count }, (_, i) => plainPiece(`panel-0${i + 1}`, 187, 135));

describe('nest', () => {
  // Sizes of sheets: A4 210 x 297, ISO 216; Letter 8.5 x 11 in = 215.9 x 279.4, size A of
  // ANSI/ASME Y14.1, from memory; 305 mm square, common practice, no source.
  it.each([
    // Two panels and their spacing, 273 mm, pass between A4's margins (285 mm), not Letter's (267.4).
    [A4, 4],
    [LETTER, 8],
    [SQUARE, 4],
  ])('lays out a book of 187 x 135 mm on $sheet.name', (stock, sheetCount) => {
    const pieces = on(stock, [...panels(6), spine('spine-left', 10), spine('spine-right', 10)]);
    const { sheets, problems } = nest(pieces);
    expect(problems).toEqual([]);
    expect(sheets).toHaveLength(sheetCount);
    expect(sheets.flatMap((s) => s.placements)).toHaveLength(8);
    expectSound(sheets);
  });

  it('uses a sheet to its very edge', () => {
    const full = plainPiece('sky', 198, 285);
    const [sheet] = nest([full]).sheets;
    expect(sheet.placements[0]).toMatchObject({ dx: 6, dy: 6 });
  });

  it('keeps every piece upright, so that grain stays along the height', () => {
    const pieces = [bridge, gate, sky, spine('spine-left', 8), plainPiece('post', 8, 60)];
    for (const sheet of nest(pieces).sheets) {
      for (const p of sheet.placements) {
        const own = regionBounds(p.piece.card);
        const placed = box(p);
        expect(placed.maxX - placed.minX).toBeCloseTo(own.maxX - own.minX, 9);
        expect(placed.maxY - placed.minY).toBeCloseTo(own.maxY - own.minY, 9);
      }
    }
  });

  it('packs by the card, not by its page', () => {
    const boat: Piece = {
      ...plainPiece('boat', 400, 400),
      card: rectangle(150, 160, 60, 20),
    };
    const { sheets, problems } = nest([boat]);
    expect(problems).toEqual([]);
    expect(sheets[0].placements[0]).toMatchObject({ dx: 6 - 150, dy: 6 - 160 });
  });

  it('moves pieces by whole micrometres, so that every figure keeps its decimals', () => {
    const float = { ...plainPiece('float', 40, 40), card: circle(20.00012, 20.00037, 10.0003) };
    for (const p of nest([float, { ...float, name: 'cork' }]).sheets[0].placements) {
      expect(p.dx * 1000).toBeCloseTo(Math.round(p.dx * 1000), 6);
      expect(p.dy * 1000).toBeCloseTo(Math.round(p.dy * 1000), 6);
    }
  });

  it('gives every copy a place and a number', () => {
    const post = { ...plainPiece('post', 12, 60), copies: 40 };
    const { sheets } = nest([post]);
    expectSound(sheets);
    const copies = sheets.flatMap((s) => s.placements.map((p) => p.copy));
    expect(copies.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 40 }, (_, i) => i + 1));
    // 13 posts side by side (13 x 15 - 3 = 192 mm), four rows (4 x 63 - 3 = 249 mm): 52 on a sheet.
    expect(sheets).toHaveLength(1);
  });

  it('fills the space beside large pieces with small ones', () => {
    const small = Array.from({ length: 4 }, (_, i) => plainPiece(`post-${i}`, 8, 60));
    const { sheets } = nest(on(SQUARE, [plainPiece('panel-01', 187, 135), ...small]));
    expect(sheets).toHaveLength(1);
    expectSound(sheets);
  });

  it('never mixes cards', () => {
    const blue: Stock = { ...A4, name: 'water blue', colour: '#31506b' };
    const heavy: Stock = { ...A4, gramsPerM2: 300, caliperMm: 0.375 };
    const small = [A4, blue, heavy, A4].map((stock, i) => ({
      ...plainPiece(`post-${i}`, 8, 60),
      stock,
    }));
    const { sheets } = nest(small);
    expect(sheets.map((s) => s.placements.map((p) => p.piece.name))).toEqual([
      ['post-0', 'post-3'],
      ['post-1'],
      ['post-2'],
    ]);
    expect(sheets.map((s) => s.name)).toEqual(['sheet-01', 'sheet-02', 'sheet-03']);
  });

  it('keeps the spacing that it is told', () => {
    const { sheets } = nest(panels(2), { spacing: 15 });
    expect(sheets).toHaveLength(1);
    expectSound(sheets, 15);
    // 2 x 135 + 15 = 285 mm fill the height exactly; half a millimetre more does not fit.
    expect(nest(panels(2), { spacing: 15.5 }).sheets).toHaveLength(2);
  });

  it('says what does not fit, by how much, and what would', () => {
    const quay = plainPiece('quay', 205, 135);
    const { sheets, problems } = nest([quay, plainPiece('post', 8, 60)]);
    expect(sheets.flatMap((s) => s.placements.map((p) => p.piece.name))).toEqual(['post']);
    expect(problems).toEqual([
      {
        piece: 'quay',
        width: 205,
        height: 135,
        sheet: 'A4',
        usableWidth: 198,
        usableHeight: 285,
        message:
          'quay measures 205 x 135 mm, but the sheet A4 (210 x 297 mm, margin 6 mm) holds at most 198 x 285 mm.',
        cure: 'Use a sheet of at least 217 x 147 mm, or make the piece 7 mm narrower. The same sheet held sideways would do if its grain ran along 210 mm.',
      },
    ]);
  });

  it('offers no turned sheet where none would do', () => {
    const [problem] = nest([plainPiece('quay', 300, 290)]).problems;
    expect(problem.cure).toBe(
      'Use a sheet of at least 312 x 302 mm, or make the piece 102 mm narrower and 5 mm lower.',
    );
  });

  it('refuses a piece with no card', () => {
    const nothing = { ...plainPiece('mist', 10, 10), card: { contours: [] } };
    expect(() => nest([nothing])).toThrow('mist has no card left to cut');
  });

  it('stays sound for any mixture of sizes, and gives the same sheets again', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const pieces = mixture(seed, 40);
      const { sheets, problems } = nest(pieces, { effort: 4 });
      expect(problems).toEqual([]);
      expect(sheets.flatMap((s) => s.placements)).toHaveLength(40);
      expectSound(sheets);
      expect(nest(pieces, { effort: 4 })).toEqual({ sheets, problems, effort: 4 });
      // The card alone needs so many sheets; a packing that wastes half of them is broken.
      const area = pieces.reduce((sum, p) => sum + p.width * p.height, 0);
      expect(sheets.length).toBeLessThanOrEqual(Math.ceil((2 * area) / (198 * 285)) + 1);
    }
  });
});

describe('the faces of a sheet', () => {
  const small = (piece: Piece, name: string): Piece => ({ ...piece, name, stock: SQUARE });

  it('are the front alone when nothing is pressed from the back', () => {
    const [sheet] = nest([bridge]).sheets;
    expect([sheet.faces, sheet.mirrored]).toEqual([['front'], false]);
  });

  it('are the back alone, all mirrored, when nothing is pressed from the front', () => {
    const [sheet] = nest([sky, plainPiece('post', 8, 60)]).sheets;
    expect(sheet.placements).toHaveLength(2);
    expect([sheet.faces, sheet.mirrored]).toEqual([['back'], true]);
  });

  it('are both, the back first, when both are pressed', () => {
    const [sheet] = nest([bridge, sky]).sheets;
    expect(sheet.placements).toHaveLength(2);
    expect([sheet.faces, sheet.mirrored]).toEqual([['back', 'front'], false]);
  });

  it('are as few as pieces allow: what is worked alike shares a sheet', () => {
    const pieces = [
      small(bridge, 'panel-01'),
      small(gate, 'panel-02'),
      small(bridge, 'panel-03'),
      small(gate, 'panel-04'),
    ];
    const { sheets } = nest(pieces);
    expect(sheets.map((s) => s.placements.map((p) => p.piece.name))).toEqual([
      ['panel-02', 'panel-04'],
      ['panel-01', 'panel-03'],
    ]);
    expect(sheets.map((s) => s.faces.length)).toEqual([2, 1]);
  });

  it('are as few as pieces allow, even where a mixture would use less of the sheets', () => {
    const sized = (piece: Piece, name: string, height: number) => ({
      ...small(piece, name),
      card: rectangle(0, 0, 140, height),
    });
    const { sheets } = nest([
      sized(bridge, 'wall', 280),
      sized(gate, 'gate', 280),
      sized(bridge, 'quay', 150),
      sized(gate, 'sluice', 150),
    ]);
    expect(sheets.map((s) => s.placements.map((p) => p.piece.name))).toEqual([
      ['gate', 'sluice'],
      ['wall', 'quay'],
    ]);
  });
});

/** Pieces of 5 to 120 mm by 5 to 150 mm. */
function mixture(seed: number, count: number): Piece[] {
  const random = randomFrom('lock', seed);
  return Array.from({ length: count }, (_, i) =>
    plainPiece(`part-${i}`, random.between(5, 120), random.between(5, 150)),
  );
}
