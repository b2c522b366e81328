import type { ChordTable } from './chords.js';

/**
 * Finds the vertices of a chord table by their exact grid coordinates: an open-addressed hash
 * table, with vertices on the same spot chained together.
 */
export class VertexIndex {
  private readonly slots: Int32Array;
  private readonly mask: number;
  private readonly following: Int32Array;
  private readonly crowded: Uint8Array;

  constructor(private readonly table: ChordTable) {
    const count = vertexCount(table);
    let size = 16;
    while (size < 2 * count) size *= 2;
    this.slots = new Int32Array(size);
    this.mask = size - 1;
    this.following = new Int32Array(count).fill(-1);
    this.crowded = new Uint8Array(count);
    for (let v = 0; v < count; v++) this.insert(v);
  }

  /** The first vertex at a spot, or -1. */
  at(x: number, y: number): number {
    return this.slots[this.slotFor(x, y)] - 1;
  }

  /** Whether other vertices lie on the same spot as v. */
  isShared(v: number): boolean {
    return this.crowded[v] === 1;
  }

  /** The next vertex on the same spot as v, or -1; start from `at`. */
  nextOnSpot(v: number): number {
    return this.following[v];
  }

  private insert(v: number): void {
    const slot = this.slotFor(this.table.x[v], this.table.y[v]);
    const first = this.slots[slot] - 1;
    if (first < 0) {
      this.slots[slot] = v + 1;
      return;
    }
    this.following[v] = this.following[first];
    this.following[first] = v;
    this.crowded[first] = 1;
    this.crowded[v] = 1;
  }

  private slotFor(x: number, y: number): number {
    let h = Math.imul(x, 0x9e3779b1) ^ Math.imul(y, 0x85ebca6b);
    h ^= h >>> 15;
    for (let slot = h & this.mask; ; slot = (slot + 1) & this.mask) {
      const v = this.slots[slot] - 1;
      if (v < 0 || (this.table.x[v] === x && this.table.y[v] === y)) return slot;
    }
  }
}

export const vertexCount = (table: ChordTable): number =>
  table.contourStart[table.contourStart.length - 1];
