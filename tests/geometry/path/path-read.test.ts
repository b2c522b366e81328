import { describe, expect, it } from 'vitest';
import { chainLength, contourArea, flatten, regionArea } from '../../../src/geometry/measure.js';
import {
  chainPathData,
  linePathData,
  regionPathData,
} from '../../../src/geometry/path/path-data.js';
import { chainsFromPathData } from '../../../src/geometry/path/path-read.js';
import { circle, roundedRectangle } from '../../../src/geometry/primitives.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { blobs, wanderer } from '../reference.js';
import { absoluteForm } from './absolute-form.js';

/** The path written out plainly, closed subpaths first, and the fault. */
async function read(d: string): Promise<{ d: string; fault: string | null }> {
  const { closed, open, fault } = await chainsFromPathData(d);
  const written = [
    ...closed.map((c) => chainPathData(c, true)),
    ...open.map((l) => linePathData(l)),
  ];
  return { d: written.map(absoluteForm).join(' '), fault };
}

// Grammar: SVG 2, section 9.3.9.
describe('the grammar of path data', () => {
  it.each([
    ['M0 0 10 0', 'M0 0L10 0'],
    ['M0 0L10 0', 'M0 0L10 0'],
    ['m10 10 5 0 0 5z', 'M10 10L15 10L15 15Z'],
    ['M10,10h5v5H1V2', 'M10 10L15 10L15 15L1 15L1 2'],
    ['M0 0L1.5.5-2-3e1', 'M0 0L1.5 0.5L-2 -30'],
    ['M.5-.5l+1,+1', 'M0.5 -0.5L1.5 0.5'],
    ['\n M 0 0\tL 1 , 2 ', 'M0 0L1 2'],
    ['M0 0h10v5H0zl5 5', 'M0 0L10 0L10 5L0 5Z M0 0L5 5'],
    ['M0 0L5 5M10 10L20 20', 'M0 0L5 5 M10 10L20 20'],
    ['M0 0Q5 5 10 0', 'M0 0C3.333 3.333 6.667 3.333 10 0'],
    ['M0 0c1 1 2 1 3 0', 'M0 0C1 1 2 1 3 0'],
    ['', ''],
    ['M5 5', ''],
    ['M5 5z', ''],
    ['M5 5L5 5', ''],
  ])('reads %j', async (d, plain) => {
    expect(await read(d)).toEqual({ d: plain, fault: null });
  });

  // Reflected control points, 2 current - old: SVG 2, section 9.5.2.
  it.each([
    ['M0 0C1 1 7 4 10 0S20 5 20 0', 'M0 0C1 1 7 4 10 0C13 -4 20 5 20 0'],
    ['M0 0S5 5 10 0', 'M0 0C0 0 5 5 10 0'],
    ['M0 0Q5 5 10 0T20 0', 'M0 0C3.333 3.333 6.667 3.333 10 0C13.333 -3.333 16.667 -3.333 20 0'],
  ])('reflects the control point in %j', async (d, plain) => {
    expect((await read(d)).d).toBe(plain);
  });

  // Subpaths of no length, which caps make visible: SVG 2, section 13.5.4.
  it.each([
    ['M5 6', []],
    ['M5 6m1 1', []],
    ['M5 6z', [{ x: 5, y: 6 }]],
    ['M5 6L5 6', [{ x: 5, y: 6 }]],
    ['M5 6h0v0z', [{ x: 5, y: 6 }]],
    ['M5 6h1e-12', [{ x: 5, y: 6 }]],
    [
      'M0 0h3M5 6h0M7 8c0 0 0 0 0 0',
      [
        { x: 5, y: 6 },
        { x: 7, y: 8 },
      ],
    ],
  ])('finds the dots of %j', async (d, dots) => {
    expect((await chainsFromPathData(d)).dots).toEqual(dots);
  });

  // Faulty data is drawn up to the first bad segment: SVG 2, section 9.5.4.
  it.each([
    ['M 10,10 L 20,20,30', 'M10 10L20 20', 'at character 19'],
    ['M0 0L5 5 x 3', 'M0 0L5 5', 'at character 10: "x" is no command'],
    ['M0 0,L5 5', '', 'at character 6'],
    ['L0 0 5 5', '', 'at character 1: a path starts with M, not "L"'],
    ['M0 0L5 5A5 5 0 2 1 10 0', 'M0 0L5 5', 'an arc flag (0 or 1) is missing'],
    ['M0 0L5 5L1. 5', 'M0 0L5 5', 'at character 11'],
    ['M0 0L5 5L1e999 5', 'M0 0L5 5', '1e999 is too large'],
  ])('stops at the fault in %j', async (d, plain, fault) => {
    const result = await read(d);
    expect(result.d).toBe(plain);
    expect(result.fault).toContain(fault);
  });
});

