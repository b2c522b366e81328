import { subtract } from '../../geometry/boolean/boolean.js';
import { linesInside, outlineLines } from '../../geometry/clip-lines.js';
import { regionBounds } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { polyline } from '../../geometry/pen.js';
import {
  type Bounds,
  EMPTY_REGION,
  type Line,
  type Point,
  type Region,
} from '../../geometry/types.js';
import { inStrokes } from '../brick/craft.js';
import { CLEAR_MM } from '../brick/frame-wall.js';
import type { Random } from '../random.js';

/** The boards that frame the window. */
export interface Casing {
  readonly band: Region;
  /** Its outer edge and its mitres. */
  readonly lines: readonly Line[];
}

const WIDTH_SHARE = 0.8;
const WIDTH_MM = [4, 8] as const;
/** Boards are nailed on beside it over at least this much, mm. */
const LEAST_BESIDE_MM = 3;
const SHY_MM = 0.5;
/** A corner that turns by more than this is mitred. */
const MITRED_DEG = 40;

/** The casing round a window, or none where there is no window or no room. */
export function casingOf(window: Region, card: Bounds, boardMm: number, random: Random): Casing {
  const none = { band: EMPTY_REGION, lines: [] };
  if (window.contours.length === 0) return none;
  const wide = Math.max(WIDTH_MM[0], Math.min(WIDTH_MM[1], WIDTH_SHARE * boardMm));
  const { minX, maxX, minY } = regionBounds(window);
  const room = Math.min(minX - card.minX, card.maxX - maxX, minY - card.minY);
  if (room < wide + LEAST_BESIDE_MM) return none;
  const outer = offset(window, wide, 'mitre', 3);
  const edges = outlineLines(outer).flatMap((line) => inStrokes(line, random.branch('edge')));
  return { band: subtract(outer, [window]), lines: [...edges, ...mitres(window, outer, wide)] };
}

/** From each sharp corner of the window outward, half way between its two edges. */
function mitres(window: Region, outer: Region, wide: number): Line[] {
  const lines = window.contours.flatMap((c) => {
    const corners: Line[] = [];
    for (let i = 0; i < c.length; i += 8) {
      const before = (i + c.length - 8) % c.length;
      const into = heading(c[before + 4], c[before + 5], c[before + 6], c[before + 7]);
      const out = heading(c[i], c[i + 1], c[i + 2], c[i + 3]);
      const cos = into.x * out.x + into.y * out.y;
      if (cos > Math.cos((MITRED_DEG * Math.PI) / 180)) continue;
      // Outward lies to the left of a contour that runs clockwise.
      const [nx, ny] = [into.y + out.y, -(into.x + out.x)];
      const unit = Math.hypot(nx, ny);
      const reach = wide / Math.sqrt((1 + cos) / 2) - SHY_MM;
      const at = (mm: number): Point => ({
        x: c[i] + (nx / unit) * mm,
        y: c[i + 1] + (ny / unit) * mm,
      });
      if (reach > CLEAR_MM + 1) corners.push(polyline([at(CLEAR_MM), at(reach)]));
    }
    return corners;
  });
  return linesInside(lines, outer);
}

function heading(x0: number, y0: number, x1: number, y1: number): Point {
  const length = Math.hypot(x1 - x0, y1 - y0) || 1;
  return { x: (x1 - x0) / length, y: (y1 - y0) / length };
}
