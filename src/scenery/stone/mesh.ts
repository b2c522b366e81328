import type { Bounds, Point } from '../../geometry/types.js';
import type { Random } from '../random.js';

/** Irregular polygons side by side: neighbours share their corners and edges. */
export interface Mesh {
  readonly corners: readonly Point[];
  readonly edges: readonly Edge[];
  readonly cells: readonly MeshCell[];
}

/** From corner to corner, between two cells (indices). */
export interface Edge {
  readonly ends: readonly [number, number];
  readonly sides: readonly [number, number];
}

export interface MeshCell {
  /** Indices of its corners, clockwise on screen. */
  readonly corners: readonly number[];
}

/** How far a stone's middle is off the lattice, in steps, and the share of middles left out. */
const OFF = 0.4;
const LEFT_OUT = 0.16;
/** Rows are this much nearer than columns: then the lattice is made of even triangles. */
const ROW = Math.sqrt(3) / 2;
/** Lattice steps within which neighbours are looked for. */
const NEIGHBOURHOOD = 3;
/** Two corners are at least this share of a stone's height apart: four joints never meet. */
const LEAST_EDGE = 0.3;
const SPREAD_ROUNDS = 6;

interface Site {
  readonly key: string;
  readonly i: number;
  readonly j: number;
  /** In steps: the mesh is drawn on an even lattice and stretched to the stones' size. */
  readonly u: number;
  readonly v: number;
}

/**
 * Stones of about `length` x `height` mm over the box: each takes what lies nearest to its middle
 * (a Voronoi diagram of an uneven lattice), so that three stones meet in every corner. The lattice
 * hangs on the origin, not on the box.
 */
export function meshOver(box: Bounds, length: number, height: number, random: Random): Mesh {
  const rowMm = height / ROW;
  const sites = sitesOver(box, length, rowMm, random);
  const at = new Map(sites.map((s) => [`${s.i}/${s.j}`, s]));
  const corners: Point[] = [];
  const cornerOf = new Map<string, number>();
  const edges = new Map<string, { ends: [number, number]; sides: [number, number] }>();
  const cells: MeshCell[] = [];
  sites.forEach((site, index) => {
    const walls = cellOf(site, neighboursOf(site, at));
    if (walls.some((w) => w.neighbour === null)) {
      cells.push({ corners: [] });
      return;
    }
    const own = walls.map((wall, k) => {
      const next = walls[(k + 1) % walls.length];
      const key = [site.key, wall.neighbour!.key, next.neighbour!.key].sort().join(' ');
      const known =
        cornerOf.get(key) ?? corners.push({ x: wall.u * length, y: wall.v * rowMm }) - 1;
      cornerOf.set(key, known);
      return known;
    });
    walls.forEach((wall, k) => {
      const key = [site.key, wall.neighbour!.key].sort().join(' ');
      const edge = edges.get(key);
      if (edge) edge.sides[1] = index;
      else {
        const before = own[(k + own.length - 1) % own.length];
        edges.set(key, { ends: [before, own[k]], sides: [index, -1] });
      }
    });
    cells.push({ corners: own });
  });
  const whole = [...edges.values()].filter((e) => e.sides[1] >= 0);
  const middle = (k: number): Point => ({ x: sites[k].u * length, y: sites[k].v * rowMm });
  return { corners: spread(corners, whole, middle, LEAST_EDGE * height), edges: whole, cells };
}

function sitesOver(box: Bounds, length: number, rowMm: number, random: Random): Site[] {
  const sites: Site[] = [];
  const rows = [box.minY, box.maxY].map((y) => y / rowMm / ROW);
  for (let j = Math.floor(rows[0]) - 3; j <= rows[1] + 3; j++) {
    for (let i = Math.floor(box.minX / length) - 3; i <= box.maxX / length + 3; i++) {
      const luck = random.branch(`${i}/${j}`);
      const [du, dv] = [luck.between(-OFF, OFF), luck.between(-OFF, OFF)];
      if (luck.chance(LEFT_OUT)) continue;
      const u = i + (j % 2 === 0 ? 0 : 0.5) + du;
      sites.push({ key: `${i}/${j}`, i, j, u, v: (j + dv) * ROW });
    }
  }
  return sites;
}

function neighboursOf(site: Site, at: ReadonlyMap<string, Site>): Site[] {
  const found: Site[] = [];
  for (let j = site.j - NEIGHBOURHOOD; j <= site.j + NEIGHBOURHOOD; j++) {
    for (let i = site.i - NEIGHBOURHOOD; i <= site.i + NEIGHBOURHOOD; i++) {
      const other = at.get(`${i}/${j}`);
      if (other && other !== site) found.push(other);
    }
  }
  return found;
}

/** A side of a cell: whom it parts from, and its far end going clockwise. */
interface Wall {
  readonly neighbour: Site | null;
  readonly u: number;
  readonly v: number;
}

/** A large square, cut down by the line midway to each neighbour. */
function cellOf(site: Site, neighbours: readonly Site[]): Wall[] {
  const far = NEIGHBOURHOOD;
  let walls: Wall[] = [
    [far, -far],
    [far, far],
    [-far, far],
    [-far, -far],
  ].map(([du, dv]) => ({ neighbour: null, u: site.u + du, v: site.v + dv }));
  for (const other of neighbours) {
    const [du, dv] = [other.u - site.u, other.v - site.v];
    const beyond = (w: { u: number; v: number }) =>
      (w.u - (site.u + other.u) / 2) * du + (w.v - (site.v + other.v) / 2) * dv;
    walls = walls.flatMap((wall, k) => {
      const from = walls[(k + walls.length - 1) % walls.length];
      const [a, b] = [beyond(from), beyond(wall)];
      const crossing = { u: mixed(from.u, wall.u, a, b), v: mixed(from.v, wall.v, a, b) };
      if (a <= 0 && b <= 0) return [wall];
      if (a <= 0) return [{ ...wall, ...crossing }];
      // The cut runs from where it left the cell to here.
      if (b <= 0) return [{ neighbour: other, ...crossing }, wall];
      return [];
    });
  }
  return walls;
}

/** Where between p and q a measure that is a at p and b at q is zero. */
const mixed = (p: number, q: number, a: number, b: number): number =>
  a === b ? p : p + ((q - p) * a) / (a - b);

/** Corners that all but meet are pushed apart along the edge between them. */
function spread(
  corners: readonly Point[],
  edges: readonly Edge[],
  middle: (cell: number) => Point,
  least: number,
): Point[] {
  const moved = corners.map((p) => ({ ...p }));
  for (let round = 0; round < SPREAD_ROUNDS; round++) {
    for (const { ends, sides } of edges) {
      const [a, b] = [moved[ends[0]], moved[ends[1]]];
      const [p, q] = sides.map(middle);
      const apart = Math.hypot(q.x - p.x, q.y - p.y);
      // Clockwise round the first cell the edge runs with that cell to its right.
      const [tx, ty] = [-(q.y - p.y) / apart, (q.x - p.x) / apart];
      const short = least - ((b.x - a.x) * tx + (b.y - a.y) * ty);
      if (short <= 0) continue;
      a.x -= (tx * short) / 2;
      a.y -= (ty * short) / 2;
      b.x += (tx * short) / 2;
      b.y += (ty * short) / 2;
    }
  }
  return moved;
}
