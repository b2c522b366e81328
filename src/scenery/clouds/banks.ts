import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Heap } from '../sky/billow.js';
import type { Sky } from '../sky/upright.js';

/** Banks of cloud, farthest first, and a place (upright) that is sure to be card. */
export type Form = 'heaped' | 'drifting';

/** Banks overlap by this share of their height. */
const OVERLAP = 0.34;

/** A bank's top runs so far into the head, in its own heights: its shoulders still show. */
const SUNK = 0.2;
/** A heaped bank is at least so many times as wide as it is high. */
const BROAD = 2;

/** Banks that hang from the head by their tops, or from the bank over them, upright. */
export function headBanks(plot: Plot, form: Form, wanted: number, random: Random): Heap[] {
  const { width, height } = plot;
  const isHeaped = form === 'heaped';
  const count = fitting(wanted, isHeaped ? width / BROAD : height, plot);
  const hand = random.chance(0.5) ? 1 : -1;
  const pitch = height / count;
  return Array.from({ length: count }, (_, i): Heap => {
    const luck = random.branch(i);
    const side = (i % 2 === 0 ? -1 : 1) * hand;
    if (!isHeaped) {
      const own = width * luck.between(0.6, 0.8) * (i === 0 ? 1.25 : 1);
      const middle = side * luck.between(0.5, 1) * 0.5 * Math.max(0, width - own);
      const base = (i + 1) * pitch;
      const top = i === 0 ? -SUNK * base : base - pitch * (1 + OVERLAP);
      return {
        left: middle - own / 2,
        right: middle + own / 2,
        base,
        top,
        summit: luck.between(0.4, 0.6),
      };
    }
    const own = count === 1 ? width : (width / count) * luck.between(1.3, 1.55);
    const across = count === 1 ? 0 : hand * (i / (count - 1) - 0.5) * (width - own);
    const most = Math.min(height, (1.15 * own) / BROAD);
    const base = i === count - 1 ? most : most * luck.between(0.5, 0.8);
    return {
      left: across - own / 2,
      right: across + own / 2,
      base,
      top: -SUNK * base,
      summit: luck.between(0.38, 0.62),
    };
  });
}

/** Banks that drift in from a jamb, upright. */
export function jambBanks(
  plot: Plot,
  sky: Sky,
  form: Form,
  wanted: number,
  random: Random,
): Heap[] {
  const { width, height, root } = plot;
  const count = fitting(wanted, form === 'heaped' ? width / 1.4 : width, plot);
  const pitch = width / (count + (form === 'heaped' ? 0.5 : 0.2));
  const longest = random.whole(0, count - 1);
  return Array.from({ length: count }, (_, i): Heap => {
    const luck = random.branch(i);
    const base = sky.box.maxY - (count - 1 - i) * pitch * luck.between(0.94, 1);
    const high = pitch * (form === 'heaped' ? 1.5 : 1.2) * luck.between(0.88, 1);
    const reach = height * (i === longest ? 1 : luck.between(0.48, 0.84));
    const ends =
      plot.side === 'left' ? { left: -root, right: reach } : { left: -reach, right: root };
    const share = root / (root + reach) + luck.between(0, 0.16);
    return {
      ...ends,
      base,
      top: Math.max(sky.box.minY, base - high),
      summit: plot.side === 'left' ? share : 1 - share,
    };
  });
}

/** A bank needs this many webs and holes of room across. */
const ROOM = { webs: 4, holes: 1.5 } as const;

const fitting = (wanted: number, roomMm: number, { smallestWeb, smallestHole }: Plot): number =>
  Math.max(
    1,
    Math.min(wanted, Math.floor(roomMm / (ROOM.webs * smallestWeb + ROOM.holes * smallestHole))),
  );
