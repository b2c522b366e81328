import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../../src/geometry/boolean/boolean.js';
import { containsPoint } from '../../../src/geometry/components.js';
import {
  contourArea,
  lineBounds,
  lineLength,
  regionBounds,
} from '../../../src/geometry/measure.js';
import { pen, polygon, regionOf } from '../../../src/geometry/pen.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import type { Point, Region } from '../../../src/geometry/types.js';
import { kerfPath } from '../../../src/process/laser/kerf.js';
import { bridge, gate, plainPiece } from '../lock-pieces.js';
import { burnt, cardLeft, furthest, LASER, outlinesApart } from './burn.js';

const KERF = 0.2;
const size = (region: Region) => {
  const { minX, minY, maxX, maxY } = regionBounds(region);
  return [maxX - minX, maxY - minY];
};

/** A card of 60 x 40 mm with something cut out of it. */
const cardWith = (...cutters: Region[]): Region => subtract(rectangle(0, 0, 60, 40), cutters);

/** An isosceles point of the given angle, its tip at (x, y) and its foot to the right. */
const wedge = (x: number, y: number, angleDeg: number, long: number): Region => {
  const half = long * Math.tan((angleDeg * Math.PI) / 360);
  return regionOf(
    polygon([
      { x, y },
      { x: x + long, y: y - half },
      { x: x + long, y: y + half },
    ]),
  );
};

describe('the kerf', () => {
  // Offset by half the kerf into the waste: derived. Kerf of 0.1 to 0.3 mm in card: common practice,
  // no source.
  it('runs a part of 50 mm at 50.2 and its hole of 5 at 4.8', () => {
    const card = subtract(rectangle(0, 0, 50, 50), [circle(25, 25, 2.5)]);
    const { cut } = kerfPath(card, KERF);
    const [outer] = cut.contours.filter((c) => contourArea(c) > 0);
    const [inner] = cut.contours.filter((c) => contourArea(c) < 0);
    for (const mm of size({ contours: [outer] })) expect(mm).toBeCloseTo(50.2, 6);
    for (const mm of size({ contours: [inner] })) expect(mm).toBeCloseTo(4.8, 3);
    // Steiner: the area of a convex part grows by half the kerf times its girth, and a round for
    // its corners; Steiner's formula of convex geometry, from memory.
    expect(contourArea(outer)).toBeCloseTo(2500 + 200 * 0.1 + Math.PI * 0.01, 3);
  });

  it('is that of the process in the layers, smallest contour first', () => {
    const { cut } = burnt(plainPiece('sluice', 50, 50), { ...LASER, kerfMm: 0.3 });
    expect(cut).toHaveLength(1);
    expect(cut[0].closed).toBe(true);
    expect(size({ contours: [cut[0].cubics] })[0]).toBeCloseTo(50.3, 6);
    const sizes = burnt(bridge).cut.map(({ cubics }) => Math.abs(contourArea(cubics)));
    expect(sizes).toHaveLength(4);
    expect(sizes).toEqual(sizes.toSorted((a, b) => a - b));
  });

  it('leaves the card as it is where the beam burns nothing away', () => {
    expect(kerfPath(bridge.card, 0)).toEqual({ cut: bridge.card, slits: [], lost: [] });
  });
});

describe('what the beam leaves', () => {
  const leaf = (long: number, wide: number): Region =>
    regionOf(
      pen(10, 20)
        .curveTo(10 + long / 3, 20 - wide, 10 + (2 * long) / 3, 20 - wide, 10 + long, 20)
        .curveTo(10 + (2 * long) / 3, 20 + wide, 10 + long / 3, 20 + wide, 10, 20)
        .close(),
    );

  it.each<[string, Region]>([
    ['a round arch and a paddle hole', bridge.card],
    ['a gate', gate.card],
    ['a leaf that stands free', leaf(30, 5)],
    ['a thin leaf', leaf(40, 1.4)],
    [
      'spikes of 4, 10, 20 and 60 degrees',
      union([4, 10, 20, 60].map((a, k) => wedge(40 * k, 15, a, 20))),
    ],
    ['a window with upright corners', cardWith(rectangle(10, 10, 30, 20))],
  ])('is the designed card: %s', (_, card) => {
    const { cut, lost } = kerfPath(card, KERF);
    expect(lost).toEqual([]);
    // Right angles in windows keep 0.041 mm.
    expect(outlinesApart(card, cardLeft(cut, KERF)).mm).toBeLessThanOrEqual(0.05);
  });

  it.each([4, 10, 29, 60, 90])('keeps a point of %d degrees as sharp as designed', (angle) => {
    const card = wedge(0, 20, angle, 15);
    const left = cardLeft(kerfPath(card, KERF).cut, KERF);
    expect(furthest(card, left).mm).toBeLessThan(0.01);
  });

  const atTip = (p: Point) => Math.hypot(p.x - 10, p.y - 20) < 0.5;
  const notched = (angle: number) => {
    const card = cardWith(wedge(10, 20, angle, 5));
    const left = cardLeft(kerfPath(card, KERF).cut, KERF);
    return {
      unburnt: furthest(card, left, atTip).mm,
      apart: Math.max(furthest(card, left, atTip).mm, furthest(left, card, atTip).mm),
    };
  };

  it.each([150, 120, 90])(
    'cannot reach into a corner of %d degrees: what it leaves follows from its roundness',
    (angle) => {
      // Half the kerf times 1 / sin(a/2) - 1: derived.
      const expected = 0.1 * (1 / Math.sin((angle * Math.PI) / 360) - 1);
      expect(Math.abs(notched(angle).unburnt - expected)).toBeLessThan(0.006);
    },
  );

  it.each([85, 70, 60, 50, 45, 42])(
    'is within 0.05 mm in a notch of %d degrees, further into which the path goes',
    (angle) => expect(notched(angle).apart).toBeLessThanOrEqual(0.05),
  );

  it.each([35, 30, 25])('is as near as a round beam comes in a notch of %d degrees', (angle) => {
    // As much unburnt at its end as burnt too much of its sides: derived.
    const sine = Math.sin((angle * Math.PI) / 360);
    const expected = (0.1 * (1 - sine)) / (1 + sine);
    expect(Math.abs(notched(angle).apart - expected)).toBeLessThan(0.01);
  });
});

