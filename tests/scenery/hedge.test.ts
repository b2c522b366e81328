import { describe, expect, it } from 'vitest';
import { subtract, xor } from '../../src/geometry/boolean/boolean.js';
import { components, containsPoint, distanceTo } from '../../src/geometry/components.js';
import { contourArea, flatten, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { offset } from '../../src/geometry/offset/offset.js';
import { polyline } from '../../src/geometry/pen.js';
import { reversed } from '../../src/geometry/transform.js';
import type { Cubics, Point, Region } from '../../src/geometry/types.js';
import { narrowestWeb } from '../../src/geometry/width/webs.js';
import { nibbledLine } from '../../src/scenery/edge.js';
import type { Growth, Plot } from '../../src/scenery/family.js';
import { hedge } from '../../src/scenery/hedge.js';
import { randomFrom } from '../../src/scenery/random.js';
import { sillPlot } from './plots.js';

type Values = Parameters<typeof hedge.grow>[1];

const FORMS = ['straight', 'tapered', 'round', 'ball', 'loose'] as const;
const SIZES = [
  [100, 34],
  [60, 26],
  [80, 45],
  [44, 30],
  [110, 22],
  [70, 50],
] as const;

const plain: Values = {
  form: 'straight',
  balls: 2,
  light: 'left',
  slits: 4,
  texture: 0.5,
  blossom: 'none',
};

const plotOf = (changes: Partial<Plot>): Plot => sillPlot({ width: 90, height: 36, ...changes });

const grown = (seed: number, values: Partial<Values> = {}, plot: Partial<Plot> = {}): Growth =>
  hedge.grow(plotOf(plot), { ...plain, ...values }, randomFrom(seed, 'hedge'));

const cardOf = ({ body, holes }: Growth): Region => subtract(body, [holes]);
const bytes = ({ body, holes, scores }: Growth): string =>
  JSON.stringify([
    ...[...body.contours, ...holes.contours].map((c) => [...c]),
    ...scores.map(({ cubics }) => [...cubics]),
  ]);

/** Whether a disc of that diameter goes through the hole. */
const fits = (hole: Cubics, diameter: number): boolean => {
  const contour = contourArea(hole) > 0 ? hole : reversed(hole);
  return regionArea(offset({ contours: [contour] }, -diameter / 2)) > 0;
};

/** The convex hull, clockwise on screen (A. M. Andrew's monotone chain, IPL 9, 1979). */
function hullOf(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (list: readonly Point[]): Point[] => {
    const hull: Point[] = [];
    for (const p of list) {
      while (hull.length > 1) {
        const [a, b] = hull.slice(-2);
        if ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0) break;
        hull.pop();
      }
      hull.push(p);
    }
    return hull.slice(0, -1);
  };
  return [...chain(sorted), ...chain(sorted.reverse())];
}

/**
 * Lean of both sides from upright in degrees, below `upTo` mm: leaf tips touch the plane that the
 * shears left, so most of the hull's upright length lies in it.
 */
function leansOf(body: Region, upTo: number): { left: number; right: number } {
  const points = body.contours
    .flatMap((c) => flatten(c, 0.002))
    .filter((p) => p.y < 0 && p.y > -upTo);
  const hull = hullOf(points);
  const lean = (sign: -1 | 1): number => {
    const edges = hull
      .map((a, i) => ({ a, b: hull[(i + 1) % hull.length] }))
      .map(({ a, b }) => ({ x: a.x + b.x, rise: Math.abs(b.y - a.y), run: Math.abs(b.x - a.x) }))
      .filter(({ x, rise, run }) => Math.sign(x) === sign && rise > run)
      .sort((a, b) => a.run / a.rise - b.run / b.rise);
    const whole = edges.reduce((sum, edge) => sum + edge.rise, 0);
    let below = 0;
    const median = edges.find((edge) => {
      below += edge.rise;
      return below >= whole / 2;
    })!;
    return (Math.atan2(median.run, median.rise) * 180) / Math.PI;
  };
  return { left: lean(-1), right: lean(1) };
}

