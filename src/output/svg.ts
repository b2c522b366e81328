import type { Piece } from '../panel/piece.js';
import type { Face } from '../process/layers.js';
import type { Process, WorkedOperation } from '../process/process.js';
import { LAYER_COLOURS, type LayerColours } from '../scene/layer-colours.js';
import type { FaceJob } from '../sheet/job.js';
import type { Sheet } from '../sheet/sheet.js';
import { piecePage, sheetPage } from './pages.js';
import { svgDocument } from './svg-document.js';

export const pieceSvg = (piece: Piece, face: Face, colours: LayerColours = LAYER_COLOURS): string =>
  svgDocument(piecePage(piece, face), colours);

/** How a sheet's files are written. */
export interface SheetStyle {
  readonly process: Process;
  readonly colours: LayerColours;
}

export const sheetSvg = (
  sheet: Sheet,
  job: FaceJob,
  { process, colours }: SheetStyle,
  only?: WorkedOperation,
): string => svgDocument(sheetPage(sheet, job, process, only), colours);
