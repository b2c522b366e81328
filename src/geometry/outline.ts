import { chordsOf } from './chain.js';
import { jetAt } from './cubic.js';
import type { Cubics, Region } from './types.js';

/** Chords of an outline stay this near to its curves: 2 microns, below what any machine places. */
export const OUTLINE_TOLERANCE_MM = 0.002;

/** About this many chords a cell: fewer cost memory, more cost time. */
const CHORDS_PER_CELL = 2;
/** Cells at most along one side, so that a long thin shape does not make an endless grid. */
const MAX_CELLS_A_SIDE = 2000;

/**
 * A region's outline as chords in a uniform grid, for questions of nearness. Chord k runs from
 * (ax, ay) to (bx, by), places u0 to u1 on contour `contour[k]`, whose chords are those from
 * `first[contour]` up to `first[contour + 1]`, in order round it. Zero-length chords are left out.
 */
export interface Outline {
  readonly contours: readonly Cubics[];
  readonly ax: Float64Array;
  readonly ay: Float64Array;
  readonly bx: Float64Array;
  readonly by: Float64Array;
  readonly u0: Float64Array;
  readonly u1: Float64Array;
  readonly contour: Int32Array;
  readonly first: Int32Array;
  readonly grid: Grid;
}

interface Grid {
  readonly minX: number;
  readonly minY: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
  readonly starts: Int32Array;
  readonly items: Int32Array;
}

const known = new WeakMap<Region, Outline>();

/** The region's outline, built once for each region: regions never change. */
export function outlineOf(region: Region): Outline {
  let outline = known.get(region);
  if (outline === undefined) {
    outline = build(region.contours);
    known.set(region, outline);
  }
  return outline;
}

function build(contours: readonly Cubics[]): Outline {
  const chains = contours.map((c) => chordsOf(c, OUTLINE_TOLERANCE_MM));
  const capacity = chains.reduce((sum, { x }) => sum + x.length, 0);
  const [ax, ay, bx, by, u0, u1] = Array.from({ length: 6 }, () => new Float64Array(capacity));
  const contour = new Int32Array(capacity);
  const first = new Int32Array(contours.length + 1);
  let n = 0;
  chains.forEach(({ x, y, u }, k) => {
    for (let j = 0; j + 1 < x.length; j++) {
      if (x[j] === x[j + 1] && y[j] === y[j + 1]) continue;
      ax[n] = x[j];
      ay[n] = y[j];
      bx[n] = x[j + 1];
      by[n] = y[j + 1];
      u0[n] = u[j];
      u1[n] = u[j + 1];
      contour[n++] = k;
    }
    first[k + 1] = n;
  });
  const ends = {
    ax: ax.subarray(0, n),
    ay: ay.subarray(0, n),
    bx: bx.subarray(0, n),
    by: by.subarray(0, n),
  };
  return {
    contours,
    ...ends,
    u0: u0.subarray(0, n),
    u1: u1.subarray(0, n),
    contour: contour.subarray(0, n),
    first,
    grid: gridOf(ends),
  };
}

function gridOf(chords: Pick<Outline, 'ax' | 'ay' | 'bx' | 'by'>): Grid {
  const { ax, ay, bx, by } = chords;
  const n = ax.length;
  let [minX, minY, maxX, maxY] =
    n === 0 ? [0, 0, 0, 0] : [Infinity, Infinity, -Infinity, -Infinity];
  for (let k = 0; k < n; k++) {
    // Both ends: an open chain's last point is no chord's start.
    minX = Math.min(minX, ax[k], bx[k]);
    maxX = Math.max(maxX, ax[k], bx[k]);
    minY = Math.min(minY, ay[k], by[k]);
    maxY = Math.max(maxY, ay[k], by[k]);
  }
  const [width, height] = [maxX - minX, maxY - minY];
  const ideal = Math.sqrt((width * height * CHORDS_PER_CELL) / Math.max(1, n));
  const cell = Math.max(ideal, width / MAX_CELLS_A_SIDE, height / MAX_CELLS_A_SIDE, 1e-3);
  const columns = Math.floor(width / cell) + 1;
  const rows = Math.floor(height / cell) + 1;
  const starts = new Int32Array(columns * rows + 1);
  const frame = { minX, minY, cell, columns, rows };
  const eachChord = (put: (cell: number, chord: number) => void): void => {
    for (let k = 0; k < n; k++) cellsAlong(frame, ax[k], ay[k], bx[k], by[k], 0, (c) => put(c, k));
  };
  eachChord((c) => starts[c + 1]++);
  for (let c = 0; c + 1 < starts.length; c++) starts[c + 1] += starts[c];
  const items = new Int32Array(starts[columns * rows]);
  const filled = starts.slice();
  eachChord((c, k) => {
    items[filled[c]++] = k;
  });
  return { ...frame, starts, items };
}

