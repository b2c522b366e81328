import OverlayOp from 'jsts/org/locationtech/jts/operation/overlay/OverlayOp.js';
import { describe, expect, it } from 'vitest';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import {
  linesInside,
  linesOutside,
  outlineLines,
  trimLine,
} from '../../src/geometry/clip-lines.js';
import { containsPoint, distanceTo } from '../../src/geometry/components.js';
import { lineBounds, lineLength, perimeter, pointAt } from '../../src/geometry/measure.js';
import { pen, polygon, polyline, regionOf } from '../../src/geometry/pen.js';
import { circle, rectangle, roundedRectangle } from '../../src/geometry/primitives.js';
import type { Line, Region } from '../../src/geometry/types.js';
import { randomFrom } from '../../src/scenery/random.js';
import { blobs, jtsLine, jtsRegion, wanderer } from './reference.js';

const square = rectangle(0, 0, 10, 10);
const straight = (x0: number, y0: number, x1: number, y1: number): Line =>
  polyline([
    { x: x0, y: y0 },
    { x: x1, y: y1 },
  ]);
const total = (lines: readonly Line[]): number => lines.reduce((sum, l) => sum + lineLength(l), 0);
const ends = ({ cubics: c }: Line): number[] => [c[0], c[1], c[c.length - 2], c[c.length - 1]];
const expectClose = (actual: readonly number[], expected: readonly number[], mm = 1e-6): void => {
  expect(actual.length).toBe(expected.length);
  for (let k = 0; k < actual.length; k++) {
    expect(Math.abs(actual[k] - expected[k])).toBeLessThan(mm);
  }
};

describe('lines inside and outside a region', () => {
  it('are split where they cross its edge', () => {
    const inside = linesInside([straight(-5, 5, 15, 5)], square);
    expect(inside).toHaveLength(1);
    expectClose(ends(inside[0]), [0, 5, 10, 5]);
    const outside = linesOutside([straight(-5, 5, 15, 5)], square);
    expect(outside).toHaveLength(2);
    expectClose(ends(outside[0]), [-5, 5, 0, 5]);
    expectClose(ends(outside[1]), [10, 5, 15, 5]);
  });

  it('pass through corners', () => {
    expectClose(ends(linesInside([straight(-5, -5, 15, 15)], square)[0]), [0, 0, 10, 10]);
    expect(linesInside([straight(-5, 5, 5, -5)], square)).toEqual([]);
  });

  it('come back whole where nothing crosses them', () => {
    const within = straight(2, 2, 8, 7);
    const beyond = straight(12, 2, 18, 7);
    expect(linesInside([within, beyond], square)).toEqual([within]);
    expect(linesOutside([within, beyond], square)).toEqual([beyond]);
    expect(linesOutside([within], { contours: [] })).toEqual([within]);
  });

  it('stay out of holes', () => {
    const ring = subtract(square, [rectangle(4, 4, 2, 2)]);
    const inside = linesInside([straight(-5, 5, 15, 5)], ring);
    expectClose(inside.flatMap(ends), [0, 5, 4, 5, 6, 5, 10, 5]);
  });

  it('start and end on the edge without a crumb', () => {
    expectClose(linesInside([straight(0, 5, 10, 5)], square).flatMap(ends), [0, 5, 10, 5]);
    expect(linesOutside([straight(0, 5, 10, 5)], square)).toEqual([]);
  });

  it('are outside where they run along the edge', () => {
    expect(linesInside([straight(-5, 0, 15, 0)], square)).toEqual([]);
    expect(total(linesOutside([straight(-5, 0, 15, 0)], square))).toBeCloseTo(20, 9);
    const disc = circle(3, 4, 20);
    expect(linesInside(outlineLines(disc), disc)).toEqual([]);
    expect(total(linesOutside(outlineLines(disc), disc))).toBeCloseTo(perimeter(disc), 6);
    // Comes from inside, runs along the right side, goes back in.
    const bracket = polyline([
      { x: 4, y: 3 },
      { x: 10, y: 3 },
      { x: 10, y: 7 },
      { x: 4, y: 7 },
    ]);
    expectClose(linesInside([bracket], square).flatMap(ends), [4, 3, 10, 3, 10, 7, 4, 7]);
  });

  it('keep curves that are cut as curves of one cubic', () => {
    const arch = pen(-5, 8).curveTo(0, 0, 10, 0, 15, 8).line();
    const [part, ...others] = linesInside([arch], square);
    expect(others).toEqual([]);
    expect(part.cubics).toHaveLength(8);
    const middle = pointAt(part.cubics, 0, 0.5);
    expectClose([middle.x, middle.y], [5, 2]);
  });

  it('drop parts shorter than 0.01 mm', () => {
    expect(linesInside([straight(-5, 5, 0.009, 5)], square)).toEqual([]);
    expect(linesInside([straight(-5, 5, 0.011, 5)], square)).toHaveLength(1);
    expect(linesInside([straight(5, 5, 5.009, 5)], square)).toEqual([]);
  });

  it('join a closed line across its start', () => {
    const disc = circle(0, 0, 10);
    // The circle starts at (10, 0), in the middle of the half that stays.
    const half = linesInside(outlineLines(disc), rectangle(0, -20, 40, 40));
    expect(half).toHaveLength(1);
    expectClose(ends(half[0]), [0, -10, 0, 10]);
    for (let i = 8; i < half[0].cubics.length; i++) {
      if (i % 8 < 2) expect(half[0].cubics[i]).toBe(half[0].cubics[i - 2]);
    }
  });
});

