import { describe, expect, it } from 'vitest';
import { isClosed } from '../../../src/geometry/chain.js';
import { chainLength } from '../../../src/geometry/measure.js';
import { boxOf, drawn, inked, losses, page } from './pages.js';

const pen = (width: number): string => `fill="none" stroke="#000" stroke-width="${width}"`;

// Strokes: SVG 2, section 13.5; their areas by elementary geometry.
describe('strokes as outlines', () => {
  it.each([
    ['butt', 20 * 4],
    ['square', 24 * 4],
    ['round', 20 * 4 + 4 * Math.PI],
  ])('end %s', async (cap, area) => {
    const line = `<line x1="10" y1="10" x2="30" y2="10" ${pen(4)} stroke-linecap="${cap}"/>`;
    expect(Math.abs((await inked(line)) - area)).toBeLessThan(0.01);
  });

  // At a right angle a mitre fills a square of half the width, a bevel half of that.
  it.each([
    ['miter', 2 * 2],
    ['miter-clip', 2 * 2],
    ['bevel', 2],
    ['round', Math.PI],
  ])('join %s', async (join, corner) => {
    const path = `<path d="M10 10H30V30" ${pen(4)} stroke-linejoin="${join}"/>`;
    expect(Math.abs((await inked(path)) - (2 * 80 - 4 + corner))).toBeLessThan(0.01);
  });

  it('mitre up to the limit, 4 if none is given', async () => {
    // A corner of 60 degrees has a ratio of 1 / sin 30 = 2, one of 20 degrees 5.76.
    const corner = (degrees: number, limit: string): string => {
      const [x, y] = [Math.cos, Math.sin].map((f) => 40 * f((degrees * Math.PI) / 180));
      return page(`<path d="M60 20H20l${x} ${y}" ${pen(4)} ${limit}/>`);
    };
    const left = async (degrees: number, limit = ''): Promise<number> =>
      (await boxOf(corner(degrees, limit)))[0];
    expect(await left(60)).toBeCloseTo(20 - 4 * Math.cos(Math.PI / 6), 2);
    expect(await left(20)).toBeGreaterThan(17.9);
    expect(await left(20, 'stroke-miterlimit="6"')).toBeCloseTo(20 - 2 / Math.tan(Math.PI / 18), 2);
  });

  it('reach no further than can be reckoned with', async () => {
    const spike = `<path d="M0 0h9l-9 1e-9" ${pen(1)} stroke-miterlimit="1e300"/>`;
    expect(await inked(spike)).toBeLessThan(20);
    const wide = drawn(`<path d="M0 0h9" ${pen(1e5)}/>`);
    await expect(wide).rejects.toThrow(/stroke-width="100000" is too wide/);
  });

  it('of closed shapes are rings', async () => {
    const ring = Math.PI * (12 ** 2 - 8 ** 2);
    expect(
      Math.abs((await inked(`<circle cx="50" cy="50" r="10" ${pen(4)}/>`)) / ring - 1),
    ).toBeLessThan(6e-4);
    expect(await inked(`<rect x="10" y="10" width="20" height="10" ${pen(4)}/>`)).toBeCloseTo(
      24 * 14 - 16 * 6,
      3,
    );
  });

  it('widen with the transform, unevenly if it is uneven', async () => {
    const line = (d: string): string => `<path transform="scale(2 5)" d="${d}" ${pen(2)}/>`;
    expect(await boxOf(page(line('M5 5H10')))).toEqual([10, 20, 20, 30]);
    expect(await boxOf(page(line('M5 5V10')))).toEqual([8, 25, 12, 50]);
    const { shapes } = await drawn(line('M5 5V10'));
    expect(shapes[0].strokeWidthMm).toBeCloseTo(2 * Math.sqrt(10), 9);
  });

  // non-scaling-stroke: SVG 2, section 8.13; widths are then in px of the screen.
  it('keep their width on the page where they do not scale', async () => {
    const line = `<path transform="scale(2 5)" d="M5 5H10" ${pen(9.6)} vector-effect="non-scaling-stroke"/>`;
    expect(await boxOf(page(line))).toEqual([10, 23.73, 20, 26.27]);
  });

  it('have their width in any unit', async () => {
    const { shapes } = await drawn(`<path d="M0 0h9" fill="none" stroke="red" stroke-width="5%"/>`);
    expect(shapes[0].strokeWidthMm).toBeCloseTo(5, 9);
    expect((await drawn(`<path d="M0 0h9" ${pen(0)}/>`)).shapes).toEqual([]);
  });

  it('of no length are dots where their caps are round or square', async () => {
    const dots = (cap: string): Promise<number> =>
      inked(
        `<g ${pen(4)} stroke-linecap="${cap}"><path d="M10 10h0"/><path d="M20 10z"/><path d="M30 10"/>` +
          '<line x1="40" y1="10" x2="40" y2="10"/><polyline points="50 10 50 10"/></g>',
      );
    expect(await dots('butt')).toBe(0);
    expect(await dots('square')).toBeCloseTo(4 * 16, 6);
    expect((await dots('round')) / (16 * Math.PI)).toBeCloseTo(1, 3);
  });
});

