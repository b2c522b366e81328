import type { ChordTable } from './chords.js';
import { vertexCount } from './vertex-index.js';

/** A point this near to a cell (grid units) is looked up there too: room for rounding. */
const MARGIN = 2;

/** A uniform grid over the chords of a table: which chords pass near a point. */
export class ChordGrid {
  private readonly minX: number;
  private readonly minY: number;
  private readonly cell: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly starts: Int32Array;
  private readonly items: Int32Array;

  /** Over all chords, or those that are wanted. */
  constructor(
    private readonly table: ChordTable,
    isWanted: (chord: number) => boolean = () => true,
  ) {
    const n = vertexCount(table);
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let v = 0; v < n; v++) {
      minX = Math.min(minX, table.x[v]);
      maxX = Math.max(maxX, table.x[v]);
      minY = Math.min(minY, table.y[v]);
      maxY = Math.max(maxY, table.y[v]);
    }
    const width = maxX - minX + 1;
    const height = maxY - minY + 1;
    this.minX = minX;
    this.minY = minY;
    this.cell = Math.max(4, Math.sqrt((width * height) / Math.max(16, n)), width / n, height / n);
    this.columns = Math.floor(width / this.cell) + 1;
    this.rows = Math.floor(height / this.cell) + 1;
    const passed = this.passages(n, isWanted);
    this.starts = new Int32Array(this.columns * this.rows + 1);
    for (let k = 0; k < passed.length; k += 2) this.starts[passed[k] + 1]++;
    for (let k = 0; k + 1 < this.starts.length; k++) this.starts[k + 1] += this.starts[k];
    this.items = new Int32Array(passed.length / 2);
    const filled = this.starts.slice();
    for (let k = 0; k < passed.length; k += 2) this.items[filled[passed[k]]++] = passed[k + 1];
  }

  /** The chords that pass through or close by the cell of a point (grid units). */
  near(x: number, y: number): Int32Array {
    const column = Math.floor((x - this.minX) / this.cell);
    const row = Math.floor((y - this.minY) / this.cell);
    if (column < 0 || row < 0 || column >= this.columns || row >= this.rows) {
      return this.items.subarray(0, 0);
    }
    const k = row * this.columns + column;
    return this.items.subarray(this.starts[k], this.starts[k + 1]);
  }

  /** Whether any cell's list of chords passes a test. */
  someCell(test: (chords: Int32Array) => boolean): boolean {
    for (let k = 0; k + 1 < this.starts.length; k++) {
      if (this.starts[k + 1] - this.starts[k] < 2) continue;
      if (test(this.items.subarray(this.starts[k], this.starts[k + 1]))) return true;
    }
    return false;
  }

  /** Each cell that a chord passes, give or take the margin, and the chord: in pairs. */
  private passages(count: number, isWanted: (chord: number) => boolean): Int32Array {
    const { x, y, next } = this.table;
    let pairs = new Int32Array(8 * count);
    let used = 0;
    for (let chord = 0; chord < count; chord++) {
      if (!isWanted(chord)) continue;
      const [ax, ay, bx, by] = [x[chord], y[chord], x[next[chord]], y[next[chord]]];
      const row0 = this.row(Math.min(ay, by) - MARGIN);
      const row1 = this.row(Math.max(ay, by) + MARGIN);
      for (let row = row0; row <= row1; row++) {
        let [left, right] = [Math.min(ax, bx), Math.max(ax, bx)];
        if (row1 > row0 + 1 && by !== ay) {
          const top = this.minY + row * this.cell - MARGIN;
          const u = ax + within01((top - ay) / (by - ay)) * (bx - ax);
          const v = ax + within01((top + this.cell + 2 * MARGIN - ay) / (by - ay)) * (bx - ax);
          [left, right] = [Math.min(u, v), Math.max(u, v)];
        }
        const last = this.column(right + MARGIN);
        for (let column = this.column(left - MARGIN); column <= last; column++) {
          if (used === pairs.length) pairs = doubled(pairs);
          pairs[used++] = row * this.columns + column;
          pairs[used++] = chord;
        }
      }
    }
    return pairs.subarray(0, used);
  }

  private column(x: number): number {
    return clamp(Math.floor((x - this.minX) / this.cell), this.columns - 1);
  }

  private row(y: number): number {
    return clamp(Math.floor((y - this.minY) / this.cell), this.rows - 1);
  }
}

const clamp = (k: number, max: number): number => Math.max(0, Math.min(max, k));
const within01 = (f: number): number => Math.max(0, Math.min(1, f));

function doubled(numbers: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const out = new Int32Array(2 * numbers.length);
  out.set(numbers);
  return out;
}
