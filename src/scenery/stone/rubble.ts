import { linesInside } from '../../geometry/clip-lines.js';
import { lineLength } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { polygon, regionOf } from '../../geometry/pen.js';
import type { Bounds, Line, Point, Region } from '../../geometry/types.js';
import { handDrawn, mix } from '../brick/craft.js';
import type { Box } from '../brick/patches.js';
import { PRESSED_JOINT_MM } from '../brick/pressed.js';
import type { Random } from '../random.js';
import { type Mesh, meshOver } from './mesh.js';

/** A stone of the mesh and the box round it. */
export interface RubbleStone extends Box {
  readonly cell: number;
}

/** A stone is this much longer than high: it lies on its bed. */
const LYING = 1.45;
/** A joint stops this short of where it meets others: scores that meet lift the corners. */
const SHY_MM = 0.32;
const WANDER_MM = 0.45;
const SHORTEST_STROKE_MM = 1;
/** Corners of pressed stones are rounded to this radius, mm. */
const WORN_MM = 0.5;

export interface Rubble {
  readonly mesh: Mesh;
  readonly stones: readonly RubbleStone[];
}

/** Stones as they came from the field, over all of the box. */
export function rubbleOver(box: Bounds, courseMm: number, random: Random): Rubble {
  const mesh = meshOver(box, LYING * courseMm, courseMm, random);
  const stones = mesh.cells.flatMap(({ corners }, cell) => {
    if (corners.length === 0) return [];
    const xs = corners.map((k) => mesh.corners[k].x);
    const ys = corners.map((k) => mesh.corners[k].y);
    const box = { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys) };
    return [{ cell, ...box, y1: Math.max(...ys) }];
  });
  return { mesh, stones };
}

/** The joints round the stones in `shown`, each once, where they lie in `region`. */
export function rubbleJoints(
  { mesh }: Rubble,
  shown: readonly RubbleStone[],
  region: Region,
  random: Random,
): Line[] {
  if (shown.length === 0) return [];
  const drawn = new Set(shown.map((s) => s.cell));
  const lines = mesh.edges.flatMap(({ ends, sides }) => {
    if (!sides.some((cell) => drawn.has(cell))) return [];
    const [a, b] = ends.map((k) => mesh.corners[k]);
    const t = SHY_MM / Math.hypot(b.x - a.x, b.y - a.y);
    const luck = random.branch(`${Math.round(a.x)} ${Math.round(a.y)}`);
    return t < 0.5 ? [handDrawn([between(a, b, t), between(b, a, t)], WANDER_MM, luck)] : [];
  });
  return linesInside(lines, region).filter((l) => lineLength(l) >= SHORTEST_STROKE_MM);
}

/** A stone as it is pressed, half of each joint left free round it and its corners worn. */
export function rubbleFace({ mesh }: Rubble, { cell }: RubbleStone): Region {
  const outline = regionOf(polygon(mesh.cells[cell].corners.map((k) => mesh.corners[k])));
  return offset(offset(outline, -(PRESSED_JOINT_MM / 2 + WORN_MM)), WORN_MM);
}

const between = (a: Point, b: Point, t: number): Point => ({
  x: mix(a.x, b.x, t),
  y: mix(a.y, b.y, t),
});
