import { pen } from '../../geometry/pen.js';
import type { Bounds, Line } from '../../geometry/types.js';
import type { Random } from '../random.js';

/** From row to row, in spacings, at the far side and toward the viewer. */
const ROWS = [1.75, 2.9] as const;
/** Lengths of strokes and of the gaps between them, in spacings, far; near they are this longer. */
const STROKE = [3, 8] as const;
const GAP = [1.8, 5] as const;
const NEARER = 1.9;
/** How far a stroke strays up or down and is bowed, in row distances. */
const STRAY = 0.1;
const BOW = 0.14;

/** Water: broken level strokes, longer and further apart toward the viewer below. */
export function water({ minX, minY, maxX, maxY }: Bounds, spacing: number, random: Random): Line[] {
  const strokes: Line[] = [];
  const height = Math.max(spacing, maxY - minY);
  let y = minY;
  for (let row = 0; y <= maxY; row++) {
    const near = (y - minY) / height;
    const step = (ROWS[0] + (ROWS[1] - ROWS[0]) * near) * spacing;
    const scale = (1 + (NEARER - 1) * near) * spacing;
    const luck = random.branch(`row ${row}`);
    let x = minX - luck.between(0, STROKE[1]) * scale;
    for (let n = 0; x < maxX; n++) {
      const own = luck.branch(n);
      const length = own.between(...STROKE) * scale;
      const level = y + STRAY * step * own.between(-1, 1);
      const bow = BOW * step * own.between(-1, 1);
      strokes.push(
        pen(x, level)
          .curveTo(
            x + length / 3,
            level + bow,
            x + (2 * length) / 3,
            level + bow,
            x + length,
            level,
          )
          .line(),
      );
      x += length + own.between(...GAP) * scale;
    }
    y += step;
  }
  return strokes;
}
