/** What holds when the scene says nothing; lengths in mm. A panel of 190 x 135 with its flaps fits
 * A4, Letter and a 305 mm square with margins. */
export const DEFAULTS = {
  title: 'Untitled book',
  unit: 'mm',
  seed: 1,
  process: 'knife',
  panelWidth: 190,
  panelHeight: 135,
  panels: 5,
  spacing: 20,
  /** Paper held in the hand. */
  reading: 400,
  shape: 'rounded',
  radius: 6,
  step: 10,
  tab: 12,
  scoring: 'both',
  gramsPerM2: 240,
  sheet: 'A4',
  sheetMargin: 6,
  /** A fine embossing ball; common practice, no source. */
  ball: 1,
  /** Of a stencil's opening round the form, in calipers; common practice, no source. */
  stencilClearance: 1.5,
  /** Front and backdrop of the book when no cards are named: night blue to the light of dawn. */
  frontColour: '#2b2a4c',
  backdropColour: '#f6d9bf',
} as const;

/** Apparent specific volume of smooth uncoated card in cm3/g; common practice, no source. */
const DEFAULT_BULK = 1.25;

/** Thickness of one sheet in mm from grammage and bulk: ISO 534, apparent specific volume. */
export const caliperOf = (gramsPerM2: number, bulk = DEFAULT_BULK): number =>
  (gramsPerM2 * bulk) / 1000;
