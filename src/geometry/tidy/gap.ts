import type { Track } from './course.js';

/**
 * How far two rows of points with common ends lie apart: an upper bound of their Fréchet distance
 * (H. Alt and M. Godau, Computing the Fréchet distance between two polygonal curves, 1995), and so
 * of the Hausdorff distance both ways. Infinity once it is clear that it is more than `limitMm`.
 *
 * Each point of either row is matched to one near it on the other, never going back. Between two
 * matches in a row both run straight, so nothing there is farther apart than the matches are.
 */
export function gapBetween(a: Track, b: Track, limitMm: number): number {
  let most = 0;
  let place: Place = { k: 0, f: 0, distanceMm: 0 };
  for (let i = 1; i < a.x.length; i++) {
    const next = i + 1 === a.x.length ? endOf(a, b) : footAhead(a, i, b, place, limitMm);
    most = Math.max(most, next.distanceMm, farthestPassed(a, i, b, place.k, next.k));
    if (!(most <= limitMm)) return Infinity;
    place = next;
  }
  return most;
}

/** A place on a row: a share f of the way from point k to the next. */
interface Place {
  readonly k: number;
  readonly f: number;
  readonly distanceMm: number;
}

function endOf(a: Track, b: Track): Place {
  const [i, k] = [a.x.length - 1, b.x.length - 1];
  return { k: k - 1, f: 1, distanceMm: Math.hypot(a.x[i] - b.x[k], a.y[i] - b.y[k]) };
}

/** The nearest place to point i of a on b, looked for from `place` on and no further than needed. */
function footAhead(a: Track, i: number, b: Track, place: Place, limitMm: number): Place {
  const [x, y] = [a.x[i], a.y[i]];
  const step = Math.hypot(x - a.x[i - 1], y - a.y[i - 1]);
  let reach = step + 2 * limitMm;
  let best: Place = { ...place, distanceMm: Infinity };
  for (let k = place.k; k + 1 < b.x.length && reach > 0; k++) {
    const least = k === place.k ? place.f : 0;
    const f = Math.max(least, Math.min(1, shareAlong(b, k, x, y)));
    const distanceMm = distanceFrom(b, k, f, x, y);
    if (distanceMm < best.distanceMm) best = { k, f, distanceMm };
    reach -= (1 - least) * Math.hypot(b.x[k + 1] - b.x[k], b.y[k + 1] - b.y[k]);
  }
  return best;
}

/** How far the points of b after `from` up to `to` lie from the step of a that ends in point i. */
function farthestPassed(a: Track, i: number, b: Track, from: number, to: number): number {
  let [most, f] = [0, 0];
  for (let k = from + 1; k <= to; k++) {
    f = Math.max(f, Math.min(1, shareAlong(a, i - 1, b.x[k], b.y[k])));
    most = Math.max(most, distanceFrom(a, i - 1, f, b.x[k], b.y[k]));
  }
  return most;
}

/** How far along the step from point k the foot of (x, y) lies; 0 for a step of no length. */
function shareAlong(t: Track, k: number, x: number, y: number): number {
  const [dx, dy] = [t.x[k + 1] - t.x[k], t.y[k + 1] - t.y[k]];
  const lengthSq = dx * dx + dy * dy;
  return lengthSq === 0 ? 0 : ((x - t.x[k]) * dx + (y - t.y[k]) * dy) / lengthSq;
}

const distanceFrom = (t: Track, k: number, f: number, x: number, y: number): number =>
  Math.hypot(t.x[k] + f * (t.x[k + 1] - t.x[k]) - x, t.y[k] + f * (t.y[k + 1] - t.y[k]) - y);
