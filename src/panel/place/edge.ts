import type { WindowPlan } from '../../book/book.js';
import { flatten } from '../../geometry/measure.js';
import type { Point } from '../../geometry/types.js';
import type { Side } from '../../scene/parameter.js';

const FLATTEN_MM = 0.01;

/** The window's outermost edge on one side between two places along it (x or y, mm). */
export function edgeLevel(
  opening: Pick<WindowPlan, 'x' | 'y' | 'width' | 'height' | 'outline'>,
  side: Side,
  from: number,
  to: number,
): number {
  const onJamb = side === 'left' || side === 'right';
  const outward = side === 'sill' || side === 'right' ? 1 : -1;
  const low = onJamb ? opening.y : opening.x;
  const high = low + (onJamb ? opening.height : opening.width);
  // Held inside the window, so that an element that stands on the frame finds the nearest edge.
  const a = Math.min(Math.max(from, low), high - 0.5);
  const b = Math.max(Math.min(to, high), a + 0.5);
  let level = -Infinity;
  for (const contour of opening.outline.contours) {
    const points = flatten(contour, FLATTEN_MM);
    for (let i = 1; i < points.length; i++) {
      const [s0, l0] = onJamb
        ? [points[i - 1].y, points[i - 1].x]
        : [points[i - 1].x, points[i - 1].y];
      const [s1, l1] = onJamb ? [points[i].y, points[i].x] : [points[i].x, points[i].y];
      if (Math.max(s0, s1) < a || Math.min(s0, s1) > b) continue;
      for (const s of [Math.max(a, Math.min(s0, s1)), Math.min(b, Math.max(s0, s1))]) {
        const l =
          Math.abs(s1 - s0) < 1e-9
            ? Math.max(l0 * outward, l1 * outward)
            : (l0 + ((s - s0) / (s1 - s0)) * (l1 - l0)) * outward;
        level = Math.max(level, l);
      }
    }
  }
  return level * outward;
}

/** The place of the window's edge nearest to a corner of the box round it. */
export function cornerPoint(
  { x, y, width, height, outline }: Pick<WindowPlan, 'x' | 'y' | 'width' | 'height' | 'outline'>,
  atFoot: boolean,
  atRight: boolean,
): Point {
  const corner = { x: atRight ? x + width : x, y: atFoot ? y + height : y };
  let nearest = corner;
  let least = Infinity;
  for (const contour of outline.contours) {
    for (const p of flatten(contour, FLATTEN_MM)) {
      const distance = Math.hypot(p.x - corner.x, p.y - corner.y);
      if (distance >= least) continue;
      least = distance;
      nearest = p;
    }
  }
  return nearest;
}
