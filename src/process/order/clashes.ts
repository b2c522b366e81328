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
}

/** Which runs come nearer to each other than `apartMm` anywhere. */
export function nearRuns(runs: readonly Run[], apartMm: number): (a: number, b: number) => boolean {
  if (apartMm <= 0) return () => false;
  const near = runs.map(() => new Set<number>());
  const cells = new Map<number, Chord[]>();
  const cellMm = 2 * apartMm;
  const apartSq = apartMm * apartMm;
  for (const chord of runs.flatMap((run, k) => chordsOf(run, k, apartMm))) {
    const own = near[chord.run];
    const box = (pad: number) => ({
      column0: Math.floor((Math.min(chord.x0, chord.x1) - pad) / cellMm),
      column1: Math.floor((Math.max(chord.x0, chord.x1) + pad) / cellMm),
      row0: Math.floor((Math.min(chord.y0, chord.y1) - pad) / cellMm),
      row1: Math.floor((Math.max(chord.y0, chord.y1) + pad) / cellMm),
    });
    const reach = box(apartMm);
    for (let row = reach.row0; row <= reach.row1; row++) {
      for (let column = reach.column0; column <= reach.column1; column++) {
        for (const other of cells.get(keyOf(column, row)) ?? []) {
          if (other.run === chord.run || own.has(other.run)) continue;
          if (distanceSq(chord, other) >= apartSq) continue;
          own.add(other.run);
          near[other.run].add(chord.run);
        }
      }
    }
    const held = box(0);
    for (let row = held.row0; row <= held.row1; row++) {
      for (let column = held.column0; column <= held.column1; column++) {
        const key = keyOf(column, row);
        const cell = cells.get(key);
        if (cell) cell.push(chord);
        else cells.set(key, [chord]);
      }
    }
  }
  return (a, b) => near[a].has(b);
}

const keyOf = (column: number, row: number): number => column * 2 ** 20 + row;

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
        return { run, x0: from.x, y0: from.y, x1: to.x, y1: to.y };
      });
    });
  });
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
