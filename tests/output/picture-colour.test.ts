import { describe, expect, it } from 'vitest';
import { lighter, lit, shadowed } from '../../src/output/picture/colour.js';
import { labOf, lightnessOf, mixed } from '../../src/scene/colour.js';
import { DUSK, rgbOf } from './picture-book.js';

const STEPS = ['00', '33', '66', '99', 'cc', 'ff'];
const CUBE = STEPS.flatMap((r) => STEPS.flatMap((g) => STEPS.map((b) => `#${r}${g}${b}`)));

describe('colours of card', () => {
  it('come back from L*a*b* as they went in', () => {
    for (const hex of CUBE) {
      const back = rgbOf(mixed(hex, hex, 0.5));
      rgbOf(hex).forEach((channel, i) => {
        expect(Math.abs(back[i] - channel), hex).toBeLessThanOrEqual(1);
      });
    }
  });

  // CIE 15:2004: L* of the neutral that reflects 18.42 % is 50; in sRGB that is #777777 (50.03).
  it('is half way between black and white where the eye says so', () => {
    expect(mixed('#000000', '#ffffff', 0.5)).toBe('#777777');
  });

  it('gain and lose lightness by as much as is asked', () => {
    for (const hex of DUSK) {
      expect(lightnessOf(lighter(hex, 10)) - lightnessOf(hex)).toBeCloseTo(10, 0);
      expect(lightnessOf(lighter(hex, -10)) - lightnessOf(hex)).toBeCloseTo(-10, 0);
      expect(lightnessOf(lit(hex, 0.6)) / lightnessOf(hex)).toBeCloseTo(0.6, 1);
    }
  });

  it('never pass black or white', () => {
    expect(lighter('#000000', -20)).toBe('#000000');
    expect(lighter('#ffffff', 20)).toBe('#ffffff');
    expect(lit('#ffffff', 1.2)).toBe('#ffffff');
  });

  it('keep their hue in shadow, and pale card keeps more light', () => {
    const peach = labOf(shadowed('#e9c7a6'));
    expect(peach.a).toBeGreaterThan(0);
    expect(peach.b).toBeGreaterThan(0);
    const share = (hex: string) => lightnessOf(shadowed(hex)) / lightnessOf(hex);
    expect(share('#f4f0e6')).toBeGreaterThan(share('#46506a'));
    for (const hex of DUSK) expect(share(hex)).toBeLessThan(0.5);
  });
});
