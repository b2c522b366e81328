import type { Cubics, Point } from '../../geometry/types.js';
import { type Arc, pointOn, ribbon, spindle } from '../grass/ribbon.js';
import type { Random } from '../random.js';
import { fromLight, type Room } from './room.js';

/** How far up the hedge the longest slit reaches. */
const LONGEST = 0.22;

/**
 * Slim gaps low on the shade side where light comes through between the stems: broad below, pointed
 * above, leaning apart. `inside` says where card may be cut away with a web left round it.
 */
export function lightSlits(
  room: Room,
  count: number,
  inside: (p: Point) => boolean,
  random: Random,
): Cubics[] {
  const { smallestHole, smallestWeb } = room.plot;
  const wide = Math.max(smallestHole, 0.8 + 0.4 * room.grain) * 1.1;
  const seen = Math.max(1e-9, room.seen.maxX - room.seen.minX);
  const arcs: Arc[] = [];
  let place = random.between(0.86, 0.93);
  for (let i = 0; i < count; i++) {
    const own = random.branch(`slit ${i}`);
    const arc = slitArc(room, place, own);
    const step = own.chance(0.4) ? own.between(0.08, 0.13) : own.between(0.03, 0.05);
    place -= Math.max(step, (wide + 1.6 * smallestWeb) / seen);
    const far = arcs.every((other) => clearance(arc, other) > wide + 1.3 * smallestWeb);
    if (far && samples(arc).every(inside)) arcs.push(arc);
  }
  return arcs.map((arc) => ribbon(arc, spindle(0.3, wide / 2, 0.36), 'round'));
}

function slitArc(room: Room, place: number, random: Random): Arc {
  const { smallestHole, smallestWeb } = room.plot;
  const least = 2.2 * smallestHole;
  const length = Math.max(least, room.height * random.between(0.09, LONGEST));
  const from = {
    x: fromLight(room, place),
    y: -Math.max(1.6 * smallestWeb, 0.05 * room.height) - random.between(0, 0.05) * room.height,
  };
  // Stems fan out from the middle of the group.
  const lean = room.light * (0.66 - place) * 0.9 + random.between(-0.17, 0.17);
  const to = { x: from.x + lean * length, y: from.y - length };
  const bow = random.between(-0.1, 0.1) * length;
  return { from, to, control: { x: (from.x + to.x) / 2 + bow, y: (from.y + to.y) / 2 } };
}

const samples = (arc: Arc): Point[] => [0, 0.2, 0.4, 0.6, 0.8, 1].map((t) => pointOn(arc, t));

function clearance(a: Arc, b: Arc): number {
  let least = Infinity;
  for (const p of samples(a)) {
    for (const q of samples(b)) least = Math.min(least, Math.hypot(p.x - q.x, p.y - q.y));
  }
  return least;
}
