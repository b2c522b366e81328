import { describe, expect, it } from 'vitest';
import { components, distanceTo } from '../../src/geometry/components.js';
import { boundsOf, flatten, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { narrowestWeb } from '../../src/geometry/width/webs.js';
import type { KnifeProcess, LaserProcess, Process } from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { LABEL_MM, type TrialCard, type TrialPiece } from '../../src/process/trial/card.js';
import { trialCards } from '../../src/process/trial/cards.js';
import { kerfFromComb } from '../../src/process/trial/comb.js';
import { PROCESSES } from '../../src/scene/scene.js';
import { leastReadableMm } from '../../src/scenery/lettering/legible.js';
import { A4 } from './lock-pieces.js';

const cardsOf = (process: Process, caliperMm = 0.3): readonly TrialCard[] =>
  trialCards({ process, stock: { ...A4, caliperMm } });
const piecesOf = (process: Process, caliperMm?: number): readonly TrialPiece[] =>
  cardsOf(process, caliperMm).flatMap(({ pieces }) => pieces);
const named = (process: Process, start: string, caliperMm?: number) =>
  piecesOf(process, caliperMm).filter(({ piece }) => piece.name.startsWith(start));

/** Widths of the openings of the square whose middles lie in a band. */
function openingWidths(process: Process, fromY: number, toY: number, caliperMm?: number): number[] {
  const [{ piece }] = named(process, 'square', caliperMm);
  return piece.card.contours
    .slice(1)
    .map((contour) => boundsOf([contour]))
    .filter(({ minY, maxY }) => (minY + maxY) / 2 > fromY && (minY + maxY) / 2 < toY)
    .map(({ minX, maxX }) => Math.round((maxX - minX) * 1e6) / 1e6);
}

describe('the trial cards', () => {
  it('are those that say something of the kind', () => {
    const titles = (process: Process) => cardsOf(process).map(({ title }) => title.split(':')[0]);
    expect(titles(STARTING.knife)).toEqual(['Square', 'Blade', 'Overcut', 'Folds', 'Emboss']);
    expect(titles(STARTING.laser)).toEqual(['Comb', 'Square', 'Folds', 'Emboss']);
    expect(titles(STARTING.press)).toEqual(['Square']);
    const flat = { ...STARTING.laser, relief: { ...STARTING.laser.relief, how: 'none' } } as const;
    expect(titles(flat)).not.toContain('Emboss');
  });

  it.each(PROCESSES)('%s: every piece has a name of its own and lies on its page', (kind) => {
    const pieces = piecesOf(STARTING[kind]).map(({ piece }) => piece);
    expect(new Set(pieces.map(({ name }) => name)).size).toBe(pieces.length);
    for (const { card, width, height } of pieces) {
      expect(regionBounds(card)).toMatchObject({ minX: 0, minY: 0, maxX: width, maxY: height });
    }
  });

  it.each(PROCESSES)('%s: labels keep clear of every cut', (kind) => {
    const { scoreClearance } = STARTING[kind].limits;
    const near: string[] = [];
    for (const { piece } of piecesOf(STARTING[kind])) {
      for (const { line, kind: scored } of piece.scores) {
        if (scored !== 'detail') continue;
        for (const point of flatten(line.cubics, 0.05)) {
          const { distanceMm } = distanceTo(piece.card, point)!;
          if (distanceMm < scoreClearance - 0.001) near.push(`${piece.name}: ${distanceMm}`);
        }
      }
    }
    expect(near).toEqual([]);
  });

  it('have labels that can be read in the hand', () => {
    // ISO 9241-3: 16 minutes of arc at least, which is 1.86 mm at 400 mm.
    expect(leastReadableMm(400)).toBeCloseTo(1.8617, 4);
    expect(LABEL_MM).toBeGreaterThan(leastReadableMm(400, 22));
    expect(LABEL_MM).toBeGreaterThanOrEqual(2.5);
  });
});

describe('the comb', () => {
  const laser: LaserProcess = { ...STARTING.laser, kerfMm: 0.3, sharedEdges: true };

  it('is ten strips of 10 mm, cut as drawn whatever the kerf', () => {
    const [{ piece, process }] = named(laser, 'comb');
    const strips = components(piece.card).map(regionBounds);
    expect(strips).toHaveLength(10);
    for (const { minX, maxX } of strips) expect(maxX - minX).toBeCloseTo(10, 9);
    expect(process).toMatchObject({ kerfMm: 0, sharedEdges: false, nibs: { count: 0 } });
  });

  it('gives the kerf: what ten strips lack, divided by ten', () => {
    // Common practice, no source: kerf = (10 W - sum) / 10.
    expect(kerfFromComb(98)).toBeCloseTo(0.2, 9);
    expect(kerfFromComb(100)).toBe(0);
  });
});

describe('the square', () => {
  it.each(PROCESSES)('%s: measures 100 mm and stays one piece', (kind) => {
    const [{ piece }] = named(STARTING[kind], 'square');
    expect(regionBounds(piece.card)).toEqual({ minX: 0, minY: 0, maxX: 100, maxY: 100 });
    expect(components(piece.card)).toHaveLength(1);
  });

  it('has webs as narrow as it says', () => {
    expect(narrowestWeb(named(STARTING.laser, 'square')[0].piece.card, 1)!.widthMm).toBeCloseTo(
      0.4,
      2,
    );
    expect(narrowestWeb(named(STARTING.knife, 'square')[0].piece.card, 1)!.widthMm).toBeCloseTo(
      0.6,
      2,
    );
  });

  it('has holes and slots as its labels say', () => {
    expect(openingWidths(STARTING.laser, 38, 46)).toEqual([0.5, 0.6, 0.8, 1, 1.5, 2, 3, 4]);
    expect(openingWidths(STARTING.laser, 55, 67)).toEqual([0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.5, 2]);
  });

  it('has slots as wide as the card is thick and a little', () => {
    // Designed width t + c; a laser's path is then t + c - kerf: 0.25 mm for t 0.3, c 0.15, kerf 0.2.
    // c of 0.1 to 0.2 mm is common practice, no source.
    const slots = openingWidths(STARTING.knife, 78, 95);
    expect(slots).toEqual([0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6]);
    expect(slots[3] - STARTING.laser.kerfMm).toBeCloseTo(0.25, 9);
    expect(openingWidths(STARTING.knife, 78, 95, 0.4)[3]).toBeCloseTo(0.55, 9);
  });

  it('leaves out what the beam would burn away whole', () => {
    const wide = { ...STARTING.laser, kerfMm: 0.4 };
    expect(openingWidths(wide, 55, 67)[0]).toBe(0.5);
    expect(openingWidths(wide, 78, 95, 0.2)[0]).toBeCloseTo(0.45, 9);
  });

  it('bears the name of the settings, whatever characters that has', () => {
    const long = { ...STARTING.laser, name: 'schöner Laser 日本 of the lock-keeper, upstairs' };
    const [{ piece }] = named(long, 'square');
    const outlines = (at: typeof piece) => at.scores.length;
    expect(outlines(piece)).toBeGreaterThan(outlines(named(STARTING.laser, 'square')[0].piece));
    for (const { line } of piece.scores) expect(boundsOf([line.cubics]).minX).toBeGreaterThan(5);
  });

  it('has a tongue of 10 mm to try its slots with', () => {
    const [{ piece }] = named(STARTING.knife, 'tongue');
    // A handle of 20 x 14 mm and a tongue of 10 x 12 mm.
    expect(regionArea(piece.card)).toBeCloseTo(400, 9);
  });
});

describe('cards of one setting', () => {
  const knife: KnifeProcess = STARTING.knife;

  it('differ in that setting alone, and say it on the piece', () => {
    const blades = named(knife, 'blade').map(({ process }) => process as KnifeProcess);
    expect(blades.map(({ blade }) => blade.offsetMm)).toEqual([
      0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45,
    ]);
    for (const process of blades) {
      const blade = { ...knife.blade, offsetMm: process.blade.offsetMm, compensate: true };
      expect(process).toEqual({ ...knife, blade });
    }
    const overcuts = named(knife, 'overcut').map(({ process }) => process as KnifeProcess);
    expect(overcuts.map(({ blade }) => blade.overcutMm)).toEqual([0, 0.25, 0.5, 0.75, 1]);
    const reliefs = (process: Process) =>
      named(process, 'emboss').map((one) => (one.process as KnifeProcess | LaserProcess).relief);
    expect(reliefs(knife)).toMatchObject(
      [0.5, 0.75, 1, 1.25, 1.5].map((apartBalls) => ({ apartBalls })),
    );
    expect(reliefs(STARTING.laser)).toMatchObject(
      [0.2, 0.3, 0.4, 0.6, 0.8].map((apartMm) => ({ apartMm })),
    );
  });

  it('fold once, twice, three times, and as three perforations', () => {
    const folds = named(knife, 'fold').map(({ process, foldPasses }) => [
      foldPasses,
      process.folds,
    ]);
    const perforation = (cutMm: number) => ({ how: 'perforation', cutMm, tieMm: 1 });
    // Short cuts of 2 mm with ties of 1 mm: common practice, no source.
    expect(folds).toEqual([
      [1, { how: 'line' }],
      [2, { how: 'line' }],
      [3, { how: 'line' }],
      [1, perforation(1)],
      [1, perforation(2)],
      [1, perforation(3)],
    ]);
  });

  it('are worked from the front alone, so that no card is turned over', () => {
    for (const { piece } of piecesOf(knife)) {
      expect(piece.reliefs.every(({ side }) => side === 'sunk')).toBe(true);
      expect(piece.scores.every(({ kind }) => kind !== 'valley')).toBe(true);
    }
  });
});
