import { Resvg } from '@resvg/resvg-js';
import BufferOp from 'jsts/org/locationtech/jts/operation/buffer/BufferOp.js';
import { describe, expect, it } from 'vitest';
import { regionArea, regionBounds } from '../../../src/geometry/measure.js';
import {
  type Join,
  stroke,
  strokeChecked,
  strokeContours,
  strokeContoursChecked,
} from '../../../src/geometry/offset/offset.js';
import { pen, polyline } from '../../../src/geometry/pen.js';
import { rectangle } from '../../../src/geometry/primitives.js';
import { type Cubics, EMPTY_REGION, type Line, type Region } from '../../../src/geometry/types.js';
import { chainFaults, jstsLine, outlineLength, overlapArea } from '../overlays.js';
import { fineCircle, foldedChain, seeded } from '../shapes.js';

const FINE_MM = 5e-4;
const SLIVER_MM2 = 2e-3;
const CAPS = ['round', 'butt', 'square'] as const;
const JOINS = ['round', 'mitre', 'bevel'] as const;

const segments = (region: Region): number =>
  region.contours.reduce((sum, c) => sum + c.length / 8, 0);

const buffered = (geometry: unknown, distanceMm: number): number => {
  // A circle of 4 x 200 chords is 2.6e-5 short of its area: far below what is compared.
  const operation = new BufferOp(geometry);
  operation.setQuadrantSegments(200);
  return operation.getResultGeometry(distanceMm).getArea();
};

describe('strokes', () => {
  it('of a straight line are a stadium: area l w + pi w2 / 4, outline 2 l + pi w', () => {
    const stadium = stroke(
      [
        polyline([
          { x: 0, y: 0 },
          { x: 30, y: 40 },
        ]),
      ],
      6,
    );
    expect(Math.abs(regionArea(stadium) - (300 + 9 * Math.PI))).toBeLessThan(3e-4 * 18 * Math.PI);
    expect(Math.abs(outlineLength(stadium) - (100 + 6 * Math.PI))).toBeLessThan(3e-4 * 6 * Math.PI);
    expect(segments(stadium)).toBe(8);
  });

  it('of an arc: area r w t + pi w2 / 4 (sector difference and two half discs)', () => {
    const arc = pen(20, 0).arcAround(0, 0, 90).line();
    const expected = (20 * 3 * Math.PI) / 2 + (9 * Math.PI) / 4;
    expect(Math.abs(regionArea(stroke([arc], 3)) - expected)).toBeLessThan(0.02);
  });

  it('of a closed line are a ring', () => {
    const around = stroke([{ cubics: fineCircle(0, 0, 10).contours[0] }], 2);
    expect(around.contours.length).toBe(2);
    expect(regionArea(around)).toBeCloseTo(40 * Math.PI, 2);
  });

  it('agree with JSTS buffers', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const random = seeded(800 + seed);
      const lines = Array.from({ length: 1 + (seed % 4) }, () => wanderer(random));
      const width = [0.3, 1, 3, 8][seed % 4];
      const { region, exact } = strokeChecked(lines, width);
      expect({ seed, exact, faults: chainFaults(region) }).toEqual({
        seed,
        exact: true,
        faults: [],
      });
      const slack = 0.02 + 0.002 * outlineLength(region);
      const reference = buffered(jstsLine(lines, 1e-2), width / 2);
      expect(Math.abs(regionArea(region) - reference), `seed ${seed}`).toBeLessThan(slack);
      expect(overlapArea(region, FINE_MM), `seed ${seed}`).toBeLessThan(SLIVER_MM2);
    }
  });

  it('may be nothing', () => {
    expect(stroke([], 1)).toEqual(EMPTY_REGION);
    expect(stroke([{ cubics: new Float64Array(0) }], 1)).toEqual(EMPTY_REGION);
    expect(
      stroke(
        [
          polyline([
            { x: 0, y: 0 },
            { x: 9, y: 0 },
          ]),
        ],
        0,
      ),
    ).toEqual(EMPTY_REGION);
  });
});

