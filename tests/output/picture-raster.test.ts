import { beforeAll, describe, expect, it } from 'vitest';
import { perspectiveOf, project } from '../../src/book/perspective.js';
import { explodedSvg } from '../../src/output/picture/exploded.js';
import { previewSvg } from '../../src/output/picture/preview.js';
import { pngOf } from '../../src/output/raster.js';
import { DUSK, emptyBook, type Pixels, readPng, rgbOf } from './picture-book.js';

const WIDTH_PX = 800;
const { book, panels } = emptyBook();

const distance = (p: readonly number[], q: readonly number[]): number =>
  Math.hypot(...p.map((v, i) => v - q[i]));

/** The panel whose card's colour is nearest. */
function cardNear(pixel: readonly number[]): number {
  const misses = DUSK.map((hex) => distance(pixel, rgbOf(hex)));
  return misses.indexOf(Math.min(...misses)) + 1;
}

/** The pixel under a point of the picture, mm. */
function sampler(svg: string, pixels: Pixels) {
  const [minX, minY, width] = (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
  const scale = pixels.width / width;
  return (x: number, y: number) => pixels.at((x - minX) * scale, (y - minY) * scale);
}

describe('preview as pixels', () => {
  const svg = previewSvg(book, panels);
  const view = perspectiveOf(book);
  let pixels: Pixels;
  let at: (x: number, y: number) => [number, number, number];
  beforeAll(() => {
    pixels = readPng(pngOf(svg, WIDTH_PX));
    at = sampler(svg, pixels);
  });

  it('is as wide as asked for, and as high as its shape', () => {
    const [, , width, height] = (/viewBox="([^"]*)"/.exec(svg)?.[1] ?? '').split(' ').map(Number);
    expect(pixels.width).toBe(WIDTH_PX);
    expect(Math.abs(pixels.height - (WIDTH_PX * height) / width)).toBeLessThanOrEqual(1);
  });

  it("shows the backdrop's own colour in the middle of an empty book", () => {
    expect(distance(at(75, 90), rgbOf(DUSK[4]))).toBeLessThan(12);
  });

  // Similar triangles: a window's edge at depth z is seen at D / (D + z) of its way from the axis.
  it('shows the edge of each window where perspective puts it', () => {
    for (const { number, depthMm, window } of book.panels) {
      if (!window) continue;
      // The lower part of the right edge: the light comes from the other side.
      const edge = project(view, { x: window.x + window.width, y: 110 }, depthMm);
      expect(cardNear(at(edge.x + 1, edge.y))).toBe(number);
      expect(cardNear(at(edge.x - 1, edge.y))).toBe(number + 1);
    }
  });

  it('shades the upper left of each layer with the one before it', () => {
    const ring = book.panels[2];
    const y = 90;
    const leftX = project(view, { x: (ring.window?.x ?? 0) - 2, y }, ring.depthMm).x;
    const [left, right] = [at(leftX, y), at(150 - leftX, y)];
    expect(distance(left, [0, 0, 0])).toBeLessThan(distance(right, [0, 0, 0]) - 15);
  });

  it('shows the spines beside the front panel, lit on the left and shaded on the right', () => {
    const [left, right] = [at(11, 90), at(139, 90)];
    const spine = rgbOf(book.spine.card.colour);
    expect(distance(left, spine)).toBeLessThan(distance(left, rgbOf(DUSK[0])));
    expect(distance(left, [0, 0, 0])).toBeGreaterThan(distance(right, [0, 0, 0]) + 5);
  });

  it('stands on a pale warm ground', () => {
    const corner = at(-20, -20);
    expect(Math.min(...corner)).toBeGreaterThan(180);
    expect(corner[0]).toBeGreaterThan(corner[2]);
  });

  it('gives the same bytes every time', () => {
    expect(pngOf(svg, 120)).toEqual(pngOf(previewSvg(book, panels), 120));
  });
});

describe('exploded picture as pixels', () => {
  it('shows each card in its colour, and the table through its window', () => {
    const svg = explodedSvg(book, panels);
    const at = sampler(svg, readPng(pngOf(svg, WIDTH_PX)));
    const laid = [
      ...svg.matchAll(/<g id="laid-panel-(\d)" transform="translate\(([\d.]+) ([\d.]+)\)/g),
    ];
    expect(laid).toHaveLength(5);
    for (const [, number, x, y] of laid) {
      const [dx, dy] = [Number(x), Number(y)];
      expect(cardNear(at(dx + 75, dy + 180))).toBe(Number(number));
      if (number === '5') continue;
      const table = at(dx + 75, dy + 90);
      expect(distance(table, [213, 204, 193])).toBeLessThan(50);
    }
  });
});

describe('pngOf', () => {
  const dot =
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 4 2"><rect width="4" height="2" fill="#0a141e"/></svg>';

  // ISO/IEC 15948 (PNG), clause 5.2: the signature.
  it('writes a PNG of the asked width', () => {
    const bytes = pngOf(dot, 40);
    expect([...bytes.subarray(0, 8)]).toEqual([137, 80, 78, 71, 13, 10, 26, 10]);
    const pixels = readPng(bytes);
    expect([pixels.width, pixels.height]).toEqual([40, 20]);
    expect(pixels.at(20, 10)).toEqual([10, 20, 30]);
  });

  it.each([0, -5, 1.5, Number.NaN, 20000])('says what is wrong with a width of %d', (width) => {
    expect(() => pngOf(dot, width)).toThrow(/whole number from 1 to 12000/);
  });

  it('throws on what is not SVG', () => {
    expect(() => pngOf('a lock at dusk', 40)).toThrow();
  });
});
