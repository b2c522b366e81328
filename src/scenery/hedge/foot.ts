import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { contourArea } from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { pen, regionOf, smoothLine } from '../../geometry/pen.js';
import type { Cubics, Region } from '../../geometry/types.js';
import { guideOf, nibbleAlong } from '../edge.js';
import { ribbon, taper } from '../grass/ribbon.js';
import type { Random } from '../random.js';
import type { Room } from './room.js';

/** A low arch under the leaves through which the stems are seen. */
interface Opening {
  readonly x: number;
  readonly wide: number;
  readonly tall: number;
}

/** Ranges are shares of the hedge's height. */
const OPENING_WIDE = [0.5, 1] as const;
const OPENING_TALL = [0.16, 0.27] as const;
const BETWEEN_OPENINGS = [0.2, 0.55] as const;

/** The gaps between the stems at a loose hedge's foot, as holes that keep to `body`. */
export function footGaps(room: Room, body: Region, random: Random): Region {
  const { smallestWeb, smallestHole } = room.plot;
  const openings = openingsOf(room, random.branch('openings'));
  if (openings.length === 0) return { contours: [] };
  const arches = openings.map((o, i) => regionOf(arch(room, o, random.branch(`arch ${i}`))));
  const stems = openings.flatMap((o, i) => stemsIn(room, o, random.branch(`stems ${i}`)));
  const gaps = subtract(
    union(arches),
    stems.map((stem) => regionOf(stem)),
  );
  const kept = intersect(gaps, offset(body, -1.5 * smallestWeb));
  // Grown and shrunk: slivers between two gaps go, and no web is left that is too slim to cut.
  const apart = offset(offset(kept, 0.52 * smallestWeb), -0.52 * smallestWeb);
  // Shrunk and grown: no corner is left that is too tight to cut.
  const round = 0.55 * smallestHole;
  const open = offset(offset(apart, -round), round);
  return { contours: open.contours.filter((c) => contourArea(c) > 3 * smallestHole ** 2) };
}

function openingsOf(room: Room, random: Random): Opening[] {
  const { seen, height, plot } = room;
  const span = seen.maxX - seen.minX;
  const end = seen.maxX - 0.1 * span;
  const openings: Opening[] = [];
  let x = seen.minX + span * random.between(0.08, 0.14);
  for (let i = 0; x < end && i < 20; i++) {
    const own = random.branch(i);
    const wide = Math.min(height * own.between(...OPENING_WIDE), end - x);
    const tall = Math.max(height * own.between(...OPENING_TALL), 2.5 * plot.smallestHole);
    if (wide > 4 * plot.smallestHole) openings.push({ x, wide, tall });
    x += wide + height * own.between(...BETWEEN_OPENINGS);
  }
  return openings;
}

/** Leaves hang into it from above; its floor is the bank that the stems stand in. */
function arch(room: Room, { x, wide, tall }: Opening, random: Random): Cubics {
  const floor = -Math.max(1.3 * room.plot.smallestWeb, 1.3);
  // Boughs hang into it unevenly, lowest at its ends.
  const sag = () => floor - tall * random.between(0.62, 1);
  const ceiling = smoothLine([
    { x, y: floor },
    { x: x + wide * 0.04, y: floor - tall * 0.45 },
    { x: x + wide * random.between(0.16, 0.26), y: sag() },
    { x: x + wide * random.between(0.34, 0.46), y: sag() },
    { x: x + wide * random.between(0.54, 0.66), y: sag() },
    { x: x + wide * random.between(0.74, 0.84), y: sag() },
    { x: x + wide * 0.96, y: floor - tall * 0.4 },
    { x: x + wide, y: floor },
  ]);
  const guide = guideOf(ceiling);
  const outline = pen(x, floor);
  nibbleAlong(outline, guide, guide.lengthMm / 2, room.nibble, random.branch('ceiling'));
  return outline
    .quadTo(x + wide * random.between(0.3, 0.7), floor + random.between(-0.7, 0.3), x, floor)
    .close();
}

/** Stems lean, and every second one forks from its foot. */
function stemsIn(room: Room, { x, wide, tall }: Opening, random: Random): Cubics[] {
  const half = Math.max(room.plot.smallestWeb * 1.15, 1.6 * room.grain) / 2;
  const stems: Cubics[] = [];
  let at = x + wide * random.between(0.1, 0.3);
  for (let i = 0; at < x + wide * 0.95 && i < 20; i++) {
    const own = random.branch(i);
    const lean = own.between(-0.3, 0.3);
    const fork = own.chance(0.5);
    for (const turn of fork ? [-0.34, 0.3] : [0]) {
      const arc = {
        from: { x: at, y: 1 },
        control: { x: at + own.between(-0.12, 0.12) * tall, y: -tall * 0.6 },
        to: { x: at + (lean + turn) * tall * 1.4, y: -tall * 1.4 - 1.5 },
      };
      stems.push(ribbon(arc, taper(half * own.between(1.3, 1.8), half, 1)));
    }
    at += own.between(2.6, 6) * room.grain + 2 * half + (fork ? 0.5 * tall : 0);
  }
  return stems;
}