describe('lengths in closed form', () => {
  /** A circle of four cubics is too long by less than this share. */
  const CIRCLE_ERROR = 3e-4;

  // Circular segments: CRC Standard Mathematical Tables (from memory).
  it('cut the chord and the arc of a circular segment', () => {
    const disc = circle(0, 0, 10);
    const x = 10 * Math.cos(Math.PI / 4);
    const chord = linesInside([straight(x, -50, x, 50)], disc);
    expect(total(chord)).toBeCloseTo(14.142136, 2);
    const arc = linesInside(outlineLines(disc), rectangle(x, -50, 100, 100));
    expect(Math.abs(total(arc) / 15.707963 - 1)).toBeLessThan(CIRCLE_ERROR);
    const wide = circle(0, 0, 25);
    const wideArc = linesInside(outlineLines(wide), rectangle(15, -50, 100, 100));
    expect(Math.abs(total(wideArc) / 46.364761 - 1)).toBeLessThan(CIRCLE_ERROR);
  });

  // P = w + 2j + pi w / 2, derived: a rectangle with a half circle on it.
  it('measure the round top of a window, 40 wide with jambs of 50', () => {
    const window = regionOf(pen(0, 50).lineTo(0, 0).arcAround(20, 0, 180).lineTo(40, 50).close());
    expect(Math.abs(perimeter(window) / 202.831853 - 1)).toBeLessThan(CIRCLE_ERROR);
    const top = linesInside(outlineLines(window), rectangle(-50, -50, 200, 50));
    expect(Math.abs(total(top) / (Math.PI * 20) - 1)).toBeLessThan(CIRCLE_ERROR);
  });

  // Two-centre arches of span 40: arcs 2 R acos((R - w/2) / R), derived. R = 40 is the
  // equilateral pointed arch with arcs of 2 pi w / 3 = 83.775804.
  it.each([
    [30, 28.284271],
    [40, 34.641016],
    [50, 40],
  ])('measure the arcs of a pointed arch of radius %d', (radius, rise) => {
    const sweep = (Math.acos((radius - 20) / radius) * 180) / Math.PI;
    const arch = regionOf(
      pen(0, 0)
        .arcAround(radius, 0, sweep)
        .arcAround(40 - radius, 0, sweep)
        .close(),
    );
    const arcs = linesOutside(outlineLines(arch), rectangle(-50, 0, 200, 10));
    const inRadians = (sweep * Math.PI) / 180;
    // The springing line runs along the cutter's edge, so that it is outside: 40 mm of it.
    expect(Math.abs((total(arcs) - 40) / (2 * radius * inRadians) - 1)).toBeLessThan(CIRCLE_ERROR);
    if (radius === 40) expect(total(arcs) - 40).toBeCloseTo(83.775804, 1);
    const axis = linesInside([straight(20, -100, 20, 100)], arch);
    expect(Math.abs(total(axis) - rise)).toBeLessThan(CIRCLE_ERROR * radius);
  });
});

