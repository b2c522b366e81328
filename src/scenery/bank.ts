import { pen } from '../geometry/pen.js';
import type { Cubics, Point } from '../geometry/types.js';
import { endsOf } from './brick/craft.js';
import type { Plot } from './family.js';
import type { Random } from './random.js';

/** From one rise to the next, mm, before they stray. */
const STEP_MM = 9;
/** The ends of a bank that stands free of the jambs lie this deep in the frame. */
const SUNK_MM = 0.5;
/** It takes this far to rise from there. */
const LEVEL_MM = 3;

/**
 * A low bank along the window's edge for things to grow from: it wanders between `lowMm` and
 * `highMm` above the edge and is rooted in the frame. Rises are counted from the middle, so that a
 * wider bank keeps them.
 */
export function bank(plot: Plot, lowMm: number, highMm: number, random: Random): Cubics {
  const { left, right } = endsOf(plot);
  const points: Point[] = [];
  for (let i = -Math.ceil(-left / STEP_MM); i * STEP_MM < right; i++) {
    const own = random.branch(i);
    const x = (i + own.between(-0.35, 0.35)) * STEP_MM;
    const y = -own.between(lowMm, highMm);
    if (x > left + LEVEL_MM && x < right - LEVEL_MM) points.push({ x, y });
  }
  return pen(left, plot.root)
    .lineTo(left, SUNK_MM)
    .smoothTo([...points, { x: right, y: SUNK_MM }])
    .lineTo(right, plot.root)
    .close();
}
