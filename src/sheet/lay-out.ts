import { clip, type Ring } from '../geometry/boolean/clip.js';
import type { Piece } from '../panel/piece.js';
import type { Process } from '../process/process.js';
import type { Box, Footprint } from './footprint.js';
import { EASE, FINE } from './micrometres.js';
import { moved } from './no-fit.js';
import { type Pressed, workedFaces } from './sheet.js';

/** What is to be laid out: one copy of a piece. */
export interface Item {
  readonly piece: Piece;
  /** Round its card, in whole micrometres of the piece's page. */
  readonly box: Box;
  /** Upright and, where that is another outline, turned by half. */
  readonly prints: readonly Footprint[];
  readonly pressed: Pressed;
  /** Of its card, in square micrometres. */
  readonly area: number;
}

/** An item in its place: its box's top left on the sheet, in whole micrometres. */
export interface Laid {
  readonly item: Item;
  readonly isTurned: boolean;
  readonly x: number;
  readonly y: number;
}

/** The item that comes next, and whether it may lie only upright (0) or only turned (1). */
export interface Turn {
  readonly item: Item;
  readonly only?: 0 | 1;
}

/** Ranks free places, x and y of an item's box: the lowest wins. */
export type Lean = (x: number, y: number) => number;

/** Keeps the foot of the sheet whole, its right side, or both. */
export const LEANS: readonly Lean[] = [
  (x, y) => y + x / 1e4,
  (x, y) => x + y / 1e4,
  (x, y) => x + y,
];

/** What all layouts of one stock have in common. */
export interface Ground {
  /** The part of a sheet that pieces may lie on. */
  readonly usable: Box;
  readonly process: Process;
  /** Where `moving` cannot lie, seen from `fixed`. */
  readonly noFit: (fixed: Footprint, moving: Footprint) => readonly Ring[];
}

/**
 * Puts items, in the order given, on the first sheet that has room and need not be worked from
 * another face for it; else on the first that has room; else on a new one. Each by itself must fit.
 */
export function layOut(turns: readonly Turn[], lean: Lean, ground: Ground): Laid[][] {
  const sheets: OpenSheet[] = [];
  for (const { item, only } of turns) {
    const alike = sheets.filter((sheet) => !sheet.gainsFace(item));
    const others = sheets.filter((sheet) => sheet.gainsFace(item));
    if ([...alike, ...others].some((sheet) => sheet.takes(item, lean, only))) continue;
    const sheet = new OpenSheet(ground);
    if (!sheet.takes(item, lean)) throw new Error(`${item.piece.name} is larger than its sheet.`);
    sheets.push(sheet);
  }
  return sheets.map((sheet) => sheet.laid);
}

interface Space {
  /** Where the top left of a footprint's box may lie, in fine units. */
  readonly rings: readonly Ring[];
  /** How many of the sheet's cards that allows for. */
  readonly reckoned: number;
}

class OpenSheet {
  readonly laid: Laid[] = [];
  private readonly spaces = new Map<Footprint, Space>();
  private pressed: Pressed = { front: false, back: false };
  private freeArea: number;

  constructor(private readonly ground: Ground) {
    this.freeArea = ground.usable.width * ground.usable.height;
  }

  gainsFace({ pressed }: Item): boolean {
    if (this.laid.length === 0) return false;
    const { process } = this.ground;
    const both = {
      front: this.pressed.front || pressed.front,
      back: this.pressed.back || pressed.back,
    };
    return workedFaces(both, process).length > workedFaces(this.pressed, process).length;
  }

  /** Puts an item where the lean likes it best; false where there is no room. */
  takes(item: Item, lean: Lean, only?: 0 | 1): boolean {
    if (item.area > this.freeArea) return false;
    let best: Laid | null = null;
    let bestRank = Infinity;
    item.prints.forEach((print, turn) => {
      if (only !== undefined && item.prints.length > 1 && turn !== only) return;
      for (const ring of this.spaceFor(print)) {
        for (const spot of ring) {
          const [x, y] = [Math.round(spot.x / FINE), Math.round(spot.y / FINE)];
          const rank = lean(x, y);
          if (rank >= bestRank) continue;
          best = { item, isTurned: turn === 1, x, y };
          bestRank = rank;
        }
      }
    });
    if (best === null) return false;
    this.put(best);
    return true;
  }

  private put(laid: Laid): void {
    const { pressed, area } = laid.item;
    this.laid.push(laid);
    this.freeArea -= area;
    this.pressed = {
      front: this.pressed.front || pressed.front,
      back: this.pressed.back || pressed.back,
    };
  }

  private spaceFor(print: Footprint): readonly Ring[] {
    let space = this.spaces.get(print) ?? { rings: whole(this.ground.usable, print), reckoned: 0 };
    const added = space.rings.length > 0 ? this.laid.slice(space.reckoned) : [];
    if (added.length > 0) {
      const taken = added.flatMap((laid) => this.takenBy(laid, print));
      const rings = clip('subtract', space.rings, taken, 'nonzero');
      space = { rings, reckoned: this.laid.length };
    }
    this.spaces.set(print, space);
    return space.rings;
  }

  private takenBy({ item, isTurned, x, y }: Laid, print: Footprint): Ring[] {
    const fixed = item.prints[isTurned ? 1 : 0];
    return moved(this.ground.noFit(fixed, print), { x: x * FINE, y: y * FINE });
  }
}

/** Where a footprint's top left may lie on an empty sheet; eased, so that an exact fit has an area. */
function whole({ x, y, width, height }: Box, print: Footprint): Ring[] {
  if (print.width > width || print.height > height) return [];
  const [left, right] = [x * FINE - EASE, (x + width - print.width) * FINE + EASE];
  const [top, foot] = [y * FINE - EASE, (y + height - print.height) * FINE + EASE];
  return [
    [
      { x: left, y: top },
      { x: right, y: top },
      { x: right, y: foot },
      { x: left, y: foot },
    ],
  ];
}