describe('a hedge', () => {
  it.each(FORMS)('is one piece that holds the smallest web, whatever the seed: %s', (form) => {
    for (let seed = 0; seed < 40; seed++) {
      const [width, height] = SIZES[seed % SIZES.length];
      const side = (['sill', 'left', 'right'] as const)[seed % 3];
      const web = seed % 4 === 3 ? 1.5 : 1;
      const values = { form, balls: 1 + (seed % 3), blossom: 'cut' } as const;
      const plot = { side, width, height, smallestWeb: web, smallestHole: web };
      const growth = grown(seed, values, { ...plot, fineness: (seed % 5) / 4 });
      const card = cardOf(growth);
      expect(components(card), `seed ${seed}`).toHaveLength(1);
      expect(narrowestWeb(card, 0.97 * web), `seed ${seed}`).toBeNull();
      for (const hole of growth.holes.contours) {
        expect(fits(hole, 0.98 * web), `seed ${seed}`).toBe(true);
      }
      const rootX = side === 'left' ? -width / 4 : side === 'right' ? width / 4 : 0;
      expect(containsPoint(card, { x: rootX, y: 5 })).toBe(true);
    }
  });

  it.each(FORMS)('draws the same bytes from the same seed and others from another: %s', (form) => {
    const values = { form, blossom: 'scored' } as const;
    expect(bytes(grown(3, values))).toBe(bytes(grown(3, values)));
    expect(bytes(grown(3, values))).not.toBe(bytes(grown(4, values)));
  });

  it.each(FORMS)('draws a sibling at a slightly other size: %s', (form) => {
    for (const seed of [1, 2, 3]) {
      const body = grown(seed, { form }).body;
      const sibling = grown(seed, { form }, { width: 89, height: 35.6, fineness: 0.05 }).body;
      expect(regionArea(xor(body, sibling))).toBeLessThan(0.06 * regionArea(body));
    }
  });

  it('is more like its sibling than like a stranger when it is loose', () => {
    const own = grown(5, { form: 'loose' }).body;
    const sibling = grown(5, { form: 'loose' }, { width: 89.5, height: 35.8 }).body;
    const stranger = grown(6, { form: 'loose' }).body;
    const unlike = (other: Region) => regionArea(xor(own, other));
    expect(unlike(sibling)).toBeLessThan(0.5 * unlike(stranger));
  });

  // Common practice, no source: sides lean in by 2 to 4 degrees.
  it.each(['straight', 'ball', 'round'] as const)(
    'keeps the batter of clipped sides: %s',
    (form) => {
      for (let seed = 0; seed < 12; seed++) {
        const upTo = form === 'straight' ? 44 : 19;
        const { left, right } = leansOf(
          grown(seed, { form }, { width: 100, height: 50 }).body,
          upTo,
        );
        for (const lean of [left, right]) {
          expect(lean, `${form} ${seed}`).toBeGreaterThan(1.9);
          expect(lean, `${form} ${seed}`).toBeLessThan(4.1);
        }
      }
    },
  );

  it('leans in well when tapered, and keeps a top', () => {
    const { body } = grown(2, { form: 'tapered' }, { width: 100, height: 40 });
    const { left, right } = leansOf(body, 34);
    expect(Math.min(left, right)).toBeGreaterThan(8);
    expect(containsPoint(body, { x: 25, y: -38 })).toBe(true);
    expect(containsPoint(body, { x: 47, y: -38 })).toBe(false);
  });

  it('reaches its plot and little further', () => {
    for (const form of FORMS) {
      const { minX, maxX, minY } = regionBounds(grown(8, { form }).body);
      const beyond = form === 'loose' ? 14 : 0.1;
      expect(minY, form).toBeLessThan(-33);
      expect(minY, form).toBeGreaterThan(-36 - beyond);
      expect(minX, form).toBeGreaterThan(-45 - beyond);
      expect(maxX, form).toBeLessThan(45 + beyond);
    }
  });

  it('runs into the jamb with a square end and stands free at the other', () => {
    for (const form of FORMS) {
      const { body } = grown(4, { form }, { side: 'left' });
      for (const y of [-1, -9, -17, 4]) {
        expect(containsPoint(body, { x: -44.6, y }), `${form} ${y}`).toBe(true);
      }
      expect(containsPoint(body, { x: 44.9, y: -34 }), form).toBe(false);
    }
  });
});

