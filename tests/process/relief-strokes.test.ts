import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../src/geometry/boolean/boolean.js';
import { containsPoint, distanceTo } from '../../src/geometry/components.js';
import {
  boundsOf,
  chainLength,
  flatten,
  lineLength,
  perimeter,
  regionArea,
  regionBounds,
} from '../../src/geometry/measure.js';
import { polygon } from '../../src/geometry/pen.js';
import { circle, rectangle } from '../../src/geometry/primitives.js';
import { withoutDoubles } from '../../src/geometry/tidy/overlaps.js';
import { inOrder, moveRegion, rotation, translation } from '../../src/geometry/transform.js';
import type { Cubics, Line, Point, Region } from '../../src/geometry/types.js';
import { hatchLines, outlines, rings, stipple } from '../../src/process/relief-strokes.js';
import { leaf } from '../geometry/shapes.js';

const APART = 0.8;

/** A leaf with a hole and a side leaf, as of a water lily by the lock. */
const LILY: Region = subtract(
  union([
    moveRegion(leaf(26, 9), inOrder(rotation(-35), translation(4, 24))),
    moveRegion(leaf(12, 2.4), inOrder(rotation(20), translation(3, 24))),
  ]),
  [circle(15, 15, 2.2)],
);

const middleOf = (c: Cubics) => {
  const { minX, minY, maxX, maxY } = boundsOf([c]);
  return { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
};

/** How far the tool goes between strokes. */
const travel = (lines: readonly Line[]): number =>
  lines.slice(1).reduce((sum, { cubics: b }, k) => {
    const a = lines[k].cubics;
    return sum + Math.hypot(b[0] - a[a.length - 2], b[1] - a[a.length - 1]);
  }, 0);

describe('hatching', () => {
  it('draws straight lines at the angle, anticlockwise from the width', () => {
    const lines = hatchLines(rectangle(0, 0, 30, 20), 30, 2);
    for (const { cubics: c } of lines) {
      const [dx, dy] = [c[c.length - 2] - c[0], c[c.length - 1] - c[1]];
      const deg = (Math.atan2(-dy, dx) * 180) / Math.PI;
      expect(((deg % 180) + 180) % 180).toBeCloseTo(30, 6);
    }
    // Lines 2 mm apart cover an area of 2 mm for each mm of them.
    const length = lines.reduce((sum, l) => sum + chainLength(l.cubics), 0);
    expect(Math.abs(2 * length - 600)).toBeLessThan(0.05 * 600);
  });

  it('places level lines evenly, run to and fro', () => {
    const lines = hatchLines(rectangle(0, 0, 10, 5), 0, 2);
    const starts = [
      [0, 0.5],
      [10, 2.5],
      [0, 4.5],
    ];
    expect(lines).toHaveLength(starts.length);
    starts.forEach(([x, y], k) => {
      expect(lines[k].cubics[0]).toBeCloseTo(x, 9);
      expect(lines[k].cubics[1]).toBeCloseTo(y, 9);
    });
  });

  it('ends on the edge, leaves holes free and finishes a lobe before the next', () => {
    const lines = hatchLines(LILY, 45, APART);
    for (const { cubics: c } of lines) {
      for (const k of [0, c.length - 2]) {
        expect(distanceTo(LILY, { x: c[k], y: c[k + 1] })!.distanceMm).toBeLessThan(0.003);
      }
      expect(containsPoint(LILY, middleOf(c))).toBe(true);
    }
    // Row by row right across it, over hole and gaps, the tool would travel more than twice as far.
    const across = ({ x, y }: Point): number => (x + y) / Math.SQRT2;
    const rows = lines.toSorted((a, b) => {
      const [p, q] = [middleOf(a.cubics), middleOf(b.cubics)];
      return Math.round((across(p) - across(q)) * 100) || p.x - q.x;
    });
    expect(travel(lines)).toBeLessThan(0.5 * travel(rows));
  });

  it('gives a strip narrower than the spacing its middle line', () => {
    const lines = hatchLines(rectangle(0, 0, 10, 0.4), 0, 1);
    expect(lines).toHaveLength(1);
    expect(lines[0].cubics[1]).toBeCloseTo(0.2, 9);
  });
});

describe('rings', () => {
  it('go in by the spacing from the edge to the middle', () => {
    const found = rings(circle(0, 0, 4), 1);
    const radii = found.map(({ cubics }) => {
      const { minX, maxX } = boundsOf([cubics]);
      return (maxX - minX) / 2;
    });
    [4, 3, 2, 1].forEach((mm, k) => {
      expect(radii[k]).toBeCloseTo(mm, 2);
    });
    // What is left in the middle is one spacing across: a ring or dot at half the spacing.
    expect(radii.length).toBe(5);
    expect(radii[4]).toBeCloseTo(0.5, 2);
  });

  it('come nowhere nearer to each other than half the spacing, nor leave gaps wider than two', () => {
    const found = rings(LILY, APART);
    const all = { contours: found.map(({ cubics }) => cubics) };
    found.forEach(({ cubics }, k) => {
      const others = { contours: all.contours.filter((_, j) => j !== k) };
      for (const p of flatten(cubics, 0.01)) {
        expect(distanceTo(others, p)!.distanceMm).toBeGreaterThan(APART / 2 - 0.02);
      }
    });
    const { minX, minY, maxX, maxY } = boundsOf(LILY.contours);
    for (let x = minX; x < maxX; x += 0.3) {
      for (let y = minY; y < maxY; y += 0.3) {
        if (!containsPoint(LILY, { x, y })) continue;
        expect(distanceTo(all, { x, y })!.distanceMm).toBeLessThan(APART);
      }
    }
  });

  it('finish one part before the next', () => {
    const two = union([circle(0, 0, 3), circle(20, 0, 2)]);
    const sides = rings(two, 1).map(({ cubics }) => middleOf(cubics).x > 10);
    expect(sides.toSorted()).toEqual(sides);
  });
});

describe('outlines', () => {
  it('are the contours as they are', () => {
    const found = outlines(LILY, APART);
    expect(found.map(({ cubics }) => cubics)).toEqual(LILY.contours);
    expect(found.every(({ closed }) => closed)).toBe(true);
  });

  it('run a sliver once, from end to end', () => {
    const [stroke, ...more] = outlines(rectangle(0, 0, 10, 0.1), APART);
    expect(more).toEqual([]);
    expect(stroke.closed).toBe(false);
    expect(chainLength(stroke.cubics)).toBeCloseTo(10, 0);
  });

  it('run a slim post whose width changes along its middle, all the way', () => {
    const post = polygon([
      { x: 0, y: 0 },
      { x: 0.3, y: 0 },
      { x: 0.2, y: 1 },
      { x: 0.2, y: 20 },
      { x: 0.1, y: 20 },
      { x: 0.1, y: 1 },
    ]);
    const [stroke, ...more] = outlines({ contours: [post] }, APART);
    expect(more).toEqual([]);
    expect(stroke.closed).toBe(false);
    expect(boundsOf([stroke.cubics]).maxY).toBeCloseTo(20, 1);
    for (const { x, y } of flatten(stroke.cubics, 0.005)) {
      if (y > 2 && y < 19) expect(x).toBeCloseTo(0.15, 1);
    }
  });

  it('run a branched sliver right round, so that no branch is lost', () => {
    const branched = union([
      rectangle(0, 0, 10, 0.1),
      rectangle(5, -6, 0.1, 6.05),
      rectangle(3, 0.05, 0.1, 6),
    ]);
    const [stroke] = outlines(branched, APART);
    for (const y of [-6, 6]) {
      const x = y < 0 ? 5.05 : 3.05;
      expect(distanceTo({ contours: [stroke.cubics] }, { x, y })!.distanceMm).toBeLessThan(0.3);
    }
  });
});

describe('dots', () => {
  it('stand on a staggered grid, each a spacing from six others', () => {
    const dots = stipple(rectangle(0, 0, 20, 20), 2).map(({ cubics }) => middleOf(cubics));
    const inner = dots.filter(({ x, y }) => x > 4 && x < 16 && y > 4 && y < 16);
    expect(inner.length).toBeGreaterThan(20);
    for (const { x, y } of inner) {
      const near = dots.filter((d) => Math.hypot(d.x - x, d.y - y) < 2 * 1.2);
      expect(near).toHaveLength(7);
      for (const d of near) {
        if (d.x === x && d.y === y) continue;
        expect(Math.hypot(d.x - x, d.y - y)).toBeCloseTo(2, 6);
      }
    }
  });

  it('lie wholly inside, and in a part that the grid misses there is one', () => {
    for (const { cubics: c } of stipple(LILY, APART)) {
      expect(containsPoint(LILY, { x: c[0], y: c[1] })).toBe(true);
      expect(containsPoint(LILY, { x: c[6], y: c[7] })).toBe(true);
    }
    expect(stipple(circle(3, 3, 0.05), APART)).toHaveLength(1);
  });
});

describe('every way', () => {
  it('doubles nothing and keeps to the region', () => {
    const ways = [
      rings(LILY, APART),
      outlines(LILY, APART),
      hatchLines(LILY, 45, APART),
      stipple(LILY, APART),
    ];
    for (const strokes of ways) {
      expect(withoutDoubles(strokes, 0.02).savedMm).toBe(0);
      for (const { cubics } of strokes) {
        for (const p of flatten(cubics, 0.01)) {
          const isIn = containsPoint(LILY, p) || distanceTo(LILY, p)!.distanceMm < 0.01;
          expect(isIn).toBe(true);
        }
      }
    }
  });
});

const ends = ({ cubics: c }: Line) => [
  { x: c[0], y: c[1] },
  { x: c[c.length - 2], y: c[c.length - 1] },
];

const RING = subtract(circle(30, 30, 12), [circle(30, 30, 5)]);

describe('hatching a ring of card', () => {
  it('covers an area: length times distance is what it is', () => {
    for (const angle of [0, 30, 45, 90, 135]) {
      const total = hatchLines(RING, angle, 0.25).reduce((sum, l) => sum + lineLength(l), 0);
      expect(total * 0.25).toBeGreaterThan(regionArea(RING) * 0.99);
      expect(total * 0.25).toBeLessThan(regionArea(RING) * 1.01);
    }
  });

  it('runs anticlockwise from the width by its angle, each line back from the one before', () => {
    const lines = hatchLines(rectangle(0, 0, 30, 20), 30, 2);
    expect(lines.length).toBeGreaterThan(10);
    const headings = lines.map((line) => {
      const [a, b] = ends(line);
      // y runs down.
      return (Math.atan2(a.y - b.y, b.x - a.x) * 180) / Math.PI;
    });
    headings.forEach((deg, k) => {
      expect(deg).toBeCloseTo(k % 2 === 0 ? 30 : -150, 6);
    });
  });

  it('ends exactly on the edge', () => {
    for (const line of hatchLines(RING, 45, 0.7)) {
      for (const end of ends(line)) expect(distanceTo(RING, end)?.distanceMm).toBeLessThan(1e-5);
    }
  });

  it('has a line even for a strip narrower than the distance, and one for each part', () => {
    const strips = { contours: [0, 1, 2].flatMap((k) => rectangle(0, 3 * k, 9, 0.2).contours) };
    const lines = hatchLines(strips, 0, 0.4);
    expect(lines.map(({ cubics }) => cubics[1]).toSorted((a, b) => a - b)).toEqual(
      [0.1, 3.1, 6.1].map((y) => expect.closeTo(y, 9)),
    );
  });
});

describe('rings in a frame', () => {
  it('goes inward from the edge until nothing is left', () => {
    const contours = rings(rectangle(0, 0, 20, 10), 1.5).map(({ cubics }) => cubics);
    // Widths 10, 7, 4, 1 and then none.
    const heights = contours.map((c) => {
      const { minY, maxY } = regionBounds({ contours: [c] });
      return maxY - minY;
    });
    expect(heights.map((h) => Math.round(h * 1000) / 1000)).toEqual([10, 7, 4, 1]);
    expect(perimeter({ contours })).toBeCloseTo(60 + 48 + 36 + 24, 3);
  });

  it('meets in the middle of a ring from both its edges', () => {
    // 7 mm wide: rings at 0, 1, 2 and 3 mm from each edge, and one along the middle.
    expect(rings(RING, 1)).toHaveLength(9);
  });
});
