import { describe, expect, it } from 'vitest';
import { subtract } from '../../../src/geometry/boolean/boolean.js';
import { distanceTo } from '../../../src/geometry/components.js';
import { chainLength, regionArea } from '../../../src/geometry/measure.js';
import { polygon, polyline, regionOf } from '../../../src/geometry/pen.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import { withoutDoubles } from '../../../src/geometry/tidy/overlaps.js';
import type { Piece } from '../../../src/panel/piece.js';
import { forProcess } from '../../../src/process/for-process.js';
import { isPressedFrom, type Layers, OPERATIONS } from '../../../src/process/layers.js';
import type { EngravedRelief, LaserProcess } from '../../../src/process/process.js';
import { STARTING } from '../../../src/process/starting.js';
import { bridge, gate, plainPiece, sky, spine, upright } from '../lock-pieces.js';
import { burnt, LASER } from './burn.js';

const PERFORATING: LaserProcess = {
  ...LASER,
  folds: { how: 'perforation', cutMm: 2, tieMm: 1 },
};

const engraving = (how: EngravedRelief['how']): LaserProcess => ({
  ...LASER,
  relief: { how, angleDeg: 45, apartMm: 0.4 },
});

const lengthOf = (marks: Layers['emboss']) =>
  marks.reduce((sum, { cubics }) => sum + chainLength(cubics), 0);

/** Length of all that lies on something else that is burnt, guides left out. */
function doubledMm(layers: Layers): number {
  const worked = OPERATIONS.filter((operation) => operation !== 'guide');
  const lines = worked.flatMap((operation) => layers[operation].map(({ cubics }) => ({ cubics })));
  return withoutDoubles(lines, 0.02).savedMm;
}

describe('folds', () => {
  const strip = spine('spine-left', 8);

  it('stay light lines, mountain or valley, where nothing else is asked', () => {
    const { fold } = burnt(strip);
    expect(fold.map(({ kind }) => kind)).toEqual(strip.scores.map(({ kind }) => kind));
  });

  it('become short cuts with ties at both ends', () => {
    const { fold, detail } = burnt(strip, PERFORATING);
    // Cut 2, tie 1, two thirds cut: common practice, no source. 135 mm: 45 cuts, 90 mm.
    expect(fold).toHaveLength(9 * 45);
    for (const { kind, closed } of fold) expect([kind, closed]).toEqual(['perforation', false]);
    expect(lengthOf(fold)).toBeCloseTo(9 * 90, 6);
    for (const { cubics } of fold) {
      expect(cubics[1]).toBeGreaterThan(0.9);
      expect(cubics[cubics.length - 1]).toBeLessThan(135 - 0.9);
    }
    expect(detail).toEqual([]);
  });

  it('leave details as they are', () => {
    expect(burnt(bridge, PERFORATING).detail).toEqual(burnt(bridge).detail);
  });

  it('need no face of their own when they go through the card', () => {
    const made = forProcess(strip, PERFORATING);
    expect([isPressedFrom(made, 'front'), isPressedFrom(made, 'back')]).toEqual([false, false]);
    expect([isPressedFrom(strip, 'front'), isPressedFrom(strip, 'back')]).toEqual([true, true]);
    expect(forProcess(made, PERFORATING)).toBe(made);
    // The knife's folds as short cuts likewise.
    const knife = { ...STARTING.knife, folds: PERFORATING.folds };
    expect(isPressedFrom(forProcess(strip, knife), 'back')).toBe(false);
    expect(forProcess(strip, STARTING.knife)).toBe(strip);
    expect(forProcess(strip, STARTING.press)).toBe(strip);
  });
});

describe('relief', () => {
  it('is hatched within its edge', () => {
    const { emboss } = burnt(bridge, engraving('hatch'));
    const area = circle(45, 60, 8);
    // Strokes 0.4 mm apart cover it, to 1 % (that of the rule of trapezoids over a circle).
    expect((lengthOf(emboss) * 0.4) / regionArea(area)).toBeCloseTo(1, 2);
    for (const { cubics, closed, relief } of emboss) {
      expect(closed).toBe(false);
      expect(relief).toEqual({ side: 'sunk', depthMm: 0.3 });
      expect(distanceTo(area, { x: cubics[0], y: cubics[1] })?.distanceMm).toBeLessThan(1e-4);
    }
  });

  it('is filled with rings', () => {
    const { emboss } = burnt(bridge, engraving('contour'));
    // A circle of 8 mm: rings at every 0.4 mm, the last before its middle.
    expect(emboss.length).toBeGreaterThanOrEqual(20);
    expect(emboss.length).toBeLessThanOrEqual(21);
    expect(emboss.every(({ closed }) => closed)).toBe(true);
  });

  it('can be left out, and then asks for no face', () => {
    const none = engraving('none');
    expect(burnt(bridge, none).emboss).toEqual([]);
    const made = forProcess({ ...sky, scores: [] }, none);
    expect([isPressedFrom(made, 'front'), isPressedFrom(made, 'back')]).toEqual([false, false]);
  });

  it('that is raised becomes tone on the front: a beam can only sink', () => {
    const made = forProcess(gate, LASER);
    expect(isPressedFrom(gate, 'back')).toBe(true);
    expect(isPressedFrom(made, 'back')).toBe(false);
    expect(burnt(made).emboss.length).toBeGreaterThan(10);
  });

  it('with a pattern of its own is burnt as that', () => {
    const strokes = [10, 12, 14].map((x) => upright(x, 30));
    const pattern: Piece = {
      ...plainPiece('wall', 60, 40),
      reliefs: [{ region: rectangle(5, 2, 20, 30), side: 'sunk', depthMm: 0.2, strokes }],
    };
    expect(burnt(pattern).emboss.map(({ cubics }) => cubics)).toEqual(
      strokes.map(({ cubics }) => cubics),
    );
  });

  it('that overlaps another is burnt once, as deep as the deeper', () => {
    const region = (x: number) => rectangle(x, 10, 20, 10);
    const two: Piece = {
      ...plainPiece('water', 60, 40),
      reliefs: [
        { region: region(10), side: 'sunk', depthMm: 0.2 },
        { region: region(20), side: 'sunk', depthMm: 0.3 },
        { region: region(25), side: 'sunk', depthMm: 0.3 },
      ],
    };
    const { emboss } = burnt(two);
    const deep = emboss.filter(({ relief }) => relief?.depthMm === 0.3);
    expect(lengthOf(deep) * 0.4).toBeCloseTo(250, -1);
    expect(lengthOf(emboss) * 0.4).toBeCloseTo(350, -1);
  });
});

