import { inflateSync } from 'node:zlib';
import type { Book, PanelPlan } from '../../src/book/book.js';
import { subtract } from '../../src/geometry/boolean/boolean.js';
import { rectangle } from '../../src/geometry/primitives.js';
import type { Panel } from '../../src/panel/panel.js';
import type { Stock } from '../../src/scene/scene.js';

/** Cards of a lock at dusk, front first: no two alike. */
export const DUSK = ['#20283a', '#46506a', '#7c6f8f', '#b08a92', '#e9c7a6'];

export const stock = (colour: string): Stock => ({
  name: colour,
  colour,
  gramsPerM2: 240,
  caliperMm: 0.3,
  sheet: { name: 'A4', width: 210, height: 297 },
  margin: 6,
});

/**
 * A book with nothing in its windows: pitch 15 at 90 degrees, so that cells are 21.2132 mm deep
 * and outer folds stand out by 10.6066 mm. Each window is 12 mm narrower and 8 mm lower than the
 * one in front of it, all of them round the same middle, (75, 90).
 */
export function emptyBook(colours = DUSK): { book: Book; panels: Panel[] } {
  const spacing = 30 * Math.SQRT1_2;
  const width = 150;
  const height = 190;
  const plans = colours.map((colour, i): PanelPlan => {
    const w = 100 - 12 * i;
    const h = 130 - 8 * i;
    const [x, y] = [75 - w / 2, 90 - h / 2];
    const last = i === colours.length - 1;
    return {
      number: i + 1,
      depthMm: i * spacing,
      card: stock(colour),
      blank: rectangle(1.5, 0, 147, height),
      window: last
        ? null
        : { shape: 'rectangle', x, y, width: w, height: h, outline: rectangle(x, y, w, h) },
      hinge: { leftX: 15, rightX: 135, fold: last ? 'valley' : 'mountain' },
    };
  });
  const faces = 2 * (colours.length - 1);
  const book: Book = {
    title: 'Lock at dusk',
    width,
    height,
    spacing,
    readingDistance: 400,
    panels: plans,
    spine: {
      pitchMm: 15,
      angleDeg: 90,
      cells: colours.length - 1,
      faces,
      tabMm: 8,
      folds: Array.from({ length: faces - 1 }, (_, i) => (i % 2 === 0 ? 'mountain' : 'valley')),
      reachMm: 15 * Math.SQRT1_2,
      lengthMm: faces * 15 + 16,
      scoring: 'both',
      card: stock('#3b3350'),
    },
    keep: { minX: 17, minY: 2, maxX: 133, maxY: 188 },
  };
  const panels = plans.map(({ number, card, blank, window }) => ({
    number,
    stock: card,
    card: window ? subtract(blank, [window.outline]) : blank,
    scores: [],
    reliefs: [],
    guides: [],
    attached: [],
    braces: [],
  }));
  return { book, panels };
}

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Red, green and blue from 0 to 255 of the pixel that the point lies in. */
  at(x: number, y: number): [number, number, number];
}

/**
 * Reads a PNG of 8-bit red, green, blue and alpha without interlace. ISO/IEC 15948 (PNG):
 * chunks, clause 5; filters, clause 9.
 */
export function readPng(bytes: Uint8Array): Pixels {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const data: Uint8Array[] = [];
  let [width, height] = [0, 0];
  for (let at = 8; at < bytes.length; at += 12 + view.getUint32(at)) {
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    const chunk = bytes.subarray(at + 8, at + 8 + view.getUint32(at));
    if (type === 'IHDR') {
      [width, height] = [view.getUint32(at + 8), view.getUint32(at + 12)];
      if (chunk[8] !== 8 || chunk[9] !== 6 || chunk[12] !== 0) throw new Error('not plain RGBA');
    }
    if (type === 'IDAT') data.push(chunk);
  }
  const pixels = unfiltered(inflateSync(Buffer.concat(data)), width * 4, height);
  return {
    width,
    height,
    at(x, y) {
      const i = (Math.floor(y) * width + Math.floor(x)) * 4;
      return [pixels[i], pixels[i + 1], pixels[i + 2]];
    },
  };
}

function unfiltered(raw: Uint8Array, stride: number, height: number): Uint8Array {
  const out = new Uint8Array(stride * height);
  for (let row = 0; row < height; row++) {
    const filter = raw[row * (stride + 1)];
    for (let i = 0; i < stride; i++) {
      const here = row * stride + i;
      const left = i >= 4 ? out[here - 4] : 0;
      const up = row > 0 ? out[here - stride] : 0;
      const upLeft = row > 0 && i >= 4 ? out[here - stride - 4] : 0;
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, upLeft)][filter];
      out[here] = raw[row * (stride + 1) + 1 + i] + guess;
    }
  }
  return out;
}

function paeth(left: number, up: number, upLeft: number): number {
  const p = left + up - upLeft;
  const [a, b, c] = [Math.abs(p - left), Math.abs(p - up), Math.abs(p - upLeft)];
  if (a <= b && a <= c) return left;
  return b <= c ? up : upLeft;
}

export const rgbOf = (hex: string): [number, number, number] => [
  Number.parseInt(hex.slice(1, 3), 16),
  Number.parseInt(hex.slice(3, 5), 16),
  Number.parseInt(hex.slice(5, 7), 16),
];
