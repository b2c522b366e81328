import { flatten } from '../../geometry/measure.js';
import type { Region } from '../../geometry/types.js';

/** How far a letter reaches to the left and to the right on level lines, one every `stepMm`. */
export interface Profile {
  readonly stepMm: number;
  /** Row k is the level line at (firstRow + k) * stepMm. */
  readonly firstRow: number;
  readonly left: readonly number[];
  readonly right: readonly number[];
}

const TOLERANCE_MM = 0.02;

export function profileOf(region: Region, stepMm: number): Profile {
  const left = new Map<number, number>();
  const right = new Map<number, number>();
  const note = (row: number, x: number): void => {
    left.set(row, Math.min(left.get(row) ?? Infinity, x));
    right.set(row, Math.max(right.get(row) ?? -Infinity, x));
  };
  for (const contour of region.contours) {
    const points = flatten(contour, TOLERANCE_MM);
    for (let i = 1; i < points.length; i++) {
      const [a, b] = [points[i - 1], points[i]];
      note(Math.round(a.y / stepMm), a.x);
      const rows = Math.abs(b.y - a.y) / stepMm;
      for (let k = 1; k < rows; k++) {
        const t = k / rows;
        note(Math.round((a.y + (b.y - a.y) * t) / stepMm), a.x + (b.x - a.x) * t);
      }
    }
  }
  const rows = [...left.keys()];
  const firstRow = Math.min(...rows);
  const count = rows.length === 0 ? 0 : Math.max(...rows) - firstRow + 1;
  const list = (of: Map<number, number>, none: number): number[] =>
    Array.from({ length: count }, (_, k) => of.get(firstRow + k) ?? none);
  return { stepMm, firstRow, left: list(left, Infinity), right: list(right, -Infinity) };
}

/**
 * The least x that the second letter must be moved to, so that it keeps `gapMm` from the first in
 * every direction; -Infinity where nothing of one lies beside anything of the other. Both profiles
 * have the same step.
 */
export function leastShift(first: Profile, second: Profile, gapMm: number): number {
  const { stepMm } = first;
  const reach = Math.ceil(gapMm / stepMm);
  let shift = -Infinity;
  for (let i = 0; i < first.right.length; i++) {
    for (let away = -reach; away <= reach; away++) {
      const j = first.firstRow + i + away - second.firstRow;
      if (j < 0 || j >= second.left.length) continue;
      // Rows are rounded: two of them may be a step nearer than they seem.
      const aloft = Math.max(0, Math.abs(away) - 1) * stepMm;
      const beside = Math.sqrt(Math.max(0, gapMm ** 2 - aloft ** 2));
      shift = Math.max(shift, first.right[i] - second.left[j] + beside);
    }
  }
  return shift;
}

/** How much of a letter's right side is plumb, as a stem is: within `withinMm` of its furthest. */
export function rightStemMm({ right, stepMm }: Profile, withinMm: number): number {
  const furthest = Math.max(...right);
  return right.filter((x) => x >= furthest - withinMm).length * stepMm;
}

/** The same of its left side. */
export function leftStemMm({ left, stepMm }: Profile, withinMm: number): number {
  const furthest = Math.min(...left);
  return left.filter((x) => x <= furthest + withinMm).length * stepMm;
}

/** How two letters meet: along what length in all, and how wide the room between them is else. */
export interface Meeting {
  readonly lengthMm: number;
  readonly meanGapMm: number;
}

/** The meeting of two letters, the second moved to x = `shift`. */
export function meetingOf(first: Profile, second: Profile, shift: number): Meeting {
  let met = 0;
  let open = 0;
  let gaps = 0;
  for (let i = 0; i < first.right.length; i++) {
    const j = first.firstRow + i - second.firstRow;
    if (j < 0 || j >= second.left.length) continue;
    const gap = second.left[j] + shift - first.right[i];
    if (gap <= 0) met++;
    else if (Number.isFinite(gap)) {
      open++;
      gaps += gap;
    }
  }
  return { lengthMm: met * first.stepMm, meanGapMm: open === 0 ? Infinity : gaps / open };
}