/** Straight and curved stretches, with corners, loops and now and then a cusp. */
function wanderer(random: () => number): Line {
  const at = (): [number, number] => [60 * random(), 60 * random()];
  const p = pen(...at());
  const count = 1 + Math.floor(4 * random());
  for (let k = 0; k < count; k++) {
    if (random() < 0.3) p.lineTo(...at());
    else p.curveTo(...at(), ...at(), ...at());
  }
  return p.line();
}

const bar = polyline([
  { x: 0, y: 0 },
  { x: 20, y: 0 },
]);
const point: Line = { cubics: new Float64Array([3, 4, 3, 4, 3, 4, 3, 4]) };

// Shapes of ends and corners: SVG 2, sections 13.5.4 and 13.5.5.
describe('ends', () => {
  it('of a straight line', () => {
    expect(regionArea(stroke([bar], 4, { cap: 'butt' }))).toBeCloseTo(80, 6);
    expect(regionArea(stroke([bar], 4, { cap: 'square' }))).toBeCloseTo(96, 6);
    expect(Math.abs(regionArea(stroke([bar], 4)) - 80 - 4 * Math.PI)).toBeLessThan(0.01);
  });

  it('of a line of no length are a dot, upright where square', () => {
    expect(Math.abs(regionArea(stroke([point], 4)) - 4 * Math.PI)).toBeLessThan(0.01);
    expect(regionBounds(stroke([point], 4, { cap: 'square' }))).toEqual({
      minX: 1,
      minY: 2,
      maxX: 5,
      maxY: 6,
    });
    expect(strokeChecked([point], 4, { cap: 'butt' })).toEqual({
      region: EMPTY_REGION,
      exact: true,
    });
    for (const cap of CAPS) expect(strokeChecked([point, bar], 4, { cap }).exact).toBe(true);
  });
});

describe('corners', () => {
  const angle = polyline([
    { x: 0, y: 0 },
    { x: 20, y: 0 },
    { x: 20, y: 20 },
  ]);
  // Two bars of 20 x 4 overlap in 2 x 2 and leave a corner of 2 x 2 open.
  it.each([
    { join: 'mitre', area: 160 },
    { join: 'bevel', area: 158 },
    { join: 'round', area: 156 + Math.PI },
  ] as const)('$join: $area', ({ join, area }) => {
    const found = regionArea(stroke([angle], 4, { cap: 'butt', join }));
    expect(Math.abs(found - area)).toBeLessThan(join === 'round' ? 0.005 : 1e-6);
  });

  it('a right angle reaches 1.414 half widths', () => {
    const area = (mitreLimit: number): number =>
      regionArea(stroke([angle], 4, { cap: 'butt', join: 'mitre', mitreLimit }));
    expect(area(1.42)).toBeCloseTo(160, 6);
    expect(area(1.41)).toBeCloseTo(158, 6);
  });

  it('straight back: round goes round the end, the others cut it off', () => {
    const back = polyline([
      { x: 0, y: 0 },
      { x: 20, y: 0 },
      { x: 5, y: 0 },
    ]);
    const area = (join: Join): number => regionArea(stroke([back], 4, { cap: 'butt', join }));
    expect(area('mitre')).toBeCloseTo(80, 6);
    expect(area('bevel')).toBeCloseTo(80, 6);
    expect(Math.abs(area('round') - 80 - 2 * Math.PI)).toBeLessThan(0.01);
  });
});

