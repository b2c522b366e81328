import { describe, expect, it } from 'vitest';
import { intersect, subtract, union } from '../../../src/geometry/boolean/boolean.js';
import { containsPoint } from '../../../src/geometry/components.js';
import { regionArea } from '../../../src/geometry/measure.js';
import { offset } from '../../../src/geometry/offset/offset.js';
import { polygon, regionOf } from '../../../src/geometry/pen.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import {
  inOrder,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/transform.js';
import type { Region } from '../../../src/geometry/types.js';
import { type Sliver, sliverGaps, slivers } from '../../../src/geometry/width/slivers.js';
import { fineCircle, seeded, shapes, strewnLeaves } from '../shapes.js';

const shape = (...points: [number, number][]): Region =>
  regionOf(polygon(points.map(([x, y]) => ({ x, y }))));
const kinds = (found: readonly Sliver[]) => found.map((s) => s.kind);

/** A plate with a blade whose width falls evenly from 2 mm to nothing over 20 mm. */
const blade = union([rectangle(0, -10, 10, 20), shape([9.9, -1.01], [30, 0], [9.9, 1.01])]);

describe('slivers of card', () => {
  it('are cut off where the card gets as wide as asked', () => {
    const moves = [0, 90, 143, 217].flatMap((degrees) => [
      inOrder(rotation(degrees), translation(5, 3)),
      inOrder(scaling(-1, 1), rotation(degrees)),
    ]);
    for (const move of moves) {
      const [tip, ...others] = slivers(moveRegion(blade, move), 1);
      expect(others).toEqual([]);
      expect(tip.kind).toBe('tip');
      // 1 mm wide 10 mm from the point: a triangle of 5 mm2.
      expect(Math.abs(tip.areaMm2 - 5)).toBeLessThan(0.25);
      expect(Math.abs(tip.lengthMm - 10)).toBeLessThan(0.3);
      expect(tip.widthMm).toBeCloseTo(0.5, 1);
      expect(tip.widthMm).toBeCloseTo(tip.areaMm2 / tip.lengthMm, 12);
      expect(regionArea(tip.region)).toBeCloseTo(tip.areaMm2, 12);
    }
  });

  it('are no webs, no corners, and none where more length is asked', () => {
    const barbell = union([
      rectangle(0, 0, 10, 10),
      rectangle(20, 0, 10, 10),
      rectangle(9, 4.5, 12, 1),
    ]);
    expect(slivers(barbell, 1.5)).toEqual([]);
    expect(slivers(blade, 1, 25)).toEqual([]);
    expect(slivers(blade, 1, 15)).toHaveLength(1);
    expect(slivers({ contours: [] }, 1)).toEqual([]);
  });

  it('are whole parts too: the crescent between two near copies', () => {
    // Two circles of radius 10 a little apart: what one has more, 2 r d for small d.
    for (const apart of [0.5, 0.2, 0.05, 0.02]) {
      const crescent = subtract(fineCircle(apart, 0, 10), [fineCircle(0, 0, 10)]);
      const [found, ...others] = slivers(crescent, 1);
      expect(others).toEqual([]);
      expect(found.kind).toBe('whole');
      expect(Math.abs(found.areaMm2 / (20 * apart) - 1)).toBeLessThan(0.01);
      expect(Math.abs(found.lengthMm - 10 * Math.PI)).toBeLessThan(0.5);
      expect(found.region.contours).toEqual(crescent.contours);
    }
  });

  // The other route: what an opening by half the width removes.
  it('are what an opening removes', () => {
    let count = 0;
    for (const seed of [11, 12, 13]) {
      const crown = union(strewnLeaves(60, seed));
      const found = slivers(crown, 0.8, 2);
      count += found.length;
      const opened = offset(offset(crown, -0.4), 0.4);
      for (const { region, areaMm2, at } of found) {
        const left = regionArea(intersect(region, opened));
        // The opening's round end reaches into a tip as far as its circle does: 0.4 (1 - pi / 4) 2.
        expect(left / areaMm2).toBeLessThan(0.4);
        expect(containsPoint(crown, at)).toBe(true);
        expect(regionArea(subtract(region, [crown]))).toBeLessThan(1e-4);
      }
    }
    expect(count).toBeGreaterThan(4);
  });
});

describe('sliver gaps', () => {
  it('are slits, notch ends and gaps that are open at both ends', () => {
    const plate = subtract(rectangle(0, 0, 60, 40), [
      rectangle(10, 10, 20, 0.5),
      shape([40, 41], [42, 41], [41, 20]),
    ]);
    const card = union([plate, rectangle(60.4, 0, 20, 40)]);
    const found = sliverGaps(card, 1);
    expect(kinds(found).sort()).toEqual(['gap', 'tip', 'whole']);
    const of = (kind: Sliver['kind']): Sliver => found.find((s) => s.kind === kind)!;
    expect(of('whole').areaMm2).toBeCloseTo(10, 9);
    expect(of('whole').widthMm).toBeCloseTo(0.5, 1);
    expect(of('gap').areaMm2).toBeCloseTo(16, 0);
    expect(of('gap').widthMm).toBeCloseTo(0.4, 2);
    // The notch is 2 mm wide where 21 mm deep, so 1 mm wide 10.5 mm from its end.
    expect(Math.abs(of('tip').areaMm2 - 5.25)).toBeLessThan(0.3);
    const filled = union([card, ...found.map((s) => s.region)]);
    const sum = found.reduce((total, s) => total + s.areaMm2, 0);
    expect(regionArea(filled)).toBeCloseTo(regionArea(card) + sum, 2);
    expect(sliverGaps(filled, 0.9)).toEqual([]);
  });

  it('are the whole of a gap round a part that all but fills a hole', () => {
    const card = {
      contours: [
        ...subtract(rectangle(-20, -20, 40, 40), [circle(0, 0, 10)]).contours,
        ...circle(0, 0, 9.9).contours,
      ],
    };
    const [gap, ...others] = sliverGaps(card, 0.5);
    expect(others).toEqual([]);
    expect(gap.kind).toBe('gap');
    expect(gap.areaMm2).toBeCloseTo(Math.PI * (100 - 9.9 ** 2), 1);
    expect(gap.lengthMm).toBeCloseTo(Math.PI * 19.9, 0);
    expect(gap.widthMm).toBeCloseTo(0.1, 2);
  });

  it('are left by shapes that nearly coincide with the holes they should fill', () => {
    let count = 0;
    for (let seed = 1; seed <= 6; seed++) {
      const [made] = shapes(seeded(seed), 'free', 2);
      const plate = subtract(rectangle(-60, -60, 200, 200), [made]);
      const card = union([plate, moveRegion(made, translation(0.15, 0.1))]);
      const found = sliverGaps(card, 0.5);
      const missing = 200 * 200 - regionArea(card);
      const sum = found.reduce((total, s) => total + s.areaMm2, 0);
      if (missing < 0.05) continue;
      count++;
      expect(Math.abs(sum / missing - 1), `seed ${seed}`).toBeLessThan(0.02);
    }
    expect(count).toBeGreaterThan(3);
  });

  it('are none of nothing, nor in a plate with sound openings', () => {
    expect(sliverGaps({ contours: [] }, 1)).toEqual([]);
    expect(sliverGaps(subtract(rectangle(0, 0, 40, 40), [circle(20, 20, 10)]), 1)).toEqual([]);
  });
});
