import { describe, expect, it } from 'vitest';
import { union } from '../../../src/geometry/boolean/boolean.js';
import { containsPoint, distanceTo } from '../../../src/geometry/components.js';
import { boundsOf, flatten } from '../../../src/geometry/measure.js';
import { polyline } from '../../../src/geometry/pen.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import { withoutDoubles } from '../../../src/geometry/tidy/overlaps.js';
import type { Region } from '../../../src/geometry/types.js';
import type { Piece } from '../../../src/panel/piece.js';
import { knifeLayers } from '../../../src/process/knife/knife.js';
import { stylusMarks } from '../../../src/process/knife/stylus.js';
import { type Mark, pieceLayers } from '../../../src/process/layers.js';
import {
  type KnifeProcess,
  STYLUS_HATCHES,
  type StylusRelief,
} from '../../../src/process/process.js';
import { STARTING } from '../../../src/process/starting.js';
import type { Relief } from '../../../src/scenery/family.js';
import { bridge, gate, plainPiece } from '../lock-pieces.js';

const BALL = 1;
const KNIFE = STARTING.knife as KnifeProcess;
const relief = (region: Region, side: Relief['side'] = 'raised'): Relief => ({
  region,
  side,
  depthMm: 0.3,
});

const pressed = (reliefs: readonly Relief[], how: StylusRelief['how'] = 'rings'): Mark[] => {
  const piece: Piece = { ...plainPiece('lock-keeper', 60, 40), reliefs };
  const designed = pieceLayers(piece, ['front', 'back']).emboss;
  return stylusMarks(piece, designed, { how, angleDeg: 45, apartBalls: 0.8 }, BALL);
};

const WAYS = STYLUS_HATCHES.filter((how) => how !== 'none');

describe('relief pressed with a ball', () => {
  it.each(WAYS)('keeps the edge of its mark within the drawing, as %s', (how) => {
    const region = union([circle(15, 15, 8), rectangle(15, 11, 20, 8)]);
    const marks = pressed([relief(region)], how);
    expect(marks.length).toBeGreaterThan(1 - Number(how === 'outline'));
    let nearest = Infinity;
    for (const p of marks.flatMap(({ cubics }) => flatten(cubics, 0.005))) {
      expect(containsPoint(region, p)).toBe(true);
      nearest = Math.min(nearest, distanceTo(region, p)!.distanceMm);
    }
    // Dots stand where their grid has them, all else reaches the edge by half a ball.
    expect(nearest).toBeGreaterThan(BALL / 2 - 0.01);
    if (how !== 'stipple') expect(nearest).toBeLessThan(BALL / 2 + 0.01);
  });

  it.each(WAYS)('runs once along what is hardly wider than the ball, as %s', (how) => {
    const marks = pressed([relief(rectangle(5, 5, 12, 1.05)), relief(circle(30, 10, 0.53))], how);
    expect(marks.map(({ closed }) => closed)).toEqual([false, false]);
    const strip = boundsOf([marks[0].cubics]);
    expect(strip.maxX - strip.minX).toBeCloseTo(11, 0);
  });

  it('is left out where it is not to be pressed', () => {
    expect(pressed([relief(circle(15, 15, 8))], 'none')).toEqual([]);
  });

  it('says with each stroke on which side and how deep', () => {
    for (const mark of pressed([relief(circle(15, 15, 8), 'sunk')])) {
      expect(mark.relief).toEqual({ side: 'sunk', depthMm: 0.3 });
    }
  });

  it('gives what is narrower than the ball one stroke along its middle', () => {
    const [line, dot, ...more] = pressed([
      relief(rectangle(5, 5, 12, 0.7)),
      relief(circle(30, 10, 0.4)),
    ]);
    expect(more).toEqual([]);
    const box = boundsOf([line.cubics]);
    expect(line.closed).toBe(false);
    expect(Math.abs((box.minY + box.maxY) / 2 - 5.35)).toBeLessThan(0.05);
    expect(box.maxX - box.minX).toBeGreaterThan(11);
    const spot = boundsOf([dot.cubics]);
    const [x, y] = [(spot.minX + spot.maxX) / 2, (spot.minY + spot.maxY) / 2];
    expect(Math.hypot(x - 30, y - 10)).toBeLessThan(0.02);
    expect(pressed([relief(rectangle(5, 5, 12, 0.2))])).toEqual([]);
  });

  it.each(WAYS)('presses once what two reliefs of a side share, as %s', (how) => {
    const [a, b] = [rectangle(5, 5, 20, 20), rectangle(15, 15, 20, 20)];
    const marks = pressed([relief(a), relief(b)], how);
    expect(withoutDoubles(marks, 0.05).savedMm).toBe(0);
    const first = pressed([relief(a)], how).length;
    for (const p of marks.slice(first).flatMap(({ cubics }) => flatten(cubics, 0.01))) {
      expect(containsPoint(a, p)).toBe(false);
    }
  });

  it('presses both of two on different sides', () => {
    const both = pressed([relief(circle(15, 15, 8)), relief(circle(15, 15, 8), 'sunk')]);
    expect(both.length).toBe(2 * pressed([relief(circle(15, 15, 8))]).length);
  });

  it('keeps the strokes of a pattern and presses nothing plain through them', () => {
    const region = circle(15, 15, 6);
    const strokes = [
      polyline([
        { x: 12, y: 15 },
        { x: 18, y: 15 },
      ]),
    ];
    const marks = pressed([relief(circle(15, 15, 10)), { ...relief(region), strokes }]);
    const own = marks.filter(({ cubics }) => cubics === strokes[0].cubics);
    expect(own).toHaveLength(1);
    for (const { cubics } of marks.filter((m) => m !== own[0])) {
      for (const p of flatten(cubics, 0.01)) expect(containsPoint(region, p)).toBe(false);
    }
  });
});

describe('the layers of a knife', () => {
  const layersOf = (piece: Piece, faces: ('front' | 'back')[]) =>
    knifeLayers(piece, pieceLayers(piece, faces), KNIFE, BALL);

  it('press from each face only what is pressed from there', () => {
    expect(layersOf(gate, ['front']).emboss).toEqual([]);
    const raised = layersOf(gate, ['back']).emboss;
    expect(raised.length).toBeGreaterThan(2);
    expect(raised.every((mark) => mark.relief?.side === 'raised')).toBe(true);
  });

  it('cut with overcut in the order of the design and leave folds and guides alone', () => {
    const designed = pieceLayers(bridge, ['front']);
    const layers = layersOf(bridge, ['front']);
    expect(layers.cut.map(({ kind }) => kind)).toEqual(Array(4).fill('overcut'));
    layers.cut.forEach(({ cubics }, k) => {
      const [own, drawn] = [boundsOf([cubics]), boundsOf([designed.cut[k].cubics])];
      expect(own.minX).toBeCloseTo(drawn.minX, 2);
      expect(own.maxY).toBeCloseTo(drawn.maxY, 2);
    });
    expect(layers.fold).toEqual(designed.fold);
    expect(layers.detail).toEqual(designed.detail);
    expect(layers.guide).toEqual(designed.guide);
  });

  it('leave the piece itself as it is', () => {
    const before = structuredClone(bridge.card.contours);
    layersOf(bridge, ['front', 'back']);
    expect(bridge.card.contours).toEqual(before);
  });
});
