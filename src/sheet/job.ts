import { type Affine, inOrder, rotation, translation } from '../geometry/transform.js';
import { type Face, type Mark, moveMark, type PlacedMark, turnedOver } from '../process/layers.js';
import { cornerOf, runningOrder } from '../process/order.js';
import { type Means, machineLayers } from '../process/prepare.js';
import type { Process, WorkedOperation } from '../process/process.js';
import { registerMarks } from './register-marks.js';
import { type Shared, type SharedEdge, shareEdges } from './shared-edges.js';
import { cutFace, type Placement, type Sheet } from './sheet.js';

/** One operation on one face of a sheet: the machine runs its marks in this order. */
export interface Step {
  readonly operation: WorkedOperation;
  readonly marks: readonly PlacedMark[];
}

/** What is done from one face, in the coordinates of the sheet with that face up (mm, y down). */
export interface FaceJob {
  readonly face: Face;
  /** In working order; none is empty. */
  readonly steps: readonly Step[];
  /** Looked at, never cut. */
  readonly guides: readonly PlacedMark[];
  readonly register: readonly Mark[];
  /** Edges of two pieces that are cut once. */
  readonly shared: readonly SharedEdge[];
}

/** All that a machine does to make one sheet of pieces. */
export interface SheetJob {
  readonly sheet: Sheet;
  readonly faces: readonly FaceJob[];
}

export const sheetJob = (sheet: Sheet, means: Means): SheetJob => ({
  sheet,
  faces: sheet.faces.map((face) => faceJob(sheet, face, means)),
});

function faceJob(sheet: Sheet, face: Face, means: Means): FaceJob {
  const oneFace = sheet.faces.length === 1;
  const faces: readonly Face[] = oneFace ? ['front', 'back'] : [face];
  const placed = sheet.placements.map((placement) => {
    const { piece, copy } = placement;
    const layers = machineLayers(piece, faces, oneFace ? face : cutFace(sheet), means);
    const m = placeOn(sheet, placement, face);
    return (operation: WorkedOperation | 'guide'): PlacedMark[] =>
      layers[operation].map((mark) => ({ ...moveMark(mark, m), piece: piece.name, copy }));
  });
  const { process } = means;
  const cuts = cutsShared(
    sheet,
    placed.flatMap((of) => of('cut')),
    process,
  );
  const marksOf = (operation: WorkedOperation | 'guide') =>
    operation === 'cut' ? cuts.marks : placed.flatMap((of) => of(operation));
  const from = cornerOf(process.bed.origin, sheet.width, sheet.height);
  const steps = process.order
    .map((operation) => ({
      operation,
      marks: runningOrder(marksOf(operation), process, { operation, from }),
    }))
    .filter(({ marks }) => marks.length > 0);
  // Relief is pressed on a soft underlay, from which the sheet is lifted to be cut on its mat.
  const isRelaid =
    process.kind === 'knife' && steps.some(({ operation }) => operation === 'emboss');
  return {
    face,
    steps,
    guides: marksOf('guide'),
    register:
      oneFace && !isRelaid ? [] : registerMarks(sheet.width, sheet.height, sheet.stock.margin),
    shared: cuts.shared,
  };
}

/** Panels and strips have plain straight edges; those of loose pieces are looked at. */
function cutsShared(sheet: Sheet, marks: readonly PlacedMark[], process: Process): Shared {
  if (process.kind !== 'laser' || !process.sharedEdges) return { marks, shared: [] };
  const loose = new Set(
    sheet.placements.flatMap(({ piece }) => (piece.folder === 'loose' ? [piece.name] : [])),
  );
  return shareEdges(marks, process.kerfMm, ({ piece }) => !loose.has(piece));
}

/** From a piece's own coordinates to the sheet's, with that face up. */
export function placeOn(sheet: Sheet, placement: Placement, face: Face): Affine {
  const m = placementOf(placement);
  return face === 'back' ? inOrder(m, turnedOver(sheet.width)) : m;
}

/** From a piece's own coordinates to the sheet's, front up. */
export function placementOf({ piece, dx, dy, halfTurn }: Placement): Affine {
  const move = translation(dx, dy);
  if (!halfTurn) return move;
  const { width, height } = piece;
  return inOrder(rotation(180), translation(width, height), move);
}
