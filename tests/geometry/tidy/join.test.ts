import { describe, expect, it } from 'vitest';
import { isClosed } from '../../../src/geometry/chain.js';
import { isStraightCubic } from '../../../src/geometry/cubic.js';
import { lineLength } from '../../../src/geometry/measure.js';
import { pen, polyline, smoothLine } from '../../../src/geometry/pen.js';
import { circle } from '../../../src/geometry/primitives.js';
import { joinLines } from '../../../src/geometry/tidy/join.js';
import { reversed } from '../../../src/geometry/transform.js';
import type { Line } from '../../../src/geometry/types.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { seeded } from '../shapes.js';

const from = (...numbers: number[]): Line => {
  const p = pen(numbers[0], numbers[1]);
  for (let k = 2; k < numbers.length; k += 2) p.lineTo(numbers[k], numbers[k + 1]);
  return p.line();
};

/** A line's corner points, rounded to a tenth. */
const points = ({ cubics }: Line): number[] => {
  const ends = [cubics[0], cubics[1]];
  for (let i = 0; i < cubics.length; i += 8) ends.push(cubics[i + 6], cubics[i + 7]);
  return ends.map((v) => Math.round(10 * v) / 10 + 0);
};

const total = (lines: readonly Line[]): number =>
  lines.reduce((sum, line) => sum + lineLength(line), 0);

describe('joinLines', () => {
  it('joins ends that touch, turning lines round where needed', () => {
    const joined = joinLines([from(0, 0, 5, 0), from(9, 3, 5, 0), from(20, 0, 0, 0)], 0.01);
    expect(joined.map(points)).toEqual([[20, 0, 0, 0, 5, 0, 9, 3]]);
  });

  it('closes loops exactly, and starts them with their first line', () => {
    const joined = joinLines([from(0, 0, 5, 0), from(0, 5, 0, 0), from(0, 5, 5, 0.004)], 0.01);
    expect(joined).toHaveLength(1);
    expect(points(joined[0])).toEqual([0, 0, 5, 0, 0, 5, 0, 0]);
    const { cubics } = joined[0];
    expect([...cubics.subarray(-2)]).toEqual([...cubics.subarray(0, 2)]);
    for (let i = 0; i < cubics.length; i += 8) expect(isStraightCubic(cubics, i)).toBe(true);
  });

  it('closes a single line whose ends meet, but not one as short as the tolerance', () => {
    const almost = pen(5, 0).arcAround(0, 0, 359.95).line();
    const [loop] = joinLines([almost], 0.02);
    expect(isClosed(almost.cubics)).toBe(false);
    expect(isClosed(loop.cubics)).toBe(true);
    expect(joinLines([from(0, 0, 0.015, 0)], 0.02)).toEqual([from(0, 0, 0.015, 0)]);
  });

  it('runs straightest on where several meet', () => {
    // A stem from below, a bough almost straight on, one to the left, one to the right.
    const stem = from(0, 10, 0, 0);
    const lines = [from(0, 0, -8, -2), stem, from(0, 0, 1, -9), from(8, -2, 0, 0)];
    expect(joinLines(lines, 0.01).map(points)).toEqual([
      [8, -2, 0, 0, -8, -2],
      [0, 10, 0, 0, 1, -9],
    ]);
  });

  it('leaves the odd end alone', () => {
    const joined = joinLines([from(0, 0, 5, 5), from(-5, 0, 0, 0), from(0, 0, 5, 0)], 0.01);
    expect(joined.map(points)).toEqual([
      [0, 0, 5, 5],
      [-5, 0, 0, 0, 5, 0],
    ]);
  });

  it('goes straight through crossings of lines cut there', () => {
    const cross = [from(-5, 0, 0, 0), from(0, 0, 0, 5), from(0, 0, 5, 0), from(0, -5, 0, 0)];
    expect(joinLines(cross, 0.01).map(points)).toEqual([
      [-5, 0, 0, 0, 5, 0],
      [0, -5, 0, 0, 0, 5],
    ]);
  });

  it('leaves closed lines and lines apart unchanged, and drops empty ones', () => {
    const ring = { cubics: circle(0, 0, 5).contours[0] };
    const far = from(5.1, 0, 9, 0);
    const touching = from(5, 0, 5.1, 0.5);
    const joined = joinLines([ring, far, { cubics: new Float64Array(0) }, touching], 0.01);
    expect(joined).toEqual([ring, far, touching]);
    expect(joined[0].cubics).toBe(ring.cubics);
  });

  it('moves ends that do not quite meet by no more than the gap', () => {
    const [line] = joinLines([from(0, 0, 5, 0), from(5.008, 0.004, 9, 3)], 0.01);
    expect([...line.cubics.subarray(6, 10)]).toEqual([5, 0, 5, 0]);
    expect([...line.cubics.subarray(-2)]).toEqual([9, 3]);
  });

  it('puts a line cut into pieces, turned and shuffled, together again', () => {
    const random = seeded(9);
    const wander = randomFrom(80, 'join');
    const whole = smoothLine(
      Array.from({ length: 40 }, (_, k) => ({ x: 5 * k, y: wander.between(0, 20) })),
    );
    const pieces = Array.from({ length: whole.cubics.length / 8 }, (_, k): Line => {
      const piece = whole.cubics.slice(k * 8, k * 8 + 8);
      return { cubics: random() < 0.5 ? reversed(piece) : piece };
    });
    const order = pieces.map(() => random());
    const shuffled = pieces
      .map((piece, k) => ({ piece, k }))
      .sort((a, b) => order[a.k] - order[b.k]);
    const joined = joinLines(
      shuffled.map(({ piece }) => piece),
      0.01,
    );
    expect(joined).toHaveLength(1);
    const { cubics } = joined[0];
    const back = cubics[0] === whole.cubics[0] ? cubics : reversed(cubics);
    expect(back).toEqual(whole.cubics);
  });

  it('loses no length and gives the same each time', () => {
    const random = seeded(12);
    const at = (): number => 4 * Math.floor(8 * random());
    const lines = Array.from({ length: 200 }, () => {
      const [x, y] = [at(), at()];
      return polyline([
        { x, y },
        { x: x + 4, y: y + 4 * Math.floor(3 * random()) - 4 },
      ]);
    });
    const joined = joinLines(lines, 0.01);
    expect(total(joined)).toBeCloseTo(total(lines), 6);
    expect(joined.length).toBeLessThan(60);
    expect(joinLines(lines, 0.01)).toEqual(joined);
    // Nothing is left that could still be joined.
    const open = joined.filter((line) => !isClosed(line.cubics));
    expect(joinLines(open, 0.01)).toHaveLength(open.length);
  });
});
