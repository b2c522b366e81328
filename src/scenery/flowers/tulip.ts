import { pen } from '../../geometry/pen.js';
import type { Random } from '../random.js';
import { type Grain, type HeadDrawing, type HeadPlace, placedIn } from './head.js';

/** Between three tips lie two notches: both must be wide enough to be cut. */
const NOTCH_HOLES = 1.35;

/** A cup of petals with two or three tips. */
export function tulip(place: HeadPlace, grain: Grain, random: Random): HeadDrawing {
  const { half, length } = place;
  const at = placedIn(place);
  const middle = random.between(-0.12, 0.12) * half;
  const tips = [-1, 1].map(() => random.between(0.92, 1.05));
  const hasThree = half >= NOTCH_HOLES * grain.smallestHole;
  const start = at(0, 0);
  const cup = pen(start.x, start.y);
  const curve = (
    a: readonly [number, number],
    b: readonly [number, number],
    c: readonly [number, number],
  ) => {
    const [p, q, r] = [a, b, c].map(([u, v]) => at(u * length, v * half));
    cup.curveTo(p.x, p.y, q.x, q.y, r.x, r.y);
  };
  const m = middle / half;
  curve([0.0, -0.55], [0.16, -1.02], [0.46, -1]);
  curve([0.66, -0.98], [0.8, -0.8], [0.98 * tips[0], -0.92]);
  if (hasThree) {
    curve([0.92, -0.66], [0.8, -0.5], [0.68, m - 0.42]);
    curve([0.8, m - 0.34], [0.92, m - 0.16], [1, m]);
    curve([0.92, m + 0.16], [0.8, m + 0.34], [0.68, m + 0.42]);
    curve([0.8, 0.5], [0.92, 0.66], [0.98 * tips[1], 0.92]);
  } else {
    curve([0.92, -0.6], [0.8, -0.3], [0.66, m]);
    curve([0.8, 0.3], [0.92, 0.6], [0.98 * tips[1], 0.92]);
  }
  curve([0.8, 0.8], [0.66, 0.98], [0.46, 1]);
  curve([0.16, 1.02], [0.0, 0.55], [0, 0]);
  const scores = (hasThree ? [-1, 1] : [0]).map((side) => {
    const [a, b, c] = [
      at(0.62 * length, middle + side * 0.42 * half),
      at(0.42 * length, middle + side * 0.66 * half),
      at(0.16 * length, middle + side * 0.2 * half),
    ];
    return pen(a.x, a.y).quadTo(b.x, b.y, c.x, c.y).line();
  });
  return { card: [cup.close()], holes: [], scores, bosses: [] };
}