describe('the nibbled edge', () => {
  const straight = (length: number) =>
    polyline([
      { x: -length / 2, y: 0 },
      { x: length / 2, y: 0 },
    ]);
  // Common practice, no source: 0.3 to 0.6 mm deep, 2 to 4 mm from notch to notch.
  const nibble = { wavelength: [2, 4], depth: [0.3, 0.6] } as const;
  const notchesOf = (cubics: Cubics): Point[] => {
    const notches: Point[] = [];
    for (let i = 14; i + 2 < cubics.length; i += 16)
      notches.push({ x: cubics[i], y: cubics[i + 1] });
    return notches;
  };

  it('keeps wavelength and depth, and its tips keep the plane', () => {
    for (let seed = 0; seed < 20; seed++) {
      const line = nibbledLine(straight(100), 0.5, nibble, randomFrom(seed));
      const notches = notchesOf(line.cubics);
      expect(notches.length).toBeGreaterThan(25);
      // The last of each half takes what is left; all others keep to the figures.
      const steps = notches.slice(1).map((p, i) => p.x - notches[i].x);
      for (const step of steps) {
        expect(step).toBeGreaterThanOrEqual(2 - 1e-9);
        expect(step).toBeLessThanOrEqual(4 + 1e-9);
      }
      for (const { y } of notches.slice(0, -1)) {
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(0.6);
      }
      const depths = notches.map((p) => p.y).sort((a, b) => a - b);
      expect(depths[Math.floor(depths.length / 2)]).toBeGreaterThan(0.3);
      const ys = flatten(line.cubics, 0.002).map((p) => p.y);
      expect(Math.min(...ys)).toBeGreaterThan(-0.02);
      expect(ys.filter((y) => Math.abs(y) < 1e-9).length).toBeGreaterThan(25);
    }
  });

  it('carries the same leaves about its anchor when the line grows', () => {
    const near = (length: number) =>
      notchesOf(nibbledLine(straight(length), 0.5, nibble, randomFrom(9)).cubics)
        .filter((p) => Math.abs(p.x) < 30)
        .map((p) => [p.x.toFixed(6), p.y.toFixed(6)]);
    expect(near(130)).toEqual(near(100));
  });
});

