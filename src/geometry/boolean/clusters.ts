import type { Bounds, Cubics } from '../types.js';

/** Boxes nearer than this (mm) touch: coincident edges must meet in one problem. */
const TOUCH_MM = 1e-3;

/** The box round a chain's points and handles, which holds the curve; empty for an empty chain. */
export function handleBounds(c: Cubics): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < c.length; i += 2) {
    if (c[i] < minX) minX = c[i];
    if (c[i] > maxX) maxX = c[i];
    if (c[i + 1] < minY) minY = c[i + 1];
    if (c[i + 1] > maxY) maxY = c[i + 1];
  }
  return { minX, minY, maxX, maxY };
}

/** The box round boxes. */
export const boxRound = (boxes: readonly Bounds[]): Bounds => ({
  minX: Math.min(...boxes.map((b) => b.minX)),
  minY: Math.min(...boxes.map((b) => b.minY)),
  maxX: Math.max(...boxes.map((b) => b.maxX)),
  maxY: Math.max(...boxes.map((b) => b.maxY)),
});

/**
 * Groups the boxes that touch, directly or through others: what lies in different groups can have
 * nothing to do with each other. Lists of indices, each rising, ordered by their first.
 */
export function touchingGroups(boxes: readonly Bounds[]): number[][] {
  const parent = boxes.map((_, k) => k);
  const root = (k: number): number => {
    let r = k;
    while (parent[r] !== r) {
      parent[r] = parent[parent[r]];
      r = parent[r];
    }
    return r;
  };
  const order = [...parent].sort((a, b) => boxes[a].minX - boxes[b].minX);
  const open: number[] = [];
  for (const k of order) {
    const { minX, minY, maxY } = boxes[k];
    let kept = 0;
    for (const j of open) {
      const other = boxes[j];
      if (other.maxX + TOUCH_MM < minX) continue;
      open[kept++] = j;
      if (other.maxY + TOUCH_MM >= minY && other.minY - TOUCH_MM <= maxY) parent[root(j)] = root(k);
    }
    open.length = kept;
    open.push(k);
  }
  const groups = new Map<number, number[]>();
  boxes.forEach((_, k) => {
    const group = groups.get(root(k));
    if (group) group.push(k);
    else groups.set(root(k), [k]);
  });
  return [...groups.values()];
}
