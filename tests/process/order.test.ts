import { describe, expect, it } from 'vitest';
import { chainLength, contourArea, flatten } from '../../src/geometry/measure.js';
import { polyline } from '../../src/geometry/pen.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { reversed } from '../../src/geometry/transform.js';
import type { Cubics, Point } from '../../src/geometry/types.js';
import type { Mark, PlacedMark } from '../../src/process/layers.js';
import { cornerOf, runningOrder } from '../../src/process/order.js';
import type {
  KnifeProcess,
  LaserProcess,
  Process,
  WorkedOperation,
} from '../../src/process/process.js';
import { STARTING } from '../../src/process/starting.js';
import { randomFrom } from '../../src/scenery/random.js';

const knife = STARTING.knife as KnifeProcess;
const laser = STARTING.laser as LaserProcess;
const ORIGIN = { x: 0, y: 0 };

const placed = (cubics: Cubics, piece = 'gate', more: Partial<Mark> = {}): PlacedMark => ({
  cubics,
  closed: true,
  piece,
  copy: 1,
  ...more,
});
const ring = (x: number, y: number, radius: number, piece = 'gate') =>
  placed(circle(x, y, radius).contours[0], piece);
const box = (x: number, y: number, width: number, height: number, piece = 'gate') =>
  placed(rectangle(x, y, width, height).contours[0], piece);
const line = (points: readonly (readonly [number, number])[], more: Partial<Mark> = {}) =>
  placed(polyline(points.map(([x, y]) => ({ x, y }))).cubics, 'gate', { closed: false, ...more });

const run = (
  marks: readonly PlacedMark[],
  process: Process,
  operation: WorkedOperation = 'cut',
  from: Point = ORIGIN,
) => runningOrder(marks, process, { operation, from });

const start = ({ cubics }: PlacedMark): Point => ({ x: cubics[0], y: cubics[1] });
const end = ({ cubics }: PlacedMark): Point => ({ x: cubics.at(-2)!, y: cubics.at(-1)! });
const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

function travel(marks: readonly PlacedMark[], from: Point = ORIGIN): number {
  let [sum, at] = [0, from];
  for (const mark of marks) {
    sum += apart(at, start(mark));
    at = end(mark);
  }
  return sum;
}

