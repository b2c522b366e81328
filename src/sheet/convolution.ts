import type { Ring } from '../geometry/boolean/clip.js';

/**
 * The convolution of two regions' boundaries as closed rings of integer points. Round a place it
 * winds as often as the first region and the second, turned by half and moved there, have parts in
 * common (less once for each hole in such a part), so where no part can have a hole, its inside
 * under the nonzero rule is the Minkowski sum. Outer rings have positive area, holes negative; no
 * ring may turn straight back.
 *
 * L. Guibas, L. Ramshaw, J. Stolfi, A kinetic framework for computational geometry (1983): each edge
 * of one ring goes with those corners of the other that turn past its direction, backwards where
 * they turn the other way; from memory.
 */
export const convolution = (a: readonly Ring[], b: readonly Ring[]): Ring[] =>
  a.flatMap((p) => b.flatMap((q) => convolved(p, q)));

interface Vector {
  readonly x: number;
  readonly y: number;
}

function convolved(p: Ring, q: Ring): Ring[] {
  const [n, m] = [p.length, q.length];
  const [alongP, alongQ] = [edges(p), edges(q)];
  // Node i * m + j is where corner i of p meets corner j of q.
  const ways = new Map<number, number[]>();
  const addWay = (from: number, to: number, sign: number): void => {
    const [start, end] = sign > 0 ? [from, to] : [to, from];
    const list = ways.get(start);
    if (list) list.push(end);
    else ways.set(start, [end]);
  };
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n;
    const before = alongP[(i + n - 1) % n];
    for (let j = 0; j < m; j++) {
      const nextJ = (j + 1) % m;
      // Equal directions count as if all of q were turned a hair further, so that each is met once.
      const ofEdge = turnsPast(alongQ[(j + m - 1) % m], alongQ[j], alongP[i], true);
      if (ofEdge !== 0) addWay(i * m + j, next * m + j, ofEdge);
      const ofCorner = turnsPast(before, alongP[i], alongQ[j], false);
      if (ofCorner !== 0) addWay(i * m + j, i * m + nextJ, ofCorner);
    }
  }
  return closedWays(ways).map((nodes) =>
    nodes.map((node) => {
      const [s, t] = [p[Math.floor(node / m)], q[node % m]];
      return { x: s.x + t.x, y: s.y + t.y };
    }),
  );
}

const edges = (ring: Ring): Vector[] =>
  ring.map((at, i) => {
    const to = ring[(i + 1) % ring.length];
    return { x: to.x - at.x, y: to.y - at.y };
  });

/** 1 where the turn from one direction to another passes the given one, -1 where it does so backwards. */
function turnsPast(from: Vector, to: Vector, given: Vector, atEnd: boolean): -1 | 0 | 1 {
  const turn = cross(from, to);
  if (turn > 0) return isBetween(from, to, given, atEnd) ? 1 : 0;
  if (turn < 0) return isBetween(to, from, given, atEnd) ? -1 : 0;
  return 0;
}

/** Whether a direction lies between two less than half a turn apart, one of the ends included. */
function isBetween(low: Vector, high: Vector, given: Vector, atEnd: boolean): boolean {
  const past = cross(low, given);
  const left = cross(given, high);
  if (past > 0 && left > 0) return true;
  return atEnd
    ? left === 0 && past > 0 && dot(given, high) > 0
    : past === 0 && left > 0 && dot(low, given) > 0;
}

const cross = (a: Vector, b: Vector): number => a.x * b.y - a.y * b.x;
const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y;

/** Strings ways together; as many lead to each node as away from it. */
function closedWays(ways: Map<number, number[]>): number[][] {
  const out: number[][] = [];
  for (const start of ways.keys()) {
    for (let next = ways.get(start)!.pop(); next !== undefined; next = ways.get(start)!.pop()) {
      const nodes = [start];
      while (next !== start && next !== undefined) {
        nodes.push(next);
        next = ways.get(next)?.pop();
      }
      out.push(nodes);
    }
  }
  return out;
}
