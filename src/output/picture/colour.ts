import { lightnessOf, mixed } from '../../scene/colour.js';

const WHITE = '#ffffff';
const BLACK = '#000000';
/** Shadows by daylight lean to blue. */
const DUSK_BLACK = '#050309';

/** Tinted with white by `dL` of L*, or shaded with black when it is negative. */
export function lighter(hex: string, dL: number): string {
  const lightness = lightnessOf(hex);
  const room = dL > 0 ? 100 - lightness : lightness;
  const share = room < 1e-6 ? 0 : Math.min(1, Math.abs(dL) / room);
  return mixed(hex, dL > 0 ? WHITE : BLACK, share);
}

/** The same card in `brightness` times the light. */
export const lit = (hex: string, brightness: number): string =>
  lighter(hex, lightnessOf(hex) * (brightness - 1));

/** Share of black in a shadow on black card, and how much less there is of it on white card. */
const SHADOW_DEPTH = 0.78;
const THROWN_BACK = 0.26;

/**
 * The same card out of the light. Its hue stays, or the shadow would look like soot on it; pale
 * card darkens less, for the cards round it throw their light back.
 */
export function shadowed(hex: string): string {
  const share = SHADOW_DEPTH - THROWN_BACK * (lightnessOf(hex) / 100);
  return mixed(hex, DUSK_BLACK, share);
}
