import type { Bounds } from '../../geometry/types.js';

/** A cell of a grid that is fixed to the plane, whatever box is looked at. */
export interface Cell {
  readonly column: number;
  readonly row: number;
  /** Its middle. */
  readonly x: number;
  readonly y: number;
}

/** All cells that a box touches, and one more round them; bonded ones lie half over in odd rows. */
export function cellsIn(
  { minX, minY, maxX, maxY }: Bounds,
  wide: number,
  high: number,
  bond: 'stacked' | 'bonded',
): Cell[] {
  const cells: Cell[] = [];
  for (let row = Math.floor(minY / high) - 1; row <= Math.ceil(maxY / high) + 1; row++) {
    const shift = bond === 'bonded' && Math.abs(row % 2) === 1 ? 0.5 : 0;
    for (let column = Math.floor(minX / wide) - 1; column <= Math.ceil(maxX / wide) + 1; column++) {
      cells.push({ column, row, x: (column + 0.5 + shift) * wide, y: (row + 0.5) * high });
    }
  }
  return cells;
}
