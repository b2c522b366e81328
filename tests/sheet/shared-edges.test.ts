import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { components } from '../../src/geometry/components.js';
import { boundsOf, chainLength, regionBounds } from '../../src/geometry/measure.js';
import { stroke } from '../../src/geometry/offset/offset.js';
import { rectangle } from '../../src/geometry/primitives.js';
import { moveCubics, rotation } from '../../src/geometry/transform.js';
import type { Piece } from '../../src/panel/piece.js';
import type { PlacedMark } from '../../src/process/layers.js';
import type { LaserProcess } from '../../src/process/process.js';
import { sheetJob } from '../../src/sheet/job.js';
import { shareEdges } from '../../src/sheet/shared-edges.js';
import { sheetOf } from '../../src/sheet/sheet.js';
import { LASER } from '../process/laser/burn.js';
import { A4, plainPiece } from '../process/lock-pieces.js';

const KERF = 0.2;
const SHARING: LaserProcess = { ...LASER, kerfMm: KERF, sharedEdges: true };

type Placed = readonly [piece: Piece, dx: number, dy: number];

/** The cuts of one sheet on which pieces lie as told. */
function cutsOf(process: LaserProcess, ...placed: Placed[]): readonly PlacedMark[] {
  const placements = placed.map(([piece, dx, dy]) => ({ piece, dx, dy, copy: 1 }));
  const sheet = sheetOf('sheet-01', A4, placements, process);
  const [{ steps }] = sheetJob(sheet, { process, ballMm: 1 }).faces;
  return steps.find(({ operation }) => operation === 'cut')?.marks ?? [];
}

/** What the beam makes of the sheet: the parts left, largest first. */
const partsLeft = (cuts: readonly PlacedMark[]) =>
  components(subtract(rectangle(0, 0, 210, 297), [stroke(cuts, KERF)]));

const sizesLeft = (cuts: readonly PlacedMark[]) =>
  partsLeft(cuts)
    .slice(1)
    .map((part) => {
      const { minX, minY, maxX, maxY } = regionBounds(part);
      return [maxX - minX, maxY - minY].map((mm) => Math.round(mm * 1000) / 1000);
    });

const lengthOf = (cuts: readonly PlacedMark[]) =>
  cuts.reduce((sum, { cubics }) => sum + chainLength(cubics), 0);

const quay = plainPiece('quay', 60, 40);
const lock = plainPiece('lock', 60, 40);

