import { describe, expect, it } from 'vitest';
import { pen, polyline } from '../../src/geometry/pen.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import type { Cubics } from '../../src/geometry/types.js';
import type { Motion } from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { cornerSpeed, moveTime, pathTime, timeOf } from '../../src/process/time.js';

const ACCELERATION = 500;
const motion = (cornerMm: number): Motion => ({
  travelMmS: 100,
  accelerationMmS2: ACCELERATION,
  liftS: 0.1,
  cornerMm,
  stopS: 60,
});
const line = (...points: [number, number][]): Cubics =>
  polyline(points.map(([x, y]) => ({ x, y }))).cubics;
const seconds = (cubics: Cubics, speed: number, cornerMm = 0) =>
  pathTime({ cubics }, speed, motion(cornerMm)).seconds;

describe('moveTime', () => {
  // Uniform acceleration, from any text on mechanics: v = a t, s = a t^2 / 2.
  it('speeds up, goes evenly and slows down on a long way', () => {
    expect(moveTime(100, 50, 500)).toBeCloseTo(50 / 500 + 100 / 50, 9);
  });

  it('never comes up to speed on a short way', () => {
    // 5 mm is what it takes to reach 50 mm/s and stop again at 500 mm/s2.
    expect(moveTime(5, 50, 500)).toBeCloseTo(2 * Math.sqrt(5 / 500), 9);
    expect(moveTime(1.2, 50, 500)).toBeCloseTo(2 * Math.sqrt(1.2 / 500), 9);
    expect(moveTime(0, 50, 500)).toBe(0);
  });
});

describe('pathTime', () => {
  it('runs a straight line like a move, in however many parts it is drawn', () => {
    const whole = seconds(line([0, 0], [60, 80]), 40);
    expect(whole).toBeCloseTo(40 / ACCELERATION + 100 / 40, 9);
    expect(seconds(line([0, 0], [6, 8], [21, 28], [60, 80]), 40)).toBeCloseTo(whole, 6);
  });

  it('stops at each corner of a square when none may be rounded', () => {
    const [square] = rectangle(0, 0, 30, 30).contours;
    const { seconds: s, corners } = pathTime({ cubics: square }, 40, motion(0));
    expect(s).toBeCloseTo(4 * (40 / ACCELERATION + 30 / 40), 9);
    // The start is no corner that is gone through.
    expect(corners).toBe(3);
  });

  it('goes through corners the faster the more they may be rounded', () => {
    const [square] = rectangle(0, 0, 30, 30).contours;
    const times = [0, 0.01, 0.05, 0.2].map((mm) => seconds(square, 40, mm));
    for (let k = 1; k < times.length; k++) expect(times[k]).toBeLessThan(times[k - 1]);
  });

  it('keeps to one speed round a circle', () => {
    // v^2 / r = a on a circle of any text on mechanics.
    const radius = 4;
    const v = Math.sqrt(ACCELERATION * radius);
    const expected = v / ACCELERATION + (2 * Math.PI * radius) / v;
    const [ring] = circle(10, 10, radius).contours;
    expect(seconds(ring, 200, 0.02) / expected).toBeCloseTo(1, 2);
    expect(pathTime({ cubics: ring }, 200, motion(0.02)).corners).toBe(0);
    // Where the tool is slower than that, the circle does not matter.
    expect(seconds(ring, 20, 0.02)).toBeCloseTo(20 / ACCELERATION + (2 * Math.PI * radius) / 20, 2);
  });

  it('is never slower at a higher speed, nor faster than the speed allows', () => {
    const cubics = pen(0, 0).lineTo(20, 0).arcAround(20, 6, 180).lineTo(3, 12).close();
    let last = Infinity;
    for (const speed of [5, 10, 20, 40, 80, 160, 320]) {
      const now = seconds(cubics, speed, 0.02);
      expect(now).toBeLessThanOrEqual(last + 1e-9);
      expect(now).toBeGreaterThan((20 + 6 * Math.PI + 17 + Math.hypot(3, 12)) / speed);
      last = now;
    }
  });

  it('turns round on the spot without going on', () => {
    const there = 40 / ACCELERATION + 50 / 40;
    expect(seconds(line([0, 0], [50, 0], [0, 0]), 40, 0.05)).toBeCloseTo(2 * there, 9);
  });
});

describe('cornerSpeed', () => {
  it('is that of the circle which touches both sides and passes the corner so far off', () => {
    // Right angle: the circle in it passes the corner at r (sqrt 2 - 1), so r = d / (sqrt 2 - 1).
    const r = 0.05 / (Math.SQRT2 - 1);
    expect(cornerSpeed(Math.PI / 2, 800, 0.05)).toBeCloseTo(Math.sqrt(800 * r), 9);
    expect(cornerSpeed(Math.PI, 800, 0.05)).toBeCloseTo(0, 6);
    expect(cornerSpeed(0, 800, 0.05)).toBe(Infinity);
  });
});

describe('timeOf', () => {
  const process = {
    ...STARTING.knife,
    motion: motion(0),
    operations: {
      ...STARTING.knife.operations,
      cut: { passes: 1, speedMmS: 40, stroke: null },
    },
  };
  const mark = (cubics: Cubics) => ({ cubics, closed: false, piece: 'gate', copy: 1 });
  const marks = [mark(line([10, 0], [50, 0])), mark(line([50, 30], [10, 30]))];

  it('adds up lines, travel from where the head waits, and lifts', () => {
    const [step] = timeOf([{ operation: 'cut', marks }], process, { x: 0, y: 0 });
    const lines = 2 * (40 / ACCELERATION + 40 / 40);
    const travel = moveTime(10, 100, ACCELERATION) + moveTime(30, 100, ACCELERATION);
    expect(step).toMatchObject({ operation: 'cut', lengthMm: 80, travelMm: 40, paths: 2 });
    expect(step.seconds).toBeCloseTo(lines + travel + 2 * 0.1, 9);
  });

  it('does all of it again in each pass, but tells the length of one', () => {
    const twice = {
      ...process,
      operations: { ...process.operations, cut: { ...process.operations.cut, passes: 2 } },
    };
    const steps = [{ operation: 'cut', marks }] as const;
    const [once] = timeOf(steps, process, { x: 0, y: 0 });
    const [both] = timeOf(steps, twice, { x: 0, y: 0 });
    expect(both.seconds).toBeCloseTo(2 * once.seconds, 9);
    expect(both).toMatchObject({ passes: 2, lengthMm: 80, travelMm: 40 });
  });
});
