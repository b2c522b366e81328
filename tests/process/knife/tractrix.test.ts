import { describe, expect, it } from 'vitest';
import { polyline } from '../../../src/geometry/pen.js';
import type { Point } from '../../../src/geometry/types.js';
import { tipTrace } from '../../../src/process/knife/trace.js';
import {
  angleAfter,
  largestLateral,
  lateralAfter,
  settlingTravel,
} from '../../../src/process/knife/tractrix.js';
import { fineCircle } from '../../geometry/shapes.js';

const rad = (deg: number): number => (deg * Math.PI) / 180;

/** Tractrix in curve tables, from memory; checked by integration. Offset 0.25 mm. */
const AFTER = [
  { turnDeg: 90, travelMm: 0.25, lateralMm: 0.162014 },
  { turnDeg: 90, travelMm: 0.5, lateralMm: 0.066451 },
  { turnDeg: 90, travelMm: 1, lateralMm: 0.009155 },
  { turnDeg: 150, travelMm: 0.5, lateralMm: 0.20121 },
];

describe('the closed forms of the tractrix', () => {
  it.each(AFTER)('has the tip $lateralMm mm aside, $travelMm mm after $turnDeg degrees', (row) => {
    expect(lateralAfter(rad(row.turnDeg), row.travelMm, 0.25)).toBeCloseTo(row.lateralMm, 6);
  });

  it('knows the blade to stand 40.3951 degrees off its run one offset after a right angle', () => {
    // Tractrix in curve tables, from memory.
    expect((angleAfter(rad(90), 0.25, 0.25) * 180) / Math.PI).toBeCloseTo(40.3951, 4);
  });

  it('needs 0.57311 mm to come back within 0.05 mm after a right angle', () => {
    // s = -r ln(tan(asin(y/r)/2) / tan(a/2)), derived from the tractrix.
    expect(settlingTravel(rad(90), 0.25, 0.05)).toBeCloseTo(0.57311, 5);
    expect(lateralAfter(rad(90), 0.57311, 0.25)).toBeCloseTo(0.05, 5);
  });

  it('needs no travel after a turn that never takes the tip so far, and no end of it straight back', () => {
    expect(settlingTravel(rad(10), 0.25, 0.05)).toBe(0);
    expect(settlingTravel(rad(120), 0.04, 0.05)).toBe(0);
    expect(settlingTravel(Math.PI, 0.25, 0.05)).toBe(Infinity);
  });

  it('takes the tip aside by at most one offset', () => {
    for (const turnDeg of [30, 60, 90, 135, 170]) {
      const most = Math.max(
        ...Array.from({ length: 4000 }, (_, k) => lateralAfter(rad(turnDeg), k * 1e-3, 0.4)),
      );
      expect(largestLateral(rad(turnDeg), 0.4)).toBeCloseTo(most, 5);
    }
  });
});

describe('the virtual cut', () => {
  const EAST: Point = { x: 1, y: 0 };

  it.each(AFTER)('trails $lateralMm mm aside, $travelMm mm after $turnDeg degrees', (row) => {
    const turn = rad(row.turnDeg);
    const tips = tipTrace(
      polyline([
        { x: -5, y: 0 },
        { x: 0, y: 0 },
        { x: row.travelMm * Math.cos(turn), y: row.travelMm * Math.sin(turn) },
      ]).cubics,
      0.25,
      EAST,
    );
    const { x, y } = tips[tips.length - 1];
    expect(Math.abs(x * Math.sin(turn) - y * Math.cos(turn))).toBeCloseTo(row.lateralMm, 6);
  });

  it('agrees with small steps of the equation of motion', () => {
    const pivot = polyline([
      { x: -3, y: 0 },
      { x: 0, y: 0 },
      { x: -0.2, y: 0.4 },
      { x: 0.5, y: 0.4 },
    ]).cubics;
    const tips = tipTrace(pivot, 0.25, EAST);
    // The tip moves along the blade only, by what of the pivot's step runs along it.
    let [x, y] = [-3.25, 0];
    const ends = [
      [0, 0],
      [-0.2, 0.4],
      [0.5, 0.4],
    ];
    let [px, py] = [-3, 0];
    for (const [ex, ey] of ends) {
      const steps = 200_000;
      const [sx, sy] = [(ex - px) / steps, (ey - py) / steps];
      for (let k = 0; k < steps; k++) {
        const [bx, by] = [(px + sx / 2 - x) / 0.25, (py + sy / 2 - y) / 0.25];
        const along = (sx * bx + sy * by) / (bx * bx + by * by);
        [x, y, px, py] = [x + along * bx, y + along * by, px + sx, py + sy];
      }
    }
    const last = tips[tips.length - 1];
    expect(Math.hypot(last.x - x, last.y - y)).toBeLessThan(1e-4);
  });

  // sqrt(R^2 - r^2), derived from the tractrix; from memory.
  it.each([
    { radius: 1, tipRadius: 0.968246 },
    { radius: 2, tipRadius: 1.984313 },
  ])('settles on a circle of $tipRadius mm inside one of $radius mm', ({ radius, tipRadius }) => {
    const [round] = fineCircle(0, 0, radius).contours;
    const twice = Float64Array.from([...round, ...round]);
    const tips = tipTrace(twice, 0.25, { x: 0, y: 1 });
    for (const { x, y } of tips.slice(tips.length / 2)) {
      expect(Math.abs(Math.hypot(x, y) - tipRadius)).toBeLessThan(2e-5);
    }
  });

  it('swings a blade round that would have to be pushed', () => {
    const tips = tipTrace(
      polyline([
        { x: 0, y: 0 },
        { x: 5, y: 0 },
      ]).cubics,
      0.25,
      { x: -1, y: 0 },
    );
    expect(tips[0].x).toBeCloseTo(0.25, 12);
    expect(tips[tips.length - 1].x).toBeCloseTo(4.75, 3);
  });
});
