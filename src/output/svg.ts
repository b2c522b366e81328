import type { Piece } from '../panel/piece.js';
import {
  type Face,
  isPressedFrom,
  type Layers,
  moveLayers,
  OPERATIONS,
  type Operation,
  pieceLayers,
  turnedOver,
} from '../process/layers.js';
import { LAYER_COLOURS, type LayerColours } from '../scene/layer-colours.js';
import { registerMarks } from '../sheet/register-marks.js';
import { type Sheet, sheetWork } from '../sheet/sheet.js';
import { type Batch, svgDocument } from './svg-document.js';

/**
 * A piece as designed, whatever the process. The front always holds the cut; the back, mirrored
 * left to right, only what is worked from there. Where there is a back, both carry register marks.
 */
export function pieceSvg(piece: Piece, face: Face, colours: LayerColours = LAYER_COLOURS): string {
  const { width, height } = piece;
  const layers = pieceLayers(piece, [face]);
  const seen = face === 'back' ? moveLayers(layers, turnedOver(width)) : layers;
  const register = isPressedFrom(piece, 'back') ? registerMarks(width, height, 0) : [];
  const whole = { ...seen, guide: [...seen.guide, ...register] };
  return svgDocument({ width, height, face, batches: [{ layers: whole }] }, colours);
}

/** All that is done to a sheet from one of its faces, piece by piece within each operation. */
export const sheetSvg = (sheet: Sheet, face: Face, colours: LayerColours = LAYER_COLOURS): string =>
  sheetDocument(sheet, face, OPERATIONS, colours);

/** One operation alone of a sheet's face, for machines that are set up for one tool at a time. */
export const sheetStepSvg = (
  sheet: Sheet,
  face: Face,
  operation: Operation,
  colours: LayerColours = LAYER_COLOURS,
): string => sheetDocument(sheet, face, [operation], colours);

function sheetDocument(
  sheet: Sheet,
  face: Face,
  operations: readonly Operation[],
  colours: LayerColours,
): string {
  const { placed, register } = sheetWork(sheet, face);
  const batches: Batch[] = placed.map(({ piece, copy, layers }) => ({
    piece,
    copy,
    layers: only(operations, layers),
  }));
  // A step that is run by itself has to be laid up by itself.
  const marks: Layers = { ...NO_LAYERS, guide: register };
  return svgDocument(
    { width: sheet.width, height: sheet.height, face, batches: [...batches, { layers: marks }] },
    colours,
  );
}

const NO_LAYERS: Layers = { emboss: [], fold: [], detail: [], cut: [], guide: [] };

const only = (operations: readonly Operation[], layers: Layers): Layers => ({
  ...NO_LAYERS,
  ...Object.fromEntries(operations.map((operation) => [operation, layers[operation]])),
});
