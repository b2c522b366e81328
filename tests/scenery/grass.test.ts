import { describe, expect, it } from 'vitest';
import { subtract, union, xor } from '../../src/geometry/boolean/boolean.js';
import { components, containsPoint } from '../../src/geometry/components.js';
import { contourArea, flatten, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { offset } from '../../src/geometry/offset/offset.js';
import { regionOf } from '../../src/geometry/pen.js';
import { reversed } from '../../src/geometry/transform.js';
import { narrowestWeb } from '../../src/geometry/width/webs.js';
import type { Growth, Plot } from '../../src/scenery/family.js';
import { lengthOf } from '../../src/scenery/grass/arc.js';
import { bladeContours } from '../../src/scenery/grass/blade.js';
import { groundUnder } from '../../src/scenery/grass/ground.js';
import { HABITS, KINDS, type Kind } from '../../src/scenery/grass/kinds.js';
import { type Blade, type Tuft, tuftsOf } from '../../src/scenery/grass/tuft.js';
import { grass } from '../../src/scenery/grass.js';
import { randomFrom } from '../../src/scenery/random.js';
import { sillPlot } from './plots.js';

const grown = (seed: number, kind: Kind, plot: Partial<Plot> = {}, wind = 8): Growth =>
  grass.grow(sillPlot(plot), { kind, wind }, randomFrom(seed, 'grass'));

const tufts = (seed: number, kind: Kind, plot: Partial<Plot> = {}, wind = 8): Tuft[] =>
  tuftsOf(sillPlot(plot), HABITS[kind], wind, randomFrom(seed, 'grass'));

/** The blades without heads of many plots. */
const plainBlades = (kind: Kind, plots: number, plot: Partial<Plot> = {}): Blade[] =>
  Array.from({ length: plots }, (_, seed) => tufts(seed, kind, plot))
    .flat()
    .flatMap((tuft) => tuft.blades)
    .filter((blade) => blade.head === null);

const bytes = ({ body, scores }: Growth): string =>
  JSON.stringify([...body.contours, ...scores.map((s) => s.cubics)].map((c) => [...c]));

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

describe('grass', () => {
  it.each(KINDS)('is one rooted piece with webs and holes that can be cut: %s', (kind) => {
    for (let seed = 0; seed < 40; seed++) {
      const web = seed % 4 === 3 ? 1.5 : 1;
      const plot = { height: 12 + (seed % 6) * 5, smallestWeb: web, smallestHole: web };
      const { body, holes } = grown(seed, kind, { ...plot, fineness: (seed % 5) / 4 });
      expect(holes.contours).toEqual([]);
      expect(components(body), `seed ${seed}`).toHaveLength(1);
      expect(narrowestWeb(body, 0.95 * web), `seed ${seed}`).toBeNull();
      for (const x of [-33, -10, 12, 33]) expect(containsPoint(body, { x, y: 5 })).toBe(true);
      for (const hole of body.contours.filter((c) => contourArea(c) < 0)) {
        const eyelet = { contours: [reversed(hole)] };
        // Common practice, no source: eyelets under 2 mm are filled.
        expect(regionArea(eyelet), `seed ${seed}`).toBeGreaterThan(0.8 * Math.PI);
      }
    }
  });

  it.each(KINDS)('draws the same bytes from the same seed and others from another: %s', (kind) => {
    expect(bytes(grown(3, kind))).toBe(bytes(grown(3, kind)));
    expect(bytes(grown(3, kind))).not.toBe(bytes(grown(4, kind)));
  });

  it.each(KINDS)('draws a sibling at a slightly other size: %s', (kind) => {
    const own = grown(5, kind).body;
    const sibling = grown(5, kind, { width: 69.4, height: 23.8, fineness: 0.03 }).body;
    const stranger = grown(6, kind).body;
    const unlike = (other: typeof own) => regionArea(xor(own, other));
    expect(unlike(sibling)).toBeLessThan(0.5 * unlike(stranger));
  });

  it('carries the same tufts when the plot grows wider', () => {
    const wide = new Map(tufts(2, 'meadow', { width: 120 }).map((t) => [t.key, t.x]));
    for (const { key, x } of tufts(2, 'meadow', { width: 80 }))
      expect(wide.get(key)).toBeCloseTo(x);
  });

  it('keeps to its plot, blades a little beyond', () => {
    for (const kind of KINDS) {
      const { minX, maxX, minY } = regionBounds(grown(3, kind).body);
      expect(minY, kind).toBeGreaterThan(-24 * 1.25);
      expect(minY, kind).toBeLessThan(-24 * 0.6);
      expect(Math.max(-minX, maxX) - 35, kind).toBeLessThan(24 * 0.35);
    }
  });

  it('bends with the wind', () => {
    const tipShift = (wind: number) =>
      middle(
        Array.from({ length: 5 }, (_, seed) => tufts(seed, 'meadow', {}, wind))
          .flat()
          .flatMap((tuft) => tuft.blades.map(({ arc }) => arc.to.x - arc.from.x)),
      );
    expect(tipShift(25)).toBeGreaterThan(tipShift(0) + 3);
    expect(tipShift(-25)).toBeLessThan(tipShift(0) - 3);
  });

  it('is finer and closer at the back than at the front', () => {
    const front = tufts(1, 'sedge');
    const back = tufts(1, 'sedge', { fineness: 1 });
    const width = (list: Tuft[]) =>
      middle(list.flatMap((tuft) => tuft.blades.map((b) => b.footHalfMm)));
    expect(width(back)).toBeLessThan(width(front));
    expect(back.length).toBeGreaterThanOrEqual(front.length);
  });
});

describe('its blades', () => {
  // Common practice, no source: tufts of 3 to 7, one blade in six 1.6 times as tall, one in ten
  // broken. A tuft may raise one stem with a head besides.
  it('grow in tufts of 3 to 7 with uneven gaps', () => {
    for (const kind of KINDS) {
      const stands = Array.from({ length: 20 }, (_, seed) => tufts(seed, kind, { width: 120 }));
      for (const tuft of stands.flat()) {
        const count = tuft.blades.filter((b) => b.head === null).length;
        expect(count).toBeGreaterThanOrEqual(3);
        expect(count).toBeLessThanOrEqual(7);
      }
      const gaps = stands.flatMap((list) => list.slice(1).map((tuft, i) => tuft.x - list[i].x));
      const mean = gaps.reduce((a, b) => a + b, 0) / gaps.length;
      const deviation = Math.sqrt(gaps.reduce((s, g) => s + (g - mean) ** 2, 0) / gaps.length);
      expect(deviation / mean, kind).toBeGreaterThan(0.25);
    }
  });

  it('are about one in six tall', () => {
    for (const kind of KINDS) {
      const heights = plainBlades(kind, 40, { width: 130 }).map((b) => b.heightMm);
      expect(heights.length).toBeGreaterThan(800);
      const tall = heights.filter((h) => h > 1.35 * middle(heights)).length / heights.length;
      expect(tall, kind).toBeGreaterThan(0.11);
      expect(tall, kind).toBeLessThan(0.22);
    }
  });

  it('are about one in ten broken', () => {
    const blades = KINDS.flatMap((kind) => plainBlades(kind, 40, { width: 130 }));
    const broken = blades.filter((b) => b.broken).length / blades.length;
    expect(broken).toBeGreaterThan(0.08);
    expect(broken).toBeLessThan(0.12);
  });

  // Common practice, no source: a slender web is at most 20 times as long as it is wide.
  it('are never too slender to stand', () => {
    for (const kind of KINDS) {
      for (const web of [1, 1.5]) {
        for (const blade of plainBlades(kind, 10, { height: 40, smallestWeb: web })) {
          expect(lengthOf(blade.arc) / (2 * blade.footHalfMm)).toBeLessThan(18.1);
          expect(2 * blade.footHalfMm).toBeGreaterThanOrEqual(1.25 * web);
        }
      }
    }
  });

  // Common practice, no source: tips and the creases between blades are at least 0.4 mm round.
  it('have round tips and round creases', () => {
    const { body } = grown(1, 'meadow', { width: 50 });
    const opened = offset(offset(body, -0.38), 0.38);
    const closed = offset(offset(body, 0.38), -0.38);
    for (const lost of components(subtract(body, [opened]))) {
      expect(regionArea(lost)).toBeLessThan(0.06);
    }
    for (const filled of components(subtract(closed, [body]))) {
      expect(regionArea(filled)).toBeLessThan(0.12);
    }
  });

  it('have straight or bent contours that run clockwise', () => {
    for (const blade of plainBlades('sedge', 3)) {
      for (const c of bladeContours(blade, -1, 1, 2.2)) expect(contourArea(c)).toBeGreaterThan(0);
    }
  });
});

describe('a bulrush', () => {
  const stem: Blade = {
    arc: { from: { x: 0, y: 0 }, control: { x: 0, y: -25 }, to: { x: 0, y: -45 } },
    heightMm: 45,
    footHalfMm: 1,
    broken: false,
    side: 1,
    head: 'cigar',
    ribbed: false,
  };
  const widthAt = (smallestWeb: number, y: number): number => {
    const region = union(bladeContours(stem, -2, smallestWeb, 2).map((c) => regionOf(c)));
    const xs = Array.from({ length: 801 }, (_, i) => -4 + i / 100);
    return xs.filter((x) => containsPoint(region, { x, y })).length / 100;
  };

  // Common practice, no source: a head of 3 by 16 mm on a stem of 1.2 mm.
  it('has its customary proportions', () => {
    const head = Array.from({ length: 90 }, (_, i) => -i / 2).filter((y) => widthAt(1, y) > 2);
    expect(Math.max(...head) - Math.min(...head)).toBeGreaterThan(13.5);
    expect(Math.max(...head) - Math.min(...head)).toBeLessThan(18.5);
    expect(widthAt(1, (Math.max(...head) + Math.min(...head)) / 2)).toBeCloseTo(3, 1);
    expect(widthAt(1, -8)).toBeGreaterThan(1.15);
    expect(widthAt(1, -8)).toBeLessThan(1.7);
  });

  it('never has a stem thinner than the smallest web', () => {
    for (const y of [-4, -10, -16]) expect(widthAt(2, y)).toBeGreaterThanOrEqual(2);
  });

  it('stands among the reeds, and ears in the meadow', () => {
    const heads = (kind: Kind) =>
      Array.from({ length: 6 }, (_, seed) => tufts(seed, kind, { width: 120 }))
        .flat()
        .flatMap((tuft) => tuft.blades.flatMap((b) => b.head ?? []));
    expect(new Set(heads('reeds'))).toEqual(new Set(['cigar']));
    expect(new Set(heads('meadow'))).toEqual(new Set(['ear']));
    expect(heads('sedge')).toEqual([]);
  });
});

describe('the ground', () => {
  // Common practice, no source: the foot line wanders by up to 3 mm.
  it('wanders within 3 mm and never bares the edge it covers', () => {
    for (let seed = 0; seed < 20; seed++) {
      const plot = sillPlot({ width: 120 });
      const list = tuftsOf(plot, HABITS.meadow, 8, randomFrom(seed));
      const { contour, footY } = groundUnder(plot, list, HABITS.meadow.moundMm, randomFrom(seed));
      const line = flatten(contour, 0.01).filter((p) => Math.abs(p.x) < 55 && p.y < 3);
      const ys = line.map((p) => p.y);
      expect(Math.min(...ys)).toBeGreaterThan(-3.1);
      expect(Math.max(...ys)).toBeLessThan(0.5);
      expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThan(0.8);
      expect(footY).toHaveLength(list.length);
    }
  });
});
