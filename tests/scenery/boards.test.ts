import { describe, expect, it } from 'vitest';
import { boundsOf, lineLength } from '../../src/geometry/measure.js';
import { EMPTY_REGION, type Line } from '../../src/geometry/types.js';
import { boardsOver, studSpacing } from '../../src/scenery/boards/layout.js';
import { boards } from '../../src/scenery/boards.js';
import { randomFrom } from '../../src/scenery/random.js';
import { clearance, grown, plotWith } from './plots.js';
import { expectSeeded } from './standing.js';

const size = ({ cubics }: Line) => {
  const b = boundsOf([cubics]);
  return { width: b.maxX - b.minX, height: b.maxY - b.minY };
};
const isRound = ({ cubics }: Line) =>
  Math.hypot(cubics[0] - cubics.at(-2)!, cubics[1] - cubics.at(-1)!) < 1e-6;

describe('boards as they are laid', () => {
  it('join end to end on a stud, and not on one that the next rows join on', () => {
    // Common practice, no source: at least three boards between two joints on one stud.
    for (let seed = 0; seed < 20; seed++) {
      const box = { minX: -70, maxX: 70, minY: -165, maxY: 35 };
      const laid = boardsOver(box, 7, randomFrom(seed));
      const stud = studSpacing(7);
      laid.forEach((board, i) => {
        for (const x of board.ends) {
          expect(Math.abs(x / stud - Math.round(x / stud))).toBeLessThan(1e-9);
          for (const other of laid.slice(i + 1, i + 4)) expect(other.ends).not.toContain(x);
        }
      });
      expect(laid.filter((b) => b.ends.length > 0).length).toBeGreaterThan(20);
    }
  });

  it('lie side by side without a gap', () => {
    const laid = boardsOver({ minX: -70, maxX: 70, minY: -165, maxY: 35 }, 7, randomFrom(2));
    laid.slice(1).forEach((b, i) => {
      expect(b.y0).toBeCloseTo(laid[i].y1, 9);
    });
    expect(laid[0].y0).toBeLessThanOrEqual(-165);
    expect(laid.at(-1)!.y1).toBeGreaterThanOrEqual(35);
  });
});

describe('boards', () => {
  it('adds no card, stops short of every cut edge and makes no hinge', () => {
    // 1.5 to 2 mm: common practice, no source.
    for (const window of ['rectangle', 'arch', 'circle', 'none'] as const) {
      const plot = plotWith(window);
      for (const run of ['upright', 'level']) {
        const { body, scores } = grown(boards, plot, { run, coverage: 1, grain: 1 });
        expect(body).toEqual(EMPTY_REGION);
        expect(scores.length).toBeGreaterThan(100);
        expect(Math.max(...scores.map(lineLength))).toBeLessThan(42);
        expect(clearance(scores, plot.frame.card)).toBeGreaterThanOrEqual(1.5);
      }
    }
  });

  it('draws the same bytes for one seed and others for another', () => {
    expectSeeded(boards, plotWith('rectangle'));
  });

  it('runs the way it is told', () => {
    const along = (run: string) => {
      const { scores } = grown(boards, plotWith('none'), { run, nails: false });
      const sum = (f: (l: Line) => number) => scores.reduce((s, l) => s + f(l), 0);
      return sum((l) => size(l).height) / sum((l) => size(l).width);
    };
    expect(along('upright')).toBeGreaterThan(4);
    expect(along('level')).toBeLessThan(0.25);
  });

  it('has nails, grain and wider boards where they are asked for', () => {
    const scores = (given: Record<string, number | boolean>) =>
      grown(boards, plotWith('none'), given).scores;
    const rings = (given: Record<string, number | boolean>) => scores(given).filter(isRound).length;
    expect(rings({ grain: 0, nails: false })).toBe(0);
    expect(rings({ grain: 0, nails: true })).toBeGreaterThan(30);
    expect(rings({ grain: 1, nails: false })).toBeGreaterThan(5);
    expect(scores({ grain: 1 }).length).toBeGreaterThan(1.3 * scores({ grain: 0 }).length);
    const long = (board: number) =>
      scores({ board, grain: 0, nails: false }).filter((l) => lineLength(l) > 12).length;
    expect(long(5)).toBeGreaterThan(1.5 * long(12));
  });

  it('draws more with more coverage', () => {
    const drawn = (coverage: number) => grown(boards, plotWith('arch'), { coverage }).scores.length;
    expect(drawn(0.9)).toBeGreaterThan(1.5 * drawn(0.4));
  });

  it('mitres the casing at the corners of the window', () => {
    const sloping = (window: 'rectangle' | 'circle') =>
      grown(boards, plotWith(window), { coverage: 0.1, grain: 0 }).scores.filter((l) => {
        const { width, height } = size(l);
        return l.cubics.length === 8 && Math.abs(width - height) < 0.1 && width > 1;
      }).length;
    expect(sloping('rectangle')).toBe(4);
    expect(sloping('circle')).toBe(0);
  });
});
