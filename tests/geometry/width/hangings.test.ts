import { describe, expect, it } from 'vitest';
import { subtract, union } from '../../../src/geometry/boolean/boolean.js';
import { components, holeCount } from '../../../src/geometry/components.js';
import { regionArea } from '../../../src/geometry/measure.js';
import { offset, stroke } from '../../../src/geometry/offset/offset.js';
import { circle, rectangle } from '../../../src/geometry/primitives.js';
import {
  inOrder,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/transform.js';
import type { Region } from '../../../src/geometry/types.js';
import { type Hangings, hangings } from '../../../src/geometry/width/hangings.js';
import { randomFrom } from '../../../src/scenery/random.js';
import { blobs, wanderer } from '../reference.js';
import { leaf, strewnLeaves } from '../shapes.js';

const eulerOf = (region: Region): number => components(region).length - holeCount(region);
const singles = ({ links }: Hangings) =>
  links.filter((link) => link.webs.length === 1 && link.holds.length > 0);

/** What must hold of any region: nothing lost, and each cut across adds 1 to pieces less holes. */
function expectSound(region: Region, hung: Hangings, label = ''): void {
  const whole = regionArea(region);
  const sum = hung.parts.reduce((total, part) => total + part.areaMm2, 0);
  expect(Math.abs(sum - whole), label).toBeLessThan(1e-6 * whole);
  for (const part of hung.parts) {
    expect(part.areaMm2, label).toBeGreaterThan(0);
    expect(regionArea(part.region), label).toBeCloseTo(part.areaMm2, 9);
    expect(components(part.region), label).toHaveLength(1);
  }
  // Euler characteristic of a flat sheet = pieces - holes: any topology text (from memory).
  const gained =
    hung.parts.reduce((total, { region: r }) => total + eulerOf(r), 0) - eulerOf(region);
  const webs = hung.links.flatMap((link) => link.webs);
  // Tips that touch in a point are webs too, but need no cut.
  expect(gained, label).toBeLessThanOrEqual(webs.length);
  expect(gained, label).toBeGreaterThanOrEqual(webs.filter((web) => web.widthMm > 0).length);
}

const discs = (...xs: number[]): Region[] => xs.map((x) => circle(x, 0, 10));
const bar = (from: number, to: number, widthMm: number): Region =>
  rectangle(from, -widthMm / 2, to - from, widthMm);

describe('a chain of three discs', () => {
  const chain = union([...discs(0, 30, 60), bar(5, 25, 1), bar(35, 55, 0.6)]);

  it('is three parts on two single webs', () => {
    for (const move of [rotation(0), rotation(37), inOrder(scaling(-1, 1), rotation(211))]) {
      const turned = moveRegion(chain, move);
      const hung = hangings(turned, 1.5);
      expectSound(turned, hung);
      expect(hung.parts.map((p) => p.isNarrow)).toEqual([false, false, false]);
      expect(hung.links).toHaveLength(2);
      expect(singles(hung)).toHaveLength(2);
      const widths = hung.links.map((link) => link.widthMm).sort();
      expect(widths[0]).toBeCloseTo(0.6, 3);
      expect(widths[1]).toBeCloseTo(1, 3);
      for (const link of hung.links) expect(link.holds).toHaveLength(1);
    }
  });

  it('is fewer parts where less width is asked', () => {
    expect(hangings(chain, 0.8).parts).toHaveLength(2);
    expect(hangings(chain, 0.5).parts).toHaveLength(1);
    expect(hangings(chain, 0.5).links).toEqual([]);
  });

  it('is cut in the middle of its bars: half of each goes with either disc', () => {
    const areas = hangings(chain, 1.5).parts.map((part) => part.areaMm2);
    const [disc, half] = [regionArea(circle(0, 0, 10)), 5];
    // Each disc and 5 mm of every bar at it, from a chord of the disc as wide as the bar.
    expect(areas[0]).toBeCloseTo(disc + half * (1 + 0.6), 0);
    expect(areas[1]).toBeCloseTo(disc + half * 1, 0);
    expect(areas[2]).toBeCloseTo(disc + half * 0.6, 0);
  });
});

describe('a ring', () => {
  const ring = subtract(circle(0, 0, 20), [circle(0, 0, 12)]);
  const notched = (...degrees: number[]): Region =>
    subtract(
      ring,
      degrees.map((d) => moveRegion(circle(22.8, 0, 10), rotation(d))),
    );

  it('with two necks hangs on two webs, not on one', () => {
    const region = notched(0, 180);
    const hung = hangings(region, 1.5);
    expectSound(region, hung);
    expect(hung.parts).toHaveLength(2);
    expect(hung.links).toHaveLength(1);
    expect(hung.links[0].webs).toHaveLength(2);
    expect(hung.links[0].widthMm).toBeCloseTo(1.6, 2);
    expect(hung.links[0].holds).toEqual([1]);
    expect(singles(hung)).toEqual([]);
  });

  it('with three necks holds each part twice over', () => {
    const region = notched(0, 120, 240);
    const hung = hangings(region, 1.5);
    expectSound(region, hung);
    expect(hung.links.map((l) => l.between)).toEqual([
      [0, 1],
      [0, 2],
      [1, 2],
    ]);
    for (const link of hung.links) expect(link.holds).toEqual([]);
  });

  it('with one neck is one part that loops back to itself', () => {
    const region = notched(0);
    const hung = hangings(region, 1.5);
    expectSound(region, hung);
    expect(hung.parts).toHaveLength(1);
    expect(hung.links[0].between).toEqual([0, 0]);
    expect(hung.links[0].holds).toEqual([]);
    expect(holeCount(hung.parts[0].region)).toBe(0);
  });

  it('narrow all round is one narrow part', () => {
    const band = subtract(circle(0, 0, 10), [circle(0, 0, 9)]);
    const hung = hangings(band, 1.5);
    expectSound(band, hung);
    expect(hung.parts.map((p) => p.isNarrow)).toEqual([true]);
  });
});

describe('what hangs on a back', () => {
  it('of a comb: each tooth on a web of its own, its tip free', () => {
    const teeth = Array.from({ length: 5 }, (_, k) =>
      union([rectangle(8 * k, 0, 0.8, 6), circle(8 * k + 0.4, 9, 3.2)]),
    );
    const comb = union([rectangle(-5, -10, 45, 10), ...teeth]);
    const hung = hangings(comb, 1.2);
    expectSound(comb, hung);
    expect(hung.parts).toHaveLength(6);
    expect(singles(hung)).toHaveLength(5);
    for (const { between, holds, widthMm } of hung.links) {
      expect(between[0]).toBe(0);
      expect(holds).toEqual([between[1]]);
      expect(widthMm).toBeCloseTo(0.8, 3);
    }
    // Teeth that are only narrow hang on nothing: they are tips.
    const plain = union([rectangle(-5, -10, 45, 10), rectangle(8, -1, 0.8, 12)]);
    expect(hangings(plain, 1.2).links).toEqual([]);
  });

  it('of a twig: a leaf on its stalk', () => {
    const twig = union([
      rectangle(-20, 0, 40, 6),
      rectangle(-0.3, -6, 0.6, 7),
      moveRegion(leaf(14, 4), inOrder(rotation(-90), translation(0, -5))),
    ]);
    const hung = hangings(twig, 1.5);
    expectSound(twig, hung);
    expect(hung.parts).toHaveLength(2);
    const [link] = singles(hung);
    expect(link.widthMm).toBeCloseTo(0.6, 2);
    expect(link.holds).toEqual([1]);
    // The leaf can go on another leaf: what holds the first holds both.
    const second = union([twig, rectangle(-0.25, -23, 0.5, 6), circle(0, -26, 4)]);
    const further = hangings(second, 1.5);
    expectSound(second, further);
    expect(
      singles(further)
        .map((l) => l.holds.length)
        .sort(),
    ).toEqual([1, 2]);
  });

  it('by three arms that meet: a narrow part joins them', () => {
    const arm = (degrees: number): Region =>
      moveRegion(union([rectangle(-0.5, 0, 1, 12), circle(0, 12, 3)]), rotation(degrees));
    const star = union([arm(0), arm(120), arm(240)]);
    const hung = hangings(star, 1.5);
    expectSound(star, hung);
    expect(hung.parts.map((p) => p.isNarrow)).toEqual([false, false, false, true]);
    expect(hung.links.map((l) => l.between)).toEqual([
      [0, 3],
      [1, 3],
      [2, 3],
    ]);
  });
});

describe('parts that touch, or lie apart', () => {
  const square = rectangle(0, 0, 10, 10);
  const touching = { contours: [...square.contours, ...rectangle(10, 10, 10, 10).contours] };

  it('in a point hang on a web of no width', () => {
    const hung = hangings(touching, 1.5);
    expect(hung.parts).toHaveLength(2);
    expect(hung.links).toHaveLength(1);
    expect(hung.links[0].widthMm).toBe(0);
    expect(hung.links[0].holds).toHaveLength(1);
    // A frame whose two square windows touch: the ring of card is whole, its middle hangs by 0.
    const windows = subtract(rectangle(-10, -10, 40, 40), [touching]);
    expectSound(windows, hangings(windows, 1.5));
  });

  it('do not hang at all where they lie apart', () => {
    const apart = { contours: [...square.contours, ...rectangle(30, 0, 1, 10).contours] };
    const { parts, links } = hangings(apart, 1.5);
    expect(parts.map((p) => p.isNarrow)).toEqual([false, true]);
    expect(links).toEqual([]);
    expect(hangings({ contours: [] }, 1.5)).toEqual({ parts: [], links: [] });
  });
});

describe('two webs side by side', () => {
  it('are both counted', () => {
    const slit = subtract(union([...discs(0, 30), bar(5, 25, 1.2)]), [
      rectangle(10.5, -0.2, 9, 0.4),
    ]);
    const hung = hangings(slit, 1.1);
    expectSound(slit, hung);
    expect(hung.links).toHaveLength(1);
    expect(hung.links[0].webs).toHaveLength(2);
    expect(hung.links[0].widthMm).toBeCloseTo(0.8, 2);
  });
});

describe('seeded scenery', () => {
  const WIDTH = 1.2;
  const cases = Array.from({ length: 8 }, (_, k) => {
    const random = randomFrom(70, 'webs', k);
    const stems = Array.from({ length: 6 }, () =>
      stroke([wanderer(random)], random.between(0.6, 2.5)),
    );
    const frame = subtract(rectangle(-10, -10, 120, 120), [rectangle(2, 2, 96, 96)]);
    return union([blobs(random), frame, ...stems]);
  });

  it('comes apart without loss, each cut counted', () => {
    cases.forEach((region, k) => {
      expectSound(region, hangings(region, WIDTH), `case ${k}`);
    });
    for (const seed of [3, 4]) {
      const crown = union(strewnLeaves(150, seed));
      expectSound(crown, hangings(crown, 0.8), `crown ${seed}`);
    }
  });

  // The other route: what an erosion by half the width leaves apart are different parts, and no
  // part comes apart by an erosion that leaves room for rounding.
  it('has as its parts what an erosion leaves whole', () => {
    const cores = (region: Region, widthMm: number, leastMm2 = 0.5): number =>
      components(offset(region, -widthMm / 2)).filter((c) => regionArea(c) > leastMm2).length;
    cases.slice(0, 5).forEach((region, k) => {
      const { parts } = hangings(region, WIDTH);
      for (const part of parts) {
        expect(cores(part.region, WIDTH - 0.03), `case ${k}`).toBeLessThan(2);
        if (part.isNarrow) expect(cores(part.region, WIDTH), `case ${k}`).toBe(0);
      }
      const withCore = parts.filter((part) => cores(part.region, WIDTH) > 0).length;
      expect(withCore, `case ${k}`).toBeGreaterThanOrEqual(cores(region, WIDTH - 0.03, 1));
      expect(withCore, `case ${k}`).toBeLessThanOrEqual(cores(region, WIDTH));
    });
  });
});