/** Even-odd test of a point against a contour's chords. */
function holds({ cubics }: PlacedMark, { x, y }: Point): boolean {
  const points = flatten(cubics, 0.01);
  let inside = false;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1], points[i]];
    if (a.y > y === b.y > y) continue;
    if (x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

/** Smallest distance of two marks, from points every 0.1 mm or less. */
function distance(a: PlacedMark, b: PlacedMark): number {
  const [p, q] = [a, b].map(({ cubics }) => flatten(cubics, 0.002));
  return Math.min(...p.flatMap((u) => q.map((v) => apart(u, v))));
}

/** A mark's name that neither its direction nor its start changes. */
function nameOf({ cubics, piece }: PlacedMark): string {
  const nodes = Array.from({ length: cubics.length / 8 }, (_, k) => [
    [cubics[8 * k], cubics[8 * k + 1]].join(),
    [cubics[8 * k + 6], cubics[8 * k + 7]].join(),
  ]);
  return `${piece} ${[...new Set(nodes.flat())].sort().join(' ')}`;
}

/** A card with a window, holes round it, and a post of another piece nested in the window. */
const lockGate: readonly PlacedMark[] = [
  box(10, 10, 100, 80),
  box(30, 30, 60, 40),
  ...[15, 45, 75, 105].flatMap((x) => [ring(x, 20, 1.5), ring(x, 80, 1.5)]),
  box(50, 35, 20, 30, 'post'),
  ring(60, 50, 3, 'post'),
];

describe.each([knife, laser, STARTING.press])('the running order of a $name', (process) => {
  it('runs every mark once, unchanged but for direction and start', () => {
    const out = run(lockGate, process);
    expect(out.map(nameOf).sort()).toEqual(lockGate.map(nameOf).sort());
    const lengths = (marks: readonly PlacedMark[]) =>
      marks.map((m) => Math.round(chainLength(m.cubics) * 1e6)).sort();
    expect(lengths(out)).toEqual(lengths(lockGate));
    // Closed contours keep their direction, whatever their start.
    for (const mark of out) expect(contourArea(mark.cubics)).toBeGreaterThan(0);
  });

  it('cuts what lies inside before what lies round it', () => {
    // Inner before outer, and what is nested before its window. Common practice, no source.
    const out = run(lockGate, process);
    let pairs = 0;
    out.forEach((outer, k) => {
      out.forEach((inner, n) => {
        if (n === k || !holds(outer, start(inner))) return;
        pairs++;
        expect(n).toBeLessThan(k);
      });
    });
    // All in the card, the post and its hole in the window, the hole in the post.
    expect(pairs).toBe(11 + 2 + 1);
  });

  it('cuts a window after the small holes of its frame', () => {
    const names = run(lockGate, process).map(nameOf);
    const window = names.indexOf(nameOf(lockGate[1]));
    for (const hole of lockGate.slice(2, 10)) {
      expect(names.indexOf(nameOf(hole))).toBeLessThan(window);
    }
    expect(window).toBe(10);
  });

  it('gives the same order each time', () => {
    expect(run(lockGate, process)).toEqual(run(lockGate, process));
  });

  it('runs nothing where there is nothing', () => {
    expect(run([], process)).toEqual([]);
  });
});

describe('a knife', () => {
  it('finishes one piece before the next, what is nested in another first', () => {
    // Three cards whose holes lie nearer to the next card's than to each other.
    const cards = ['lamp', 'boat', 'buoy'].flatMap((piece, k) => [
      box(k * 42, 0, 40, 40, piece),
      ring(k * 42 + 2, 20, 1, piece),
      ring(k * 42 + 38, 20, 1, piece),
      ring(k * 42 + 38, 30, 1, piece),
    ]);
    const nested = [box(60, 5, 6, 6, 'bollard')];
    const holder = box(58, 3, 12, 12, 'boat');
    const order = run([...cards, holder, ...nested], knife).map(({ piece }) => piece);
    const turns = order.filter((piece, k) => piece !== order[k - 1]);
    expect(turns).toHaveLength(4);
    expect(turns.indexOf('bollard')).toBeLessThan(turns.indexOf('boat'));
  });

  it('starts closed cuts where they are drawn to start, and never turns an overcut round', () => {
    const over = placed(
      polyline([
        { x: 50, y: 50 },
        { x: 60, y: 50 },
        { x: 60, y: 60 },
        { x: 50, y: 60 },
        { x: 50, y: 50 },
        { x: 50.5, y: 50 },
      ]).cubics,
      'gate',
      { closed: false, kind: 'overcut' },
    );
    const marks = [ring(55, 55, 2), over, ring(20, 80, 5)];
    const out = run(marks, knife);
    for (const mark of marks) expect(out).toContainEqual(mark);
    // What runs on past its start encloses too.
    expect(out.indexOf(over)).toBeGreaterThan(out.indexOf(marks[0]));
  });

  it('turns nothing round that is drawn for a swivelling blade', () => {
    const fixed: Process = { ...knife, blade: { ...knife.blade, compensate: true } };
    const slit = (x: number) => line([[x, 50], [x, 0]], { kind: 'slit' }); // biome-ignore format: a row
    const marks = [slit(0), slit(10), slit(20)];
    expect(run(marks, fixed)).toEqual(marks);
    expect(run(marks, knife)[0].cubics[1]).toBe(0);
  });
});

describe('a laser', () => {
  const lace = (columns: number, rows: number, pitch: number) =>
    Array.from({ length: columns * rows }, (_, k) =>
      ring(20 + (k % columns) * pitch, 20 + Math.floor(k / columns) * pitch, 0.8),
    );

  it('keeps cuts that follow each other apart, so that lace does not scorch', () => {
    const holes = lace(12, 12, 2.5);
    const out = run([box(0, 0, 70, 70), ...holes], laser);
    const near = out.filter((mark, k) => k > 0 && distance(mark, out[k - 1]) < 3);
    expect(near).toEqual([]);
    // Cut in the shortest order, each would lie 0.9 mm from the last.
    const close = run([box(0, 0, 70, 70), ...holes], {
      ...laser,
      heat: { ...laser.heat, apartMm: 0 },
    });
    expect(close.filter((m, k) => k > 0 && distance(m, close[k - 1]) < 3).length).toBeGreaterThan(
      100,
    );
    // Hops of one hole over the next but one: no more than twice as far as in sequence.
    expect(travel(out)).toBeLessThan(3 * travel(close));
  });

  it('cuts what cannot be kept apart all the same', () => {
    expect(run(lace(2, 1, 2.5), laser)).toHaveLength(2);
  });

  it('starts closed cuts where that is nearest', () => {
    // From the origin to the first one's far corner, then across the 20 mm between them: that is
    // shorter than 5 mm to its near corner and 50 mm to the next one's.
    const marks = [box(3, 4, 30, 30), box(53, 4, 30, 30)];
    expect(travel(run(marks, laser))).toBeCloseTo(Math.hypot(33, 4) + 20, 6);
    const inward = [box(-3, -4, 30, 30), box(47, -4, 30, 30)];
    const from = { x: 27, y: 26 };
    expect(travel(run(inward, laser, 'cut', from), from)).toBeCloseTo(20, 6);
  });
});

describe('a contour broken by nibs', () => {
  const gap = 0.4;
  /** Four sides of a square, each broken in its middle. */
  const side = (
    a: readonly [number, number],
    b: readonly [number, number],
    c: readonly [number, number],
  ) => line([a, b, c], { kind: 'nib' });
  const broken = (x: number, y: number, size: number) => {
    const [l, r, t, b, m] = [x, x + size, y, y + size, size / 2];
    const h = gap / 2;
    return [
      side([l + m + h, t], [r, t], [r, t + m - h]),
      side([r, t + m + h], [r, b], [r - m + h, b]),
      side([r - m - h, b], [l, b], [l, b - m + h]),
      side([l, b - m - h], [l, t], [l + m - h, t]),
    ];
  };

  it.each([knife, laser])(
    'comes after what lies in it, and is run on in one go: $name',
    (process) => {
      const able = { ...process, nibs: { count: 4, widthMm: gap } };
      const [inner, outer] = [broken(60, 60, 20), broken(40, 40, 80)];
      const hole = ring(70, 70, 3);
      const far = ring(200, 200, 3);
      const out = run([...outer, ...inner, hole, far], able);
      const at = (marks: readonly PlacedMark[]) =>
        marks.map((m) => out.findIndex((o) => nameOf(o) === nameOf(m))).sort((a, b) => a - b);
      const [holeAt] = at([hole]);
      for (const [parts, after] of [
        [inner, holeAt],
        [outer, Math.max(...at(inner))],
      ] as const) {
        const places = at(parts);
        expect(places[0]).toBeGreaterThan(after);
        expect(places[3] - places[0]).toBe(3);
        // The nibs are what is travelled within it.
        expect(travel(out.slice(places[0], places[3] + 1), start(out[places[0]]))).toBeCloseTo(
          3 * gap,
          6,
        );
      }
    },
  );
});

describe('scores', () => {
  it('are run to and fro', () => {
    const folds = [0, 15, 30, 45].map((x) => line([[x, 0], [x, 100]], { kind: 'mountain' })); // biome-ignore format: a row
    const out = run(folds, knife, 'fold');
    expect(travel(out)).toBeCloseTo(45, 9);
    expect(out[1].cubics).toEqual(reversed(folds[1].cubics));
  });

  it('keep the cuts of a perforated fold in sequence', () => {
    const process: Process = { ...laser, folds: { how: 'perforation', cutMm: 3, tieMm: 1 } };
    // Two folds so near that their cuts would be mixed otherwise.
    const fold = (x: number) =>
      Array.from({ length: 20 }, (_, k) => line([[x, 4 * k], [x, 4 * k + 3]], { kind: 'perforation' })); // biome-ignore format: a row
    const out = run([...fold(0), ...fold(0.5)], process, 'fold');
    expect(out.filter((mark, k) => k > 0 && mark.cubics[0] !== out[k - 1].cubics[0])).toHaveLength(
      1,
    );
    expect(travel(out)).toBeCloseTo(2 * 19 + 0.5, 6);
  });

  it('start from the corner where the sheet is laid up', () => {
    expect(cornerOf('bottom right', 210, 297)).toEqual({ x: 210, y: 297 });
    expect(cornerOf('top left', 210, 297)).toEqual(ORIGIN);
    const marks = [line([[10, 10], [20, 10]]), line([[190, 280], [180, 280]])]; // biome-ignore format: a row
    expect(run(marks, knife, 'detail', cornerOf('bottom right', 210, 297))[0]).toBe(marks[1]);
    expect(run(marks, knife, 'detail', cornerOf('top left', 210, 297))[0]).toBe(marks[0]);
  });
});

describe('the length of the tour', () => {
  it.each([4, 8, 14])('is that of the shortest on a lattice of %i by as many', (n) => {
    // No two points are nearer than the pitch, and going to and fro row by row keeps to it.
    const points = Array.from({ length: n * n }, (_, k) =>
      ring(5 * (k % n), 5 * Math.floor(k / n), 0.5),
    );
    const random = randomFrom('lattice', n);
    const mixed = points
      .map((mark) => ({ mark, key: random.next() }))
      .sort((a, b) => a.key - b.key);
    const out = run(
      mixed.map(({ mark }) => mark),
      knife,
      'cut',
      start(points[0]),
    );
    const shortest = 5 * (n * n - 1);
    expect(travel(out, start(points[0]))).toBeGreaterThan(shortest - 1e-6);
    expect(travel(out, start(points[0])) / shortest).toBeLessThan(1.03);
  });

  it('is that of all orders and directions tried, for a few lines', () => {
    const random = randomFrom('few lines');
    for (let n = 0; n < 12; n++) {
      const place = (): [number, number] => [random.between(0, 50), random.between(0, 50)];
      const marks = Array.from({ length: 9 }, () => line([place(), place()]));
      expect(travel(run(marks, laser, 'detail'))).toBeCloseTo(shortestTravel(marks), 6);
    }
  });
});

/** Over subsets of lines: the least travel that ends with one of them, run either way. */
function shortestTravel(marks: readonly PlacedMark[]): number {
  const ends = marks.flatMap((mark) => [
    { entry: start(mark), exit: end(mark) },
    { entry: end(mark), exit: start(mark) },
  ]);
  let best = new Map<string, number>(
    ends.map(({ entry }, w) => [`${1 << (w >> 1)} ${w}`, apart(ORIGIN, entry)]),
  );
  for (let size = 1; size < marks.length; size++) {
    const next = new Map<string, number>();
    for (const [key, sum] of best) {
      const [done, last] = key.split(' ').map(Number);
      ends.forEach(({ entry }, w) => {
        const bit = 1 << (w >> 1);
        if (done & bit) return;
        const to = `${done | bit} ${w}`;
        const total = sum + apart(ends[last].exit, entry);
        if (total < (next.get(to) ?? Infinity)) next.set(to, total);
      });
    }
    best = next;
  }
  return Math.min(...best.values());
}