describe('an opening narrower than the beam', () => {
  const burning = (card: Region) => kerfPath(card, KERF);

  it.each([0.05, 0.1, 0.19, 0.2])('of %d mm becomes one slit along its middle', (wide) => {
    const { cut, slits, lost } = burning(cardWith(rectangle(10, 20 - wide / 2, 30, wide)));
    expect(cut.contours.filter((c) => Math.abs(contourArea(c)) > 0.01)).toHaveLength(1);
    expect(lost).toEqual([]);
    expect(slits).toHaveLength(1);
    const { minX, maxX, minY, maxY } = lineBounds(slits[0]);
    // Its burnt ends come to the slot's.
    expect(Math.abs(minX - 10.1)).toBeLessThan(0.02);
    expect(Math.abs(maxX - 39.9)).toBeLessThan(0.02);
    expect(Math.abs(minY - 20)).toBeLessThan(0.01);
    expect(Math.abs(maxY - 20)).toBeLessThan(0.01);
  });

  it('keeps its bend', () => {
    const outer = pen(30 - 20.05, 35).arcAround(30, 35, 150);
    const inner = pen(30 - 19.95, 35)
      .arcAround(30, 35, 150)
      .line().cubics;
    const end = { x: inner[inner.length - 2], y: inner[inner.length - 1] };
    outer.lineTo(end.x, end.y).arcAround(30, 35, -150);
    const slot = regionOf(outer.close());
    const { slits } = burning(cardWith(slot));
    expect(slits).toHaveLength(1);
    expect(lineLength(slits[0])).toBeCloseTo((150 / 180) * Math.PI * 20 - KERF, 1);
    for (let i = 0; i < slits[0].cubics.length; i += 8) {
      const r = Math.hypot(slits[0].cubics[i] - 30, slits[0].cubics[i + 1] - 35);
      expect(Math.abs(r - 20)).toBeLessThan(0.01);
    }
  });

  it('between two wider ones is burnt through from the one to the other', () => {
    const { cut, slits } = burning(
      cardWith(circle(15, 20, 4), circle(40, 20, 4), rectangle(15, 19.95, 25, 0.1)),
    );
    expect(cut.contours).toHaveLength(3);
    expect(slits).toHaveLength(1);
    const { minX, maxX } = lineBounds(slits[0]);
    expect(minX).toBeLessThan(19.1);
    expect(maxX).toBeGreaterThan(35.9);
  });

  it('at the end of a notch is burnt to its tip, where that is long', () => {
    const { slits } = burning(cardWith(wedge(10, 20, 3, 40)));
    expect(slits).toHaveLength(1);
    const { minX, maxX } = lineBounds(slits[0]);
    expect(minX).toBeGreaterThan(10);
    expect(minX).toBeLessThan(10.3);
    // The path of the notch ends where it is as wide as the beam: 3.8 mm from its tip.
    expect(maxX).toBeGreaterThan(13.5);
  });

  it('and too short for a slit is told, with its place and size', () => {
    const card = cardWith(circle(20, 20, 0.08), circle(40, 20, 1));
    const { cut, slits, lost } = burning(card);
    expect(cut.contours).toHaveLength(2);
    expect(slits).toEqual([]);
    expect(lost).toHaveLength(1);
    expect(lost[0].at.x).toBeCloseTo(20, 3);
    expect(lost[0].areaMm2).toBeCloseTo(Math.PI * 0.0064, 4);
  });

  it('is never lost untold: every hole has a path, a slit or a word', () => {
    const holes = [0.05, 0.1, 0.15, 0.2, 0.25, 0.4].flatMap((wide, k) =>
      [0.1, 0.3, 0.6, 2, 8].map((long, j) => rectangle(3 + 10 * j, 3 + 5 * k, long, wide)),
    );
    const { cut, slits, lost } = burning(cardWith(...holes));
    for (const each of holes) {
      const marks = [
        ...cut.contours.filter((c) => contourArea(c) < 0).map((c) => ({ x: c[0], y: c[1] })),
        ...slits.map(({ cubics }) => ({ x: cubics[0], y: cubics[1] })),
        ...lost.map(({ at }) => at),
      ];
      expect(marks.filter((p) => containsPoint(each, p)).length).toBeGreaterThan(0);
    }
  });

  it('is an open cut of its own kind in the layers', () => {
    const piece = { ...plainPiece('weir', 60, 40), card: cardWith(rectangle(10, 20, 30, 0.1)) };
    const { cut } = burnt(piece);
    expect(cut.map(({ closed, kind }) => [closed, kind])).toEqual([
      [false, 'slit'],
      [true, undefined],
    ]);
  });
});
