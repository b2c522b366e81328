import { describe, expect, it } from 'vitest';
import {
  BONDS,
  type Bond,
  type Brick,
  type BrickFormat,
  courseUnits,
  fitsBond,
  fittingQuarters,
  layCourses,
  UK_BRICK,
} from '../../../src/scenery/brick/courses.js';

const IN = 25.4;

/** Middles of the perpends of one course, mm from the left quoin. */
function perpends(bricks: readonly Brick[], course: number): number[] {
  const row = bricks.filter((b) => b.course === course).sort((a, b) => a.x - b.x);
  return row.slice(1).map((b, i) => (row[i].x + row[i].width + b.x) / 2);
}

/** Shortest distance between a perpend of one course and one of the course above. */
function leastLap(bricks: readonly Brick[], courses: number): number {
  let least = Infinity;
  for (let c = 0; c + 1 < courses; c++) {
    for (const a of perpends(bricks, c)) {
      for (const b of perpends(bricks, c + 1)) least = Math.min(least, Math.abs(a - b));
    }
  }
  return least;
}

const of = (bricks: readonly Brick[], kind: Brick['kind'], course?: number) =>
  bricks.filter((b) => b.kind === kind && (course === undefined || b.course === course));

const lengths: Record<Bond, number[]> = {
  stretcher: [8, 10, 24],
  english: [7, 8, 11, 12, 23, 24],
  flemish: [7, 10, 13, 16, 22, 25],
  header: [6, 8, 22],
};

describe('sizes', () => {
  it('lays the brick of BS EN 771-1 and BS 4729 with 10 mm joints', () => {
    const bricks = layCourses({ bond: 'english', quarters: 24, courses: 4 });
    const stretcher = of(bricks, 'stretcher')[0];
    const header = of(bricks, 'header')[0];
    expect([stretcher.width, stretcher.height]).toEqual([215, 65]);
    expect([header.width, header.height]).toEqual([102.5, 65]);
    // The format is modular: L = 2 W + joint = 3 H + 2 joints.
    expect(2 * header.width + UK_BRICK.perpend).toBe(stretcher.width);
    expect(3 * stretcher.height + 2 * UK_BRICK.bed).toBe(stretcher.width);
  });

  it('leaves one joint between neighbours, within a course and between courses', () => {
    for (const bond of BONDS) {
      const bricks = layCourses({ bond, quarters: lengths[bond][1], courses: 5 });
      for (let c = 0; c < 5; c++) {
        const row = bricks.filter((b) => b.course === c).sort((a, b) => a.x - b.x);
        row.slice(1).forEach((b, i) => {
          expect(b.x - row[i].x - row[i].width).toBeCloseTo(10, 9);
        });
        expect(row[0].y).toBeCloseTo(-75 * c - 65, 9);
      }
    }
  });

  it('has 59.26 bricks to the square metre of stretchers, coordinating size 225 x 75', () => {
    // Reference page "Brick dimensions FAQ" (coordinating size 225 x 112.5 x 75; trade: 60 a m2).
    const bricks = layCourses({ bond: 'stretcher', quarters: 4 * 40, courses: 120 });
    const whole = bricks.reduce((sum, b) => sum + (b.width + 10) / 225, 0);
    expect(whole / ((40 * 225 * 120 * 75) / 1e6)).toBeCloseTo(59.259, 3);
  });

  it('shows 17.2 % of joints in a wall of stretchers', () => {
    // Follows from the sizes of BS EN 771-1: 1 - 215 x 65 / (225 x 75).
    const bricks = layCourses({ bond: 'stretcher', quarters: 4, courses: 2 }).filter(
      (b) => b.course === 0,
    );
    const face = bricks.reduce((sum, b) => sum + b.width * b.height, 0);
    expect(1 - face / (225 * 75)).toBeCloseTo(0.17185, 5);
  });

  it('lays the US modular brick: three courses in 8 in, 6.75 bricks to the square foot', () => {
    // Brick Sizes, trade association table, for bricks to ASTM C216: 7 5/8 x 3 5/8 x 2 1/4 in,
    // nominal 8 x 2 2/3 in; the bed that the coursing implies is 8/3 - 2 1/4 = 0.41667 in.
    const modular: BrickFormat = {
      length: 7.625 * IN,
      width: 3.625 * IN,
      height: 2.25 * IN,
      perpend: 0.375 * IN,
      bed: (8 / 3 - 2.25) * IN,
    };
    expect(modular.bed).toBeCloseTo(10.583, 3);
    const bricks = layCourses({ bond: 'stretcher', quarters: 48, courses: 36, format: modular });
    const top = Math.min(...bricks.map((b) => b.y));
    expect(-top + modular.bed).toBeCloseTo(36 * (8 / 3) * IN, 9);
    expect(of(bricks, 'stretcher', 1)[0].x - of(bricks, 'stretcher', 0)[0].x).toBeCloseTo(
      4 * IN,
      9,
    );
    const whole = bricks.reduce((sum, b) => sum + (b.width + modular.perpend) / (8 * IN), 0);
    expect(whole / 64).toBeCloseTo(6.75, 9);
  });

  it('keeps its proportions at 1:50, where a brick is 4.3 x 1.3 mm', () => {
    const scale = (f: BrickFormat, s: number): BrickFormat => ({
      length: f.length * s,
      width: f.width * s,
      height: f.height * s,
      perpend: f.perpend * s,
      bed: f.bed * s,
    });
    const [brick] = layCourses({
      bond: 'stretcher',
      quarters: 8,
      courses: 1,
      format: scale(UK_BRICK, 1 / 50),
    });
    expect(brick.width).toBeCloseTo(4.3, 9);
    expect(brick.height).toBeCloseTo(1.3, 9);
  });
});

