import { linesInside } from '../../geometry/clip-lines.js';
import { lineLength } from '../../geometry/measure.js';
import { smoothLine } from '../../geometry/pen.js';
import type { Line, Region } from '../../geometry/types.js';
import { handDrawn } from '../brick/craft.js';
import type { Box } from '../brick/patches.js';
import type { Random } from '../random.js';

/** Height of a scale's round tail as a share of the gauge. */
const TAIL = 0.62;
/** A tail starts and ends this far up from level, so that neighbours do not meet. */
const LEFT_OFF_DEG = 16;
const TAIL_POINTS = 7;
/** Side joints stop this short of the tails above and below, mm. */
const SHY_MM = 0.4;
const WANDER_MM = 0.06;
const SHORTEST_STROKE_MM = 1;

/** Round tails and the joints between two of them, each once, where they lie in `region`. */
export function drawScales(tiles: readonly Box[], region: Region, random: Random): Line[] {
  const lines: Line[] = [];
  const joints = new Set<string>();
  for (const tile of tiles) {
    const luck = random.branch(`${tile.x0.toFixed(2)} ${tile.y0.toFixed(2)}`);
    lines.push(tailOf(tile, luck));
    const from = tile.y0 + SHY_MM;
    const to = tile.y1 - TAIL * (tile.y1 - tile.y0) - SHY_MM;
    for (const x of [tile.x0, tile.x1]) {
      const key = `${x.toFixed(2)} ${tile.y0.toFixed(2)}`;
      if (to - from < SHORTEST_STROKE_MM || joints.has(key)) continue;
      joints.add(key);
      const ends = [from, to].map((y) => ({ x, y }));
      lines.push(handDrawn(ends, WANDER_MM, random.branch(`joint ${key}`)));
    }
  }
  return linesInside(lines, region).filter((l) => lineLength(l) >= SHORTEST_STROKE_MM);
}

function tailOf({ x0, x1, y0, y1 }: Box, luck: Random): Line {
  const rise = TAIL * (y1 - y0);
  const [cx, cy] = [(x0 + x1) / 2, y1 - rise];
  return smoothLine(
    Array.from({ length: TAIL_POINTS }, (_, i) => {
      const t = i / (TAIL_POINTS - 1);
      const a = ((LEFT_OFF_DEG + t * (180 - 2 * LEFT_OFF_DEG)) * Math.PI) / 180;
      const off = luck.between(-WANDER_MM, WANDER_MM);
      return { x: cx - ((x1 - x0) / 2) * Math.cos(a), y: cy + (rise + off) * Math.sin(a) };
    }),
  );
}
