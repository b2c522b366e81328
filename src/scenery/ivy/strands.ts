import type { Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { IvyValues } from './parameters.js';

/** A strand that trails from the band, and the twigs that tie it to the one before. */
export interface Strand {
  /** From the edge to its tip, in mm. */
  readonly path: readonly Point[];
  readonly ties: readonly (readonly Point[])[];
  readonly random: Random;
}

/** Room that a lock of two strands takes along the edge with its leaves, in leaf lengths. */
const LOCK = 2.7;
/** How far apart its strands hang, in leaf lengths. */
const APART: readonly [number, number] = [0.85, 1.15];
/** A strand longer than this many of its widths is tied to its neighbour. */
const TIE_WEBS = 12;

/**
 * Strands in locks of a longer and a shorter one, with gaps between the locks. In the plot of a head they fall
 * straight into the window; on a jamb they turn down along it; on a sill they creep up and nod.
 */
export function strandsOf(plot: Plot, values: IvyValues, leafMm: number, random: Random): Strand[] {
  const least = Math.max(LOCK * leafMm, 4 * (plot.smallestWeb + plot.smallestHole));
  const room = Math.max(1, Math.floor(plot.width / least));
  const locks = values.strands === 0 ? 0 : Math.max(1, Math.round(values.strands * room));
  const free = plot.width / Math.max(1, locks);
  return Array.from({ length: locks }, (_, k) => k).flatMap((k): Strand[] => {
    const own = random.branch(k);
    const x = (k + 0.5 - locks / 2) * free + 0.07 * (free - least) * own.bell();
    const apart = leafMm * own.between(...APART);
    const sides = own.chance(0.5) ? [-0.5, 0.5] : [0.5, -0.5];
    const longer = lengthOf(plot, values, leafMm, own);
    const shorter = longer * own.between(0.5, 0.8);
    const [first, second] = [longer, shorter].map((long, i) =>
      pathOf(plot, x + sides[i] * apart, long, own.branch(`path ${i}`)),
    );
    if (free < least || apart < 3 * plot.smallestWeb) {
      return [{ path: first, ties: [], random: own.branch(0) }];
    }
    const ties = tiesTo(first, second, plot, own.branch('ties'));
    return [
      { path: first, ties: [], random: own.branch(0) },
      { path: second, ties, random: own.branch(1) },
    ];
  });
}

const lengthOf = (plot: Plot, values: IvyValues, leafMm: number, random: Random): number =>
  Math.max(
    plot.height * (1 - (0.05 + 0.5 * values.uneven) * random.next()) - 0.7 * leafMm,
    0.6 * leafMm,
  );

/** On a jamb a strand turns down by so much of its length, on a sill it nods by less. */
const FALL = { jamb: 0.5, sill: 0.22, head: 0 };

function pathOf(plot: Plot, x: number, long: number, random: Random): Point[] {
  const { side } = plot;
  const fall = side === 'head' || side === 'sill' ? FALL[side] : FALL.jamb;
  const way = side === 'left' ? 1 : side === 'right' ? -1 : random.chance(0.5) ? 1 : -1;
  const sway = 0.05 * long * random.bell();
  const at = (f: number, drift: number): Point => ({
    x: x + way * fall * long * drift + sway * Math.sin(Math.PI * 1.6 * f),
    y: -long * (f - (side === 'head' ? 0 : 0.12 * drift)),
  });
  return [{ x, y: 0.3 }, at(0.3, 0.08), at(0.65, 0.4), at(1, 1)];
}

/** Twigs from one strand to the next, at equal heights but for a slant. */
function tiesTo(
  before: readonly Point[],
  own: readonly Point[],
  plot: Plot,
  random: Random,
): Point[][] {
  const reach = Math.min(-before[before.length - 1].y, -own[own.length - 1].y);
  const step = TIE_WEBS * plot.smallestWeb;
  const ties: Point[][] = [];
  for (let y = step * random.between(0.7, 1); y < 0.9 * reach; y += step) {
    const from = onPath(before, -y);
    const to = onPath(own, -Math.min(y * 1.12 + plot.smallestWeb, reach));
    const middle = { x: (from.x + to.x) / 2, y: Math.min(from.y, to.y) - 0.4 * plot.smallestWeb };
    ties.push([from, middle, to]);
  }
  return ties;
}

/** Where a path is at a height, along straight stretches between its places. */
function onPath(path: readonly Point[], y: number): Point {
  const k = Math.max(0, path.findIndex((p, i) => i > 0 && p.y <= y) - 1);
  const [a, b] = [path[k], path[Math.min(path.length - 1, k + 1)]];
  const f = Math.max(0, Math.min(1, (a.y - y) / Math.max(1e-9, a.y - b.y)));
  return { x: a.x + f * (b.x - a.x), y: a.y + f * (b.y - a.y) };
}