describe('bonds', () => {
  it('laps stretchers by half a brick', () => {
    // Reference page "Brick Bonds": each course moves on by half a brick, 112.5 mm.
    const bricks = layCourses({ bond: 'stretcher', quarters: 24, courses: 2 });
    expect(perpends(bricks, 0)[0] - perpends(bricks, 1)[0]).toBeCloseTo(112.5, 9);
    expect(leastLap(bricks, 2)).toBeCloseTo(112.5, 9);
  });

  it('lays English bond in courses of stretchers and of headers, a quarter brick lapped', () => {
    // Reference page "English Bond": alternate courses, 56 mm (quarter brick) lap.
    const bricks = layCourses({ bond: 'english', quarters: 24, courses: 4 });
    expect(of(bricks, 'stretcher', 0).length).toBe(6);
    expect(of(bricks, 'header', 0).length).toBe(0);
    expect(of(bricks, 'stretcher', 1).length).toBe(0);
    expect(leastLap(bricks, 4)).toBeCloseTo(56.25, 9);
    // Past the closer every header stands over the middle of a stretcher or over a joint.
    const middles = of(bricks, 'stretcher', 0).map((b) => b.x + b.width / 2);
    const places = [...middles, ...perpends(bricks, 0)];
    for (const h of of(bricks, 'header', 1).slice(1, -1)) {
      const off = places.map((x) => Math.abs(h.x + h.width / 2 - x));
      expect(Math.min(...off)).toBeLessThan(1e-9);
    }
  });

  it('alternates stretcher and header in Flemish bond, each header over a stretcher', () => {
    // Reference page "Flemish Bond"; numbers follow from the sizes: period 337.5, shift 168.75,
    // perpends at {0, 225} in one course and {56.25, 168.75} in the next.
    const bricks = layCourses({ bond: 'flemish', quarters: 40, courses: 4 });
    const row = bricks.filter((b) => b.course === 0).sort((a, b) => a.x - b.x);
    row.forEach((b, i) => {
      expect(b.kind).toBe(i % 2 === 0 ? 'stretcher' : 'header');
    });
    const modulo = (course: number) =>
      new Set(perpends(bricks, course).map((x) => Math.round(((x + 5) % 337.5) * 100) / 100));
    expect(modulo(0)).toEqual(new Set([225, 0]));
    const inner = perpends(bricks, 1).slice(1, -1);
    expect(new Set(inner.map((x) => Math.round(((x + 5) % 337.5) * 100) / 100))).toEqual(
      new Set([168.75, 56.25]),
    );
    for (const h of of(bricks, 'header', 1).slice(1, -1)) {
      const under = of(bricks, 'stretcher', 0).find((s) => s.x < h.x && h.x < s.x + s.width)!;
      expect(h.x + h.width / 2).toBeCloseTo(under.x + under.width / 2, 9);
    }
    expect(leastLap(bricks, 4)).toBeCloseTo(56.25, 9);
  });

  it('lays headers at 112.5 mm, moved on by a quarter brick', () => {
    // Reference page "Brick bond patterns" (header bond); shift follows from the sizes.
    const bricks = layCourses({ bond: 'header', quarters: 24, courses: 2 });
    const xs = of(bricks, 'header', 0).map((b) => b.x);
    expect(xs[1] - xs[0]).toBeCloseTo(112.5, 9);
    expect(leastLap(bricks, 2)).toBeCloseTo(56.25, 9);
  });

  it('puts a queen closer of 46.25 mm next to the corner header', () => {
    // Use: reference pages "English Bond" and "Flemish Bond"; width follows: (102.5 - 10) / 2.
    for (const bond of ['english', 'flemish'] as const) {
      for (const quarters of lengths[bond]) {
        const bricks = layCourses({ bond, quarters, courses: 2 });
        for (const course of [0, 1]) {
          const row = bricks.filter((b) => b.course === course).sort((a, b) => a.x - b.x);
          const ends = [row, [...row].reverse()];
          for (const [corner, next] of ends) {
            if (corner.kind === 'stretcher') continue;
            expect([corner.kind, next.kind]).toEqual(['header', 'closer']);
            expect(next.width).toBeCloseTo(46.25, 9);
          }
          expect(of(row, 'closer').length).toBeLessThanOrEqual(2);
        }
        // A quoin: courses start alternately with a stretcher and a header.
        const starts = [0, 1].map((c) => bricks.find((b) => b.course === c && b.x === 0)!.kind);
        expect(starts).toEqual(['stretcher', 'header']);
      }
    }
  });

  it('laps every bond at every length it fits by what masonry asks', () => {
    // EN 1996-1-1 8.1.4.1, from memory: units up to 250 mm high lap 0.4 x height, at least 40 mm.
    const wanted = Math.max(0.4 * UK_BRICK.height, 40);
    for (const bond of BONDS) {
      for (const quarters of lengths[bond]) {
        const bricks = layCourses({ bond, quarters, courses: 4 });
        expect(leastLap(bricks, 4)).toBeGreaterThanOrEqual(wanted);
      }
    }
  });

  it('keeps perpends plumb every second course and fills the length exactly', () => {
    for (const bond of BONDS) {
      for (const quarters of lengths[bond]) {
        const bricks = layCourses({ bond, quarters, courses: 4 });
        expect(perpends(bricks, 2)).toEqual(perpends(bricks, 0));
        expect(perpends(bricks, 3)).toEqual(perpends(bricks, 1));
        for (const course of [0, 1]) {
          const ends = bricks.filter((b) => b.course === course).map((b) => b.x + b.width);
          expect(Math.max(...ends)).toBeCloseTo(quarters * 56.25 - 10, 9);
        }
      }
    }
  });
});

describe('lengths that fit', () => {
  it('finds the nearest one', () => {
    expect(fittingQuarters('stretcher', 9.4)).toBe(10);
    expect(fittingQuarters('english', 9.4)).toBe(8);
    expect(fittingQuarters('english', 9.6)).toBe(11);
    expect(fittingQuarters('flemish', 11.4)).toBe(10);
    expect(fittingQuarters('flemish', 1)).toBe(7);
    for (const bond of BONDS) {
      for (let wanted = 1; wanted < 40; wanted += 0.7) {
        expect(fitsBond(bond, fittingQuarters(bond, wanted))).toBe(true);
      }
    }
  });

  it('says so when a length does not fit, and what would', () => {
    expect(() => courseUnits('english', 9, 0)).toThrow(/9 quarter bricks.*english bond; 8 would/);
  });
});