describe("a hedge's light and shade", () => {
  it('cuts its slits low on the shade side, each as wide as the smallest hole', () => {
    for (let seed = 0; seed < 12; seed++) {
      const { holes } = grown(seed, { slits: 5 }, { width: 100, height: 40 });
      // Common practice, no source: 3 to 6 slits.
      expect(holes.contours.length, `seed ${seed}`).toBeGreaterThanOrEqual(3);
      expect(holes.contours.length).toBeLessThanOrEqual(5);
      for (const hole of holes.contours) {
        const { minX, minY, maxY } = regionBounds({ contours: [hole] });
        expect(minX).toBeGreaterThan(0);
        expect(minY).toBeGreaterThan(-0.4 * 40);
        expect(maxY).toBeLessThan(-1);
        expect(fits(hole, 1)).toBe(true);
      }
    }
  });

  it('turns its shade with the light', () => {
    const { holes } = grown(1, { light: 'right' });
    for (const hole of holes.contours) {
      expect(regionBounds({ contours: [hole] }).maxX).toBeLessThan(0);
    }
  });

  it('leaves its slits out when told to', () => {
    expect(grown(1, { slits: 0 }).holes.contours).toEqual([]);
  });

  it('cuts one crescent under each ball', () => {
    for (const balls of [1, 2, 3]) {
      const { holes } = grown(balls, { form: 'ball', balls, slits: 0 });
      expect(holes.contours).toHaveLength(balls);
      for (const crescent of holes.contours) {
        const { minX, maxX, minY, maxY } = regionBounds({ contours: [crescent] });
        expect(maxX - minX).toBeGreaterThan(1.5 * (maxY - minY));
        expect(fits(crescent, 1)).toBe(true);
      }
    }
  });

  it('scores its shade thickly and its light hardly at all', () => {
    for (const form of ['straight', 'round', 'loose'] as const) {
      let shade = 0;
      let light = 0;
      for (let seed = 0; seed < 6; seed++) {
        for (const { cubics } of grown(seed, { form }, { width: 100 }).scores) {
          if (cubics[0] > 0) shade++;
          else light++;
        }
      }
      expect(shade, form).toBeGreaterThan(100);
      expect(light, form).toBeLessThan(shade / 4);
    }
  });

  it('scores nothing at texture 0 and more the higher it is', () => {
    const strokes = (texture: number) => grown(2, { texture }).scores.length;
    expect(strokes(0)).toBe(0);
    expect(strokes(0.9)).toBeGreaterThan(1.3 * strokes(0.3));
  });

  it('keeps its scores on the card and clear of its cuts', () => {
    const growth = grown(3, { form: 'loose', texture: 1 });
    const card = cardOf(growth);
    for (const { cubics } of growth.scores) {
      for (const p of flatten(cubics, 0.1)) {
        expect(containsPoint(card, p)).toBe(true);
        expect(distanceTo(card, p)!.distanceMm).toBeGreaterThan(0.9);
      }
    }
  });
});

describe('blossom', () => {
  it('is cut as holes or scored as closed rings, a web apart', () => {
    const bare = grown(7, { texture: 0 });
    const cut = grown(7, { texture: 0, blossom: 'cut' });
    const scored = grown(7, { texture: 0, blossom: 'scored' });
    const flowers = cut.holes.contours.slice(bare.holes.contours.length);
    expect(flowers.length).toBeGreaterThan(5);
    expect(scored.scores.map(({ cubics }) => [...cubics])).toEqual(flowers.map((c) => [...c]));
    expect(scored.holes).toEqual(bare.holes);
    const boxes = flowers.map((c) => regionBounds({ contours: [c] }));
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        const apart = Math.hypot(
          (a.minX + a.maxX - b.minX - b.maxX) / 2,
          (a.minY + a.maxY - b.minY - b.maxY) / 2,
        );
        expect(apart - (a.maxX - a.minX + b.maxX - b.minX) / 2).toBeGreaterThan(1);
      }
    });
  });
});

describe('a loose hedge', () => {
  it('shows its stems at the foot', () => {
    for (let seed = 0; seed < 8; seed++) {
      const { holes } = grown(seed, { form: 'loose' }, { width: 100, height: 40 });
      const low = holes.contours.filter((c) => regionBounds({ contours: [c] }).maxY > -4);
      expect(low.length, `seed ${seed}`).toBeGreaterThanOrEqual(3);
    }
  });

  it('has a lumpier top than a clipped one', () => {
    const roughness = (form: Values['form']) => {
      const { body } = grown(4, { form }, { width: 100, height: 40 });
      const tops = Array.from({ length: 60 }, (_, i) => {
        const x = -30 + i;
        let y = -60;
        while (y < 0 && !containsPoint(body, { x, y })) y += 0.25;
        return y;
      });
      return Math.max(...tops) - Math.min(...tops);
    };
    expect(roughness('loose')).toBeGreaterThan(3);
    expect(roughness('straight')).toBeLessThan(1);
  });
});
