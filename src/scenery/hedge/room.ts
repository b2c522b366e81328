import type { Nibble } from '../edge.js';
import type { Plot } from '../family.js';

/** A hedge's plot with the figures that all its forms share. Lengths in mm. */
export interface Room {
  readonly plot: Plot;
  readonly width: number;
  readonly height: number;
  readonly leftX: number;
  readonly rightX: number;
  /** The part that stands in the window: holes are cut here only. */
  readonly seen: { readonly minX: number; readonly maxX: number };
  /** 1 at the front panel, smaller behind: leaves, nibbles and strokes follow it. */
  readonly grain: number;
  readonly nibble: Nibble;
  /** +1 when the light comes from the right, -1 when it comes from the left. */
  readonly light: 1 | -1;
}

/** Detail of the last panel against that of the first. */
const BACK_GRAIN = 0.62;

export function roomOf(plot: Plot, light: 'left' | 'right'): Room {
  const { width, height, side, fineness } = plot;
  const leftX = -width / 2;
  const rightX = width / 2;
  const front = 1 - fineness;
  return {
    plot,
    width,
    height,
    leftX,
    rightX,
    seen: { minX: side === 'left' ? 0 : leftX, maxX: side === 'right' ? 0 : rightX },
    grain: BACK_GRAIN + (1 - BACK_GRAIN) * front,
    // Common practice, no source: 0.3 to 0.6 mm deep, 2 to 4 mm from notch to notch.
    nibble: {
      wavelength: [2 + 0.5 * front, 3.2 + 0.8 * front],
      depth: [0.3 + 0.06 * front, 0.44 + 0.16 * front],
    },
    light: light === 'right' ? 1 : -1,
  };
}

/** 0 on the light side of what is seen, 1 on the shade side. */
export function shadeAt(room: Room, x: number): number {
  const { minX, maxX } = room.seen;
  const share = Math.max(0, Math.min(1, (x - minX) / Math.max(1e-9, maxX - minX)));
  return room.light === 1 ? 1 - share : share;
}

/** The x that lies at a share of the way from the light side to the shade side. */
export function fromLight(room: Room, share: number): number {
  const { minX, maxX } = room.seen;
  return room.light === 1 ? maxX - share * (maxX - minX) : minX + share * (maxX - minX);
}