describe('nothing is burnt twice', () => {
  const along = (y: number, from: number, to: number) =>
    polyline([
      { x: from, y },
      { x: to, y },
    ]);

  it('not where scores, folds, strokes and cuts lie on each other', () => {
    const crowded: Piece = {
      ...plainPiece('crowded', 100, 60),
      card: subtract(rectangle(0, 0, 100, 60), [rectangle(40, 20, 20, 0.1)]),
      scores: [
        { line: along(10, 0, 100), kind: 'mountain' },
        // Over a fold, over itself from the other end, along the card's edge, and along a slit.
        { line: along(10, 20, 50), kind: 'detail' },
        { line: along(30, 5, 60), kind: 'detail' },
        { line: along(30, 80, 40), kind: 'detail' },
        { line: along(60, 10, 90), kind: 'detail' },
        { line: along(20.05, 30, 70), kind: 'detail' },
      ],
      reliefs: [
        {
          region: rectangle(4, 9, 30, 30),
          side: 'sunk',
          depthMm: 0.2,
          strokes: [along(10, 5, 30), along(30, 5, 30), along(40, 5, 30), along(40, 30, 10)],
        },
      ],
    };
    const layers = burnt(crowded);
    expect(doubledMm(layers)).toBeLessThan(0.01);
    expect(lengthOf(layers.fold)).toBeCloseTo(100, 3);
    // From 5 to 80 at 30; the two ends beyond the slit, 0.1 mm within the slot.
    expect(lengthOf(layers.detail)).toBeCloseTo(75 + 20, 0);
    expect(lengthOf(layers.emboss)).toBeCloseTo(25, 3);
  });

  const slotted = (width: number): Piece => ({
    ...plainPiece('slotted', 60, 60),
    card: subtract(rectangle(0, 0, 60, 60), [rectangle(20, 20, 10, width)]),
  });

  it.each([0.19, 0.2, 0.205, 0.21, 0.215])(
    'not in slots of %d mm, hardly wider than the beam of 0.2',
    (width) => {
      const { cut } = burnt(slotted(width));
      expect(cut.map(({ kind, closed }) => [kind, closed])).toEqual([
        ['slit', false],
        [undefined, true],
      ]);
      expect(Math.abs(chainLength(cut[0].cubics) - 9.8)).toBeLessThan(0.05);
    },
  );

  it('and a slot wide enough for both sides is gone round', () => {
    expect(burnt(slotted(0.23)).cut.map(({ closed }) => closed)).toEqual([true, true]);
  });

  it.each([3, 4, 5, 6])('not in wedges of %d degrees, where they are hardly wider', (deg) => {
    const half = 4 * Math.tan((deg * Math.PI) / 360);
    const wedge = polygon([
      { x: 20, y: 20 - half },
      { x: 24, y: 20 },
      { x: 20, y: 20 + half },
    ]);
    const card = subtract(rectangle(0, 0, 60, 60), [regionOf(wedge)]);
    const layers = burnt({ ...plainPiece('wedge', 60, 60), card });
    expect(doubledMm(layers)).toBe(0);
    for (const { closed, kind } of layers.cut) expect(closed || kind !== undefined).toBe(true);
  });

  it.each([85, 60, 45, 30, 20, 12])(
    'not in notches of %d degrees, into which the path goes',
    (angle) => {
      const half = 5 * Math.tan((angle * Math.PI) / 360);
      const notch = polygon([
        { x: 10, y: 20 },
        { x: 15, y: 20 - half },
        { x: 15, y: 20 + half },
      ]);
      const card = subtract(rectangle(0, 0, 60, 40), [regionOf(notch)]);
      expect(doubledMm(burnt({ ...plainPiece('notched', 60, 40), card }))).toBeLessThan(0.01);
    },
  );

  it.each([bridge, gate, sky, spine('spine-left', 8)])('not in $name', (piece) => {
    for (const process of [LASER, PERFORATING, engraving('contour')]) {
      expect(doubledMm(burnt(piece, process))).toBeLessThan(0.01);
    }
  });
});
