import { straightCubic, subCubic } from '../cubic.js';
import type { Cubics, Point } from '../types.js';
import { type ChordTable, GRID_PER_MM } from './chords.js';
import type { Corner } from './corners.js';
import type { Run } from './runs.js';

/** Two straight edges are one if their common end lies this near (mm) to the joint edge. */
const COLLINEAR_MM = 1.5 / GRID_PER_MM;

type Kind = 'curve' | 'edge' | 'bridge';

/** The contour of runs between their corners: exact parts of the source curves. */
export function contourOf(
  runs: readonly Run[],
  corners: readonly Corner[],
  table: ChordTable,
): Cubics {
  const chain = new ContourBuilder();
  runs.forEach((run, k) => {
    const before = corners[(k + runs.length - 1) % runs.length];
    const after = corners[k];
    if (before.end !== before.start) chain.straight(before.end, before.start, 'bridge');
    if (table.straight[run.segment] === 1) {
      chain.straight(before.start, after.end, 'edge');
    } else {
      const part = subCubic(table.cubics, run.segment * 8, before.from, after.to);
      chain.curve(part, before.start, after.end);
    }
  });
  return chain.close();
}

class ContourBuilder {
  private readonly cubics: number[][] = [];
  private readonly kinds: Kind[] = [];

  straight(p: Point, q: Point, kind: 'edge' | 'bridge'): void {
    if (p.x === q.x && p.y === q.y) return;
    const last = this.cubics.length - 1;
    if (kind === 'edge' && this.kinds[last] === 'edge') {
      const joint = joinEdges(this.cubics[last], q);
      if (joint) {
        this.cubics[last] = joint;
        return;
      }
    }
    this.cubics.push(straightCubic(p.x, p.y, q.x, q.y));
    this.kinds.push(kind);
  }

  /** A curve whose ends are moved, handles along, onto its corners. */
  curve(part: readonly number[], p: Point, q: Point): void {
    const [x0, y0, x1, y1, x2, y2, x3, y3] = part;
    this.cubics.push([
      p.x,
      p.y,
      x1 + (p.x - x0),
      y1 + (p.y - y0),
      x2 + (q.x - x3),
      y2 + (q.y - y3),
      q.x,
      q.y,
    ]);
    this.kinds.push('curve');
  }

  close(): Cubics {
    const last = this.cubics.length - 1;
    if (last >= 2 && this.kinds[0] === 'edge' && this.kinds[last] === 'edge') {
      const joint = joinEdges(this.cubics[last], { x: this.cubics[0][6], y: this.cubics[0][7] });
      if (joint) {
        this.cubics[0] = joint;
        this.cubics.pop();
      }
    }
    return Float64Array.from(this.cubics.flat());
  }
}

/** A straight edge prolonged to q, or null where it would turn at its end. */
function joinEdges(edge: readonly number[], q: Point): number[] | null {
  const [x0, y0] = edge;
  const [x1, y1] = [edge[6], edge[7]];
  const dx = q.x - x0;
  const dy = q.y - y0;
  const off = Math.abs((x1 - x0) * dy - (y1 - y0) * dx);
  const onward = (x1 - x0) * (q.x - x1) + (y1 - y0) * (q.y - y1) > 0;
  if (!onward || off >= COLLINEAR_MM * Math.hypot(dx, dy)) return null;
  return straightCubic(x0, y0, q.x, q.y);
}
