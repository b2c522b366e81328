import { rectangle } from '../../geometry/primitives.js';
import type { Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import { joinDrawings } from '../built/finish.js';
import type { Plot } from '../family.js';
import { type LimbNode, limb } from '../limb.js';
import type { Random } from '../random.js';
import { LANTERN_WIDE, lanternOf, ROOFS, type Room } from './lantern.js';
import type { Arms, Lamp } from './post.js';

/** How far the plate runs under the frame, mm. */
const UNDER_MM = 4;
/** Height of the arm as a share of the lamp's, with its lanterns under it or on it. */
const HANGING = 0.74;
const STANDING = 0.38;
/** The lantern's own share of the room under the arm or over it. */
const OF_ROOM = 0.96;

/** A lamp on a bracket out of a jamb: one lantern standing on it, or one or two hung from it. */
export function bracketLamp(plot: Plot, arms: Arms, hand: 1 | -1, random: Random): Lamp {
  const { width, height, smallestWeb, smallestHole } = plot;
  const plate = Math.max(1.25 * smallestWeb, 0.05 * height);
  const gap = Math.max(1.3 * smallestHole, 0.06 * height);
  const hangs = arms !== 'none';
  const level = (hangs ? HANGING : STANDING) * height;
  const tall = (hangs ? level : height - level) * OF_ROOM;
  const reach = Math.max(width / 2, plate + gap + 2.6 * smallestWeb);
  const room = reach - plate - gap;
  const fits = (count: number) => (room - (count - 1) * gap) / count / 1.15;
  const count = arms === 'double' && fits(2) >= 3 * smallestWeb ? 2 : 1;
  const wide = Math.min(LANTERN_WIDE * tall, fits(count));
  // A narrow lantern is a low one: drawn out it would look like a bottle.
  const lanternHeight = Math.min(tall, 1.9 * wide);
  const foot = hangs ? -level + lanternHeight : -level;
  const rooms: Room[] = Array.from({ length: count }, (_, i) => ({
    x: hand * (reach - 0.575 * wide - i * (1.15 * wide + gap)),
    foot,
    width: wide,
    height: lanternHeight,
  }));
  const end = hand * reach - hand * 0.575 * wide;
  const roof = random.branch('roof').pick(ROOFS);
  const drawings = rooms.map((r) => lanternOf(plot, r, hangs, roof));
  const solids = [...plateOf(plot, plate, hand), ...armOf(plot, level, end, hangs, hand)];
  return {
    drawing: joinDrawings([{ solids, cuts: [], lines: [] }, ...drawings]),
    lanterns: rooms,
    foot: (-hand * UNDER_MM) / 2,
  };
}

/** The plate on the wall, from under the frame into the window, its ends drawn in. */
function plateOf({ height }: Plot, plate: number, hand: number): Region[] {
  const p = (out: number, up: number): LimbNode => ({
    x: hand * out,
    y: -up * height,
    thickness: 2 * plate,
  });
  const shaft = limb([p(0, 0.02), p(0, 0.5), p(0, 0.94)]);
  const under = rectangle(hand > 0 ? -UNDER_MM : 0, -height, UNDER_MM, height + 0.3);
  return [shapeOf(shaft), under];
}

/** The arm and the stay that carries it: over the arm if lanterns hang, under it if one stands. */
function armOf(
  { height, smallestWeb }: Plot,
  level: number,
  end: number,
  hangs: boolean,
  hand: number,
): Region[] {
  const thick = Math.max(1.2 * smallestWeb, 0.045 * height);
  const node = (x: number, up: number, swell: number): LimbNode => ({
    x,
    y: -up,
    thickness: thick * swell,
  });
  const tip = end + hand * thick * 0.8;
  const arm = limb([
    node(-hand * 2, level, 1.15),
    node(end * 0.5, level + 0.012 * height, 1),
    node(tip, level, 1),
  ]);
  const from = hangs ? 0.95 * height : 0.06 * height;
  const at = (t: number) => from + (level - from) * t;
  const stay = limb([
    node(-hand * 1.5, from, 1.1),
    node(end * 0.22, at(0.08), 1),
    node(end * 0.55, at(0.42), 0.95),
    node(end * 0.76, at(1), 1),
  ]);
  return [shapeOf(arm), shapeOf(stay)];
}
