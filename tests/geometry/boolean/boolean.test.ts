import { describe, expect, it } from 'vitest';
import {
  cleanChecked,
  cleanRegion,
  intersect,
  intersectChecked,
  subtract,
  subtractChecked,
  union,
  unionChecked,
  xor,
  xorChecked,
} from '../../../src/geometry/boolean/boolean.js';
import { regionArea, regionBounds } from '../../../src/geometry/measure.js';
import { polygon, regionOf } from '../../../src/geometry/pen.js';
import { circle, ellipse, rectangle, roundedRectangle } from '../../../src/geometry/primitives.js';
import {
  moveRegion,
  reversed,
  rotation,
  scaling,
  translation,
} from '../../../src/geometry/transform.js';
import { EMPTY_REGION, type Region } from '../../../src/geometry/types.js';
import {
  chainFaults,
  facesArea,
  fineOverlay,
  jstsArea,
  jstsUnionArea,
  type Overlay,
  onGrid,
  outlineLength,
  overlapArea,
  polyclipArea,
  slabArea,
  strayArea,
} from '../overlays.js';
import {
  fineCircle,
  fineEllipse,
  foldedChain,
  leaf,
  nearCopies,
  scribble,
  seeded,
  shapes,
  strewnLeaves,
  tangentCircles,
} from '../shapes.js';

const segments = (region: Region): number =>
  region.contours.reduce((sum, c) => sum + c.length / 8, 0);

const checkedBy = (overlay: Overlay, regions: readonly Region[]) => {
  const [first, ...others] = regions;
  if (overlay === 'union') return unionChecked(regions);
  if (overlay === 'subtract') return subtractChecked(first, others);
  return (overlay === 'intersect' ? intersectChecked : xorChecked)(first, others[0]);
};

/** Intersection and xor take two regions, the others any number. */
const takenBy = (overlay: Overlay, regions: Region[]): Region[] =>
  overlay === 'union' || overlay === 'subtract' ? regions : regions.slice(0, 2);

const OVERLAYS: readonly Overlay[] = ['union', 'subtract', 'intersect', 'xor'];

/** Chords of the references: areas come out right to a few thousandths of a mm2. */
const AREA_MM = 4e-3;
/** Finer ones, to see where outlines differ or overlap. */
const FINE_MM = 5e-4;
/** Contours may overlap by slivers thinner than 0.0005 mm, some millimetres long where they touch. */
const SLIVER_MM2 = 2e-3;

