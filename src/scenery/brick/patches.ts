import type { Random } from '../random.js';

/** What a brick or a stone takes up on the wall, mm; y0 < y1. */
export interface Box {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** A place round which joints gather: a straight piece of edge, or a point when both ends meet. */
export interface Anchor {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** mm from it at which its pull has sunk to about a third. */
  readonly reach: number;
  readonly pull: number;
}

/** Size of the patches in courses: larger gives fewer, bigger ones. */
const PATCH_HEIGHT_COURSES = 5;
const PATCH_WIDTH_COURSES = 8;
/** How much of a brick's rank is luck of its own: more frays the patches' edges further. */
const FRAY = 0.3;

/**
 * The bricks to draw so that they cover `coverage` (0..1) of the wall: in patches, dense at the
 * anchors, fading raggedly. The pattern hangs on `courseMm` and the origin, not on the wall's size.
 */
export function patches<C extends Box>(
  cells: readonly C[],
  anchors: readonly Anchor[],
  coverage: number,
  courseMm: number,
  random: Random,
): C[] {
  if (coverage >= 1) return [...cells];
  const noise = smoothNoise(
    random,
    PATCH_WIDTH_COURSES * courseMm,
    PATCH_HEIGHT_COURSES * courseMm,
  );
  const ranked = cells.map((cell) => {
    const x = (cell.x0 + cell.x1) / 2;
    const y = (cell.y0 + cell.y1) / 2;
    const own = random.branch(`${Math.round(x / courseMm)}/${Math.round(y / courseMm)}`).next();
    return { cell, rank: noise(x, y) + pullAt(anchors, x, y) + FRAY * own };
  });
  ranked.sort((a, b) => b.rank - a.rank);
  let room = coverage * cells.reduce((sum, c) => sum + area(c), 0);
  const shown = ranked.filter(({ cell }) => {
    const taken = room > 0;
    room -= area(cell);
    return taken;
  });
  return shown.map(({ cell }) => cell);
}

const area = (c: Box): number => (c.x1 - c.x0) * (c.y1 - c.y0);

function pullAt(anchors: readonly Anchor[], x: number, y: number): number {
  let most = 0;
  for (const a of anchors) {
    const dx = x - clamp(x, Math.min(a.x0, a.x1), Math.max(a.x0, a.x1));
    const dy = y - clamp(y, Math.min(a.y0, a.y1), Math.max(a.y0, a.y1));
    const d = Math.hypot(dx, dy) / a.reach;
    most = Math.max(most, a.pull * Math.exp(-d * d));
  }
  return most;
}

const clamp = (v: number, low: number, high: number) => Math.max(low, Math.min(high, v));

/** Random values on a lattice of the given steps, smoothly joined; about 0..1. */
export function smoothNoise(random: Random, stepX: number, stepY: number) {
  const known = new Map<string, number>();
  const value = (i: number, j: number): number => {
    const key = `${i}:${j}`;
    const found = known.get(key) ?? random.branch(key).next();
    known.set(key, found);
    return found;
  };
  const ease = (t: number) => t * t * (3 - 2 * t);
  return (x: number, y: number): number => {
    const i = Math.floor(x / stepX);
    const j = Math.floor(y / stepY);
    const u = ease(x / stepX - i);
    const v = ease(y / stepY - j);
    const top = value(i, j) * (1 - u) + value(i + 1, j) * u;
    const low = value(i, j + 1) * (1 - u) + value(i + 1, j + 1) * u;
    return top * (1 - v) + low * v;
  };
}