// Elliptical arcs and their exceptions: SVG 2, section 9.5.1.
describe('arcs', () => {
  const half = 'M0 0C0 -2.761 2.239 -5 5 -5C7.761 -5 10 -2.761 10 0';

  it.each([
    ['M0 0A5 5 0 0 1 10 0', half],
    ['M0 0a5 5 0 0110 0', half],
    ['M0 0A1 1 0 0 1 10 0', half],
    ['M0 0A-5 5 0 0 1 10 0', half],
    ['M0 0A0 5 0 0 1 10 0', 'M0 0L10 0'],
    ['M0 0A5 5 0 0 1 0 0L3 3', 'M0 0L3 3'],
  ])('reads %j', async (d, plain) => {
    expect((await read(d)).d).toBe(plain);
  });

  // Circular segment of radius 10 over 90 degrees, arc 15.707963 and area 28.539816: CRC Standard
  // Mathematical Tables (from memory).
  it('have the length and area of a circular segment', async () => {
    const { closed } = await chainsFromPathData('M10 0A10 10 0 0 1 0 10z');
    expect(closed).toHaveLength(1);
    expect(chainLength(closed[0]) - Math.hypot(10, 10)).toBeCloseTo(15.707963, 2);
    expect(contourArea(closed[0])).toBeCloseTo(28.539816, 1);
  });

  // Perimeter of the ellipse 30 x 20: exact by quadrature, 158.654396.
  it('make an ellipse, turned or not', async () => {
    for (const turn of [0, 30]) {
      const dx = 60 * Math.cos((turn * Math.PI) / 180);
      const dy = 60 * Math.sin((turn * Math.PI) / 180);
      const arcs = `M0 0a30 20 ${turn} 1 1 ${dx} ${dy}a30 20 ${turn} 1 1 ${-dx} ${-dy}z`;
      const { closed } = await chainsFromPathData(arcs);
      expect(chainLength(closed[0])).toBeCloseTo(158.654396, 1);
      expect(Math.abs(contourArea(closed[0]) / (600 * Math.PI) - 1)).toBeLessThan(6e-4);
    }
  });

  it('take the small or the large way, one way round or the other', async () => {
    const lengths = [];
    for (const flags of ['0 0', '0 1', '1 0', '1 1']) {
      const { open } = await chainsFromPathData(`M0 0A10 10 0 ${flags} 10 10`);
      const points = flatten(open[0].cubics, 0.01);
      const middle = points[points.length >> 1];
      lengths.push({
        length: Math.round(chainLength(open[0].cubics) * 10) / 10,
        right: middle.x > middle.y,
      });
    }
    const [quarter, rest] = [15.7, 47.1];
    expect(lengths).toEqual([
      { length: quarter, right: false },
      { length: quarter, right: true },
      { length: rest, right: false },
      { length: rest, right: true },
    ]);
  });
});

describe('reading what we write', () => {
  const shapes = [
    circle(30, 40, 12.5),
    roundedRectangle(3, 4, 50, 70, 6),
    ...Array.from({ length: 6 }, (_, k) => blobs(randomFrom(50, 'round trip', k))),
  ];

  it('gives regions back to the last written digit', async () => {
    for (const region of shapes) {
      const d = regionPathData(region, 4);
      const { closed, open, fault } = await chainsFromPathData(d);
      expect([open, fault]).toEqual([[], null]);
      expect(regionPathData({ contours: closed }, 4)).toBe(d);
      expect(regionArea({ contours: closed })).toBeCloseTo(regionArea(region), 1);
    }
  });

  it('gives lines back', async () => {
    for (let k = 0; k < 6; k++) {
      const line = wanderer(randomFrom(51, 'round trip', k));
      const { closed, open } = await chainsFromPathData(linePathData(line, 6));
      expect(closed).toEqual([]);
      expect(open).toHaveLength(1);
      expect(linePathData(open[0], 6)).toBe(linePathData(line, 6));
    }
  });

  it('makes chains without gaps', async () => {
    for (const region of shapes) {
      for (const c of (await chainsFromPathData(regionPathData(region))).closed) {
        for (let i = 0; i < c.length; i += 8) {
          const next = (i + 8) % c.length;
          expect([c[next], c[next + 1]]).toEqual([c[i + 6], c[i + 7]]);
        }
      }
    }
  });
});
