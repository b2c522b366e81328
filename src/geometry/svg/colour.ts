import { COLOUR_NAMES } from './colour-names.js';

/** What fills or strokes: nothing, a colour, the element's own `color`, or a gradient or pattern. */
export type Paint =
  | { readonly kind: 'none' }
  | { readonly kind: 'colour'; readonly hex: string }
  | { readonly kind: 'current' }
  | { readonly kind: 'server'; readonly target: string; readonly fallback: Paint | null };

const NONE: Paint = { kind: 'none' };

/** Reads a paint (SVG 2, section 13.2); null where it is none. What is fully clear counts as none. */
export function readPaint(text: string): Paint | null {
  const written = text.trim();
  const server = /^url\(\s*["']?([^"')]*)["']?\s*\)\s*(.*)$/is.exec(written);
  if (server) {
    const [, target, rest] = server;
    const isFallback = rest !== '' && !/^url/i.test(rest);
    return { kind: 'server', target, fallback: isFallback ? readPaint(rest) : null };
  }
  const word = written.toLowerCase();
  if (word === 'none' || word === 'transparent') return NONE;
  if (word === 'currentcolor') return { kind: 'current' };
  const colour = readColour(word);
  if (colour === null) return null;
  return colour.alpha === 0 ? NONE : { kind: 'colour', hex: colour.hex };
}

interface Colour {
  readonly hex: string;
  readonly alpha: number;
}

/** Reads a colour in lower case (CSS Color Level 4, sections 5 to 7). */
function readColour(text: string): Colour | null {
  if (Object.hasOwn(COLOUR_NAMES, text)) return { hex: COLOUR_NAMES[text], alpha: 1 };
  if (/^#(?:[\da-f]{3,4}|[\da-f]{6}|[\da-f]{8})$/.test(text)) {
    const long = text.length > 5 ? text : text.replace(/[\da-f]/g, '$&$&');
    const alpha = long.length > 7 ? Number.parseInt(long.slice(7), 16) / 255 : 1;
    return { hex: long.slice(0, 7), alpha };
  }
  const called = /^(rgb|hsl)a?\(([^()]*)\)$/.exec(text);
  if (!called) return null;
  const parts = called[2].split(/[\s,/]+/).filter((part) => part !== '');
  if (parts.length < 3 || parts.length > 4) return null;
  const alpha = parts.length === 4 ? shareOf(parts[3], 1) : 1;
  const rgb =
    called[1] === 'rgb' ? parts.slice(0, 3).map((p) => shareOf(p, 255)) : hslShares(parts);
  if (![alpha, ...rgb].every(Number.isFinite)) return null;
  return { hex: hexOf(rgb), alpha: held(alpha) };
}

/** A number of a whole, or a percentage, as a share of 1; NaN for anything else. */
function shareOf(text: string, whole: number): number {
  const found = /^([+-]?(?:\d+\.?\d*|\.\d+))(%?)$/.exec(text);
  if (!found) return Number.NaN;
  return Number(found[1]) / (found[2] === '%' ? 100 : whole);
}

/** CSS Color Level 4, section 7.1. */
function hslShares([hueText, saturationText, lightnessText]: readonly string[]): number[] {
  const hue = Number.parseFloat(hueText);
  const saturation = held(shareOf(saturationText, 100));
  const lightness = held(shareOf(lightnessText, 100));
  const a = saturation * Math.min(lightness, 1 - lightness);
  return [0, 8, 4].map((n) => {
    const k = (((n + hue / 30) % 12) + 12) % 12;
    return lightness - a * Math.max(-1, Math.min(k - 3, 9 - k, 1));
  });
}

const held = (share: number): number => Math.max(0, Math.min(1, share));

const hexOf = (shares: readonly number[]): string =>
  `#${shares
    .map((share) =>
      Math.round(held(share) * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