describe('random booleans', () => {
  const families: Record<string, (random: () => number) => Region[]> = {
    'on a 5 mm grid, edges falling together': (r) => shapes(r, 'grid', 5),
    'turned by steps of 15 degrees': (r) => shapes(r, 'turned', 5),
    'anywhere at any angle': (r) => shapes(r, 'free', 5),
    'all but the same twice': (r) => nearCopies(r, 2),
    'circles that touch': tangentCircles,
  };

  it.each(Object.keys(families))('agree with JSTS: %s', (name) => {
    for (let seed = 1; seed <= 90; seed++) {
      const overlay = OVERLAYS[seed % 4];
      const regions = takenBy(overlay, families[name](seeded(1000 * name.length + seed)));
      const { region, exact } = checkedBy(overlay, regions);
      const found = { seed, overlay, exact, faults: chainFaults(region) };
      expect(found).toEqual({ seed, overlay, exact: true, faults: [] });
      const label = `seed ${seed} ${overlay}`;
      const area = regionArea(region);
      expect(Math.abs(area - jstsArea(overlay, regions, AREA_MM)), label).toBeLessThan(0.02);
      const reference = fineOverlay(overlay, regions, FINE_MM);
      expect(strayArea(region, reference, FINE_MM), label).toBeLessThan(0.1);
      expect(overlapArea(region, FINE_MM), label).toBeLessThan(SLIVER_MM2);
    }
  });

  it('agree with polyclip-ts', () => {
    for (let seed = 1; seed <= 90; seed++) {
      const overlay = OVERLAYS[seed % 4];
      const layout = (['grid', 'turned', 'free'] as const)[seed % 3];
      const regions = takenBy(overlay, shapes(seeded(90_000 + seed), layout, 3));
      const { region } = checkedBy(overlay, regions);
      const reference = polyclipArea(overlay, regions, 1e-2);
      expect(Math.abs(regionArea(region) - reference), `seed ${seed} ${overlay}`).toBeLessThan(
        0.05,
      );
    }
  });

  const rules = [
    ['nonzero', (winding: number) => winding !== 0],
    ['even-odd', (winding: number) => winding % 2 !== 0],
    ['positive', (winding: number) => winding > 0],
  ] as const;

  it.each(rules)(
    'of self-crossing chains agree with the faces JSTS finds: %s',
    (rule, isInside) => {
      for (let seed = 1; seed <= 40; seed++) {
        const random = seeded(5000 + seed);
        const chains = Array.from({ length: 1 + (seed % 3) }, () => scribble(random));
        const { region, exact } = cleanChecked(chains, rule);
        expect({ seed, exact, faults: chainFaults(region) }).toEqual({
          seed,
          exact: true,
          faults: [],
        });
        const reference = facesArea(chains, isInside, AREA_MM);
        expect(Math.abs(regionArea(region) - reference), `seed ${seed}`).toBeLessThan(0.01);
        expect(overlapArea(region, FINE_MM), `seed ${seed}`).toBeLessThan(SLIVER_MM2);
      }
    },
  );

  it.each(rules)(
    'of chains that fold back and fall together agree with slabs: %s',
    (rule, isInside) => {
      for (let seed = 1; seed <= 40; seed++) {
        const random = seeded(6000 + seed);
        const chains = Array.from({ length: 1 + (seed % 3) }, () => foldedChain(random));
        const { region, exact } = cleanChecked(chains, rule);
        expect({ seed, exact, faults: chainFaults(region) }).toEqual({
          seed,
          exact: true,
          faults: [],
        });
        const reference = slabArea(chains, isInside, AREA_MM);
        expect(Math.abs(regionArea(region) - reference), `seed ${seed}`).toBeLessThan(0.02);
        expect(overlapArea(region, FINE_MM), `seed ${seed}`).toBeLessThan(2 * SLIVER_MM2);
      }
    },
  );

  it('do not depend on how the shapes lie on the sheet', () => {
    const places = [
      rotation(90),
      rotation(180),
      rotation(270),
      scaling(-1, 1),
      translation(123.456, -78.9),
    ];
    for (let seed = 1; seed <= 25; seed++) {
      const overlay = OVERLAYS[seed % 4];
      const regions = takenBy(overlay, shapes(seeded(7000 + seed), 'turned', 4));
      const { region } = checkedBy(overlay, regions);
      for (const place of places) {
        const moved = checkedBy(
          overlay,
          regions.map((r) => moveRegion(r, place)),
        ).region;
        expect(moved.contours.length, `seed ${seed}`).toBe(region.contours.length);
        expect(Math.abs(regionArea(moved) - regionArea(region)), `seed ${seed}`).toBeLessThan(0.01);
      }
    }
  });

  it('obey area(A) + area(B) = area(A or B) + area(A and B), and the like for xor', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const [a, b] = shapes(seeded(3000 + seed), 'free', 2);
      const both = regionArea(intersect(a, b));
      const either = regionArea(union([a, b]));
      expect(either + both).toBeCloseTo(regionArea(a) + regionArea(b), 2);
      expect(regionArea(xor(a, b))).toBeCloseTo(either - both, 2);
      expect(regionArea(subtract(a, [b]))).toBeCloseTo(regionArea(a) - both, 2);
    }
  });
});

describe('1,500 leaves in one union', () => {
  const leaves = strewnLeaves(1500, 7);
  const { region, exact } = unionChecked(leaves);

  it('has the area that JSTS finds', () => {
    expect(exact).toBe(true);
    expect(chainFaults(region)).toEqual([]);
    expect(overlapArea(region, FINE_MM)).toBeLessThan(SLIVER_MM2);
    expect(Math.abs(regionArea(region) - jstsUnionArea(leaves, 0.01))).toBeLessThan(0.02);
  });

  it('lies where Clipper2 on fine chords puts it', () => {
    const length = outlineLength(region);
    const stray = strayArea(region, fineOverlay('union', leaves, 0.01), 0.01);
    expect(stray / length).toBeLessThan(0.002);
  });

  it('has one node a crossing and those of the leaves that are left on the outline', () => {
    const key = (p: { x: number; y: number }): string => `${p.x} ${p.y}`;
    const drawn = leaves.map((l) => onGrid(l.contours[0], 0.01));
    const tips = new Set(
      drawn.flatMap((points) => [points[0], points[points.length / 2]].map(key)),
    );
    const others = new Set(
      drawn
        .flat()
        .map(key)
        .filter((k) => !tips.has(k)),
    );
    const corners = fineOverlay('union', leaves, 0.01)
      .flat()
      .filter((p) => !others.has(key(p)));
    expect(segments(region) / corners.length).toBeGreaterThan(0.98);
    expect(segments(region) / corners.length).toBeLessThan(1.02);
  });
});

