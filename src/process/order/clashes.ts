import { flatten } from '../../geometry/measure.js';
import type { Run } from './runs.js';

/** Chords are this near to their curves, which is enough for a distance of some millimetres. */
const CHORD_MM = 0.05;

/** Short chords of all runs, and the squares of a grid that they may be within reach of. */
interface Chord {
  readonly run: number;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  /** Its middle, and how far it reaches from there. */
  readonly x: number;
  readonly y: number;
  readonly reachMm: number;
}

/** Which runs come nearer to each other than `apartMm` anywhere. */
export function nearRuns(runs: readonly Run[], apartMm: number): (a: number, b: number) => boolean {
  if (apartMm <= 0) return () => false;
  const near = runs.map(() => new Set<number>());
  const cells = new Map<number, Chord[]>();
  const cellMm = 2 * apartMm;
  for (const chord of runs.flatMap((run, k) => chordsOf(run, k, apartMm))) {
    const own = near[chord.run];
    eachCell(chord, apartMm, cellMm, (key) => {
      for (const other of cells.get(key) ?? []) {
        if (other.run === chord.run || own.has(other.run)) continue;
        if (isNear(chord, other, apartMm)) {
          own.add(other.run);
          near[other.run].add(chord.run);
        }
      }
    });
    eachCell(chord, 0, cellMm, (key) => {
      const cell = cells.get(key);
      if (cell) cell.push(chord);
      else cells.set(key, [chord]);
    });
  }
  return (a, b) => near[a].has(b);
}

/** Visits the squares that a chord's box, widened by `padMm`, touches. */
function eachCell(
  { x0, y0, x1, y1 }: Chord,
  padMm: number,
  cellMm: number,
  visit: (key: number) => void,
): void {
  const lastRow = Math.floor((Math.max(y0, y1) + padMm) / cellMm);
  const lastColumn = Math.floor((Math.max(x0, x1) + padMm) / cellMm);
  for (let row = Math.floor((Math.min(y0, y1) - padMm) / cellMm); row <= lastRow; row++) {
    let column = Math.floor((Math.min(x0, x1) - padMm) / cellMm);
    for (; column <= lastColumn; column++) visit(column * 2 ** 20 + row);
  }
}

/** Chords of a run, none longer than `mostMm`. */
function chordsOf({ marks }: Run, run: number, mostMm: number): Chord[] {
  return marks.flatMap(({ cubics }) => {
    const points = flatten(cubics, CHORD_MM);
    return points.slice(1).flatMap((b, k) => {
      const a = points[k];
      const parts = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / mostMm));
      return Array.from({ length: parts }, (_, n): Chord => {
        const at = (share: number) => ({
          x: a.x + (b.x - a.x) * share,
          y: a.y + (b.y - a.y) * share,
        });
        const [from, to] = [at(n / parts), at((n + 1) / parts)];
        const { x, y } = at((n + 0.5) / parts);
        const reachMm = Math.hypot(to.x - from.x, to.y - from.y) / 2;
        return { run, x0: from.x, y0: from.y, x1: to.x, y1: to.y, x, y, reachMm };
      });
    });
  });
}

function isNear(a: Chord, b: Chord, apartMm: number): boolean {
  const mostMm = apartMm + a.reachMm + b.reachMm;
  if ((b.x - a.x) ** 2 + (b.y - a.y) ** 2 >= mostMm * mostMm) return false;
  return distanceSq(a, b) < apartMm * apartMm;
}

/** Squared distance of two chords. */
function distanceSq(a: Chord, b: Chord): number {
  if (cross(a, b)) return 0;
  return Math.min(
    pointToChordSq(a.x0, a.y0, b),
    pointToChordSq(a.x1, a.y1, b),
    pointToChordSq(b.x0, b.y0, a),
    pointToChordSq(b.x1, b.y1, a),
  );
}

function pointToChordSq(x: number, y: number, { x0, y0, x1, y1 }: Chord): number {
  const dx = x1 - x0;
  const dy = y1 - y0;
  const lengthSq = dx * dx + dy * dy;
  const t = lengthSq === 0 ? 0 : ((x - x0) * dx + (y - y0) * dy) / lengthSq;
  const held = Math.max(0, Math.min(1, t));
  return (x - x0 - held * dx) ** 2 + (y - y0 - held * dy) ** 2;
}

function cross(a: Chord, b: Chord): boolean {
  const side = (c: Chord, x: number, y: number): number =>
    (c.x1 - c.x0) * (y - c.y0) - (c.y1 - c.y0) * (x - c.x0);
  return (
    side(a, b.x0, b.y0) * side(a, b.x1, b.y1) < 0 && side(b, a.x0, a.y0) * side(b, a.x1, a.y1) < 0
  );
}
