import type { Bounds } from '../../geometry/types.js';
import type { Cell } from '../brick/cells.js';

export const KINDS = ['plain', 'slates', 'fish-scale'] as const;
export type Kind = (typeof KINDS)[number];

/** Width of a tile in gauges: what is seen of a plain tile is 165 x 100 mm, of a slate 250 x 210. */
export const WIDE: Record<Kind, number> = { plain: 1.65, slates: 1.19, 'fish-scale': 1.25 };
/** Slates are large at the eaves and small at the ridge: gauges at foot and top of the card. */
const DIMINISHING = [1.22, 0.74] as const;

/**
 * Tiles over the box in level courses, counted from y = 0 up and down, every one half over two of
 * the course below. `gaugeMm` is the height of what is seen of one.
 */
export function tilesOver(box: Bounds, kind: Kind, gaugeMm: number): Cell[] {
  const wide = WIDE[kind] * gaugeMm;
  const cells: Cell[] = [];
  for (const { course, y0, y1 } of coursesOver(box, kind, gaugeMm)) {
    const shift = course % 2 === 0 ? 0 : 0.5;
    const first = Math.floor(box.minX / wide - shift);
    for (let k = first; (k + shift) * wide < box.maxX; k++) {
      const x0 = (k + shift) * wide;
      cells.push({ kind: 'stretcher', course, x0, x1: x0 + wide, y0, y1 });
    }
  }
  return cells;
}

function coursesOver(box: Bounds, kind: Kind, gaugeMm: number) {
  const heightAt = (y: number): number => {
    if (kind !== 'slates') return gaugeMm;
    const up = (box.maxY - y) / (box.maxY - box.minY);
    return gaugeMm * (DIMINISHING[0] + (DIMINISHING[1] - DIMINISHING[0]) * up);
  };
  const found: { course: number; y0: number; y1: number }[] = [];
  for (let y1 = 0, course = 0; y1 > box.minY; course++) {
    const y0 = y1 - heightAt(y1);
    found.push({ course, y0, y1 });
    y1 = y0;
  }
  for (let y0 = 0, course = -1; y0 < box.maxY; course--) {
    const y1 = y0 + heightAt(y0 + heightAt(y0));
    found.push({ course, y0, y1 });
    y0 = y1;
  }
  return found;
}
