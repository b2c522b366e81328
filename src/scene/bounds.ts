/** A closed range. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/** What a scene may ask for; lengths in mm. Each is wide enough for every book that can be made by
 * hand and narrow enough to catch a slip of the keys or of the unit. */
export const BOUNDS = {
  /** Smaller cannot be folded by hand, larger fits no cutter's bed. */
  panelSide: { min: 40, max: 1200 },
  /** The backdrop counted; with more the last windows close. */
  panels: { min: 2, max: 24 },
  spacing: { min: 2, max: 200 },
  reading: { min: 100, max: 3000 },
  windowSide: { min: 5, max: 1200 },
  windowMargin: { min: 0, max: 600 },
  radius: { min: 0, max: 600 },
  step: { min: 0, max: 200 },
  pitch: { min: 3, max: 200 },
  /** Flatter than 170 degrees a strip no longer holds the spacing, below 10 it hardly opens. */
  angleDeg: { min: 10, max: 170 },
  tab: { min: 5, max: 60 },
  gramsPerM2: { min: 80, max: 600 },
  caliper: { min: 0.05, max: 2 },
  sheetSide: { min: 50, max: 2000 },
  sheetMargin: { min: 0, max: 50 },
  elementSize: { min: 1, max: 1200 },
  lift: { min: -600, max: 600 },
  at: { min: -1200, max: 2400 },
  copies: { min: 1, max: 500 },
  scattered: { min: 2, max: 60 },
  gap: { min: 0, max: 300 },
  /** Of scattered things, as shares of the size said. */
  sizeShare: { min: 0.2, max: 3 },
  /** A thicker mount keeps the book from closing. */
  standOff: { min: 0.5, max: 10 },
  glue: { min: 2, max: 60 },
  /** Balls that embossing tools are sold with. */
  ball: { min: 0.4, max: 10 },
  /** In calipers: less leaves the card no room beside the form, more no edge to be pressed over. */
  stencilClearance: { min: 1, max: 4 },
  seed: { min: 0, max: 999_999_999 },
} as const satisfies Record<string, Range>;

/** The same for shares of a window's edge (1 = the whole edge). */
export const SHARE_BOUNDS = {
  elementSize: { min: 0.01, max: 3 },
  lift: { min: -1, max: 1 },
  at: { min: -1, max: 2 },
} as const satisfies Record<string, Range>;