describe('closed contours', () => {
  const { contours } = rectangle(0, 0, 40, 30);
  it('of a rectangle: two rectangles, their corners as asked for', () => {
    expect(regionArea(strokeContours(contours, 4, { join: 'mitre' }))).toBeCloseTo(560, 6);
    expect(regionArea(strokeContours(contours, 4, { join: 'bevel' }))).toBeCloseTo(552, 6);
    const round = regionArea(strokeContours(contours, 4));
    expect(Math.abs(round - 544 - 4 * Math.PI)).toBeLessThan(0.01);
  });

  it('of a circle: a ring, or a disc where the pen is wider', () => {
    const c = fineCircle(0, 0, 10).contours;
    for (const join of JOINS) {
      const ring = strokeContours(c, 2, { join });
      expect(ring.contours.length).toBe(2);
      expect(regionArea(ring)).toBeCloseTo(40 * Math.PI, 2);
      expect(Math.abs(regionArea(strokeContours(c, 20, { join })) - 400 * Math.PI)).toBeLessThan(
        0.1,
      );
      expect(Math.abs(regionArea(strokeContours(c, 30, { join })) - 625 * Math.PI)).toBeLessThan(
        0.1,
      );
    }
  });

  it('of a figure of eight that is smaller than the pen: no hole', () => {
    const eight = pen(0, 0).curveTo(4, 4, 4, -4, 0, 0).curveTo(-4, 4, -4, -4, 0, 0).close();
    for (const join of JOINS) {
      const { region, exact } = strokeContoursChecked([eight], 9, { join });
      expect({ join, exact, contours: region.contours.length }).toEqual({
        join,
        exact: true,
        contours: 1,
      });
    }
  });

  it('may be nothing', () => {
    expect(strokeContours([], 1)).toEqual(EMPTY_REGION);
    expect(strokeContours(contours, 0, { join: 'mitre' })).toEqual(EMPTY_REGION);
  });
});

/** A path of a few straight or curved stretches: anywhere, or on a lattice and so full of folds. */
function randomPath(seed: number): { chain: Cubics; closed: boolean } {
  const random = seeded(70000 + seed);
  const closed = seed % 3 === 0;
  if (seed % 5 === 0) return { chain: foldedChain(random), closed: true };
  const lattice = (): number => 4 * Math.round(15 * random());
  const free = (): number => 60 * random();
  const at = seed % 2 === 0 ? lattice : free;
  const p = pen(at(), at());
  const count = 1 + Math.floor(4 * random());
  for (let k = 0; k < count; k++) {
    if (random() < 0.5) p.lineTo(at(), at());
    else p.curveTo(at(), at(), at(), at(), at(), at());
  }
  return { chain: closed ? p.close() : p.line().cubics, closed };
}

const pathData = (c: Cubics, closed: boolean): string => {
  let d = `M${c[0]} ${c[1]}`;
  for (let i = 0; i < c.length; i += 8) d += `C${c.subarray(i + 2, i + 8).join(' ')}`;
  return closed ? `${d}Z` : d;
};

/** The picture's pixels, an eighth of a millimetre wide, four bytes each; the last is coverage. */
function pixels(path: string): Uint8Array {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-20 -20 100 100" width="800" height="800">${path}</svg>`;
  return new Resvg(svg).render().pixels;
}

/** Pixels (mm2) that one picture has covered and the other has not. */
function pixelDifference(a: Uint8Array, b: Uint8Array): number {
  let count = 0;
  for (let k = 3; k < a.length; k += 4) if (Math.abs(a[k] - b[k]) > 100) count++;
  return count / 64;
}

// resvg draws the same stroke on its own. It keeps to about a tenth of a pixel.
it('random strokes of all kinds cover what resvg has them cover', () => {
  for (let seed = 1; seed <= 120; seed++) {
    const { chain, closed } = randomPath(seed);
    if (chain.length === 0) continue;
    const random = seeded(seed);
    const width = 0.3 * 40 ** random();
    const cap = CAPS[Math.floor(3 * random())];
    const join = JOINS[Math.floor(3 * random())];
    const mitreLimit = 1 + 8 * random();
    const { region, exact } = closed
      ? strokeContoursChecked([chain], width, { join, mitreLimit })
      : strokeChecked([{ cubics: chain }], width, { cap, join, mitreLimit });
    expect({ seed, exact }).toEqual({ seed, exact: true });
    const ours = `<path d="${region.contours.map((c) => pathData(c, true)).join('')}"/>`;
    const linejoin = join === 'mitre' ? 'miter' : join;
    const theirs = `<path d="${pathData(chain, closed)}" fill="none" stroke="black" stroke-width="${width}" stroke-linecap="${cap}" stroke-linejoin="${linejoin}" stroke-miterlimit="${mitreLimit}"/>`;
    const off = pixelDifference(pixels(ours), pixels(theirs));
    expect(off, `seed ${seed}`).toBeLessThan(0.2 + 1.5e-3 * regionArea(region));
  }
});
