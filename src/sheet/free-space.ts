/** A box in whole micrometres, which keep exact fits exact. The origin is the top left, y down. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/**
 * The room left on a sheet, as the largest free rectangles (they may overlap).
 * J. Jylänki, A Thousand Ways to Pack the Bin (2010), maximal rectangles; from memory.
 */
export type FreeSpace = readonly Box[];

/** Ranks the free rectangles that a box fits in: the lowest numbers win, compared in turn. */
export type Preference = (room: Box, width: number, height: number) => readonly [number, number];

/** Keeps the foot of the sheet whole. */
export const nearestTop: Preference = (room) => [room.y, room.x];

/** Leaves the narrowest strips beside the box. */
export const tightest: Preference = (room, width, height) => {
  const right = room.width - width;
  const below = room.height - height;
  return [Math.min(right, below), Math.max(right, below)];
};

/** Where a box goes by the preference, or null when it fits nowhere. */
export function findRoom(
  free: FreeSpace,
  width: number,
  height: number,
  preference: Preference,
): Box | null {
  let best: Box | null = null;
  let bestRank: readonly [number, number] = [Infinity, Infinity];
  for (const room of free) {
    if (room.width < width || room.height < height) continue;
    const rank = preference(room, width, height);
    if (rank[0] > bestRank[0] || (rank[0] === bestRank[0] && rank[1] >= bestRank[1])) continue;
    best = { x: room.x, y: room.y, width, height };
    bestRank = rank;
  }
  return best;
}

/** The room left when `used` is taken. */
export function take(free: FreeSpace, used: Box): FreeSpace {
  const left = free.flatMap((room) => (overlaps(room, used) ? remainders(room, used) : [room]));
  return left.filter(
    (a, i) => !left.some((b, j) => i !== j && holds(b, a) && (j < i || !holds(a, b))),
  );
}

/** The largest rectangles of `room` above, below, left and right of `used`. */
function remainders(room: Box, used: Box): Box[] {
  const above = used.y - room.y;
  const below = room.y + room.height - used.y - used.height;
  const left = used.x - room.x;
  const right = room.x + room.width - used.x - used.width;
  const all = [
    { ...room, height: above },
    { ...room, y: used.y + used.height, height: below },
    { ...room, width: left },
    { ...room, x: used.x + used.width, width: right },
  ];
  return all.filter((box) => box.width > 0 && box.height > 0);
}

const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

const holds = (a: Box, b: Box): boolean =>
  a.x <= b.x && a.y <= b.y && a.x + a.width >= b.x + b.width && a.y + a.height >= b.y + b.height;
