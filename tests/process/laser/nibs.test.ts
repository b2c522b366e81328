import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../../src/geometry/boolean/boolean.js';
import { components, distanceTo } from '../../../src/geometry/components.js';
import { chainLength, contourArea } from '../../../src/geometry/measure.js';
import { stroke } from '../../../src/geometry/offset/offset.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import type { Cubics, Point, Region } from '../../../src/geometry/types.js';
import { narrowestWeb } from '../../../src/geometry/width/webs.js';
import type { Piece } from '../../../src/panel/piece.js';
import { kerfPath } from '../../../src/process/laser/kerf.js';
import type { Mark } from '../../../src/process/layers.js';
import { holdingOf } from '../../../src/process/nibs/nibs.js';
import type { LaserProcess } from '../../../src/process/process.js';
import { archway, bridge, gate, plainPiece, spine } from '../lock-pieces.js';
import { burnt, LASER } from './burn.js';

const HELD: LaserProcess = { ...LASER, nibs: { count: 2, widthMm: 0.4 } };

const nibsOf = (piece: Piece, { kerfMm, nibs }: LaserProcess) =>
  holdingOf(piece, kerfPath(piece.card, kerfMm).cut.contours, nibs, kerfMm);

const startOf = (c: Cubics): Point => ({ x: c[0], y: c[1] });
const endOf = (c: Cubics): Point => ({ x: c[c.length - 2], y: c[c.length - 1] });
const apart = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** A sheet of card with the piece in it, as it leaves the machine. */
const burntSheet = (cut: readonly Mark[]): Region =>
  subtract(rectangle(-10, -10, 220, 160), [stroke(cut, LASER.kerfMm)]);

