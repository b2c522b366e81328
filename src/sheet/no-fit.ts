import { clip, grown, type Ring } from '../geometry/boolean/clip.js';
import { withoutSpikes } from '../geometry/boolean/spikes.js';
import { convolution } from './convolution.js';
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
 */
export function noFit(fixed: Footprint, moving: Footprint, gaps: Gaps): Ring[] {
  const outerGap = fixed.isPlain && moving.isPlain ? gaps.touching : gaps.spacing;
  // The gap is kept round the fixed one; holes of the moving one make up for where it is smaller.
  const a = within(fixed, extent(moving.rings), outerGap * FINE - EASE, gaps.spacing * FINE - EASE);
  const b = within(moving, extent(a), 0, (gaps.spacing - outerGap) * FINE);
  const rings = convolution(a, b.map(mirrored)).map(withoutSpikes);
  return clip(
    'union',
    rings.filter((ring) => ring.length > 0),
    [],
    'nonzero',
  );
}

interface Extent {
  readonly width: number;
  readonly height: number;
}

function extent(rings: readonly Ring[]): Extent {
  const [xs, ys] = [
    rings.flatMap((r) => r.map((p) => p.x)),
    rings.flatMap((r) => r.map((p) => p.y)),
  ];
  return {
    width: Math.max(...xs) - Math.min(...xs),
    height: Math.max(...ys) - Math.min(...ys),
  };
}

/**
 * A footprint grown by its gaps, without the holes that the other cannot lie in. What the two have in
 * common then never has a hole: one would be a hole of either that the other reaches all round.
 */
function within(print: Footprint, other: Extent, outerGap: number, holeGap: number): Ring[] {
  const openings = print.rings.filter((ring) => !isOuter(ring)).map((ring) => ring.toReversed());
  const holes = openings
    .flatMap((ring) => grown([ring], -holeGap))
    .filter((ring) => {
      const { width, height } = extent([ring]);
      return width >= other.width && height >= other.height;
    });
  const outers = print.rings.filter(isOuter).flatMap((ring) => grown([ring], outerGap));
  return clip('union', [...outers, ...holes.map((ring) => ring.toReversed())], [], 'positive');
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

  /** @param halves each footprint's own turned by half, itself where that is the same. */
  constructor(
    private readonly gaps: Gaps,
    private readonly halves: ReadonlyMap<Footprint, Footprint>,
  ) {}

  readonly between = (fixed: Footprint, moving: Footprint): readonly Ring[] => {
    const ofFixed = this.known.get(fixed) ?? new Map<Footprint, readonly Ring[]>();
    this.known.set(fixed, ofFixed);
    let rings = ofFixed.get(moving);
    if (rings === undefined) {
      rings = this.fromOthers(fixed, moving) ?? noFit(fixed, moving, this.gaps);
      ofFixed.set(moving, rings);
    }
    return rings;
  };

  /** The same seen from the other, or with both turned by half. */
  private fromOthers(fixed: Footprint, moving: Footprint): readonly Ring[] | undefined {
    const [a, b] = [this.halves.get(fixed)!, this.halves.get(moving)!];
    const by = {
      x: (fixed.width - moving.width) * FINE,
      y: (fixed.height - moving.height) * FINE,
    };
    const halved = this.known.get(a)?.get(b);
    const both = this.known.get(b)?.get(a);
    return (
      this.known.get(moving)?.get(fixed)?.map(mirrored) ??
      (halved && moved(halved.map(mirrored), by)) ??
      (both && moved(both, by))
    );
  }
}
