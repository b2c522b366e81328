import { ChordGrid } from './chord-grid.js';
import type { ChordTable } from './chords.js';
import type { Ring } from './clip.js';
import { VertexIndex } from './vertex-index.js';

/** An edge of a clipped ring lying on a source chord, from fraction `from` to `to` of it. */
export interface Hit {
  readonly chord: number;
  /** 1 where the edge runs as the chord does, -1 against it. */
  readonly direction: 1 | -1;
  readonly from: number;
  readonly to: number;
}

/** The clipper rounds a new point to the grid: up to 1.5 units off its chord, rounding included. */
const NEAR_UNITS = 1.6;
/** Second try: united tile by tile, a point is rounded once a level. */
const FAR_UNITS = 6;

/** Finds the source chords under the edges of clipped rings. */
export class Sources {
  private readonly index: VertexIndex;
  private grid: ChordGrid | undefined;

  constructor(private readonly table: ChordTable) {
    this.index = new VertexIndex(table);
  }

  /**
   * For each edge of a ring, edge k running from point k to k + 1, all chords it lies on; null
   * where some edge lies on none.
   */
  edgeHits(ring: Ring): Hit[][] | null {
    const vertices = ring.map((p) => this.vertexAt(p.x, p.y, p.z ?? 0));
    const all: Hit[][] = [];
    for (let k = 0; k < ring.length; k++) {
      const after = k + 1 === ring.length ? 0 : k + 1;
      const [p, q] = [ring[k], ring[after]];
      const hits = this.hits(p.x, p.y, vertices[k], q.x, q.y, vertices[after]);
      if (hits.length === 0) return null;
      all.push(hits);
    }
    return all;
  }

  /** The source vertex of a clipped point, or -1 for a new point. The tag is only a hint. */
  private vertexAt(x: number, y: number, tag: number): number {
    const v = tag - 1;
    const trusted = v >= 0 && this.table.x[v] === x && this.table.y[v] === y;
    return trusted && !this.index.isShared(v) ? v : this.index.at(x, y);
  }

  private hits(x0: number, y0: number, v0: number, x1: number, y1: number, v1: number): Hit[] {
    const lone = v0 >= 0 && v1 >= 0 && !(this.index.isShared(v0) && this.index.isShared(v1));
    if (lone) {
      if (this.table.next[v0] === v1) return [{ chord: v0, direction: 1, from: 0, to: 1 }];
      if (this.table.next[v1] === v0) return [{ chord: v1, direction: -1, from: 1, to: 0 }];
    }
    const edge = [x0, y0, x1, y1] as const;
    const near = this.hitsWithin(NEAR_UNITS, edge, v0, v1);
    return near.length > 0 ? near : this.hitsWithin(FAR_UNITS, edge, v0, v1);
  }

  private hitsWithin(
    units: number,
    [x0, y0, x1, y1]: readonly [number, number, number, number],
    v0: number,
    v1: number,
  ): Hit[] {
    const hits: Hit[] = [];
    const tryChord = (chord: number): void => {
      if (hits.some((h) => h.chord === chord)) return;
      const from = this.fractionOn(chord, x0, y0, units);
      const to = this.fractionOn(chord, x1, y1, units);
      if (Number.isNaN(from) || Number.isNaN(to) || from === to) return;
      hits.push({ chord, direction: to > from ? 1 : -1, from, to });
    };
    for (const end of [v0, v1]) {
      for (let v = end; v >= 0; v = this.index.nextOnSpot(v)) {
        tryChord(v);
        tryChord(this.table.previous[v]);
      }
    }
    if (hits.length > 0) return hits;
    this.grid ??= new ChordGrid(this.table);
    for (const chord of this.grid.near((x0 + x1) / 2, (y0 + y1) / 2)) tryChord(chord);
    return hits;
  }

  /** How far along a chord a point lies, 0..1, or NaN where it is not within `units` of it. */
  private fractionOn(chord: number, px: number, py: number, units: number): number {
    const { x, y, next } = this.table;
    const dx = x[next[chord]] - x[chord];
    const dy = y[next[chord]] - y[chord];
    const ux = px - x[chord];
    const uy = py - y[chord];
    const lengthSq = dx * dx + dy * dy;
    const cross = ux * dy - uy * dx;
    if (cross * cross > units * units * lengthSq) return NaN;
    const along = (ux * dx + uy * dy) / lengthSq;
    const slack = units / Math.sqrt(lengthSq);
    if (along < -slack || along > 1 + slack) return NaN;
    return Math.max(0, Math.min(1, along));
  }
}
