import type { Bed } from '../process/process.js';
import type { Stock } from '../scene/scene.js';
import { MICROMETRES_PER_MM } from './micrometres.js';

/** A piece that its stock's sheet cannot hold. Lengths in mm. */
export interface SheetProblem {
  readonly piece: string;
  /** The card's own size. */
  readonly width: number;
  readonly height: number;
  /** The sheet's name and the largest card that it can hold. */
  readonly sheet: string;
  readonly usableWidth: number;
  readonly usableHeight: number;
  /** What is wrong, where and by how much. */
  readonly message: string;
  readonly cure: string;
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Says what is wrong when a card (in micrometres) is larger than the usable part of its sheet. */
export function sheetProblem(
  piece: string,
  card: Size,
  usable: Size,
  stock: Stock,
  bed: Bed,
): SheetProblem | null {
  if (card.width <= usable.width && card.height <= usable.height) return null;
  const width = card.width / MICROMETRES_PER_MM;
  const height = card.height / MICROMETRES_PER_MM;
  const usableWidth = usable.width / MICROMETRES_PER_MM;
  const usableHeight = usable.height / MICROMETRES_PER_MM;
  const { sheet, margin } = stock;
  const inside = { width: sheet.width - 2 * margin, height: sheet.height - 2 * margin };
  const byBed = isMore(inside.width, usableWidth) || isMore(inside.height, usableHeight);
  const bySheet = isMore(width, inside.width) || isMore(height, inside.height);
  const larger = [
    ...(bySheet ? [`a sheet of at least ${size(width + 2 * margin, height + 2 * margin)}`] : []),
    ...(byBed ? ['a larger bed'] : []),
  ];
  return {
    piece,
    width,
    height,
    sheet: sheet.name,
    usableWidth,
    usableHeight,
    message:
      `${piece} measures ${size(width, height)}, but the sheet ${sheet.name} ` +
      `(${size(sheet.width, sheet.height)}, margin ${round(margin)} mm) ` +
      `${byBed ? `on a bed of ${size(bed.widthMm, bed.heightMm)} ` : ''}holds at most ${size(usableWidth, usableHeight)}.`,
    cure: [
      `Use ${larger.join(' on ')},`,
      `or make the piece ${smallerBy(width - usableWidth, height - usableHeight)}.`,
      // Folds across the grain crack, so a quarter turn is never made, only offered as other card.
      ...(!byBed && width <= usableHeight && height <= usableWidth
        ? [`The same sheet held sideways would do if its grain ran along ${round(sheet.width)} mm.`]
        : []),
    ].join(' '),
  };
}

/** By more than rounding to micrometres. */
const isMore = (a: number, b: number): boolean => a > b + 2 / MICROMETRES_PER_MM;

function smallerBy(tooWide: number, tooHigh: number): string {
  const wider = tooWide > 0 ? [`${roundUp(tooWide)} mm narrower`] : [];
  const higher = tooHigh > 0 ? [`${roundUp(tooHigh)} mm lower`] : [];
  return [...wider, ...higher].join(' and ');
}

/** Lengths in messages, to 0.01 mm. */
const round = (mm: number): string => String(Math.round(mm * 100) / 100);
const roundUp = (mm: number): string => String(Math.ceil(mm * 100 - 1e-6) / 100);
/** Such as "210 x 297 mm". */
export const size = (width: number, height: number): string =>
  `${round(width)} x ${round(height)} mm`;
