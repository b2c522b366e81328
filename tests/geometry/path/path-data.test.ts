import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { union } from '../../../src/geometry/boolean/boolean.js';
import { isClosed } from '../../../src/geometry/chain.js';
import { flatten, regionArea } from '../../../src/geometry/measure.js';
import {
  chainPathData,
  linePathData,
  regionPathData,
} from '../../../src/geometry/path/path-data.js';
import { readSegments } from '../../../src/geometry/path/path-grammar.js';
import { chainsFromPathData } from '../../../src/geometry/path/path-read.js';
import { pen, polygon, polyline } from '../../../src/geometry/pen.js';
import { circle, roundedRectangle } from '../../../src/geometry/primitives.js';
import type { Cubics, Point, Region } from '../../../src/geometry/types.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { blobs, wanderer } from '../reference.js';
import { foldedChain, scribble, seeded, strewnLeaves } from '../shapes.js';
import { absoluteForm } from './absolute-form.js';

/** A number off the paths' grid, as drawn coordinates are. */
const shifted = (c: Cubics, by: number): Cubics => c.map((v) => v + by);

const chains: readonly (readonly [name: string, chain: Cubics])[] = [
  ...Array.from({ length: 20 }, (_, k): Region => blobs(randomFrom(60, 'path data', k))).flatMap(
    (region, k) => region.contours.map((c, j) => [`blob ${k}.${j}`, c] as const),
  ),
  ...Array.from({ length: 20 }, (_, k) => {
    const random = seeded(100 + k);
    return [`scribble ${k}`, shifted(scribble(random), 0.0005 * k - 30)] as const;
  }),
  ...Array.from({ length: 20 }, (_, k) => {
    const random = seeded(200 + k);
    return [`folded ${k}`, shifted(foldedChain(random), k / 7 - 12)] as const;
  }),
  ...union(strewnLeaves(150, 7)).contours.map((c, k) => [`leaves ${k}`, c] as const),
];

const lines = Array.from(
  { length: 20 },
  (_, k) => [`line ${k}`, wanderer(randomFrom(61, 'path data', k)).cubics] as const,
);

describe('the shortest form', () => {
  const line = (...numbers: number[]): string => {
    const points: Point[] = [];
    for (let k = 0; k < numbers.length; k += 2) points.push({ x: numbers[k], y: numbers[k + 1] });
    return linePathData(polyline(points));
  };

  it.each([
    ['level', [10, 20, 30, 20], 'M10 20h20'],
    ['plumb', [10, 20, 10, 5], 'M10 20V5'],
    ['slanting', [100, 100, 101, 102], 'M100 100l1 2'],
    ['back to the origin', [100, 100.125, 0, 0], 'M100 100.125L0 0'],
    ['repeated', [100, 100, 101, 102, 102, 101], 'M100 100l1 2 1-1'],
    ['without leading zeros', [0.5, 0.25, -0.5, -0.25], 'M.5 .25l-1-.5'],
    ['rounded to minus zero', [-0.0001, 0, 5, 5], 'M0 0l5 5'],
    ['whole', [1200, 1000, 1300, 2500], 'M1200 1000l100 1500'],
  ])('of a line: %s', (_, numbers, d) => {
    expect(line(...numbers)).toBe(d);
  });

  it('of curves: reflected handles left out, Z for the straight way home', () => {
    expect(
      linePathData(pen(0, 0).curveTo(1, 1, 2, 1, 3, 0).curveTo(4, -1, 5, -1, 6, 0).line()),
    ).toBe('M0 0c1 1 2 1 3 0s2-1 3 0');
    // After a line nothing is reflected, even where a reader's rule would fit.
    expect(linePathData(pen(0, 0).lineTo(3, 0).curveTo(3, 0, 5, 4, 6, 0).line())).toBe(
      'M0 0h3c0 0 2 4 3 0',
    );
    const half = pen(0, 0).lineTo(4, 0).curveTo(4, 3, 0, 3, 0, 0).close();
    expect(chainPathData(half, true)).toBe('M0 0h4c0 3-4 3-4 0Z');
    const square = roundedRectangle(10, 10, 5, 5, 0).contours[0];
    expect(chainPathData(square, true)).toBe('M10 10h5v5h-5Z');
  });

  it('keeps as many places as asked', () => {
    const third = polyline([
      { x: 1 / 3, y: 0 },
      { x: 2 / 3, y: 1 / 7 },
    ]);
    expect(linePathData(third, 0)).toBe('M0 0h1');
    expect(linePathData(third, 2)).toBe('M.33 0l.34 .14');
    expect(linePathData(third, 6)).toBe('M.333333 0l.333334 .142857');
  });
});

describe('what is rounded away', () => {
  it('gives no text', () => {
    expect(chainPathData(circle(20, 20, 0.0002).contours[0], true)).toBe('');
    expect(chainPathData(new Float64Array(0), true)).toBe('');
    expect(regionPathData({ contours: [circle(20.0001, 5, 0.0003).contours[0]] })).toBe('');
    expect(linePathData(pen(1, 1).lineTo(1.0002, 1.0002).line())).toBe('');
  });

  it('leaves out pieces that come to a point, overshooting handles or not', () => {
    const c = pen(0, 0)
      .lineTo(5, 0)
      .curveTo(5.0004, 0.0003, 5.0003, 0.0001, 5.0002, 0)
      .lineTo(5.0002, 5)
      .close();
    expect(chainPathData(c, true)).toBe('M0 0h5v5Z');
  });

  it('keeps a loop that starts and ends in one place', () => {
    const loop = pen(3, 3).curveTo(6, 3, 3, 6, 3, 3).line();
    expect(linePathData(loop)).toBe('M3 3c3 0 0 3 0 0');
    expect(linePathData(pen(3, 3).curveTo(3.01, 3, 3, 3.01, 3, 3).line())).not.toBe('');
  });

  it('keeps a contour that is flattened to a line', () => {
    const sliver = polygon([
      { x: 0, y: 0 },
      { x: 8, y: 0.0001 },
      { x: 4, y: 0.0002 },
    ]);
    expect(chainPathData(sliver, true)).toBe('M0 0h8-4Z');
  });
});

