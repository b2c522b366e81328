import { flatten } from '../../geometry/measure.js';
import type { Bounds, Point } from '../../geometry/types.js';
import type { Run } from './runs.js';

/** Far finer than any two cuts are apart. */
const CHORD_MM = 0.05;
/** A contour of more than this share of the one round it leaves the card round it weak. */
const LARGE_SHARE = 0.1;

interface Ring {
  readonly runs: readonly number[];
  readonly points: readonly Point[];
  readonly box: Bounds;
  readonly areaMm2: number;
}

/**
 * For each run of cuts, those that must come later: the innermost contour round it, and large ones
 * beside it in the same piece (a window after the holes of its frame), small before large. Common
 * practice, no source. Never a circle.
 */
export function comesBefore(runs: readonly Run[]): readonly (readonly number[])[] {
  const rings = ringsOf(runs).sort(smallFirst);
  const round = innermostRings(runs, rings);
  const after = runs.map((): number[] => []);
  round.forEach((ring, run) => {
    if (ring !== null) after[run].push(...ring.runs);
  });
  const within = new Map<Ring, number[]>();
  round.forEach((outer, run) => {
    if (outer === null || !isSamePiece(runs[run], runs[outer.runs[0]])) return;
    const held = within.get(outer);
    if (held) held.push(run);
    else within.set(outer, [run]);
  });
  const ringOf = new Map(rings.flatMap((ring) => ring.runs.map((run) => [run, ring])));
  for (const [outer, held] of within) {
    const rings = new Set(held.flatMap((run) => ringOf.get(run) ?? []));
    const large = [...rings]
      .filter(({ areaMm2 }) => areaMm2 > LARGE_SHARE * outer.areaMm2)
      .sort(smallFirst);
    const rank = new Map(large.flatMap((ring, k) => ring.runs.map((run) => [run, k])));
    for (const run of held) {
      // The next larger one is enough, as that one waits for those after it.
      const next = large[(rank.get(run) ?? -1) + 1];
      if (next) after[run].push(...next.runs);
    }
  }
  return after;
}

const smallFirst = (a: Ring, b: Ring): number => a.areaMm2 - b.areaMm2 || a.runs[0] - b.runs[0];

function ringsOf(runs: readonly Run[]): Ring[] {
  const byContour = new Map<number, number[]>();
  runs.forEach(({ contour }, run) => {
    if (contour < 0) return;
    const parts = byContour.get(contour);
    if (parts) parts.push(run);
    else byContour.set(contour, [run]);
  });
  return [...byContour.values()].map((parts): Ring => {
    // Gaps are closed with straight lines: nibs are short, and shared edges are straight.
    const points = parts.flatMap((run) =>
      runs[run].marks.flatMap((mark) => flatten(mark.cubics, CHORD_MM)),
    );
    return { runs: parts, points, box: boxOf(points), areaMm2: Math.abs(shoelace(points)) };
  });
}

/** The smallest ring round each run, or null. */
function innermostRings(runs: readonly Run[], risingRings: readonly Ring[]): (Ring | null)[] {
  const places = runs.map(placesOn);
  const round = runs.map((): Ring | null => null);
  const ringAt = new Map(risingRings.flatMap((ring, k) => ring.runs.map((run) => [run, k])));
  let left = runs.map((_, run) => run).sort((a, b) => places[a][0].x - places[b][0].x);
  risingRings.forEach((ring, k) => {
    let found = false;
    for (let at = firstFrom(left, places, ring.box.minX); at < left.length; at++) {
      const run = left[at];
      if (places[run][0].x > ring.box.maxX) break;
      const own = ringAt.get(run);
      if (own !== undefined && own >= k) continue;
      if (places[run].filter((place) => isInside(place, ring)).length < 2) continue;
      round[run] = ring;
      found = true;
    }
    if (found) left = left.filter((run) => round[run] === null);
  });
  return round;
}

function firstFrom(left: readonly number[], places: readonly Point[][], x: number): number {
  let [low, high] = [0, left.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (places[left[middle]][0].x < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Three places, of which two must lie within, as one may touch. */
function placesOn({ marks }: Run): Point[] {
  const points = marks.flatMap((mark) => flatten(mark.cubics, CHORD_MM));
  return [0.5, 0.17, 0.83].map((share) => {
    const k = Math.min(points.length - 2, Math.floor(share * (points.length - 1)));
    const [a, b] = [points[k], points[k + 1]];
    return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  });
}

function isInside({ x, y }: Point, { points, box }: Ring): boolean {
  if (x < box.minX || x > box.maxX || y < box.minY || y > box.maxY) return false;
  let inside = false;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    const [a, b] = [points[j], points[i]];
    if (a.y > y === b.y > y) continue;
    if (x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  }
  return inside;
}

const isSamePiece = (a: Run, b: Run): boolean =>
  a.marks[0].piece === b.marks[0].piece && a.marks[0].copy === b.marks[0].copy;

function boxOf(points: readonly Point[]): Bounds {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

function shoelace(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 0, j = points.length - 1; i < points.length; j = i++) {
    sum += points[j].x * points[i].y - points[i].x * points[j].y;
  }
  return sum / 2;
}
