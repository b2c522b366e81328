import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { COLOUR_NAMES } from '../../src/geometry/svg/colour-names.js';
import { colourSeries, labOf, lightnessOf, readColour } from '../../src/scene/colour.js';

describe('readColour', () => {
  it('reads hexadecimal digits and names', () => {
    expect(readColour('#20243C')).toBe('#20243c');
    expect(readColour('#fa0')).toBe('#ffaa00');
    expect(readColour('MidnightBlue')).toBe('#191970');
    // CSS Color Module Level 4, section 6.1.
    expect(readColour('rebeccapurple')).toBe('#663399');
  });

  it('knows no other text', () => {
    for (const text of ['', '#12', '#1234567', '20243c', 'ink', 'constructor', '#ggg']) {
      expect(readColour(text)).toBeUndefined();
    }
  });

  it('agrees with an independent renderer of SVG on every name of SVG 1.1', () => {
    const named = Object.entries(COLOUR_NAMES).filter(([name]) => name !== 'rebeccapurple');
    expect(named).toHaveLength(147);
    const bars = named.map(([name], i) => `<rect x="${i}" width="1" height="1" fill="${name}"/>`);
    const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${named.length}" height="1">${bars.join('')}</svg>`;
    const { pixels } = new Resvg(svg).render();
    for (const [i, [name, hex]] of named.entries()) {
      const drawn = pixels.subarray(4 * i, 4 * i + 3).toString('hex');
      expect(`${name} #${drawn}`).toBe(`${name} ${hex}`);
    }
  });
});

describe('labOf', () => {
  // CIE L*a*b* (D65) of the sRGB primaries as commonly published; from memory.
  it.each([
    ['#ff0000', 53.24, 80.09, 67.2],
    ['#00ff00', 87.73, -86.18, 83.18],
    ['#0000ff', 32.3, 79.19, -107.86],
    ['#ffffff', 100, 0, 0],
    ['#000000', 0, 0, 0],
  ])('%s is L* %d, a* %d, b* %d', (hex, lightness, a, b) => {
    const lab = labOf(hex);
    expect(lab.lightness).toBeCloseTo(lightness, 1);
    expect(Math.abs(lab.a - a)).toBeLessThan(0.05);
    expect(Math.abs(lab.b - b)).toBeLessThan(0.05);
  });

  // CIE 15: L* = 50 where the luminance is ((50 + 16) / 116)^3 = 0.1842 of white, which is what
  // the curve of IEC 61966-2-1 makes of the grey 119/255 (0.1845).
  it('finds #777777 half as light as white', () => {
    expect(lightnessOf('#777777')).toBeCloseTo(50, 0);
  });
});

describe('colourSeries', () => {
  const steps = (colours: readonly string[]): number[] =>
    colours.slice(1).map((colour, i) => lightnessOf(colour) - lightnessOf(colours[i]!));

  it.each([
    ['#2b2a4c', '#f6d9bf'],
    ['#000000', '#ffffff'],
    ['#0000ff', '#ffff00'],
    ['#7a0010', '#00ff80'],
  ])('steps evenly in lightness from %s to %s', (first, last) => {
    for (const count of [2, 3, 5, 9]) {
      const colours = colourSeries(first, last, count);
      expect(colours).toHaveLength(count);
      expect(colours[0]).toBe(first);
      expect(colours.at(-1)).toBe(last);
      const even = (lightnessOf(last) - lightnessOf(first)) / (count - 1);
      // A hexadecimal digit of green is up to 0.4 of L*, so a step may be out by that.
      for (const step of steps(colours)) expect(Math.abs(step - even)).toBeLessThan(0.6);
    }
  });

  it('keeps its colour on the way, turning the short way round', () => {
    const chroma = (hex: string) => Math.hypot(labOf(hex).a, labOf(hex).b);
    for (const hex of colourSeries('#2b2a4c', '#f6d9bf', 5))
      expect(chroma(hex)).toBeGreaterThan(14);
    // From blue to peach by way of red, not of green: a* stays positive.
    for (const hex of colourSeries('#2b2a4c', '#f6d9bf', 5))
      expect(labOf(hex).a).toBeGreaterThan(0);
    for (const hex of colourSeries('#000000', '#ffffff', 5)) expect(chroma(hex)).toBeLessThan(1);
  });
});
