import type { Bounds } from '../../geometry/types.js';
import type { Box } from '../brick/patches.js';
import type { Random } from '../random.js';

/** Boards laid level: a turned frame gives upright ones. Lengths in mm. */
export interface Board {
  /** Counted from the window's foot. */
  readonly row: number;
  readonly y0: number;
  readonly y1: number;
  /** Where boards of this row meet end to end. */
  readonly ends: readonly number[];
}

/** Boards differ in width by up to this much. */
const UNEVEN = 0.16;
/** Studs that boards are nailed to are this many boards' widths apart, within bounds, mm. */
const STUD_BOARDS = 2.6;
const STUD_MM = [13, 30] as const;
/** A board runs over this many spans from stud to stud. */
const SPANS = 5;
/** Rows between two joints on one stud. */
const ROWS_APART = 3;

export const studSpacing = (boardMm: number): number =>
  Math.max(STUD_MM[0], Math.min(STUD_MM[1], STUD_BOARDS * boardMm));

/**
 * Boards over the box, from the origin both ways, joints staggered: every joint lies on a stud, and
 * in the next rows none lies on the same one.
 */
export function boardsOver(box: Bounds, boardMm: number, random: Random): Board[] {
  const up = rowsFrom(0, -1, box.minY, boardMm, random);
  const down = rowsFrom(0, 1, box.maxY, boardMm, random);
  const rows = [...up.reverse(), ...down].filter((r) => r.y1 > box.minY && r.y0 < box.maxY);
  const stud = studSpacing(boardMm);
  const phases = phasesOf(rows, random.branch('phases'));
  return rows.map((r) => {
    const ends: number[] = [];
    const first = Math.ceil(box.minX / stud);
    for (let k = first; k * stud < box.maxX; k++) {
      if (mod(k, SPANS) === phases.get(r.row)) ends.push(k * stud);
    }
    return { ...r, ends };
  });
}

type Row = Omit<Board, 'ends'>;

function rowsFrom(from: number, way: 1 | -1, to: number, boardMm: number, random: Random): Row[] {
  const rows: Row[] = [];
  for (let edge = from, k = way === 1 ? 0 : -1; (to - edge) * way > 0; k += way) {
    const width = boardMm * random.branch(`row ${k}`).between(1 - UNEVEN, 1 + UNEVEN);
    const next = edge + way * width;
    rows.push({ row: k, y0: Math.min(edge, next), y1: Math.max(edge, next) });
    edge = next;
  }
  return rows;
}

/** For each row the stud that its joints lie on, unlike those of the rows before it. */
function phasesOf(rows: readonly Row[], random: Random): Map<number, number> {
  const found = new Map<number, number>();
  const byNearness = [...rows.map((r) => r.row)].sort((a, b) => sortKey(a) - sortKey(b));
  for (const row of byNearness) {
    const taken = new Set<number | undefined>();
    for (let d = 1; d <= ROWS_APART; d++) taken.add(found.get(row - d)).add(found.get(row + d));
    const free = Array.from({ length: SPANS }, (_, k) => k).filter((k) => !taken.has(k));
    found.set(row, random.branch(row).pick(free));
  }
  return found;
}

/** From the origin first one way, then the other. */
const sortKey = (row: number): number => (row >= 0 ? row : 1e6 - row);

const mod = (k: number, n: number): number => ((k % n) + n) % n;

/** Stretches of board that are drawn or left bare together: half the way from stud to stud. */
export function sectionsOf(boards: readonly Board[], box: Bounds, boardMm: number): Box[] {
  const length = studSpacing(boardMm) / 2;
  return boards.flatMap(({ y0, y1 }) => {
    const sections: Box[] = [];
    for (let k = Math.floor(box.minX / length); k * length < box.maxX; k++) {
      sections.push({ x0: k * length, x1: (k + 1) * length, y0, y1 });
    }
    return sections;
  });
}
