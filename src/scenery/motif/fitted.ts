import { boundsOf } from '../../geometry/measure.js';
import type { ImportedDrawing, ImportedShape } from '../../geometry/svg/import.js';
import {
  type Affine,
  inOrder,
  moveLine,
  moveRegion,
  rotation,
  scaling,
  translation,
} from '../../geometry/transform.js';
import type { Plot } from '../family.js';

export type Foot = 'bottom' | 'top' | 'left' | 'right';

/** Turns that bring a side of the drawing to its foot, clockwise. */
const TURN_DEG: Readonly<Record<Foot, number>> = { bottom: 0, right: 90, top: 180, left: 270 };

/**
 * The drawing's shapes in the plot: turned so that `foot` is down, as large as the plot's box holds
 * in the drawing's own proportions, its lowest edge on the foot line and its middle on the axis.
 */
export function fitted(
  { shapes }: ImportedDrawing,
  { width, height }: Pick<Plot, 'width' | 'height'>,
  foot: Foot,
): ImportedShape[] {
  const turned = shapes.map((shape) => moved(shape, rotation(TURN_DEG[foot])));
  const { minX, minY, maxX, maxY } = boundsOf(
    turned.flatMap(({ region, lines }) => [...region.contours, ...lines.map((l) => l.cubics)]),
  );
  const scale = Math.min(width / Math.max(maxX - minX, 1e-6), height / Math.max(maxY - minY, 1e-6));
  const place = inOrder(translation(-(minX + maxX) / 2, -maxY), scaling(scale, scale));
  return turned.map((shape) => moved(shape, place));
}

const moved = (shape: ImportedShape, by: Affine): ImportedShape => ({
  ...shape,
  region: moveRegion(shape.region, by),
  lines: shape.lines.map((line) => moveLine(line, by)),
});
