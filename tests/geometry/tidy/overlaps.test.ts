import { describe, expect, it } from 'vitest';
import { chordsOf, pointOn, subchain } from '../../../src/geometry/chain.js';
import { outlineLines } from '../../../src/geometry/clip-lines.js';
import { distanceTo } from '../../../src/geometry/components.js';
import { flatten, lineLength, perimeter } from '../../../src/geometry/measure.js';
import { pen, polyline } from '../../../src/geometry/pen.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import { doubledStretches, withoutDoubles } from '../../../src/geometry/tidy/overlaps.js';
import { moveRegion, reversed, translation } from '../../../src/geometry/transform.js';
import type { Cubics, Line } from '../../../src/geometry/types.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { anywhere, blobs, wanderer } from '../reference.js';
import { leaf, seeded } from '../shapes.js';

const TOLERANCE = 0.02;
/** Of curves nearer to each other than about this, `distanceTo` may name either. */
const SAME_MM = 0.0025;

const from = (...numbers: number[]): Line => {
  const p = pen(numbers[0], numbers[1]);
  for (let k = 2; k < numbers.length; k += 2) p.lineTo(numbers[k], numbers[k + 1]);
  return p.line();
};
const total = (lines: readonly Line[]): number =>
  lines.reduce((sum, line) => sum + lineLength(line), 0);
const back = (line: Line): Line => ({ cubics: reversed(line.cubics) });

/** The farthest that a point of the lines lies from any of the others. */
function farthest(lines: readonly Line[], others: readonly Line[]): number {
  const region = { contours: others.map((line) => line.cubics) };
  let most = 0;
  for (const { cubics } of lines) {
    const { u } = chordsOf(cubics, 0.001);
    for (let k = 0; k + 1 < u.length; k++) {
      for (const f of [0, 0.31, 0.77, 1]) {
        const at = pointOn(cubics, u[k] + f * (u[k + 1] - u[k]));
        most = Math.max(most, distanceTo(region, at)?.distanceMm ?? Infinity);
      }
    }
  }
  return most;
}

/**
 * The longest stretch over which the lines run doubled, mm: by looking all along them, a step at a
 * time, for another stretch within the tolerance that runs the same way or straight back.
 */
function longestDouble(lines: readonly Line[], toleranceMm: number): number {
  const step = toleranceMm / 2;
  const samples = lines.flatMap(({ cubics }, line) => samplesAlong(cubics, step, line));
  const cells = new Map<string, number[]>();
  const key = (x: number, y: number): string => `${x} ${y}`;
  const cell = (v: number): number => Math.floor(v / toleranceMm);
  samples.forEach(({ x, y }, k) => {
    const name = key(cell(x), cell(y));
    cells.set(name, [...(cells.get(name) ?? []), k]);
  });
  const isDoubled = (k: number): boolean => {
    const p = samples[k];
    for (const i of [-1, 0, 1]) {
      for (const j of [-1, 0, 1]) {
        for (const n of cells.get(key(cell(p.x) + i, cell(p.y) + j)) ?? []) {
          const q = samples[n];
          // Neighbours along one line are no doubles.
          if (q.line === p.line && Math.abs(q.at - p.at) < 6 * toleranceMm) continue;
          if (Math.hypot(q.x - p.x, q.y - p.y) > 0.75 * toleranceMm) continue;
          if (Math.abs(Math.sin(q.angle - p.angle)) < Math.sin((4 * Math.PI) / 180)) return true;
        }
      }
    }
    return false;
  };
  let [longest, run] = [0, 0];
  samples.forEach(({ line }, k) => {
    run = isDoubled(k) && k > 0 && samples[k - 1].line === line ? run + step : 0;
    longest = Math.max(longest, run);
  });
  return longest;
}

function samplesAlong(c: Cubics, step: number, line: number) {
  const samples: { x: number; y: number; angle: number; at: number; line: number }[] = [];
  let at = 0;
  const { x, y } = chordsOf(c, 0.0005);
  for (let k = 0; k + 1 < x.length; k++) {
    const [dx, dy] = [x[k + 1] - x[k], y[k + 1] - y[k]];
    const count = Math.ceil(Math.hypot(dx, dy) / step);
    for (let j = 0; j < count; j++) {
      const f = j / count;
      const place = { x: x[k] + f * dx, y: y[k] + f * dy, line };
      samples.push({ ...place, angle: Math.atan2(dy, dx), at: at + f * Math.hypot(dx, dy) });
    }
    at += Math.hypot(dx, dy);
  }
  return samples;
}

