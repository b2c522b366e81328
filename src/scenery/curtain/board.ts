import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { linesInside, outlineLines } from '../../geometry/clip-lines.js';
import { flatten } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { pen, polyline } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import type { Stage } from './stage.js';

/** The cut arch in front of a stage. */
export interface Board {
  readonly shape: Region;
  readonly mouldings: readonly Line[];
  /** Its soffit, left to right: what hangs behind it hangs from there. */
  readonly soffit: readonly Point[];
}

/** Width of its jambs in webs and in widths, its crown's depth and its rise in drops. */
const JAMB = { webs: 2, share: 0.035 };
const CROWN = 0.5;
const RISE = 0.9;
/** The arch springs from a small shoulder, as wide as this share of the jamb. */
const SHOULDER = 0.8;
/** Mouldings lie this far behind the cut arch, mm. */
const MOULDINGS_MM = [1.9, 3.2];
const BEHIND_MM = 2;

export function boardOf(stage: Stage, window: Region, dropMm: number): Board {
  const { bounds, width, web } = stage;
  const jamb = Math.max(JAMB.webs * web, JAMB.share * width);
  const shoulder = SHOULDER * jamb;
  const [left, right] = [bounds.minX + jamb, bounds.maxX - jamb];
  const crown = bounds.minY + CROWN * dropMm;
  const springing = crown + RISE * dropMm;
  const middle = (left + right) / 2;
  const half = (right - left) / 2 - shoulder;
  const round = 0.5523;
  const arch = shapeOf(
    pen(left, bounds.maxY + BEHIND_MM)
      .lineTo(left, springing)
      .lineTo(left + shoulder, springing)
      .curveTo(
        left + shoulder,
        springing - round * (springing - crown),
        middle - round * half,
        crown,
        middle,
        crown,
      )
      .curveTo(
        middle + round * half,
        crown,
        right - shoulder,
        springing - round * (springing - crown),
        right - shoulder,
        springing,
      )
      .lineTo(right, springing)
      .lineTo(right, bounds.maxY + BEHIND_MM)
      .close(),
  );
  // Under a curved head the arch follows it: only a band is left of the board.
  const below = rectangle(bounds.minX, springing, width, bounds.maxY - springing + BEHIND_MM);
  const band = union([offset(window, -jamb), intersect(offset(window, -jamb), below)]);
  const open = stage.flat ? arch : band;
  const shape = subtract(offset(window, BEHIND_MM), [open]);
  const high = rectangle(
    bounds.minX - 50,
    bounds.minY - 50,
    width + 100,
    springing - bounds.minY + 50,
  );
  const mouldings = MOULDINGS_MM.flatMap((mm) => linesInside(outlineLines(offset(open, mm)), high));
  return {
    shape,
    mouldings: [...mouldings, ...keystone(middle, crown, web)],
    soffit: soffitOf(open, springing),
  };
}

/** A keystone's two sides over the crown. */
const keystone = (x: number, crown: number, web: number): Line[] =>
  [-1, 1].map((side) =>
    polyline([
      { x: x + side * 1.1 * web, y: crown - 1.6 },
      { x: x + side * 1.6 * web, y: crown - 4.6 },
    ]),
  );

const soffitOf = (open: Region, springing: number): Point[] =>
  flatten(open.contours[0], 0.02)
    .filter((p) => p.y < springing - 0.01)
    .sort((a, b) => a.x - b.x);