// Dashes: SVG 2, section 13.5.6.
describe('dashes', () => {
  const parts = async (dashes: string, shape = '<path d="M10 10H40"/>'): Promise<number[]> => {
    const { shapes } = await drawn(`<g ${pen(1)} ${dashes}>${shape}</g>`);
    return (shapes[0]?.lines ?? []).map((l) => Math.round(chainLength(l.cubics) * 1e3) / 1e3);
  };

  it.each([
    ['stroke-dasharray="none"', [30]],
    ['stroke-dasharray="10"', [10, 10]],
    ['stroke-dasharray="10,4"', [10, 10, 2]],
    ['stroke-dasharray="10 2 3"', [10, 3, 2]],
    ['stroke-dasharray="10 4" stroke-dashoffset="5"', [5, 10, 7]],
    ['stroke-dasharray="10 4" stroke-dashoffset="-6"', [2, 10, 10]],
    ['stroke-dasharray="10 4" stroke-dashoffset="1000000005"', [10, 10]],
    ['stroke-dasharray="0 0"', [30]],
    ['stroke-dasharray="50 9"', [30]],
    ['stroke-dasharray="9 50" stroke-dashoffset="10"', []],
    ['stroke-dasharray="10%"', [10, 10]],
  ])('%s', async (dashes, lengths) => {
    expect(await parts(dashes)).toEqual(lengths);
  });

  it('run on from the last into the first of a closed shape', async () => {
    const square = '<rect x="10" y="10" width="10" height="10"/>';
    expect(await parts('stroke-dasharray="6 8"', square)).toEqual([6, 6, 6]);
    expect(await parts('stroke-dasharray="6 8" stroke-dashoffset="2"', square)).toEqual([4, 6, 6]);
    expect(await parts('stroke-dasharray="12 6"', square)).toEqual([16, 12]);
    expect(await parts('stroke-dasharray="500 9"', square)).toEqual([40]);
    const whole = `<rect x="10" y="10" width="10" height="10" ${pen(2)} stroke-dasharray="500 9"/>`;
    expect(await inked(whole)).toBeCloseTo(144 - 64, 6);
  });

  it('count by the length that the path is given', async () => {
    const path = '<path d="M10 10H40" pathLength="3"/>';
    expect(await parts('stroke-dasharray="1 .5"', path)).toEqual([10, 10]);
  });

  it('of no length point along the path', async () => {
    const line = `<path d="M10 10L40 40" ${pen(4)} stroke-linecap="square" stroke-dasharray="0 90"/>`;
    const reach = Math.round(1000 * (10 + 2 * Math.SQRT2)) / 1000;
    expect((await boxOf(page(line)))[2]).toBeCloseTo(reach, 3);
  });

  it.each(['1e308 1e308', '5 -1', '5 x'])('are refused as %s', async (dashes) => {
    const line = `<path d="M0 0H100" ${pen(1)} stroke-dasharray="${dashes}"/>`;
    await expect(drawn(line)).rejects.toThrow(/^<path> on line 1: stroke-dasharray=/);
  });

  it('are refused in their thousands', async () => {
    const line = `<path d="M0 0H100" ${pen(1)} stroke-dasharray="1e-9"/>`;
    await expect(drawn(line)).rejects.toThrow(/more than 5000 dashes/);
  });
});

describe('strokes as lines', () => {
  it('are their centre lines, closed where the shape is', async () => {
    const { shapes } = await drawn(
      `<g ${pen(3)}><rect x="10" y="10" width="20" height="10"/><path d="M50 50h10v10"/></g>`,
    );
    expect(shapes.map(({ lines }) => lines.map((l) => chainLength(l.cubics)))).toEqual([
      [60],
      [20],
    ]);
    expect(shapes.map(({ lines }) => isClosed(lines[0].cubics))).toEqual([true, false]);
    expect(
      shapes.map((s) => [s.fill, s.stroke, s.strokeWidthMm, s.region.contours.length]),
    ).toEqual([
      [null, '#000000', 3, 0],
      [null, '#000000', 3, 0],
    ]);
  });

  it('end at a clip path', async () => {
    const { shapes } = await drawn(
      `<clipPath id="c"><circle cx="50" cy="50" r="20"/></clipPath><g clip-path="url(#c)" ${pen(3)}>` +
        '<path d="M0 50H100"/><path d="M0 10H100"/></g>',
    );
    expect(shapes).toHaveLength(1);
    expect(chainLength(shapes[0].lines[0].cubics)).toBeCloseTo(40, 3);
  });

  it('do not show dots, which is said', async () => {
    const drawing = await drawn(`<path d="M5 5h0M9 9h3" ${pen(2)} stroke-linecap="round"/>`);
    expect(drawing.shapes[0].lines).toHaveLength(1);
    expect(losses(drawing)).toEqual({ dot: 1 });
  });
});
