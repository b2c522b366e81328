import { subtract, union } from '../../geometry/boolean/boolean.js';
import { components } from '../../geometry/components.js';
import { regionArea } from '../../geometry/measure.js';
import { polygon } from '../../geometry/pen.js';
import { EMPTY_REGION, type Region } from '../../geometry/types.js';
import { mix, rounded, shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';

/** Where an icicle hangs, how long and how broad at its top, mm; `down` is 1 where y grows. */
interface Icicle {
  readonly x: number;
  readonly from: number;
  readonly length: number;
  readonly breadth: number;
  readonly down: number;
}

/** Broadest icicle in webs and as a share of its length. */
const BREADTH = { webs: 2.3, share: 0.2 } as const;
/** From one icicle to the next, in breadths, in a cluster and between two. */
const STEP = { close: [0.25, 0.7], far: [1.4, 3] } as const;
const CLUSTER = 0.66;

function icicleShape({ x, from, length, breadth, down }: Icicle, smallestWeb: number): Region {
  const tip = 1.14 * smallestWeb;
  const at = (t: number, wide: number) => ({
    x,
    y: from + down * t * length,
    thickness: Math.max(tip, wide * breadth),
  });
  const last = Math.max(0.7, 1 - tip / 2 / length);
  return shapeOf(limb([at(-0.12, 1.5), at(0.04, 1.05), at(0.3, 0.72), at(0.65, 0.4), at(last, 0)]));
}

/** Icicles in clusters between two places, long and short, from a line that they hang on. */
export function iciclesOf(
  plot: Plot,
  span: readonly [number, number],
  lipAt: (x: number) => number,
  reach: number,
  down: number,
  random: Random,
): Region[] {
  const { smallestWeb, smallestHole } = plot;
  const shapes: Region[] = [];
  let x = span[0];
  for (let i = 0; x < span[1]; i++) {
    const luck = random.branch(i);
    // One in five is far longer than the others.
    const length = reach * (luck.chance(0.22) ? luck.between(0.84, 1) : luck.between(0.3, 0.66));
    const breadth = Math.max(BREADTH.webs * smallestWeb, BREADTH.share * length);
    const at = x + breadth / 2;
    if (at + breadth / 2 > span[1]) break;
    shapes.push(icicleShape({ x: at, from: lipAt(at), length, breadth, down }, smallestWeb));
    const step = luck.chance(CLUSTER) ? luck.between(...STEP.close) : luck.between(...STEP.far);
    x = at + breadth / 2 + Math.max(smallestHole * 1.1, step * breadth);
  }
  return shapes;
}

/** A ledge's bays: breadth in its height, the columns between them in webs, and its levels. */
const BAY = { breadth: [1.1, 2.6], columnWebs: [2.4, 3.4], lip: 0.6, bank: 0.1 } as const;

/**
 * The openings under a ledge of snow on the sill, icicles hanging in them and columns of ice
 * between them.
 */
export function ledgeHoles(
  plot: Plot,
  left: number,
  right: number,
  topAt: (x: number) => number,
  random: Random,
): Region {
  const { smallestWeb, smallestHole } = plot;
  const bays: Region[] = [];
  let x = left + 3 * smallestWeb;
  for (let i = 0; x < right; i++) {
    const luck = random.branch(i);
    const column = smallestWeb * luck.between(...BAY.columnWebs);
    const high = -topAt(x) * (BAY.lip - BAY.bank);
    const breadth = Math.max(3 * smallestHole, high * luck.between(...BAY.breadth));
    const end = x + breadth;
    if (end > right - 3 * smallestWeb) break;
    const low = Math.min(-topAt(x), -topAt(end), -topAt((x + end) / 2));
    const [lip, bank] = [-low * BAY.lip, -low * BAY.bank];
    if (bank - lip > 1.6 * smallestHole) {
      const waist = mix(lip, bank, luck.between(0.55, 0.7));
      const bulge = column / 5;
      const bay = shapeOf(
        polygon([
          { x: x + bulge, y: lip },
          { x: end - bulge, y: lip },
          { x: end + bulge * 0.4, y: waist },
          { x: end - bulge, y: bank },
          { x: x + bulge, y: bank },
          { x: x - bulge * 0.4, y: waist },
        ]),
      );
      const span = [x + smallestHole, end - smallestHole] as const;
      const room = bank - lip - 1.2 * smallestHole;
      const hung = iciclesOf(plot, span, () => lip, room, 1, luck.branch('icicles'));
      const open = hung.length > 0 ? subtract(bay, [union(hung)]) : bay;
      const hole = rounded(open, 0.53 * smallestHole);
      bays.push(...components(hole).filter((h) => regionArea(h) > 1.5 * smallestHole ** 2));
    }
    x = end + column;
  }
  return bays.length > 0 ? union(bays) : EMPTY_REGION;
}
