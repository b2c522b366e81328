import { describe, expect, it } from 'vitest';
import { intersect, subtract, union } from '../../src/geometry/boolean/boolean.js';
import { shortestBridge } from '../../src/geometry/bridge.js';
import { components, distanceTo, holeCount } from '../../src/geometry/components.js';
import { flatten, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { polygon, regionOf } from '../../src/geometry/pen.js';
import { circle, ellipse, rectangle } from '../../src/geometry/primitives.js';
import { inOrder, moveRegion, rotation, translation } from '../../src/geometry/transform.js';
import type { Point, Region } from '../../src/geometry/types.js';
import { narrowestWeb, narrowWebs } from '../../src/geometry/width/webs.js';
import { type Random, randomFrom } from '../../src/scenery/random.js';
import { anywhere, blob } from './reference.js';
import { leaf } from './shapes.js';

const frame = subtract(rectangle(0, 0, 60, 60), [rectangle(8, 8, 44, 44)]);
const pieces = (...regions: Region[]): number => components(union(regions)).length;

describe('a bridge between two pieces', () => {
  it('spans the nearest gap between an island and its frame', () => {
    const island = circle(20, 30, 8);
    const { bridge, lengthMm, from, to } = shortestBridge(island, frame, 1.5)!;
    expect(lengthMm).toBeCloseTo(4, 3);
    expect(from.x).toBeCloseTo(12, 3);
    expect(to.x).toBeCloseTo(8, 3);
    expect(from.y).toBeCloseTo(to.y, 1);
    expect(pieces(island, frame)).toBe(2);
    expect(pieces(island, frame, bridge)).toBe(1);
    expect(holeCount(union([island, frame, bridge]))).toBe(1);
  });

  it('is as wide as asked in its middle and wider at its ends', () => {
    const [left, right] = [rectangle(0, 0, 20, 40), rectangle(32, 0, 20, 40)];
    const { bridge } = shortestBridge(left, right, 2)!;
    const joined = union([left, right, bridge]);
    expect(narrowestWeb(joined, 6)!.widthMm).toBeCloseTo(2, 2);
    const { minX, maxX, minY, maxY } = regionBounds(bridge);
    expect(minX).toBeLessThan(20);
    expect(maxX).toBeGreaterThan(32);
    expect(maxY - minY).toBeCloseTo(3, 2);
    expect(minY).toBeGreaterThan(0);
    expect(maxY).toBeLessThan(40);
  });

  it('does not come out on the far side of slender card', () => {
    const [bar, plate] = [rectangle(0, 0, 30, 0.8), rectangle(0, 6, 30, 20)];
    const { bridge } = shortestBridge(bar, plate, 1.5)!;
    expect(regionBounds(bridge).minY).toBeGreaterThan(0);
    expect(pieces(bar, plate, bridge)).toBe(1);
  });

  it('prefers firm card to a corner that is as near', () => {
    const [bracket, plate] = [rectangle(0, 0, 30, 4), rectangle(-20, 10, 70, 20)];
    const { from, bridge } = shortestBridge(bracket, plate, 1.5)!;
    expect(from.x).toBeGreaterThan(1);
    expect(from.x).toBeLessThan(29);
    expect(narrowestWeb(union([bracket, plate, bridge]), 3.5)!.widthMm).toBeCloseTo(1.5, 2);
  });

  it('runs into a pointed tip until the tip is as wide as the bridge', () => {
    const leaf = regionOf(
      polygon([
        { x: 30, y: 50 },
        { x: 18, y: 28 },
        { x: 42, y: 28 },
      ]),
    );
    const { bridge, lengthMm } = shortestBridge(leaf, frame, 1.5)!;
    expect(lengthMm).toBeCloseTo(2, 6);
    const necks = narrowWebs(union([leaf, frame, bridge]), 1.5).filter((p) => p.kind === 'neck');
    expect(necks).toEqual([]);
  });

  it('keeps clear of others, and is nothing where it cannot', () => {
    const island = circle(30, 30, 4);
    const stone = circle(14, 30, 3);
    const near = circle(18, 30, 8);
    const free = shortestBridge(near, frame, 1.5, circle(9, 30, 0.8))!;
    expect(regionArea(intersect(free.bridge, circle(9, 30, 0.8)))).toBeLessThan(1e-3);
    expect(pieces(near, frame, free.bridge)).toBe(1);
    const moat = subtract(circle(30, 30, 12), [circle(30, 30, 10)]);
    expect(shortestBridge(island, frame, 1.5, moat)).toBeNull();
    expect(shortestBridge(island, stone, 1.5)).not.toBeNull();
  });

  it('makes no hole by touching a second arm', () => {
    // Two prongs 1 mm apart: a strip 4 mm wide on either would shut the slot between them.
    const fork = subtract(rectangle(20, 10, 3, 20), [rectangle(21, 9, 1, 18)]);
    const { bridge, lengthMm } = shortestBridge(fork, frame, 4)!;
    const joined = union([fork, frame, bridge]);
    expect(holeCount(joined)).toBe(1);
    expect(components(joined)).toHaveLength(1);
    expect(lengthMm).toBeGreaterThan(2.5);
  });

  it('is nothing between pieces that touch, or without a piece', () => {
    expect(shortestBridge(rectangle(0, 0, 5, 5), rectangle(5, 0, 5, 5), 1)).toBeNull();
    expect(shortestBridge(rectangle(0, 0, 5, 5), { contours: [] }, 1)).toBeNull();
    expect(shortestBridge({ contours: [] }, rectangle(0, 0, 5, 5), 1)).toBeNull();
  });

  it('is the same one way round, and turned', () => {
    const island = circle(20, 30, 8);
    const there = shortestBridge(island, frame, 1.5)!;
    const back = shortestBridge(frame, island, 1.5)!;
    expect(back.lengthMm).toBeCloseTo(there.lengthMm, 9);
    expect(back.from.x).toBeCloseTo(there.to.x, 6);
    const turn = rotation(37);
    const turned = shortestBridge(moveRegion(island, turn), moveRegion(frame, turn), 1.5)!;
    expect(turned.lengthMm).toBeCloseTo(there.lengthMm, 2);
  });
});

describe('seeded pairs of pieces', () => {
  it('become one piece without a new hole, over the shortest gap or little more', () => {
    let pairs = 0;
    for (let k = 0; k < 30; k++) {
      const random = randomFrom(60, 'bridge', k);
      const [a, b] = [0, 1].map(() => regionOf(blob(random, anywhere(random), 15)));
      if (pieces(a, b) !== 2) continue;
      pairs++;
      const found = shortestBridge(a, b, 1.5);
      expect(found, `case ${k}`).not.toBeNull();
      const joined = union([a, b, found!.bridge]);
      expect(components(joined), `case ${k}`).toHaveLength(1);
      expect(holeCount(joined), `case ${k}`).toBe(0);
      expect(distanceTo(a, found!.from)!.distanceMm).toBeLessThan(0.003);
      expect(distanceTo(b, found!.to)!.distanceMm).toBeLessThan(0.003);
      const nearest = Math.min(
        ...Array.from({ length: 400 }, (_, n) => {
          const c = a.contours[0];
          const i = Math.floor((n / 400) * (c.length / 8)) * 8;
          return distanceTo(b, { x: c[i], y: c[i + 1] })!.distanceMm;
        }),
      );
      expect(found!.lengthMm).toBeLessThan(nearest + 4 * 1.5);
    }
    expect(pairs).toBeGreaterThan(15);
  });
});

describe('against brute force', () => {
  const CHORD_MM = 0.005;

  /** How far b is from the segment from p to q. */
  const fromSegment = (p: Point, q: Point, b: Point): number => {
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const along = ((b.x - p.x) * dx + (b.y - p.y) * dy) / (dx * dx + dy * dy || 1);
    const f = Math.max(0, Math.min(1, along));
    return Math.hypot(p.x + f * dx - b.x, p.y + f * dy - b.y);
  };

  /** The gap between two single contours, every chord of one against every chord of the other. */
  function gapBetween(a: Region, b: Region): number {
    const [p, q] = [a, b].map((r) => flatten(r.contours[0], CHORD_MM));
    let least = Infinity;
    for (let i = 0; i + 1 < p.length; i++) {
      for (let j = 0; j + 1 < q.length; j++) {
        least = Math.min(
          least,
          fromSegment(p[i], p[i + 1], q[j]),
          fromSegment(q[j], q[j + 1], p[i]),
        );
      }
    }
    return least;
  }

  const placed = (region: Region, random: Random): Region =>
    moveRegion(
      region,
      inOrder(
        rotation(random.between(0, 360)),
        translation(random.between(0, 25), random.between(0, 25)),
      ),
    );

  it('spans the very gap between round pieces, which are sound all over', () => {
    for (let k = 0; k < 30; k++) {
      const random = randomFrom(83, 'round', k);
      const [a, b] = [0, 1].map(() =>
        placed(ellipse(0, 0, random.between(3, 6), random.between(3, 6)), random),
      );
      if (pieces(a, b) !== 2) continue;
      const { lengthMm } = shortestBridge(a, b, 0.5)!;
      expect(Math.abs(lengthMm - gapBetween(a, b)), `case ${k}`).toBeLessThan(0.01);
    }
  });

  it('finds a sound bridge for each of 200 pairs of leaves and blots, none too short', () => {
    let pairs = 0;
    for (let k = 0; pairs < 200; k++) {
      const random = randomFrom('bridge', k);
      const [a, b] = [0, 1].map(() =>
        placed(
          random.chance(0.6)
            ? leaf(random.between(4, 14), random.between(0.8, 3))
            : regionOf(blob(random, { x: 0, y: 0 }, random.between(3, 8))),
          random,
        ),
      );
      if (pieces(a, b) !== 2) continue;
      pairs++;
      const found = shortestBridge(a, b, 1);
      expect(found, `case ${k}`).not.toBeNull();
      const joined = union([a, b, found!.bridge]);
      expect([components(joined).length, holeCount(joined)], `case ${k}`).toEqual([1, 0]);
      const gap = gapBetween(a, b);
      expect(found!.lengthMm, `case ${k}`).toBeGreaterThan(gap - 0.01);
      // A longer way is taken where the nearest card is too slender to hold the strip's end.
      expect(found!.lengthMm, `case ${k}`).toBeLessThan(2 * gap + 4);
    }
  });
});
