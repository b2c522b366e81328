import type { Piece } from '../panel/piece.js';
import { type Face, isPressedFrom, OPERATIONS } from '../process/layers.js';
import { LAYER_COLOURS, type LayerColours } from '../scene/layer-colours.js';
import { type Sheet, sheetWork } from '../sheet/sheet.js';
import { pieceSvg, sheetStepSvg, sheetSvg } from './svg.js';

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

/**
 * The one or two files of a sheet, then one for each step of its work, numbered as they are done.
 * A sheet worked from one face alone has no `-back` file, whichever face that is.
 */
export function sheetFiles(sheet: Sheet, colours: LayerColours = LAYER_COLOURS): TextFile[] {
  const suffix = (face: Face) => (face === 'back' && !sheet.mirrored ? '-back' : '');
  const whole = sheet.faces.map((face) => ({
    path: `sheets/${sheet.name}${suffix(face)}.svg`,
    text: sheetSvg(sheet, face, colours),
  }));
  const steps = stepsOf(sheet).map(({ face, operation }, i) => ({
    path: `sheets/by-step/${sheet.name}-${i + 1}-${operation}${suffix(face)}.svg`,
    text: sheetStepSvg(sheet, face, operation, colours),
  }));
  return [...whole, ...steps];
}

/** Every operation that has work to do, face by face. */
const stepsOf = (sheet: Sheet) =>
  sheet.faces.flatMap((face) => {
    const { placed } = sheetWork(sheet, face);
    return OPERATIONS.filter(
      (operation) => operation !== 'guide' && placed.some((p) => p.layers[operation].length > 0),
    ).map((operation) => ({ face, operation }));
  });
