import { describe, expect, it } from 'vitest';
import { lineLength } from '../../src/geometry/measure.js';
import { EMPTY_REGION, type Line } from '../../src/geometry/types.js';
import { groundOf, jointsOf, KINDS } from '../../src/scenery/paving/rows.js';
import { paving } from '../../src/scenery/paving.js';
import { randomFrom } from '../../src/scenery/random.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const ends = ({ cubics: c }: Line) => {
  const n = c.length;
  return c[1] < c[n - 1]
    ? { far: { x: c[0], y: c[1] }, near: { x: c[n - 2], y: c[n - 1] } }
    : { far: { x: c[n - 2], y: c[n - 1] }, near: { x: c[0], y: c[1] } };
};
const isCross = (line: Line) => {
  const { far, near } = ends(line);
  return near.y - far.y > 1;
};

describe('ground in perspective', () => {
  it('has rows as high as the product of the scales of both their edges', () => {
    // A plane seen in perspective: y = c / z, so that y1 - y0 = (z0 - z1) y0 y1 / c.
    for (const depth of [0.3, 0.6, 1]) {
      const { rows, scaleAt } = groundOf(35, 5, depth);
      expect(rows.length).toBeGreaterThan(6);
      const unit = (y0: number, y1: number) => (y1 - y0) / (scaleAt(y0) * scaleAt(y1));
      for (const { y0, y1 } of rows) {
        expect(unit(y0, y1)).toBeCloseTo(unit(rows[0].y0, rows[0].y1), 6);
      }
      expect(rows[0].y1 - rows[0].y0).toBeCloseTo(5, 6);
      expect(scaleAt(35)).toBeCloseTo(1, 9);
      expect(rows[rows.length - 1].y1 - rows[rows.length - 1].y0).toBeGreaterThan(1);
    }
  });

  it('is seen from above at depth 0', () => {
    const { rows, scaleAt } = groundOf(35, 5, 0);
    expect(rows.length).toBe(7);
    expect(scaleAt(3)).toBe(1);
  });

  it('has no joint in line with one of the row before', () => {
    // Common practice, no source: broken joints, at least 0.3 of a row's depth.
    for (const kind of KINDS) {
      for (let seed = 0; seed < 10; seed++) {
        const rows = jointsOf(kind, 8, 90, 5, randomFrom(seed));
        rows.slice(1).forEach((row, i) => {
          for (const x of row) {
            for (const b of rows[i]) expect(Math.abs(b - x)).toBeGreaterThan(0.299 * 5);
          }
        });
      }
    }
  });
});

describe('paving', () => {
  it('lies under the window, clear of every cut edge', () => {
    // 1.5 to 2 mm: common practice, no source.
    for (const window of ['rectangle', 'arch', 'circle', 'none'] as const) {
      for (const kind of KINDS) {
        const plot = plotWith(window);
        const { body, scores } = grown(paving, plot, { kind, coverage: 1 });
        expect(body).toEqual(EMPTY_REGION);
        expect(scores.length).toBeGreaterThan(40);
        expect(Math.max(...scores.map(lineLength))).toBeLessThan(42);
        expect(clearance(scores, plot.frame.card)).toBeGreaterThanOrEqual(1.5);
        for (const line of scores) expect(ends(line).far.y).toBeGreaterThan(-0.2);
      }
    }
  });

  it('lets its joints run to one point over the window', () => {
    const { scores } = grown(paving, plotWith('rectangle'), { coverage: 1, depth: 0.8 });
    const cross = scores.filter(isCross).map(ends);
    const aside = cross.filter(({ near }) => Math.abs(near.x) > 15);
    expect(aside.length).toBeGreaterThan(60);
    for (const { far, near } of aside) {
      expect(Math.sign(near.x) * (near.x - far.x)).toBeGreaterThan(0);
    }
    const plain = grown(paving, plotWith('rectangle'), { coverage: 1, depth: 0 });
    for (const { far, near } of plain.scores.filter(isCross).map(ends)) {
      expect(Math.abs(near.x - far.x)).toBeLessThan(0.2);
    }
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(paving, plotWith('rectangle'));
  });

  it('has larger flags than setts, round cobbles, and fewer stones in deeper rows', () => {
    const scores = (given: Record<string, string | number>) =>
      grown(paving, plotWith('rectangle'), { coverage: 1, ...given }).scores;
    expect(scores({ kind: 'setts' }).length).toBeGreaterThan(
      1.5 * scores({ kind: 'flags' }).length,
    );
    const closed = ({ cubics: c }: Line) => Math.hypot(c[0] - c.at(-2)!, c[1] - c.at(-1)!) < 1e-6;
    expect(scores({ kind: 'cobbles' }).every(closed)).toBe(true);
    expect(scores({ row: 3.5 }).length).toBeGreaterThan(1.4 * scores({ row: 8 }).length);
    expect(scores({}).length).toBeGreaterThan(1.4 * scores({ coverage: 0.4 }).length);
  });
});