// Circular segment, r radius, t angle: area r2 (t - sin t) / 2, arc r t, chord 2 r sin(t / 2).
// CRC Standard Mathematical Tables (from memory).
describe('closed forms', () => {
  it.each([
    { r: 10, h: 2.928932, area: 28.539816, outline: 15.707963 + 14.142136 },
    { r: 25, h: 10, area: 279.559511, outline: 46.364761 + 40 },
  ])('circular segment of radius $r, height $h', ({ r, h, area, outline }) => {
    const segment = intersect(fineCircle(0, 0, r), rectangle(-r, r - h, 2 * r, 2 * h));
    expect(regionArea(segment)).toBeCloseTo(area, 4);
    expect(outlineLength(segment)).toBeCloseTo(outline, 3);
  });

  it('lens of two circles is two segments (CRC Standard Mathematical Tables, from memory)', () => {
    const lens = intersect(fineCircle(0, 0, 10), fineCircle(Math.SQRT2 * 10, 0, 10));
    expect(regionArea(lens)).toBeCloseTo(2 * 28.539816, 4);
    expect(segments(lens)).toBeLessThanOrEqual(10);
  });

  it('equilateral pointed arch of span 40: (pi / 3 - sqrt 3 / 4) span2, arcs 2 pi span / 3', () => {
    const both = intersect(fineCircle(0, 0, 40), fineCircle(40, 0, 40));
    const arch = intersect(both, rectangle(-10, -50, 60, 50));
    expect(regionArea(arch)).toBeCloseTo(982.695759, 3);
    expect(outlineLength(arch)).toBeCloseTo(83.775804 + 40, 3);
    expect(-regionBounds(arch).minY).toBeCloseTo(34.641016, 4);
  });

  it('ellipse: area pi a b, circumference by S. Ramanujan 1914 (from memory)', () => {
    // Halves put together again.
    const whole = fineEllipse(30, 20);
    const left = intersect(whole, rectangle(-40, -40, 40, 80));
    const right = subtract(whole, [left]);
    expect(regionArea(left)).toBeCloseTo(1884.955592 / 2, 3);
    const again = union([left, right]);
    expect(again.contours.length).toBe(1);
    expect(regionArea(again)).toBeCloseTo(1884.955592, 3);
    expect(outlineLength(again)).toBeCloseTo(158.654396, 3);
  });
});

describe('curves', () => {
  it('come back bit for bit where nothing cuts them', () => {
    const [c] = circle(0, 0, 10).contours;
    const cut = subtract(circle(0, 0, 10), [rectangle(2, -20, 20, 17)]);
    const kept = cut.contours[0];
    const cubics = (chain: Float64Array): string[] =>
      Array.from({ length: chain.length / 8 }, (_, k) => chain.slice(8 * k, 8 * k + 8).join());
    // Only the quarter at the top right is cut.
    expect(cubics(c).filter((q) => cubics(kept).includes(q)).length).toBe(3);
  });

  it('keep whole contours untouched where only boxes apart are near', () => {
    const far = moveRegion(leaf(10, 3), translation(100, 0));
    const result = union([circle(0, 0, 5), circle(5, 0, 5), far]);
    expect(result.contours).toContain(far.contours[0]);
    expect(result.contours.length).toBe(2);
    expect(subtract(far, [circle(0, 0, 5)]).contours).toEqual(far.contours);
  });

  it('of one cubic keep its loop or leave it, as the rule says', () => {
    const loop = Float64Array.of(0, 0, 40, 30, -20, 30, 20, 0);
    const closing = Float64Array.from([...loop, 20, 0, 13, 0, 7, 0, 0, 0]);
    const loose = cleanRegion([closing], 'even-odd');
    const reference = facesArea([closing], (w) => w % 2 !== 0, 1e-3);
    expect(regionArea(loose)).toBeCloseTo(reference, 2);
    expect(segments(loose)).toBeLessThan(8);
  });

  it('shared by two shapes dissolve', () => {
    const left = intersect(circle(0, 0, 10), rectangle(-10, -10, 10, 20));
    const wave = cleanRegion([leaf(20, 5).contours[0]]);
    const rest = subtract(rectangle(-5, -10, 30, 20), [wave]);
    expect(regionArea(union([rest, wave]))).toBeCloseTo(600, 3);
    expect(segments(union([rest, wave]))).toBe(4);
    expect(left.contours.length).toBe(1);
  });

  // What stands in a window shares its curve, cut at other places and so in other chords. The other
  // route has no shared edge: (A without W) or (B and W) = A without (W without B), De Morgan.
  it.each([
    [31.5, 27.5, 3.2, 21.8, 4.7, 6],
    [51.5, 36.4, -40.3, -6.2, 10.6, 11.7],
    [20.3, 16.2, -15.7, 3.3, 10.8, 7.3],
    [56.3, 48.2, -8.9, -37.8, 5.5, 6.1],
    [41, 30.1, 24, 16.4, 5.1, 4.2],
    [34, 26.8, 2.7, -21.3, 8.1, 7.1],
    [25.2, 18.4, 20, -1.6, 9.4, 6.3],
  ])('shared in part leave no whisker: %d x %d', (rx, ry, x, y, holeX, holeY) => {
    const sheet = rectangle(-80, -80, 160, 160);
    const window = ellipse(0, 0, rx, ry);
    const ring = subtract(ellipse(x, y, 25, 18), [ellipse(x, y, holeX, holeY)]);
    const card = union([subtract(sheet, [window]), intersect(ring, window)]);
    const other = subtract(sheet, [subtract(window, [ring])]);
    expect(outlineLength(card)).toBeCloseTo(outlineLength(other), 3);
  });
});

