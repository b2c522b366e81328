import type { Process } from '../process/process.js';
import type { Stock } from '../scene/scene.js';
import type { Box } from './footprint.js';
import { ceilMicrometres, floorMicrometres } from './micrometres.js';
import { type Pressed, workedFaces } from './sheet.js';

/**
 * The part of a sheet, seen from its front, that pieces may lie on: inside its margins and, from
 * each face that it may have to be worked from, so far inside what the bed reaches that their paths
 * are too. A sheet lies in the bed's corner of origin, either way up, since it is turned over left to
 * right.
 */
export function usableBox({ sheet, margin }: Stock, pressed: Pressed, process: Process): Box {
  const { bed } = process;
  const faces = [false, pressed.front].flatMap((front) =>
    [false, pressed.back].flatMap((back) => workedFaces({ front, back }, process)),
  );
  const marginMm = bed.marginMm + overhangMm(process);
  const atRight = bed.origin.endsWith('right');
  const x = overlap([
    { from: margin, to: sheet.width - margin },
    ...faces.map((face) =>
      onBed(sheet.width, bed.widthMm, marginMm, atRight !== (face === 'back')),
    ),
  ]);
  const y = overlap([
    { from: margin, to: sheet.height - margin },
    onBed(sheet.height, bed.heightMm, marginMm, bed.origin.startsWith('bottom')),
  ]);
  return {
    x: x.from,
    y: y.from,
    width: Math.max(0, x.to - x.from),
    height: Math.max(0, y.to - y.from),
  };
}

/** From where to where along one side of a sheet. */
interface Reach {
  readonly from: number;
  readonly to: number;
}

/** How far the path of a piece runs outside its outline. */
function overhangMm(process: Process): number {
  if (process.kind === 'laser') return process.kerfMm / 2;
  return process.kind === 'knife' && process.blade.compensate ? process.blade.offsetMm : 0;
}

/**
 * What the bed reaches, `marginMm` from its edges, in mm from the sheet's left or top, where the two
 * share that end or the other.
 */
function onBed(sheetMm: number, bedMm: number, marginMm: number, sharesFarEnd: boolean): Reach {
  const from = sharesFarEnd ? sheetMm - bedMm : 0;
  return { from: from + marginMm, to: from + bedMm - marginMm };
}

/** In whole micrometres. */
const overlap = (reaches: readonly Reach[]): Reach => ({
  from: ceilMicrometres(Math.max(...reaches.map(({ from }) => from))),
  to: floorMicrometres(Math.min(...reaches.map(({ to }) => to))),
});
