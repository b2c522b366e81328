/** Points with numbers on a grid of squares, to find the nearest of those that are still there. */
export class PointGrid {
  private readonly minX: number;
  private readonly minY: number;
  private readonly cellMm: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly cells: number[][];
  private left = 0;

  /** Over all places that the points may have; none is there yet. */
  constructor(
    private readonly x: Float64Array,
    private readonly y: Float64Array,
  ) {
    let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
    for (let k = 0; k < x.length; k++) {
      minX = Math.min(minX, x[k]);
      maxX = Math.max(maxX, x[k]);
      minY = Math.min(minY, y[k]);
      maxY = Math.max(maxY, y[k]);
    }
    const width = Math.max(maxX - minX, 1e-6);
    const height = Math.max(maxY - minY, 1e-6);
    this.minX = minX;
    this.minY = minY;
    // About two points a square, and never more squares than points along a side.
    this.cellMm = Math.max(
      Math.sqrt((2 * width * height) / x.length),
      width / x.length,
      height / x.length,
    );
    this.columns = Math.floor(width / this.cellMm) + 1;
    this.rows = Math.floor(height / this.cellMm) + 1;
    this.cells = Array.from({ length: this.columns * this.rows }, () => []);
  }

  get isEmpty(): boolean {
    return this.left === 0;
  }

  add(point: number): void {
    this.cellOf(point).push(point);
    this.left++;
  }

  remove(point: number): void {
    const cell = this.cellOf(point);
    const at = cell.indexOf(point);
    if (at < 0) return;
    cell[at] = cell[cell.length - 1];
    cell.pop();
    this.left--;
  }

  /** The nearest point that passes the test, or -1; of equally near ones, the lowest number. */
  nearest(x: number, y: number, test: (point: number) => boolean = () => true): number {
    let best = -1;
    let bestSq = Infinity;
    this.visit(x, y, (point, distanceSq) => {
      if (distanceSq > bestSq || (distanceSq === bestSq && point > best) || !test(point)) {
        return bestSq;
      }
      best = point;
      bestSq = distanceSq;
      return bestSq;
    });
    return best;
  }

  /**
   * Shows points ring by ring from the square of (x, y) outwards until all that are left lie
   * further away than the root of what `show` last gave back.
   */
  visit(x: number, y: number, show: (point: number, distanceSq: number) => number): void {
    const column = this.within(Math.floor((x - this.minX) / this.cellMm), this.columns);
    const row = this.within(Math.floor((y - this.minY) / this.cellMm), this.rows);
    let limitSq = Infinity;
    let seen = 0;
    const most = Math.max(this.columns, this.rows);
    for (let ring = 0; ring <= most && seen < this.left; ring++) {
      // From outside the grid the rings are no nearer than this still.
      const reach = (ring - 1) * this.cellMm;
      if (reach > 0 && reach * reach > limitSq) return;
      for (let r = row - ring; r <= row + ring; r++) {
        if (r < 0 || r >= this.rows) continue;
        const step = r === row - ring || r === row + ring ? 1 : 2 * ring;
        for (let c = column - ring; c <= column + ring; c += Math.max(1, step)) {
          if (c < 0 || c >= this.columns) continue;
          for (const point of this.cells[r * this.columns + c]) {
            seen++;
            const dx = this.x[point] - x;
            const dy = this.y[point] - y;
            limitSq = show(point, dx * dx + dy * dy);
          }
        }
      }
    }
  }

  private cellOf(point: number): number[] {
    const column = this.within(Math.floor((this.x[point] - this.minX) / this.cellMm), this.columns);
    const row = this.within(Math.floor((this.y[point] - this.minY) / this.cellMm), this.rows);
    return this.cells[row * this.columns + column];
  }

  private within(k: number, count: number): number {
    return Math.max(0, Math.min(count - 1, k));
  }
}
