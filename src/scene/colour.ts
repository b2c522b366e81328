import { COLOUR_NAMES } from '../geometry/svg/colour-names.js';

/** CIE 1976 L*a*b* under D65; L* from 0 (black) to 100 (white). */
export interface Lab {
  readonly lightness: number;
  readonly a: number;
  readonly b: number;
}

const HEX = /^#(?:[0-9a-f]{3}|[0-9a-f]{6})$/i;

/** `#rrggbb` in lower case from `#rrggbb`, `#rgb` or a CSS colour name; undefined for other text. */
export function readColour(text: string): string | undefined {
  const name = text.toLowerCase();
  if (Object.hasOwn(COLOUR_NAMES, name)) return COLOUR_NAMES[name];
  if (!HEX.test(text)) return undefined;
  return name.length === 7 ? name : name.replace(/[0-9a-f]/g, '$&$&');
}

/** CIE L* of `#rrggbb`: how light the eye takes it to be. */
export const lightnessOf = (hex: string): number => labOf(hex).lightness;

/** Below this chroma a colour is a grey, whose hue means nothing. */
const GREY_CHROMA = 4;

/**
 * `count` colours (2 or more) as `#rrggbb` from the first to the last, evenly stepped in lightness
 * and chroma, their hue turning the short way round, as a sky's does from dusk to light: a straight
 * line would lead through grey. A step that no screen can show loses chroma, not lightness.
 */
export function colourSeries(first: string, last: string, count: number): string[] {
  return Array.from({ length: count }, (_, i) => {
    if (i === 0) return first;
    return i === count - 1 ? last : turned(first, last, i / (count - 1));
  });
}

function turned(first: string, last: string, share: number): string {
  const from = labOf(first);
  const to = labOf(last);
  const [c0, c1] = [Math.hypot(from.a, from.b), Math.hypot(to.a, to.b)];
  if (Math.min(c0, c1) < GREY_CHROMA) return mixed(first, last, share);
  const h0 = Math.atan2(from.b, from.a);
  const turn = Math.atan2(to.b, to.a) - h0;
  const hue = h0 + Math.atan2(Math.sin(turn), Math.cos(turn)) * share;
  const chroma = c0 + (c1 - c0) * share;
  return hexOf({
    lightness: from.lightness + (to.lightness - from.lightness) * share,
    a: chroma * Math.cos(hue),
    b: chroma * Math.sin(hue),
  });
}

/** `share` of `other` mixed into `hex` as the eye mixes them: 0 gives `hex`, 1 gives `other`. */
export function mixed(hex: string, other: string, share: number): string {
  const from = labOf(hex);
  const to = labOf(other);
  return hexOf({
    lightness: from.lightness + (to.lightness - from.lightness) * share,
    a: from.a + (to.a - from.a) * share,
    b: from.b + (to.b - from.b) * share,
  });
}

// sRGB primaries and transfer curve: IEC 61966-2-1. L*a*b*: CIE 15:2004.
// The matrices with more digits than the standard prints, so that they undo each other.
const TO_XYZ = [
  [0.4124564, 0.3575761, 0.1804375],
  [0.2126729, 0.7151522, 0.072175],
  [0.0193339, 0.119192, 0.9503041],
];
const FROM_XYZ = [
  [3.2404542, -1.5371385, -0.4985314],
  [-0.969266, 1.8760108, 0.041556],
  [0.0556434, -0.2040259, 1.0572252],
];
/** A channel this little outside its range (linear light) is rounding, not another colour. */
const ROUNDING = 1e-5;
/** The white of the primaries themselves, so that #ffffff has no chroma at all. */
const WHITE = times(TO_XYZ, [1, 1, 1]);
const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

export function labOf(hex: string): Lab {
  const bytes = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  const xyz = times(
    TO_XYZ,
    bytes.map((byte) => decode(byte / 255)),
  );
  const [x, y, z] = xyz.map((value, i) => compress(value / WHITE[i]));
  return { lightness: 116 * y! - 16, a: 500 * (x! - y!), b: 200 * (y! - z!) };
}

function hexOf(lab: Lab): string {
  // Each round takes off a twentieth of the chroma; with none left a grey is always in gamut.
  const ROUNDS = 20;
  for (let round = 0; round < ROUNDS; round++) {
    const rgb = linearOf(lab, 1 - round / ROUNDS);
    if (rgb.every((value) => value >= -ROUNDING && value <= 1 + ROUNDING)) return encodeHex(rgb);
  }
  return encodeHex(linearOf(lab, 0));
}

function linearOf({ lightness, a, b }: Lab, chroma: number): readonly number[] {
  const y = (lightness + 16) / 116;
  const xyz = [y + (a * chroma) / 500, y, y - (b * chroma) / 200].map(
    (value, i) => expand(value) * WHITE[i],
  );
  return times(FROM_XYZ, xyz);
}

const encodeHex = (rgb: readonly number[]): string =>
  `#${rgb
    .map((value) => Math.round(encode(Math.min(1, Math.max(0, value))) * 255))
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')}`;

const decode = (v: number): number => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
const encode = (v: number): number => (v <= 0.0031308 ? v * 12.92 : 1.055 * v ** (1 / 2.4) - 0.055);
const compress = (v: number): number => (v > EPSILON ? Math.cbrt(v) : (KAPPA * v + 16) / 116);
const expand = (v: number): number => (v ** 3 > EPSILON ? v ** 3 : (116 * v - 16) / KAPPA);

function times(rows: readonly (readonly number[])[], column: readonly number[]): number[] {
  return rows.map((row) => row.reduce((sum, factor, i) => sum + factor * column[i], 0));
}