describe('seeded clippings', () => {
  const cases = Array.from({ length: 40 }, (_, k) => {
    const random = randomFrom(20, 'clip', k);
    return { k, region: blobs(random), lines: [wanderer(random), wanderer(random)] };
  });
  /** Parts shorter than 0.01 mm may be missing at each crossing. */
  const allowed = (parts: number): number => 0.01 * (parts + 1);

  it('lose nothing: inside and outside make the whole', () => {
    for (const { k, region, lines } of cases) {
      const inside = linesInside(lines, region);
      const outside = linesOutside(lines, region);
      const missing = total(lines) - total(inside) - total(outside);
      expect(Math.abs(missing), `case ${k}`).toBeLessThan(
        allowed(inside.length + outside.length) / 10,
      );
    }
  });

  it('put every point of a part on its side', () => {
    for (const { k, region, lines } of cases) {
      for (const [parts, side] of [
        [linesInside(lines, region), true],
        [linesOutside(lines, region), false],
      ] as const) {
        for (const { cubics } of parts) {
          for (let i = 0; i < cubics.length; i += 8) {
            for (const t of [0.03, 0.31, 0.5, 0.77, 0.98]) {
              const p = pointAt(cubics, i, t);
              if (distanceTo(region, p)!.distanceMm < 0.005) continue;
              expect(containsPoint(region, p), `case ${k} at ${p.x}, ${p.y}`).toBe(side);
            }
          }
        }
      }
    }
  });

  it('end parts on the edge within 1e-6 mm, or where the line itself ends', () => {
    let onEdge = 0;
    for (const { region, lines } of cases) {
      for (const part of linesInside(lines, region)) {
        const [x0, y0, x1, y1] = ends(part);
        for (const [x, y] of [
          [x0, y0],
          [x1, y1],
        ]) {
          const isOwnEnd = lines.some((l) => {
            const e = ends(l);
            return (e[0] === x && e[1] === y) || (e[2] === x && e[3] === y);
          });
          if (isOwnEnd) continue;
          onEdge++;
          expect(distanceTo(region, { x, y })!.distanceMm).toBeLessThan(1e-6);
        }
      }
    }
    expect(onEdge).toBeGreaterThan(100);
  });

  it('agree with JSTS on the length inside', () => {
    for (const { k, region, lines } of cases) {
      const shape = jtsRegion(region);
      for (const line of lines) {
        const parts = linesInside([line], region);
        const reference = OverlayOp.intersection(jtsLine(line), shape).getLength();
        expect(Math.abs(total(parts) - reference), `case ${k}`).toBeLessThan(allowed(parts.length));
      }
    }
  });

  it('do not depend on the line running one way or the other', () => {
    for (const { region, lines } of cases) {
      const back = lines.map(({ cubics: c }) => {
        const turned = new Float64Array(c.length);
        for (let i = 0; i < c.length; i += 2) {
          turned[i] = c[c.length - 2 - i];
          turned[i + 1] = c[c.length - 1 - i];
        }
        return { cubics: turned };
      });
      expect(total(linesInside(back, region))).toBeCloseTo(total(linesInside(lines, region)), 2);
    }
  });
});

describe('outline lines', () => {
  it('are the contours, each back at its start', () => {
    const panel: Region = subtract(rectangle(0, 0, 100, 150), [circle(50, 60, 20)]);
    const lines = outlineLines(panel);
    expect(lines).toHaveLength(2);
    for (const line of lines) {
      const [x0, y0, x1, y1] = ends(line);
      expect([x1, y1]).toEqual([x0, y0]);
    }
    expect(total(lines)).toBeCloseTo(perimeter(panel), 9);
  });
});

describe('trimming a line', () => {
  it('takes the lengths off its two ends', () => {
    const bent = polyline([
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 10, y: 10 },
    ]);
    expectClose(ends(trimLine(bent, 2, 1)!), [2, 0, 10, 9]);
    expectClose(ends(trimLine(bent, 12, 0)!), [10, 2, 10, 10]);
    expectClose(ends(trimLine(bent, 10, 0)!), [10, 0, 10, 10]);
    expect(trimLine(bent, 10, 0)!.cubics).toHaveLength(8);
    expect(trimLine(bent, 0, 0)).toEqual(bent);
    expect(trimLine(bent, -3, 0)).toEqual(bent);
  });

  it('leaves nothing of a line that is too short', () => {
    expect(trimLine(straight(0, 0, 3, 0), 1.5, 1.5)).toBeNull();
    expect(trimLine(straight(0, 0, 3, 0), 5, 0)).toBeNull();
    expect(trimLine({ cubics: new Float64Array() }, 0, 0)).toBeNull();
  });

  it('measures along curves', () => {
    for (let k = 0; k < 20; k++) {
      const line = wanderer(randomFrom(21, 'trim', k));
      const trimmed = trimLine(line, 3, 1.25)!;
      expect(lineLength(trimmed)).toBeCloseTo(lineLength(line) - 4.25, 2);
    }
  });
});

describe('the box of a line', () => {
  it('reaches to the curve, not to its handles', () => {
    const box = lineBounds(pen(0, 0).curveTo(0, -20, 30, -20, 30, 0).line());
    expectClose([box.minX, box.minY, box.maxX, box.maxY], [0, -15, 30, 0], 0.01);
    const rounded = lineBounds(outlineLines(roundedRectangle(5, 6, 30, 20, 4))[0]);
    expectClose([rounded.minX, rounded.minY, rounded.maxX, rounded.maxY], [5, 6, 35, 26]);
  });
});

describe('polygons and lines from a polygon', () => {
  it('clip alike: a comb of lines over a triangle has the area times the pitch', () => {
    const triangle = regionOf(
      polygon([
        { x: 0, y: 0 },
        { x: 30, y: 0 },
        { x: 0, y: 40 },
      ]),
    );
    // 3-4-5 triangle of 600 mm2: level lines every 0.5 mm, by the midpoint rule exact.
    const comb = Array.from({ length: 80 }, (_, k) => straight(-5, 0.25 + k / 2, 50, 0.25 + k / 2));
    expect(total(linesInside(comb, triangle)) / 2).toBeCloseTo(600, 4);
  });
});
