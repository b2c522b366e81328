import { subtract } from '../../../src/geometry/boolean/boolean.js';
import { distanceTo } from '../../../src/geometry/components.js';
import { flatten } from '../../../src/geometry/measure.js';
import { strokeContours } from '../../../src/geometry/offset/offset.js';
import type { Point, Region } from '../../../src/geometry/types.js';
import type { Piece } from '../../../src/panel/piece.js';
import { laserLayers } from '../../../src/process/laser/laser.js';
import { type Layers, pieceLayers } from '../../../src/process/layers.js';
import type { LaserProcess } from '../../../src/process/process.js';
import { STARTING } from '../../../src/process/starting.js';

/** The laser that we start from, without nibs unless a test is about them. */
export const LASER: LaserProcess = {
  ...(STARTING.laser as LaserProcess),
  nibs: { count: 0, widthMm: 0.4 },
};

/** The layers of a whole piece as the laser burns them. */
export const burnt = (piece: Piece, process: LaserProcess = LASER): Layers =>
  laserLayers(piece, pieceLayers(piece, ['front', 'back']), process);

/** What is left of the card when a beam of `kerfMm` has gone along closed paths. */
export const cardLeft = (path: Region, kerfMm: number): Region =>
  subtract(path, [strokeContours(path.contours, kerfMm)]);

/** Outlines are looked at this often (mm). */
const STEP_MM = 0.05;

export interface Apart {
  readonly mm: number;
  readonly at: Point;
}

/** Where outline `a` is furthest from outline `b`, corners included. */
export function furthest(a: Region, b: Region, counts: (p: Point) => boolean = () => true): Apart {
  let most: Apart = { mm: 0, at: { x: Number.NaN, y: Number.NaN } };
  const look = (at: Point): void => {
    const mm = distanceTo(b, at)?.distanceMm ?? Number.POSITIVE_INFINITY;
    if (mm > most.mm && counts(at)) most = { mm, at };
  };
  for (const contour of a.contours) {
    const points = flatten(contour, 0.002);
    for (let k = 1; k < points.length; k++) {
      const [p, q] = [points[k - 1], points[k]];
      const count = Math.ceil(Math.hypot(q.x - p.x, q.y - p.y) / STEP_MM);
      for (let j = 1; j <= count; j++) {
        look({ x: p.x + ((q.x - p.x) * j) / count, y: p.y + ((q.y - p.y) * j) / count });
      }
    }
  }
  return most;
}

/** The Hausdorff distance of two outlines, and where it is found. */
export function outlinesApart(a: Region, b: Region): Apart {
  const [there, back] = [furthest(a, b), furthest(b, a)];
  return there.mm >= back.mm ? there : back;
}
