import type { Field } from '../../src/process/order/field.js';

const ROUNDS = 300;

/**
 * No tour travels less than this (mm), whatever its order: M. Held and R. Karp, The
 * traveling-salesman problem and minimum spanning trees, Operations Research 18 (1970), for a path
 * with one fixed end. Any run may be entered and left at the ends that suit each link best, and
 * neither order, groups nor clashes count, so tours of a sheet may not come near it.
 */
export function travelBound(field: Field): number {
  const n = field.count + 1;
  const mm = distances(field);
  const price = new Float64Array(n);
  const departure = field.count;
  let best = 0;
  let step = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const { length, degree } = spanningTree(mm, price, n);
    let bound = length - price[departure];
    let least = Infinity;
    for (let run = 0; run < departure; run++) {
      bound -= 2 * price[run];
      least = Math.min(least, price[run]);
    }
    // The path's last run has one link only, whichever that is.
    bound += least;
    best = Math.max(best, bound);
    if (round === 0) step = length / n;
    for (let run = 0; run < n; run++) {
      price[run] += step * (degree[run] - (run === departure ? 1 : 2));
    }
    step *= 0.98;
  }
  return best;
}

/** Of each two runs, the least there can be between an end of one and an end of the other. */
function distances({ count, firstWay, entryX, entryY, exitX, exitY }: Field): Float64Array {
  const n = count + 1;
  const mm = new Float64Array(n * n);
  const least = (a: number, b: number): number => {
    let best = Infinity;
    for (let v = firstWay[a]; v < firstWay[a + 1]; v++) {
      for (let w = firstWay[b]; w < firstWay[b + 1]; w++) {
        best = Math.min(best, Math.hypot(entryX[w] - exitX[v], entryY[w] - exitY[v]));
      }
    }
    return best;
  };
  for (let a = 0; a < n; a++) {
    for (let b = 0; b < a; b++) mm[a * n + b] = mm[b * n + a] = Math.min(least(a, b), least(b, a));
  }
  return mm;
}

/** The shortest tree over all runs when each link also costs the prices of its two ends (Prim). */
function spanningTree(mm: Float64Array, price: Float64Array, n: number) {
  const degree = new Int32Array(n);
  const near = new Float64Array(n).fill(Infinity);
  const parent = new Int32Array(n).fill(-1);
  const isDone = new Uint8Array(n);
  near[0] = 0;
  let length = 0;
  for (let k = 0; k < n; k++) {
    let next = -1;
    for (let v = 0; v < n; v++) if (!isDone[v] && (next < 0 || near[v] < near[next])) next = v;
    isDone[next] = 1;
    length += near[next];
    if (parent[next] >= 0) {
      degree[next]++;
      degree[parent[next]]++;
    }
    for (let v = 0; v < n; v++) {
      const cost = mm[next * n + v] + price[next] + price[v];
      if (isDone[v] || cost >= near[v]) continue;
      near[v] = cost;
      parent[v] = next;
    }
  }
  return { length, degree };
}
