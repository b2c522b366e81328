import type { Piece } from '../panel/piece.js';
import { type Face, isPressedFrom } from '../process/layers.js';
import type { WorkedOperation } from '../process/process.js';
import { LAYER_COLOURS, type LayerColours } from '../scene/layer-colours.js';
import type { SheetJob } from '../sheet/job.js';
import type { Sheet } from '../sheet/sheet.js';
import { pieceSvg, type SheetStyle, sheetSvg } from './svg.js';

/** A file to write: its path below the output folder, with forward slashes, and its content. */
export interface TextFile {
  readonly path: string;
  readonly text: string;
}

/** Where a piece is written. The file of its back exists only where it is worked from there. */
export const piecePath = (piece: Piece, face: Face = 'front'): string =>
  `${piece.folder}/${piece.name}${face === 'back' ? '-back' : ''}.svg`;

/** The one or two files of a piece as designed. */
export function pieceFiles(piece: Piece, colours: LayerColours = LAYER_COLOURS): TextFile[] {
  const faces: Face[] = isPressedFrom(piece, 'back') ? ['front', 'back'] : ['front'];
  return faces.map((face) => ({
    path: piecePath(piece, face),
    text: pieceSvg(piece, face, colours),
  }));
}

/** The name of what is run on one face of a sheet, as in its files. */
export const faceName = (sheet: Sheet, face: Face): string => sheet.name + suffix(sheet, face);

/** The name of the file of one step, the first of a sheet being 1. */
export const stepName = (
  sheet: Sheet,
  number: number,
  operation: WorkedOperation,
  face: Face,
): string => `${sheet.name}-${number}-${operation}${suffix(sheet, face)}`;

const suffix = (sheet: Sheet, face: Face): string =>
  face === 'back' && !sheet.mirrored ? '-back' : '';

/**
 * The one or two files of a sheet, then one for each step of its work, numbered as they are done.
 * A sheet worked from one face alone has no `-back` file, whichever face that is.
 */
export function sheetFiles({ sheet, faces }: SheetJob, style: SheetStyle): TextFile[] {
  const whole = faces.map((job) => ({
    path: `sheets/${faceName(sheet, job.face)}.svg`,
    text: sheetSvg(sheet, job, style),
  }));
  const steps = faces.flatMap((job) => job.steps.map(({ operation }) => ({ job, operation })));
  const byStep = steps.map(({ job, operation }, i) => ({
    path: `sheets/by-step/${stepName(sheet, i + 1, operation, job.face)}.svg`,
    text: sheetSvg(sheet, job, style, operation),
  }));
  return [...whole, ...byStep];
}
