import { type Pen, pen } from '../../geometry/pen.js';
import type { Cubics, Line, Point } from '../../geometry/types.js';
import { guideOf, nibbleAlong } from '../edge.js';
import type { Random } from '../random.js';
import type { Room } from './room.js';

/** A stretch of a hedge's edge, left to right, and where its nibbles are counted from. */
export interface Stretch {
  readonly line: Line;
  /** Share of its length; the leaves there stay put when the hedge grows. */
  readonly anchor: number;
}

/** A corner of a path and the radius that rounds it (0: sharp). */
export interface Corner extends Point {
  readonly radius?: number;
}

/** The card of a hedge: the nibbled stretches over the top, closed round its root in the frame. */
export function hedgeOutline(room: Room, stretches: readonly Stretch[], random: Random): Cubics {
  const [x, y] = stretches[0].line.cubics;
  const outline = pen(x, y);
  stretches.forEach(({ line, anchor }, i) => {
    const guide = guideOf(line);
    const own = random.branch(`stretch ${i}`);
    nibbleAlong(outline, guide, anchor * guide.lengthMm, room.nibble, own);
  });
  const last = stretches[stretches.length - 1].line.cubics;
  closeRoot(outline, room, x, last[last.length - 2]);
  return outline.close();
}

/** On a sill the whole foot runs down; on a jamb a bank rises from the frame to the free end. */
function closeRoot(outline: Pen, room: Room, firstX: number, lastX: number): void {
  const { root, side } = room.plot;
  if (side === 'left') {
    outline.curveTo(lastX * 0.7, root * 0.35, lastX * 0.3, root, 0, root).lineTo(firstX, root);
  } else if (side === 'right') {
    outline.lineTo(lastX, root).lineTo(0, root);
    outline.curveTo(firstX * 0.3, root, firstX * 0.7, root * 0.35, firstX, 0);
  } else {
    outline.lineTo(lastX, root).lineTo(firstX, root);
  }
}

/** Where the hedge's two ends stand: a rooted end runs straight into the jamb. */
export const isFree = (room: Room, end: 'left' | 'right'): boolean => room.plot.side !== end;

/** A straight-edged line with its corners rounded. */
export function roundedLine(corners: readonly Corner[]): Line {
  const p = pen(corners[0].x, corners[0].y);
  for (let i = 1; i + 1 < corners.length; i++) {
    const at = corners[i];
    const radius = at.radius ?? 0;
    const into = unit(corners[i - 1], at);
    const out = unit(at, corners[i + 1]);
    const turn = Math.abs(
      Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y),
    );
    if (radius <= 0 || turn < 1e-3) {
      p.lineTo(at.x, at.y);
      continue;
    }
    const reach = radius * Math.tan(turn / 2);
    const handle = (4 / 3) * radius * Math.tan(turn / 4);
    const a = { x: at.x - into.x * reach, y: at.y - into.y * reach };
    const b = { x: at.x + out.x * reach, y: at.y + out.y * reach };
    p.lineTo(a.x, a.y);
    p.curveTo(
      a.x + into.x * handle,
      a.y + into.y * handle,
      b.x - out.x * handle,
      b.y - out.y * handle,
      b.x,
      b.y,
    );
  }
  const last = corners[corners.length - 1];
  return p.lineTo(last.x, last.y).line();
}

function unit(a: Point, b: Point): Point {
  const length = Math.max(1e-9, Math.hypot(b.x - a.x, b.y - a.y));
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
}
