import { polyline } from '../../geometry/pen.js';
import type { Bounds, Line } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { cellsIn } from './cells.js';

/** From thread to thread and the length of one in sight, in spacings: ends keep clear of others. */
const THREAD = 2.05;
const SEEN = 1.95;
/** Slubs: some threads show longer or shorter by up to this share. */
const SLUB = 0.3;

/** Linen: weft over warp and warp over weft in turn, a short stroke for each thread in sight. */
export function linen(box: Bounds, spacing: number, random: Random): Line[] {
  return cellsIn(box, THREAD * spacing, THREAD * spacing, 'stacked').map(
    ({ column, row, x, y }) => {
      const slub = 1 - SLUB * random.branch(`${column} ${row}`).next() ** 2;
      const half = (SEEN * slub * spacing) / 2;
      const [dx, dy] = (column + row) % 2 === 0 ? [half, 0] : [0, half];
      return polyline([
        { x: x - dx, y: y - dy },
        { x: x + dx, y: y + dy },
      ]);
    },
  );
}