describe('sound path data', () => {
  const all = [...chains, ...lines].flatMap(([name, c]) =>
    [0, 2, 3, 4, 6].map((decimals) => [name, decimals, chainPathData(c, isClosed(c), decimals)]),
  ) as [string, number, string][];

  it('is in the grammar of SVG 2, section 9.3.9, and stricter', () => {
    for (const [name, decimals, d] of all) {
      const number = String.raw`-?(?:\d+|\d*\.\d{1,${Math.max(1, decimals)}})`;
      // Each number after the first of a command stands behind a space or is negative.
      const apart = new RegExp(
        `^M${number}(?: |(?=-))${number}(?:[LlHhVvCcSs]${number}(?:(?:(?=-)| )${number})*)*Z?$`,
      );
      expect(d === '' || apart.test(d), `${name}: ${d}`).toBe(true);
      expect(d).not.toMatch(/e|-0(?![\d.])|(^|[^\d.])0\.|\.\d*0(?!\d)|\.(?!\d)|,|\+/);
      expect(d).not.toMatch(/\.\d+\./);
    }
  });

  it('has S only after C or S', () => {
    for (const [, , d] of all) expect(d.replace(/[^A-Za-z]/g, '')).not.toMatch(/[^CcSs][Ss]/);
  });

  it('reads without fault, and each chain stands alone', () => {
    for (const [, , d] of all) expect(readSegments(d).fault).toBeNull();
    const { contours } = union(strewnLeaves(40, 3));
    const one = regionPathData({ contours });
    expect(one.match(/M/g)).toHaveLength(contours.length);
    expect(one).toBe(contours.map((c) => chainPathData(c, true)).join(''));
  });

  it('is never longer than all absolute, and is much shorter', () => {
    let [short, long] = [0, 0];
    for (const [, c] of chains) {
      const d = chainPathData(c, true);
      expect(d.length).toBeLessThanOrEqual(absoluteForm(d).length);
      short += d.length;
      long += absoluteForm(d).length;
    }
    expect(short).toBeLessThan(0.85 * long);
  });
});

describe('reading back and writing again', () => {
  it.each([0, 2, 3, 5])('gives the same text for five rounds at %i places', async (decimals) => {
    for (const [name, c] of chains) {
      const first = chainPathData(c, true, decimals);
      for (let round = 0, d = first; round < 5 && d !== ''; round++) {
        const { closed, open, fault } = await chainsFromPathData(d);
        expect([closed.length, open.length, fault], name).toEqual([1, 0, null]);
        d = chainPathData(closed[0], true, decimals);
        expect(d, name).toBe(first);
      }
    }
  });

  it('gives the same text for open lines', async () => {
    for (const [name, c] of lines) {
      const first = linePathData({ cubics: c });
      for (let round = 0, d = first; round < 5; round++) {
        d = linePathData((await chainsFromPathData(d)).open[0]);
        expect(d, name).toBe(first);
      }
    }
  });

  it('moves no point by more than rounding does, however long the chain', async () => {
    // 2,000 relative steps of a third of a millimetre, none of which is whole in any place.
    const points = Array.from({ length: 2001 }, (_, k) => ({ x: k / 3, y: Math.sin(k / 50) / 7 }));
    const { open } = await chainsFromPathData(linePathData(polyline(points)));
    const back = flatten(open[0].cubics, 1);
    expect(back).toHaveLength(points.length);
    back.forEach((p, k) => {
      expect(Math.abs(p.x - points[k].x)).toBeLessThan(0.000501);
      expect(Math.abs(p.y - points[k].y)).toBeLessThan(0.000501);
    });
  });

  it('keeps areas, starts and order', async () => {
    const region = union(strewnLeaves(80, 5));
    const { closed } = await chainsFromPathData(regionPathData(region));
    const written = region.contours.filter((c) => chainPathData(c, true) !== '');
    expect(closed).toHaveLength(written.length);
    closed.forEach((c, k) => {
      expect(Math.hypot(c[0] - written[k][0], c[1] - written[k][1])).toBeLessThan(0.00071);
    });
    expect(regionArea({ contours: closed })).toBeCloseTo(regionArea(region), 1);
  });
});

describe('another reader', () => {
  it('draws the same picture of the short form as of the absolute one', () => {
    // resvg, a renderer of SVG, reads both.
    const region = union(strewnLeaves(120, 11));
    const d = regionPathData(region);
    const picture = (data: string): Buffer =>
      new Resvg(
        `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-10 -10 150 90" width="1500"><path fill-rule="evenodd" d="${data}"/></svg>`,
      )
        .render()
        .asPng();
    const long = d.split(/(?=M)/).map(absoluteForm).join('');
    expect(long.length).toBeGreaterThan(d.length);
    expect(picture(d).equals(picture(long))).toBe(true);
    expect(picture(d).equals(picture(d.slice(0, d.length / 2)))).toBe(false);
  });
});