describe('shareEdges', () => {
  it('cuts the edge of two pieces that touch once, on the designed line', () => {
    const marks = cutsOf(SHARING, [quay, 20, 20], [lock, 80, 20]);
    const shared = marks.filter(({ kind }) => kind === 'shared');
    const lines = shared.map(({ cubics }) => boundsOf([cubics])).filter((b) => b.maxX === b.minX);
    expect(lines).toHaveLength(1);
    expect(lines[0].minX).toBeCloseTo(80, 6);
    expect(lines[0].maxY - lines[0].minY).toBeCloseTo(40, 6);
    // Every cut left is open and says why.
    expect(marks.map(({ closed, kind }) => [closed, kind])).toEqual(
      Array(3).fill([false, 'shared']),
    );
    // A shared line is cut once, uncompensated: derived. Each is half the kerf smaller there.
    expect(sizesLeft(marks)).toEqual([
      [59.9, 40],
      [59.9, 40],
    ]);
  });

  it('saves one of the two cuts and says what it costs', () => {
    const apart = cutsOf(LASER, [quay, 20, 20], [lock, 80, 20]);
    const { marks, shared } = shareEdges(apart, KERF);
    expect(shared).toEqual([
      { pieces: ['quay (1)', 'lock (1)'], lengthMm: expect.closeTo(40, 6), smallerMm: 0.1 },
    ]);
    // 40 mm, and two corners of each that are not gone round.
    expect(lengthOf(apart) - lengthOf(marks)).toBeCloseTo(40 + 4 * (Math.PI / 2) * 0.1, 2);
  });

  it('costs nothing where pieces lie the kerf apart', () => {
    const apart = cutsOf(LASER, [quay, 20, 20], [lock, 80 + KERF, 20]);
    const { marks, shared } = shareEdges(apart, KERF);
    expect(shared.map(({ smallerMm }) => smallerMm)).toEqual([0]);
    expect(sizesLeft(marks)).toEqual([
      [60, 40],
      [60, 40],
    ]);
  });

  it('lets pieces alone that lie further apart, or cross at an angle', () => {
    const apart = cutsOf(LASER, [quay, 20, 20], [lock, 80.5, 20]);
    expect(shareEdges(apart, KERF)).toEqual({ marks: apart, shared: [] });
    const [first, second] = cutsOf(LASER, [quay, 20, 20], [lock, 80, 20]);
    const turned = { ...second, cubics: moveCubics(second.cubics, rotation(1)) };
    expect(shareEdges([first, turned], KERF).shared).toEqual([]);
  });

  it('shares what two edges of different length have in common', () => {
    const low = plainPiece('low', 30, 25);
    const marks = cutsOf(SHARING, [quay, 20, 20], [low, 80, 27]);
    expect(sizesLeft(marks)).toEqual([
      [60, 40],
      [29.9, 25],
    ]);
    const ways = marks.map(({ cubics }) => chainLength(cubics));
    expect(ways.filter((mm) => Math.abs(mm - 25) < 1e-6)).toHaveLength(1);
  });

  it('frees four pieces that meet in a point', () => {
    const marks = cutsOf(
      SHARING,
      [quay, 20, 20],
      [lock, 80, 20],
      [plainPiece('weir', 60, 40), 20, 60],
      [plainPiece('mill', 60, 40), 80, 60],
    );
    expect(sizesLeft(marks)).toEqual(Array(4).fill([59.9, 39.9]));
    const ways = marks.map(({ cubics }) => Math.round(chainLength(cubics) * 1e4) / 1e4);
    expect(ways.filter((mm) => mm === 40 || mm === 60).toSorted()).toEqual([40, 40, 60, 60]);
  });

  it('does so however the sheet is turned', () => {
    const apart = cutsOf(LASER, [quay, 20, 20], [lock, 80, 20]);
    for (const angle of [30, 90, 133]) {
      const turned = apart.map((m) => ({ ...m, cubics: moveCubics(m.cubics, rotation(angle)) }));
      const { marks, shared } = shareEdges(turned, KERF);
      expect(shared).toMatchObject([{ smallerMm: 0.1 }]);
      expect(lengthOf(marks)).toBeCloseTo(lengthOf(shareEdges(apart, KERF).marks), 6);
    }
  });

  it('leaves a nib of either piece uncut for both', () => {
    const process = { ...SHARING, nibs: { count: 2, widthMm: 0.4 } };
    const apart = cutsOf({ ...process, sharedEdges: false }, [quay, 20, 20], [lock, 20, 60]);
    const { marks, shared } = shareEdges(apart, KERF);
    expect(shared).toHaveLength(1);
    const lines = marks.filter(({ kind }) => kind === 'shared');
    // The nibs of the two long edges lie at the middle of them, on top of each other.
    expect(lines.length).toBeGreaterThan(1);
    // All hangs together: nothing is free before it is broken out.
    expect(partsLeft(marks)).toHaveLength(1);
  });

  it('never shares an edge of a loose piece', () => {
    const boat: Piece = { ...lock, name: 'boat', folder: 'loose' };
    const marks = cutsOf(SHARING, [quay, 20, 20], [boat, 80, 20]);
    expect(marks.every(({ closed }) => closed)).toBe(true);
  });

  it('is only done where the process asks for it', () => {
    const marks = cutsOf(LASER, [quay, 20, 20], [lock, 80, 20]);
    expect(marks.every(({ closed }) => closed)).toBe(true);
  });
});
