import { flatten } from '../../geometry/measure.js';
import type { Line, Point } from '../../geometry/types.js';

/** Chords of a stroke stay this near to its curve, mm. */
const FLATTEN_MM = 0.005;

interface Chord {
  readonly a: Point;
  readonly b: Point;
}

/**
 * The strokes without those that come nearer than `leastMm` to one kept before them. Only chords in
 * neighbouring cells of a grid are compared.
 */
export function keptApart(strokes: readonly Line[], leastMm: number): Line[] {
  const cells = new Map<string, Chord[]>();
  const kept: Line[] = [];
  for (const stroke of strokes) {
    const chords = chordsOf(stroke, leastMm);
    const crowded = chords.some((chord) =>
      cellsOf(chord, leastMm, leastMm).some((cell) =>
        (cells.get(cell) ?? []).some((other) => distanceSq(chord, other) < leastMm * leastMm),
      ),
    );
    if (crowded) continue;
    kept.push(stroke);
    for (const chord of chords) {
      for (const cell of cellsOf(chord, leastMm, 0)) {
        const list = cells.get(cell);
        if (list) list.push(chord);
        else cells.set(cell, [chord]);
      }
    }
  }
  return kept;
}

/** A stroke as chords no longer than two cells, so that each lies in a few cells only. */
function chordsOf({ cubics }: Line, cellMm: number): Chord[] {
  const points = flatten(cubics, FLATTEN_MM);
  return points.slice(1).flatMap((b, i) => {
    const a = points[i];
    const parts = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / (2 * cellMm)));
    const at = (k: number): Point => ({
      x: a.x + (k / parts) * (b.x - a.x),
      y: a.y + (k / parts) * (b.y - a.y),
    });
    return Array.from({ length: parts }, (_, k) => ({ a: at(k), b: at(k + 1) }));
  });
}

function cellsOf({ a, b }: Chord, cellMm: number, roundMm: number): string[] {
  const cell = (mm: number): number => Math.floor(mm / cellMm);
  const names: string[] = [];
  for (let x = cell(Math.min(a.x, b.x) - roundMm); x <= cell(Math.max(a.x, b.x) + roundMm); x++) {
    for (let y = cell(Math.min(a.y, b.y) - roundMm); y <= cell(Math.max(a.y, b.y) + roundMm); y++) {
      names.push(`${x} ${y}`);
    }
  }
  return names;
}

/** Between two chords, 0 where they cross. */
function distanceSq(p: Chord, q: Chord): number {
  if (areCrossing(p, q)) return 0;
  return Math.min(
    fromChordSq(p.a, q),
    fromChordSq(p.b, q),
    fromChordSq(q.a, p),
    fromChordSq(q.b, p),
  );
}

function fromChordSq({ x, y }: Point, { a, b }: Chord): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const share = length === 0 ? 0 : ((x - a.x) * dx + (y - a.y) * dy) / length;
  const t = Math.max(0, Math.min(1, share));
  return (a.x + t * dx - x) ** 2 + (a.y + t * dy - y) ** 2;
}

function areCrossing(p: Chord, q: Chord): boolean {
  const side = ({ a, b }: Chord, { x, y }: Point): number =>
    (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x);
  return side(p, q.a) * side(p, q.b) < 0 && side(q, p.a) * side(q, p.b) < 0;
}
