import { ChordGrid } from './chord-grid.js';
import type { ChordTable } from './chords.js';
import { vertexCount } from './vertex-index.js';

/** A vertex this near to a chord (grid units) lies on it, as the grid's rounding has it. */
const ON_CHORD_UNITS = 1.5;

/**
 * The table with every straight chord led through the vertices that lie on it. Where edges fall
 * together, or end on each other, a vertex stands half a unit beside a long chord; Clipper2 then
 * takes the two for crossing or not as it comes upon them, and can fill what is open. Chords of
 * curves meet others in their own vertices, or not at all.
 */
export function throughVertices(table: ChordTable): ChordTable {
  const stops = stopsOf(table);
  return stops.length > 0 ? withStops(table, stops) : table;
}

/** A vertex on a chord, `fraction` of the way along it. */
interface Stop {
  readonly chord: number;
  readonly vertex: number;
  readonly fraction: number;
}

/** In order of the chords, and along each chord; one for each place. */
function stopsOf(table: ChordTable): Stop[] {
  const { x, y, next, segment, straight } = table;
  if (!straight.includes(1)) return [];
  const grid = new ChordGrid(table, (chord) => straight[segment[chord]] === 1);
  const stops: Stop[] = [];
  for (let vertex = 0; vertex < vertexCount(table); vertex++) {
    for (const chord of grid.near(x[vertex], y[vertex])) {
      const [dx, dy] = [x[next[chord]] - x[chord], y[next[chord]] - y[chord]];
      const [ux, uy] = [x[vertex] - x[chord], y[vertex] - y[chord]];
      const lengthSq = dx * dx + dy * dy;
      const along = ux * dx + uy * dy;
      const cross = ux * dy - uy * dx;
      if (along <= 0 || along >= lengthSq) continue;
      if (cross * cross > ON_CHORD_UNITS * ON_CHORD_UNITS * lengthSq) continue;
      stops.push({ chord, vertex, fraction: along / lengthSq });
    }
  }
  stops.sort((a, b) => a.chord - b.chord || a.fraction - b.fraction);
  return stops.filter(
    ({ chord, vertex }, k) =>
      k === 0 ||
      stops[k - 1].chord !== chord ||
      x[stops[k - 1].vertex] !== x[vertex] ||
      y[stops[k - 1].vertex] !== y[vertex],
  );
}

function withStops(table: ChordTable, stops: readonly Stop[]): ChordTable {
  const before = vertexCount(table);
  const count = before + stops.length;
  const x = new Int32Array(count);
  const y = new Int32Array(count);
  const segment = new Int32Array(count);
  const t0 = new Float64Array(count);
  const t1 = new Float64Array(count);
  /** Where each old vertex went. */
  const placed = new Int32Array(before + 1);
  let v = 0;
  let s = 0;
  for (let chord = 0; chord < before; chord++) {
    placed[chord] = v;
    const [from, to] = [table.t0[chord], table.t1[chord]];
    const put = (vertex: number, t: number): void => {
      x[v] = table.x[vertex];
      y[v] = table.y[vertex];
      segment[v] = table.segment[chord];
      t0[v] = t;
      t1[v] = to;
      if (v > placed[chord]) t1[v - 1] = t;
      v++;
    };
    put(chord, from);
    for (; s < stops.length && stops[s].chord === chord; s++) {
      put(stops[s].vertex, from + stops[s].fraction * (to - from));
    }
  }
  placed[before] = v;
  const contourStart = table.contourStart.map((start) => placed[start]);
  return { ...table, x, y, segment, t0, t1, contourStart, ...linksOf(contourStart) };
}

/** The rings that the vertices of each contour make, in order. */
function linksOf(contourStart: Int32Array): Pick<ChordTable, 'next' | 'previous'> {
  const count = contourStart[contourStart.length - 1];
  const next = new Int32Array(count);
  const previous = new Int32Array(count);
  for (let q = 0; q + 1 < contourStart.length; q++) {
    const [from, to] = [contourStart[q], contourStart[q + 1]];
    for (let v = from; v < to; v++) {
      next[v] = v + 1 < to ? v + 1 : from;
      previous[v] = v > from ? v - 1 : to - 1;
    }
  }
  return { next, previous };
}
