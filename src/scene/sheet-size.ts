/** A sheet held upright: width <= height, in mm. */
export interface SheetSize {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** How often a whole sheet is halved at most: A10 and B10 are the smallest. */
const HALVINGS = 10;

/**
 * A series of ISO 216: each sheet is the one before halved across its longer side, the half
 * millimetre dropped. (Rounding each ideal size to the nearest millimetre gives other figures.)
 */
function halved(series: string, width: number, height: number): SheetSize[] {
  const sizes = [{ name: `${series}0`, width, height }];
  for (let n = 1; n <= HALVINGS; n++) {
    const last = sizes[n - 1];
    sizes.push({ name: `${series}${n}`, width: Math.floor(last.height / 2), height: last.width });
  }
  return sizes;
}

/** Letter and Tabloid are sizes A and B of ANSI/ASME Y14.1; Legal is common practice. */
export const SHEET_SIZES: readonly SheetSize[] = [
  ...halved('A', 841, 1189),
  ...halved('B', 1000, 1414),
  { name: 'Letter', width: 215.9, height: 279.4 },
  { name: 'Legal', width: 215.9, height: 355.6 },
  { name: 'Tabloid', width: 279.4, height: 431.8 },
];

export const SHEET_NAMES: readonly string[] = SHEET_SIZES.map((size) => size.name);

export const sheetSize = (name: string): SheetSize | undefined =>
  SHEET_SIZES.find((size) => size.name === name);