type Frame = Pick<Grid, 'minX' | 'minY' | 'cell' | 'columns' | 'rows'>;

const clamp = (k: number, count: number): number => Math.max(0, Math.min(count - 1, k));
const columnOf = (g: Frame, x: number): number =>
  clamp(Math.floor((x - g.minX) / g.cell), g.columns);
const rowOf = (g: Frame, y: number): number => clamp(Math.floor((y - g.minY) / g.cell), g.rows);

/** Calls `put` with each cell within `margin` of a segment, row by row. */
function cellsAlong(
  g: Frame,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  margin: number,
  put: (cell: number) => void,
): void {
  // Points on a cell's border must be found from both sides of it.
  const pad = margin + 1e-9 * g.cell;
  const top = rowOf(g, Math.min(ay, by) - pad);
  const bottom = rowOf(g, Math.max(ay, by) + pad);
  for (let row = top; row <= bottom; row++) {
    let left = Math.min(ax, bx);
    let right = Math.max(ax, bx);
    if (bottom > top + 1 && ay !== by) {
      const y = g.minY + row * g.cell;
      const f = (fraction: number): number => ax + Math.max(0, Math.min(1, fraction)) * (bx - ax);
      const p = f((y - pad - ay) / (by - ay));
      const q = f((y + g.cell + pad - ay) / (by - ay));
      left = Math.min(p, q);
      right = Math.max(p, q);
    }
    const end = columnOf(g, right + pad);
    for (let column = columnOf(g, left - pad); column <= end; column++) {
      put(row * g.columns + column);
    }
  }
}

/** Calls `visit` with each chord whose cells lie within `marginMm` of the segment, maybe twice. */
export function chordsNear(
  outline: Outline,
  ax: number,
  ay: number,
  bx: number,
  by: number,
  marginMm: number,
  visit: (chord: number) => void,
): void {
  const { grid } = outline;
  cellsAlong(grid, ax, ay, bx, by, marginMm, (cell) => {
    for (let k = grid.starts[cell]; k < grid.starts[cell + 1]; k++) visit(grid.items[k]);
  });
}

/**
 * The outline's winding number round a point (y down, so clockwise on screen counts up): 1 on
 * card, 0 off it for a proper region. On the outline itself either may come back.
 */
export function windingAt(outline: Outline, x: number, y: number): number {
  const { grid, ax, ay, bx, by } = outline;
  const { minX, minY, cell, columns, rows } = grid;
  if (y < minY || y > minY + rows * cell || x > minX + columns * cell) return 0;
  const row = rowOf(grid, y) * columns;
  let winding = 0;
  for (let column = columnOf(grid, x); column < columns; column++) {
    for (let k = grid.starts[row + column]; k < grid.starts[row + column + 1]; k++) {
      const chord = grid.items[k];
      const down = by[chord] > y;
      if (ay[chord] > y === down) continue;
      const f = (y - ay[chord]) / (by[chord] - ay[chord]);
      const crossing = ax[chord] + f * (bx[chord] - ax[chord]);
      // A chord lies in several cells of a row: it counts in the one where it crosses.
      if (crossing > x && columnOf(grid, crossing) === column) winding += down ? 1 : -1;
    }
  }
  return winding;
}

/** A point this near to the true outline (mm) lies on it: wider than a boolean's rounding. */
export const ON_OUTLINE_MM = 0.001;
/** Chords are trusted to tell sides beyond this distance (mm); nearer, the curve itself is asked. */
const CHORDS_SUFFICE_MM = 3 * OUTLINE_TOLERANCE_MM;

/** On card, off it, or within 0.001 mm of the outline. */
export type Side = 'inside' | 'outside' | 'edge';

/** On which side of a region's outline a point lies. */
export function sideOf(outline: Outline, x: number, y: number): Side {
  const byWinding = (): Side => (windingAt(outline, x, y) !== 0 ? 'inside' : 'outside');
  const foot = nearestChord(outline, x, y, CHORDS_SUFFICE_MM);
  if (foot === null) return byWinding();
  const { cubics, i, t } = curveFoot(outline, foot, x, y);
  const at = jetAt(cubics, i, t);
  if (Math.hypot(x - at.x, y - at.y) <= ON_OUTLINE_MM) return 'edge';
  // At a joint the outline may turn, and its tangent does not tell.
  if (t === 0 || t === 1) return byWinding();
  // Card lies on the right hand of the outline's run, for outer contours and holes alike.
  return at.dx * (y - at.y) - at.dy * (x - at.x) > 0 ? 'inside' : 'outside';
}