/** What any result must do. */
function expectSound(given: readonly Line[]): ReturnType<typeof withoutDoubles> {
  const result = withoutDoubles(given, TOLERANCE);
  expect(farthest(given, result.lines)).toBeLessThanOrEqual(TOLERANCE);
  expect(farthest(result.lines, given)).toBeLessThan(SAME_MM);
  expect(longestDouble(result.lines, TOLERANCE)).toBeLessThan(9 * TOLERANCE);
  expect(total(given) - total(result.lines)).toBeCloseTo(result.savedMm, 1);
  return result;
}

describe('withoutDoubles', () => {
  const s = pen(0, 0).curveTo(10, -8, 20, 12, 30, 0).line();

  it('drops duplicates run either way, and keeps the first unchanged', () => {
    const { lines, savedMm } = expectSound([s, back(s), s]);
    expect(lines).toHaveLength(1);
    expect(lines[0]).toBe(s);
    expect(savedMm).toBeCloseTo(2 * lineLength(s), 2);
  });

  it('cuts off collinear stretches that overlap partly', () => {
    const { lines, savedMm } = expectSound([
      from(0, 0, 10, 0),
      from(6, 0, 18, 0),
      from(9, 0, -3, 0),
    ]);
    expect(savedMm).toBeCloseTo(4 + 9, 9);
    expect(
      lines.map(({ cubics }) => [cubics[0], cubics[6]].map((v) => Math.round(1e6 * v) / 1e6)),
    ).toEqual([
      [0, 10],
      [10, 18],
      [0, -3],
    ]);
  });

  it('takes a stretch out of the middle of a line', () => {
    const { lines, savedMm } = expectSound([from(4, 0, 7, 0), from(0, 0, 5, 0, 10, 0)]);
    expect(savedMm).toBeCloseTo(3, 9);
    expect(lines).toHaveLength(3);
  });

  it('finds stretches of one and the same curve, however it is cut', () => {
    const middle = { cubics: subchain(s.cubics, 0.2, 0.7) };
    const end = back({ cubics: subchain(s.cubics, 0.55, 1) });
    const { lines, savedMm } = expectSound([middle, s, end]);
    expect(lines).toHaveLength(3);
    expect(savedMm).toBeCloseTo(lineLength(middle) + lineLength(end), 2);
    expect(total(lines)).toBeCloseTo(lineLength(s), 2);
  });

  it('finds arcs that are split at different places', () => {
    const arc = (start: number, sweep: number, parts: number): Line => {
      const a = (start * Math.PI) / 180;
      const p = pen(20 + 8 * Math.cos(a), 20 + 8 * Math.sin(a));
      for (let k = 0; k < parts; k++) p.arcAround(20, 20, sweep / parts);
      return p.line();
    };
    const { lines, savedMm } = expectSound([arc(0, 100, 2), arc(70, 150, 3), arc(250, -120, 1)]);
    const degree = (8 * Math.PI) / 180;
    // From 70 to 100 and from 220 back to 130 degrees; ends are found to a few microns.
    expect(savedMm / degree).toBeCloseTo(30 + 90, 0);
    expect(total(lines) / degree).toBeCloseTo(250, 0);
  });

  it('finds a curve and its polyline', () => {
    const facets = polyline(flatten(s.cubics, 0.005));
    const { lines } = expectSound([s, facets]);
    expect(lines).toEqual([s]);
    expect(expectSound([facets, s]).lines).toEqual([facets]);
  });

  it('keeps crossings, touches and branches', () => {
    const kept = [
      from(0, 0, 10, 0),
      from(5, -5, 5, 5),
      from(0, 1, 10, -1),
      from(2, 0, 2, 7),
      from(10, 0, 18, 3),
      from(10, 0, 18, 2),
    ];
    expect(withoutDoubles(kept, TOLERANCE)).toEqual({ lines: kept, savedMm: 0 });
  });

  it('leaves parallel lines beyond the tolerance alone', () => {
    const apart = [from(0, 0, 10, 0), from(0, 0.03, 10, 0.03)];
    expect(withoutDoubles(apart, TOLERANCE).lines).toEqual(apart);
    expect(expectSound([from(0, 0, 10, 0), from(0, 0.01, 10, 0.01)]).lines).toHaveLength(1);
  });

  it('drops what a line runs over itself', () => {
    const thereAndBack = from(0, 0, 10, 0, 3, 0, 3, 5);
    const { lines, savedMm } = expectSound([thereAndBack]);
    expect(savedMm).toBeCloseTo(7, 6);
    expect(total(lines)).toBeCloseTo(15, 6);
    // Three times over, once is left.
    expect(expectSound([from(0, 0, 10, 0, 0, 0, 10, 0)]).savedMm).toBeCloseTo(20, 6);
  });

  it('leaves a dense curve alone, however short its facets', () => {
    const dense = polyline(
      Array.from({ length: 4001 }, (_, k) => ({
        x: 0.3 * Math.cos(k / 500),
        y: 0.3 * Math.sin(k / 500) + k / 1000,
      })),
    );
    expect(withoutDoubles([dense], TOLERANCE)).toEqual({ lines: [dense], savedMm: 0 });
    expect(withoutDoubles([{ cubics: circle(0, 0, 0.2).contours[0] }], TOLERANCE).savedMm).toBe(0);
  });

  it('lets pieces side by side share their edges', () => {
    const tile = [
      rectangle(0, 0, 30, 20),
      rectangle(30, 0, 30, 20),
      rectangle(0, 20, 60, 15),
      rectangle(60, 5, 10, 10),
    ];
    const { lines, savedMm } = expectSound(tile.flatMap(outlineLines));
    expect(savedMm).toBeCloseTo(20 + 60 + 10, 6);
    expect(total(lines)).toBeCloseTo(
      tile.reduce((sum, region) => sum + perimeter(region), 0) - savedMm,
      6,
    );
    // The first stays whole, and the second goes round its start as one open line.
    expect(lines).toHaveLength(4);
    expect(lines[0]).toEqual(outlineLines(tile[0])[0]);
  });

  it('takes several at once: curves with copies, reversed copies and parts of them', () => {
    for (let k = 0; k < 6; k++) {
      const random = randomFrom(90, 'doubles', k);
      const line = wanderer(random);
      const [a, b] = [random.between(0, 0.4), random.between(0.6, 1)].map(
        (f) => (f * line.cubics.length) / 8,
      );
      const part = { cubics: subchain(line.cubics, a, b) };
      const outlines = outlineLines(blobs(random));
      const given = [part, ...outlines, back(line), line, ...outlines.map(back)];
      const { lines, savedMm } = withoutDoubles(given, TOLERANCE);
      expect(farthest(given, lines)).toBeLessThanOrEqual(TOLERANCE);
      expect(farthest(lines, given)).toBeLessThan(SAME_MM);
      const doubled = lineLength(part) + lineLength(line) + total(outlines);
      expect(savedMm).toBeGreaterThan(doubled - 0.1);
      // Flat crossings may lose a little more.
      expect(savedMm).toBeLessThan(doubled + 2);
      expect(withoutDoubles(lines, TOLERANCE).savedMm).toBeLessThan(0.5);
    }
  });

  it('covers leaves strewn over their own copies', () => {
    const random = seeded(21);
    const leaves = Array.from({ length: 12 }, () =>
      moveRegion(leaf(9, 2.5), translation(20 * random(), 15 * random())),
    );
    expectSound([...leaves, ...leaves.slice(3, 8)].flatMap(outlineLines));
  });

  it('is the same each time, and takes nothing', () => {
    const at = anywhere(randomFrom(91, 'doubles'));
    const some = [from(at.x, at.y, 0, 0), from(0, 0, at.x, at.y)];
    expect(withoutDoubles(some, TOLERANCE)).toEqual(withoutDoubles(some, TOLERANCE));
    expect(withoutDoubles([], TOLERANCE)).toEqual({ lines: [], savedMm: 0 });
    const empty = { cubics: new Float64Array(0) };
    expect(withoutDoubles([empty, some[0]], TOLERANCE).lines).toEqual([empty, some[0]]);
  });
});

// The helper itself must be able to fail.
describe('the look along all lines', () => {
  it('sees doubles', () => {
    expect(longestDouble([from(0, 0, 5, 0), from(2, 0.01, 4, 0.01)], TOLERANCE)).toBeCloseTo(2, 1);
    expect(farthest([from(0, 0, 5, 0)], [from(0, 0, 4, 0)])).toBeCloseTo(1, 9);
  });
});

describe('doubledStretches', () => {
  it('tells of each line what withoutDoubles takes out', () => {
    const lines = [
      from(0, 0, 40, 0),
      from(60, 0.01, 30, 0.01),
      from(0, 5, 40, 5),
      from(10, 0, 20, 0),
    ];
    const stretches = doubledStretches(lines, TOLERANCE);
    expect(stretches.map((own) => own.length)).toEqual([0, 1, 0, 1]);
    expect(stretches[1][0].from).toBeCloseTo(20, 1);
    expect(stretches[1][0].to).toBeCloseTo(30, 6);
    const sum = stretches.flat().reduce((mm, { from: start, to }) => mm + to - start, 0);
    expect(sum).toBeCloseTo(withoutDoubles(lines, TOLERANCE).savedMm, 9);
  });
});
