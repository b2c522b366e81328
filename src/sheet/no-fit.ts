import { clip, grown, type Ring, uniteGroups } from '../geometry/boolean/clip.js';
import type { Footprint } from './footprint.js';
import { EASE, FINE } from './micrometres.js';

/** Card left between two pieces, in whole micrometres. */
export interface Gaps {
  readonly spacing: number;
  /** Between the outer edges of two plain rectangles. */
  readonly touching: number;
}

/**
 * Where `moving` cannot lie, its top left seen from that of `fixed`, in fine units: inside these rings
 * (nonzero) the two come nearer than the gap, whether side by side or one in a hole of the other.
 * It is eased a little, so that places that just do are left as slivers, not lost.
 *
 * Outlines touch where their boundaries' Minkowski sum says so; where they do not, one may still lie
 * on the other's card, which one point of each part tells (P. K. Ghosh, A unified computational
 * framework for Minkowski operations, Computers & Graphics 17, 1993; from memory).
 */
export function noFit(fixed: Footprint, moving: Footprint, gaps: Gaps): Ring[] {
  const outerGap = fixed.isPlain && moving.isPlain ? gaps.touching : gaps.spacing;
  // The gap is kept round the fixed one; holes of the moving one make up for where it is smaller.
  const a = within(fixed, moving, outerGap * FINE - EASE, gaps.spacing * FINE - EASE);
  const b = within(moving, fixed, 0, (gaps.spacing - outerGap) * FINE);
  const c = b.map(mirrored);
  const sweeps = a.flatMap((p) => c.flatMap((q) => sweep(p, q)));
  const spots = [
    ...c.filter(isOuter).map((ring) => moved(a, ring[0])),
    ...a.filter(isOuter).map((ring) => moved(c, ring[0])),
  ];
  return uniteGroups([...spots, ...sweeps.map((quad) => [quad])]);
}

/** A footprint grown by its gaps, without the holes that the other cannot lie in. */
function within(print: Footprint, other: Footprint, outerGap: number, holeGap: number): Ring[] {
  const holes = print.rings.filter((ring) => !isOuter(ring) && holds(ring, other));
  const outers = print.rings.filter(isOuter);
  return clip(
    'union',
    [
      ...outers.flatMap((ring) => grown([ring], outerGap)),
      ...holes.flatMap((ring) => grown([ring.toReversed()], -holeGap)).map((r) => r.toReversed()),
    ],
    [],
    'positive',
  );
}

function holds(hole: Ring, { width, height }: Footprint): boolean {
  const [xs, ys] = [hole.map((p) => p.x), hole.map((p) => p.y)];
  return (
    Math.max(...xs) - Math.min(...xs) >= width * FINE &&
    Math.max(...ys) - Math.min(...ys) >= height * FINE
  );
}

/** What each edge of one ring covers while it is moved along each edge of another. */
function sweep(p: Ring, q: Ring): Ring[] {
  const quads: Ring[] = [];
  for (let i = 0, h = p.length - 1; i < p.length; h = i++) {
    for (let j = 0, g = q.length - 1; j < q.length; g = j++) {
      const turn = (p[i].x - p[h].x) * (q[j].y - q[g].y) - (p[i].y - p[h].y) * (q[j].x - q[g].x);
      if (turn === 0) continue;
      const quad = [sum(p[h], q[g]), sum(p[i], q[g]), sum(p[i], q[j]), sum(p[h], q[j])];
      quads.push(turn > 0 ? quad : quad.reverse());
    }
  }
  return quads;
}

type Spot = Ring[number];

const sum = (a: Spot, b: Spot): Spot => ({ x: a.x + b.x, y: a.y + b.y });

const mirrored = (ring: Ring): Ring => ring.map(({ x, y }) => ({ x: -x, y: -y }));

export const moved = (rings: readonly Ring[], by: Spot): Ring[] =>
  rings.map((ring) => ring.map((p) => sum(p, by)));

export function isOuter(ring: Ring): boolean {
  let area = 0;
  for (let i = 0, h = ring.length - 1; i < ring.length; h = i++) {
    area += (ring[h].x - ring[0].x) * (ring[i].y - ring[0].y);
    area -= (ring[i].x - ring[0].x) * (ring[h].y - ring[0].y);
  }
  return area > 0;
}

/** All that has been worked out for one stock, each pair of footprints once. */
export class NoFits {
  private readonly known = new Map<Footprint, Map<Footprint, readonly Ring[]>>();

  constructor(private readonly gaps: Gaps) {}

  readonly between = (fixed: Footprint, moving: Footprint): readonly Ring[] => {
    const ofFixed = this.known.get(fixed) ?? new Map<Footprint, readonly Ring[]>();
    this.known.set(fixed, ofFixed);
    let rings = ofFixed.get(moving);
    if (rings === undefined) {
      // The other way round it is the same, seen from the other.
      const other = this.known.get(moving)?.get(fixed);
      rings = other?.map(mirrored) ?? noFit(fixed, moving, this.gaps);
      ofFixed.set(moving, rings);
    }
    return rings;
  };
}
