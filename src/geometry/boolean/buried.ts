import { chordCount, jetAt } from '../cubic.js';
import type { Bounds, Cubics } from '../types.js';
import { boxRound, handleBounds } from './clusters.js';

/** The closed contours of one shape, filled by the nonzero rule. */
type Shape = readonly Cubics[];

/** Chords of this tolerance (mm) tell where a shape is... */
const CHORD_MM = 0.03;
/** ... and nothing nearer to them than this (mm) counts as covered: room for curve and rounding. */
const MARGIN_MM = 0.04;
/** Cells (mm) as fine as this find most of what is buried under leaves; finer ones cost more. */
const CELL_MM = 0.4;
/** No more cells than this on a field, so that a large one stays cheap and only hides less. */
const MAX_CELLS = 60_000;
/** Fewer shapes than this are united faster than looked at. */
const FEW = 40;

/**
 * The shapes without those that lie wholly under others and so add nothing to the union: in a
 * dense crown that is most of its leaves. On a raster, a cell is covered where it lies wholly
 * within one shape; a shape goes if all cells that it touches are covered by shapes that stay.
 */
export function withoutBuried<S extends Shape>(shapes: readonly S[]): readonly S[] {
  if (shapes.length < FEW) return shapes;
  const boxes = shapes.map((shape) => boxRound(shape.map(handleBounds)));
  const raster = rasterOver(boxRound(boxes));
  const prints = shapes.map((shape, k) => printOf(shape, boxes[k], raster));
  const cover = new Uint16Array(raster.columns * raster.rows);
  for (const { cells, isInside } of prints) {
    for (let k = 0; k < cells.length; k++) cover[cells[k]] += isInside[k];
  }
  return shapes.filter((_, s) => {
    const { cells, isInside } = prints[s];
    for (let k = 0; k < cells.length; k++) {
      if (cover[cells[k]] === isInside[k]) return true;
    }
    // What it covered stays covered, so that one buried shape cannot bring another to light.
    for (let k = 0; k < cells.length; k++) cover[cells[k]] -= isInside[k];
    return false;
  });
}

interface Raster {
  readonly minX: number;
  readonly minY: number;
  readonly cell: number;
  readonly columns: number;
  readonly rows: number;
}

/** The cells that a shape touches, and 1 for those that lie wholly inside it, else 0. */
interface Print {
  readonly cells: Int32Array;
  readonly isInside: Uint8Array;
}

function rasterOver({ minX, minY, maxX, maxY }: Bounds): Raster {
  const [width, height] = [maxX - minX + 2 * MARGIN_MM, maxY - minY + 2 * MARGIN_MM];
  const cell = Math.max(CELL_MM, Math.sqrt((width * height) / MAX_CELLS));
  return {
    minX: minX - MARGIN_MM,
    minY: minY - MARGIN_MM,
    cell,
    columns: Math.floor(width / cell) + 1,
    rows: Math.floor(height / cell) + 1,
  };
}

function printOf(shape: Shape, box: Bounds, raster: Raster): Print {
  const { cell, columns } = raster;
  const left = Math.floor((box.minX - MARGIN_MM - raster.minX) / cell);
  const top = Math.floor((box.minY - MARGIN_MM - raster.minY) / cell);
  const width = Math.floor((box.maxX + MARGIN_MM - raster.minX) / cell) - left + 1;
  const height = Math.floor((box.maxY + MARGIN_MM - raster.minY) / cell) - top + 1;
  const window = new CellWindow(raster, left, top, width, height);
  for (const contour of shape) window.draw(contour);
  const cells = new Int32Array(width * height);
  const isInside = new Uint8Array(width * height);
  let count = 0;
  for (let row = 0; row < height; row++) {
    let winding = 0;
    for (let column = 0; column < width; column++) {
      const k = row * width + column;
      const isEdge = window.isEdge[k] === 1;
      if (isEdge || winding !== 0) {
        cells[count] = (top + row) * columns + left + column;
        isInside[count++] = isEdge ? 0 : 1;
      }
      winding += window.turns[k];
    }
  }
  return { cells: cells.subarray(0, count), isInside: isInside.subarray(0, count) };
}

/** The part of the raster round one shape: which cells its outline passes, and how it winds. */
class CellWindow {
  readonly isEdge: Uint8Array;
  /** How much the winding changes within a cell, along the middle line of its row. */
  readonly turns: Int16Array;
  private readonly minX: number;
  private readonly minY: number;

  constructor(
    private readonly raster: Raster,
    left: number,
    top: number,
    private readonly width: number,
    private readonly height: number,
  ) {
    this.isEdge = new Uint8Array(width * height);
    this.turns = new Int16Array(width * height);
    this.minX = raster.minX + left * raster.cell;
    this.minY = raster.minY + top * raster.cell;
  }

  draw(contour: Cubics): void {
    const n = contour.length;
    let [x, y] = [contour[0], contour[1]];
    for (let i = 0; i < n; i += 8) {
      const steps = chordCount(contour, i, CHORD_MM);
      for (let step = 1; step < steps; step++) {
        const at = jetAt(contour, i, step / steps);
        this.chord(x, y, at.x, at.y);
        [x, y] = [at.x, at.y];
      }
      this.chord(x, y, contour[i + 6], contour[i + 7]);
      [x, y] = [contour[i + 6], contour[i + 7]];
    }
    this.chord(x, y, contour[0], contour[1]);
  }

  private chord(ax: number, ay: number, bx: number, by: number): void {
    const { cell } = this.raster;
    const { minY, width, turns } = this;
    const row0 = this.row(Math.min(ay, by) - MARGIN_MM);
    const row1 = this.row(Math.max(ay, by) + MARGIN_MM);
    for (let row = row0; row <= row1; row++) {
      const top = minY + row * cell;
      let [left, right] = [Math.min(ax, bx), Math.max(ax, bx)];
      if (row1 > row0 + 1 && by !== ay) {
        const u = ax + within01((top - MARGIN_MM - ay) / (by - ay)) * (bx - ax);
        const v = ax + within01((top + cell + MARGIN_MM - ay) / (by - ay)) * (bx - ax);
        [left, right] = [Math.min(u, v), Math.max(u, v)];
      }
      const from = row * width + this.column(left - MARGIN_MM);
      this.isEdge.fill(1, from, row * width + this.column(right + MARGIN_MM) + 1);
      const middle = top + cell / 2;
      if (ay > middle === by > middle) continue;
      const x = ax + ((middle - ay) / (by - ay)) * (bx - ax);
      turns[row * width + this.column(x)] += by > middle ? 1 : -1;
    }
  }

  private column(x: number): number {
    const k = Math.floor((x - this.minX) / this.raster.cell);
    return k < 0 ? 0 : k >= this.width ? this.width - 1 : k;
  }

  private row(y: number): number {
    const k = Math.floor((y - this.minY) / this.raster.cell);
    return k < 0 ? 0 : k >= this.height ? this.height - 1 : k;
  }
}

const within01 = (f: number): number => Math.max(0, Math.min(1, f));
