import { circle } from '../../geometry/primitives.js';
import type { Cubics, Point } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { clearOf } from './clear.js';
import type { Room } from './room.js';
import type { Shade } from './texture.js';

/** From cluster to cluster, before they are strewn; about two cells in five stay green. */
const CELL_MM = 14;
const STRAY = 0.36;
const FLOWERING = 0.62;
/** A flower's radius at the front panel. */
const RADIUS_MM = [0.75, 1.25] as const;

interface Flower {
  readonly at: Point;
  readonly radius: number;
}

/**
 * Flowers in clusters of a few, as round contours with more than a web of card between them, more
 * of them where the light falls. `card` is the contours of the card and of its holes.
 */
export function blossom(
  room: Room,
  card: readonly Cubics[],
  shade: Shade,
  random: Random,
): Cubics[] {
  const { smallestWeb, smallestHole } = room.plot;
  const largest = Math.max(0.53 * smallestHole, RADIUS_MM[1] * room.grain);
  const reach = largest + 1.3 * smallestWeb;
  const clear = clearOf(card, reach);
  const { minX, maxX } = room.seen;
  const kept: Flower[] = [];
  for (const flower of clusters(room, shade, random)) {
    const { at, radius } = flower;
    const apart = kept.every(
      (other) =>
        Math.hypot(at.x - other.at.x, at.y - other.at.y) >
        radius + other.radius + 1.25 * smallestWeb,
    );
    const seen = at.x > minX + reach && at.x < maxX - reach && at.y < -reach;
    if (apart && seen && clear(at)) kept.push(flower);
  }
  return kept.map(({ at, radius }) => circle(at.x, at.y, radius).contours[0]);
}

/** Clusters by cells counted from the hedge's foot, so that a larger hedge keeps them. */
function clusters(room: Room, shade: Shade, random: Random): Flower[] {
  const flowers: Flower[] = [];
  const columns = Math.ceil(room.width / 2 / CELL_MM) + 1;
  const rows = Math.ceil(room.height / CELL_MM) + 1;
  for (let row = 0; row < rows; row++) {
    for (let column = -columns; column <= columns; column++) {
      const own = random.branch(`cluster ${row} ${column}`);
      const at = {
        x: (column + (row % 2) / 2 + own.between(-STRAY, STRAY)) * CELL_MM,
        y: -(row + 0.5 + own.between(-STRAY, STRAY)) * CELL_MM,
      };
      if (own.chance(FLOWERING * (1 - 0.6 * shade(at)))) flowers.push(...cluster(room, at, own));
    }
  }
  return flowers;
}

/** More are tried than find room, so that a cluster is packed unevenly. */
const TRIES = 7;

function cluster(room: Room, middle: Point, random: Random): Flower[] {
  const { smallestWeb, smallestHole } = room.plot;
  const spread = (2 * RADIUS_MM[1] * room.grain + 1.25 * smallestWeb) * random.between(0.8, 1.5);
  return Array.from({ length: TRIES }, () => {
    const radius = Math.max(0.53 * smallestHole, room.grain * random.between(...RADIUS_MM));
    const reach = spread * Math.sqrt(random.next());
    const turn = random.between(0, 2 * Math.PI);
    const at = { x: middle.x + reach * Math.cos(turn), y: middle.y + 0.8 * reach * Math.sin(turn) };
    return { at, radius };
  });
}
