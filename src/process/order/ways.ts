import type { Field, Tour } from './field.js';

/** The same order with the way of each run chosen so that the travel is the least possible. */
export function bestWays(field: Field, { order }: Tour): Tour {
  const { count, firstWay, entryX, entryY, exitX, exitY } = field;
  const runs = [count, ...order];
  const cost = new Float64Array(firstWay[count + 1]);
  const from = new Int32Array(firstWay[count + 1]);
  for (let k = 1; k < runs.length; k++) {
    const [a, b] = [runs[k - 1], runs[k]];
    for (let w = firstWay[b]; w < firstWay[b + 1]; w++) {
      cost[w] = Infinity;
      for (let v = firstWay[a]; v < firstWay[a + 1]; v++) {
        const dx = entryX[w] - exitX[v];
        const dy = entryY[w] - exitY[v];
        const sum = cost[v] + Math.sqrt(dx * dx + dy * dy);
        if (sum >= cost[w]) continue;
        cost[w] = sum;
        from[w] = v;
      }
    }
  }
  const way: number[] = new Array(order.length);
  if (order.length === 0) return { order, way };
  const last = order[order.length - 1];
  let best = firstWay[last];
  for (let w = best; w < firstWay[last + 1]; w++) if (cost[w] < cost[best]) best = w;
  for (let k = order.length - 1; k >= 0; k--) {
    way[k] = best;
    best = from[best];
  }
  return { order, way };
}
