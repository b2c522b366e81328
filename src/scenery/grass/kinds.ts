/** How one kind of grass grows. Lengths in mm at the front panel, angles in degrees. */
export interface Habit {
  /** Fewest and most blades from one foot. */
  readonly blades: readonly [number, number];
  /** Lean of the outermost blades of a tuft, each way. */
  readonly fanDeg: readonly [number, number];
  /** How far a blade turns over on its way to the tip: the middle ones of a tuft, the outer ones. */
  readonly bendDeg: readonly [number, number];
  /** Median height as a share of the plot's; one in six is 1.6 times as tall. */
  readonly median: number;
  readonly widthMm: number;
  /** A blade is at least this share of its length wide. */
  readonly slender: number;
  /** The larger, the longer a blade keeps its breadth. */
  readonly fullness: number;
  /** From one blade's foot to the next in a tuft, in widths. */
  readonly footing: number;
  /** From tuft to tuft, in breadths of a tuft at half height. */
  readonly spacing: number;
  /** The chance that a tuft sends up a stem with a head, and which. */
  readonly heads: number;
  readonly head: 'ear' | 'cigar';
  /** Share of the taller blades that are scored with a mid-rib. */
  readonly ribs: number;
  /** How high a tuft's foot is mounded over the ground between. */
  readonly moundMm: number;
}

export const KINDS = ['meadow', 'reeds', 'sedge', 'tussock'] as const;
export type Kind = (typeof KINDS)[number];

export const HABITS: Readonly<Record<Kind, Habit>> = {
  meadow: {
    blades: [3, 6],
    fanDeg: [16, 32],
    bendDeg: [4, 32],
    median: 0.6,
    widthMm: 1.35,
    slender: 1 / 16,
    fullness: 1.7,
    footing: 0.55,
    spacing: 1.1,
    heads: 0.4,
    head: 'ear',
    ribs: 0,
    moundMm: 1.2,
  },
  reeds: {
    blades: [3, 5],
    fanDeg: [8, 18],
    bendDeg: [2, 24],
    median: 0.55,
    widthMm: 1.7,
    slender: 1 / 17,
    fullness: 2.4,
    footing: 0.95,
    spacing: 1.15,
    heads: 0.6,
    head: 'cigar',
    ribs: 0.5,
    moundMm: 0.8,
  },
  sedge: {
    blades: [3, 6],
    fanDeg: [26, 44],
    bendDeg: [24, 74],
    median: 0.56,
    widthMm: 2.1,
    slender: 1 / 14,
    fullness: 2.2,
    footing: 0.5,
    spacing: 1.25,
    heads: 0,
    head: 'ear',
    ribs: 0.7,
    moundMm: 1,
  },
  tussock: {
    blades: [6, 7],
    fanDeg: [36, 50],
    bendDeg: [8, 46],
    median: 0.58,
    widthMm: 1.4,
    slender: 1 / 15,
    fullness: 1.6,
    footing: 0.5,
    spacing: 1.35,
    heads: 0.25,
    head: 'ear',
    ribs: 0,
    moundMm: 2.2,
  },
};