describe('regions', () => {
  it('have outers with positive area and holes with negative', () => {
    const plate = subtract(rectangle(0, 0, 40, 30), [circle(12, 15, 5), circle(28, 15, 5)]);
    const island = union([plate, circle(12, 15, 2)]);
    const signs = island.contours.map((c) => Math.sign(regionArea(regionOf(c))));
    expect(signs.sort()).toEqual([-1, -1, 1, 1]);
  });

  it('come out of chains in either direction', () => {
    const [c] = roundedRectangle(0, 0, 20, 10, 3).contours;
    const area = regionArea(regionOf(c));
    expect(regionArea(cleanRegion([reversed(c)]))).toBeCloseTo(area, 6);
    // An open chain is closed with a straight edge.
    const open = polygon([
      { x: 0, y: 0 },
      { x: 9, y: 0 },
      { x: 0, y: 9 },
    ]).slice(0, 16);
    expect(regionArea(cleanRegion([open]))).toBeCloseTo(40.5, 6);
  });

  it('lose spikes, which go out along a line and straight back', () => {
    const chain = (...points: [number, number][]) => polygon(points.map(([x, y]) => ({ x, y })));
    const spiked = chain([0, 2], [3, 2], [4, 2], [0, 2], [0, 3], [-2, 3], [-2, 2]);
    const cleaned = cleanRegion([spiked]);
    expect(regionArea(cleaned)).toBeCloseTo(2, 6);
    expect(regionBounds(cleaned).maxX).toBeCloseTo(0, 6);
    expect(cleanRegion([chain([0, 0], [5, 0], [9, 0], [2, 0])])).toEqual(EMPTY_REGION);
  });

  it('may be empty, alone or apart', () => {
    const c = circle(0, 0, 5);
    expect(union([])).toEqual(EMPTY_REGION);
    expect(union([c])).toEqual(c);
    expect(union([c, EMPTY_REGION])).toEqual(c);
    expect(subtract(c, [])).toEqual(c);
    expect(subtract(EMPTY_REGION, [c])).toEqual(EMPTY_REGION);
    expect(intersect(c, EMPTY_REGION)).toEqual(EMPTY_REGION);
    expect(intersect(c, circle(20, 0, 5))).toEqual(EMPTY_REGION);
    expect(xor(c, EMPTY_REGION)).toEqual(c);
    expect(subtract(c, [c]).contours).toEqual([]);
    expect(xor(c, c).contours).toEqual([]);
    expect(regionArea(intersect(c, c))).toBeCloseTo(regionArea(c), 6);
    expect(cleanRegion([new Float64Array(0)])).toEqual(EMPTY_REGION);
    expect(cleanRegion([Float64Array.of(1, 1, 1, 1, 1, 1, 1, 1)])).toEqual(EMPTY_REGION);
  });

  it('refuse coordinates that are no numbers or out of reach, and say so', () => {
    const bad = regionOf(Float64Array.of(0, 0, 1, 0, NaN, 0, 3, 0));
    expect(() => union([bad, circle(0, 0, 3)])).toThrow('coordinate of NaN mm');
    const far = rectangle(29_990, 0, 20, 20);
    expect(() => union([far, moveRegion(far, translation(5, 5))])).toThrow('within 20000 mm');
  });
});