/** Halvings of a chord's stretch of t: 2^-40 of it is far below a nanometre. */
const FOOT_HALVINGS = 40;

/** This near to a cubic's ends (in t) its direction is that a little further in. */
const END_T = 1e-6;

/** The nearest place to (x, y) on the cubic behind a chord, no more than a chord away from it. */
export function curveFoot(
  outline: Outline,
  { chord, fraction }: ChordFoot,
  x: number,
  y: number,
): { cubics: Cubics; i: number; t: number } {
  const cubics = outline.contours[outline.contour[chord]];
  const [u0, u1] = [outline.u0[chord], outline.u1[chord]];
  const cubic = Math.floor((u0 + u1) / 2);
  const i = cubic * 8;
  /** Whether the point lies further on along the curve than t. */
  const isBefore = (t: number): boolean => {
    const at = jetAt(cubics, i, t);
    // Where a handle is drawn in, the curve has no direction at its very end.
    const { dx, dy } = jetAt(cubics, i, Math.max(END_T, Math.min(1 - END_T, t)));
    return (x - at.x) * dx + (y - at.y) * dy > 0;
  };
  const near = u0 + fraction * (u1 - u0) - cubic;
  let low = Math.max(0, near - (u1 - u0));
  let high = Math.min(1, near + (u1 - u0));
  if (!isBefore(low)) return { cubics, i, t: low };
  if (isBefore(high)) return { cubics, i, t: high };
  for (let k = 0; k < FOOT_HALVINGS; k++) {
    const t = (low + high) / 2;
    if (isBefore(t)) low = t;
    else high = t;
  }
  return { cubics, i, t: (low + high) / 2 };
}

/** A chord and the point on it nearest to some other point, `fraction` of the way along it. */
export interface ChordFoot {
  readonly chord: number;
  readonly fraction: number;
  readonly x: number;
  readonly y: number;
  readonly distanceMm: number;
}

/** The nearest point of the outline's chords within `limitMm`, or null. */
export function nearestChord(
  outline: Outline,
  x: number,
  y: number,
  limitMm = Infinity,
): ChordFoot | null {
  const { grid, ax, ay, bx, by } = outline;
  const { columns, rows, cell, starts, items } = grid;
  const column = columnOf(grid, x);
  const row = rowOf(grid, y);
  // A point off the grid is as far from every cell as it is from the grid's own edge, at least.
  const offX = Math.max(0, grid.minX - x, x - (grid.minX + columns * cell));
  const offY = Math.max(0, grid.minY - y, y - (grid.minY + rows * cell));
  const off = Math.hypot(offX, offY);
  let best = limitMm * limitMm;
  let [chord, fraction] = [-1, 0];
  for (let ring = 0; ring < columns + rows; ring++) {
    const reach = Math.max(off, (ring - 1) * cell);
    if (reach * reach > best) break;
    for (let r = Math.max(0, row - ring); r <= Math.min(rows - 1, row + ring); r++) {
      const edge = r === row - ring || r === row + ring;
      for (let q = column - ring; q <= column + ring; q += edge || ring === 0 ? 1 : 2 * ring) {
        if (q < 0 || q >= columns) continue;
        for (let k = starts[r * columns + q]; k < starts[r * columns + q + 1]; k++) {
          const n = items[k];
          const dx = bx[n] - ax[n];
          const dy = by[n] - ay[n];
          const along = ((x - ax[n]) * dx + (y - ay[n]) * dy) / (dx * dx + dy * dy);
          const f = Math.max(0, Math.min(1, along));
          const ex = ax[n] + f * dx - x;
          const ey = ay[n] + f * dy - y;
          const distanceSq = ex * ex + ey * ey;
          if (distanceSq >= best) continue;
          best = distanceSq;
          chord = n;
          fraction = f;
        }
      }
    }
  }
  if (chord < 0) return null;
  return {
    chord,
    fraction,
    x: ax[chord] + fraction * (bx[chord] - ax[chord]),
    y: ay[chord] + fraction * (by[chord] - ay[chord]),
    distanceMm: Math.sqrt(best),
  };
}