describe('nibs', () => {
  const quay = plainPiece('quay', 100, 40);

  it('break the cut into parts with gaps as wide as nib and kerf together', () => {
    const { cut } = burnt(quay, HELD);
    expect(cut.map(({ closed, kind }) => [closed, kind])).toEqual(Array(2).fill([false, 'nib']));
    const [a, b] = cut.map(({ cubics }) => cubics);
    expect(apart(endOf(a), startOf(b))).toBeCloseTo(0.6, 6);
    expect(apart(endOf(b), startOf(a))).toBeCloseTo(0.6, 6);
    const [whole] = kerfPath(quay.card, LASER.kerfMm).cut.contours;
    expect(chainLength(a) + chainLength(b)).toBeCloseTo(chainLength(whole) - 1.2, 6);
  });

  it('are as wide as asked once the beam has passed, and hold the piece', () => {
    const sheet = burntSheet(burnt(quay, HELD).cut);
    expect(components(sheet)).toHaveLength(1);
    expect(narrowestWeb(sheet, 1)?.widthMm).toBeCloseTo(0.4, 1);
    expect(components(burntSheet(burnt(quay).cut))).toHaveLength(2);
  });

  it('stand opposite each other in the middle of straight edges', () => {
    const { nibs } = nibsOf(quay, HELD);
    for (const { at } of nibs) expect(Math.abs(at.x - 50)).toBeLessThan(1.5);
    expect(Math.abs(nibs[0].at.y - nibs[1].at.y)).toBeCloseTo(40.2, 6);
    expect(nibs.map(({ shows }) => shows)).toEqual([false, false]);
  });

  it.each([1, 2, 3, 4])('are as many as asked: %d', (count) => {
    const { nibs } = nibsOf(quay, { ...HELD, nibs: { count, widthMm: 0.4 } });
    expect(nibs).toHaveLength(count);
    for (const [k, { at }] of nibs.entries()) {
      for (const other of nibs.slice(k + 1)) expect(apart(at, other.at)).toBeGreaterThan(20);
    }
  });

  it('keep clear of corners', () => {
    for (const piece of [quay, bridge, gate, spine('spine-left', 8)]) {
      const { minX, maxX, minY, maxY } = {
        minX: 0,
        minY: 0,
        maxX: piece.width,
        maxY: piece.height,
      };
      for (const { at } of nibsOf(piece, HELD).nibs) {
        for (const corner of [minX, maxX].flatMap((x) => [minY, maxY].map((y) => ({ x, y })))) {
          expect(apart(at, corner)).toBeGreaterThan(1.2);
        }
      }
    }
  });

  it('hold the waste of a window by its straight edges, which show', () => {
    const { nibs } = nibsOf(gate, HELD);
    const inside = nibs.filter(({ at }) => at.x > 50 && at.x < 130 && at.y > 20 && at.y < 110);
    expect(inside).toHaveLength(2);
    // A round-topped window, 75 to 105 by 50 to 105: its arch springs at 65.
    for (const { at, shows } of inside) {
      expect(at.y).toBeGreaterThan(65);
      expect(shows).toBe(true);
    }
    expect(nibs.filter(({ shows }) => !shows)).toHaveLength(2);
  });

  it('are not wanted by the waste of small holes', () => {
    // Less than 15 mm: common practice, no source.
    const holed = { ...quay, card: subtract(quay.card, [circle(30, 20, 7), circle(70, 20, 8)]) };
    const closed = burnt(holed, HELD).cut.filter((mark) => mark.closed);
    expect(closed.map(({ cubics }) => Math.round(Math.abs(contourArea(cubics))))).toEqual([
      Math.round(Math.PI * 6.9 ** 2),
      Math.round(Math.PI * 7.9 ** 2),
    ]);
    // The larger one wants them, but is too round everywhere.
    const { loose } = nibsOf(holed, HELD);
    expect(loose).toHaveLength(1);
    expect(loose[0].x).toBeCloseTo(70, 3);
  });

  describe('and scenery', () => {
    const window = archway(40, 20, 60, 60);
    // A wall with a level top and upright ends stands in the window, and a mill on it.
    const wall = union([rectangle(40, 90, 60, 20), rectangle(60, 50, 20, 45)]);
    const opening = subtract(window, [wall]);
    const mill: Piece = {
      ...plainPiece('panel-01', 140, 120),
      card: subtract(rectangle(0, 0, 140, 120), [opening]),
      window,
    };

    it.each([1, 2, 3, 4, 6])('never meet, though its edges are straight: %d nibs', (count) => {
      const { nibs } = nibsOf(mill, { ...HELD, nibs: { count, widthMm: 0.4 } });
      const shown = nibs.filter(({ shows }) => shows);
      expect(shown.length).toBeGreaterThan(0);
      for (const { at } of shown) {
        expect(distanceTo(window, at)?.distanceMm).toBeLessThan(0.11);
        expect(distanceTo(wall, at)?.distanceMm).toBeGreaterThan(1);
      }
    });

    it('that fills its window leaves no place for them: that is told', () => {
      const lace: Piece = {
        ...mill,
        card: subtract(rectangle(0, 0, 140, 120), [rectangle(50, 40, 40, 30)]),
      };
      const { nibs, loose } = nibsOf(lace, HELD);
      expect(nibs.some(({ shows }) => shows)).toBe(false);
      expect(loose).toEqual([{ x: expect.closeTo(70, 6), y: expect.closeTo(55, 6) }]);
    });
  });

  describe('of a loose piece', () => {
    const boat: Piece = {
      ...plainPiece('boat-p2', 44, 24),
      folder: 'loose',
      card: rectangle(2, 2, 40, 20),
    };

    it('stand only where the panel that it is glued behind hides its edge', () => {
      // Glued along its foot, 1 mm within its edges.
      const behind: Piece = {
        ...boat,
        guides: [{ cubics: rectangle(3, 15, 38, 6).contours[0] }],
      };
      const { nibs, loose } = nibsOf(behind, HELD);
      expect(loose).toEqual([]);
      expect(nibs).toHaveLength(2);
      for (const { at, shows } of nibs) {
        expect(shows).toBe(false);
        expect(at.y).toBeGreaterThan(13.5);
      }
    });

    it('are left out where every edge is seen, and that is told', () => {
      const { nibs, loose } = nibsOf(boat, HELD);
      expect(nibs).toEqual([]);
      expect(loose).toHaveLength(1);
      expect(burnt(boat, HELD).cut.map(({ closed }) => closed)).toEqual([true]);
    });

    it('that is glued out of sight stand anywhere, on the flattest edge of a round one', () => {
      const pad: Piece = { ...boat, card: circle(20, 12, 8), hidden: true };
      const { nibs } = nibsOf(pad, HELD);
      expect(nibs).toHaveLength(2);
      expect(apart(nibs[0].at, nibs[1].at)).toBeGreaterThan(15);
      expect(components(burntSheet(burnt(pad, HELD).cut))).toHaveLength(1);
    });
  });
});
