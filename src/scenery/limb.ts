import { pointAt } from '../geometry/measure.js';
import { pen } from '../geometry/pen.js';
import type { Cubics, Point } from '../geometry/types.js';

/** A place on a limb's middle line and how thick the limb is there, in mm. */
export interface LimbNode extends Point {
  readonly thickness: number;
}

/**
 * A tapering limb as a closed contour: smooth along both sides, square at its foot and round at
 * its tip. Where the middle line bends tighter than half the thickness the contour crosses
 * itself; a union with the nonzero rule mends that.
 */
export function limb(nodes: readonly LimbNode[]): Cubics {
  const left: Point[] = [];
  const right: Point[] = [];
  nodes.forEach((node, i) => {
    const before = nodes[Math.max(0, i - 1)];
    const after = nodes[Math.min(nodes.length - 1, i + 1)];
    const length = Math.hypot(after.x - before.x, after.y - before.y) || 1;
    const nx = ((after.y - before.y) / length) * (node.thickness / 2);
    const ny = (-(after.x - before.x) / length) * (node.thickness / 2);
    left.push({ x: node.x + nx, y: node.y + ny });
    right.push({ x: node.x - nx, y: node.y - ny });
  });
  const tip = nodes[nodes.length - 1];
  right.reverse();
  return pen(left[0].x, left[0].y)
    .smoothTo(left.slice(1))
    .arcAround(tip.x, tip.y, 180)
    .lineTo(right[0].x, right[0].y)
    .smoothTo(right.slice(1))
    .close();
}

/** Points along a smooth line through `through`, `steps` to each stretch, ends included. */
export function alongSmooth(through: readonly Point[], steps: number): Point[] {
  const line = pen(through[0].x, through[0].y).smoothTo(through.slice(1)).line().cubics;
  const points: Point[] = [through[0]];
  for (let i = 0; i < line.length; i += 8) {
    for (let k = 1; k <= steps; k++) points.push(pointAt(line, i, k / steps));
  }
  return points;
}
