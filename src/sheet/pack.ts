import type { Piece } from '../panel/piece.js';
import type { Stock } from '../scene/scene.js';
import { type Box, type FreeSpace, findRoom, type Preference, take } from './free-space.js';
import { ceilMicrometres, floorMicrometres } from './micrometres.js';

/** One copy of a piece and the box round its card, in whole micrometres of the piece's page. */
export interface Item {
  readonly piece: Piece;
  readonly copy: number;
  readonly box: Box;
}

/** Where the box of an item lies on its sheet, in whole micrometres. */
export interface Packed {
  readonly item: Item;
  readonly x: number;
  readonly y: number;
}

/** The part of the sheet inside its margins, in whole micrometres. */
export function usableBox({ sheet, margin }: Stock): Box {
  const edge = ceilMicrometres(margin);
  return {
    x: edge,
    y: edge,
    width: floorMicrometres(sheet.width) - 2 * edge,
    height: floorMicrometres(sheet.height) - 2 * edge,
  };
}

/**
 * Puts every item, in the order given, on the first sheet that has room for it. Each item by
 * itself must fit the usable box.
 */
export function pack(
  items: readonly Item[],
  usable: Box,
  gap: number,
  preference: Preference,
): Packed[][] {
  // Every item carries its gap right and below; the last gaps may run into the margin.
  const area = { ...usable, width: usable.width + gap, height: usable.height + gap };
  const sheets: { free: FreeSpace; packed: Packed[] }[] = [];
  for (const item of items) {
    const width = item.box.width + gap;
    const height = item.box.height + gap;
    let sheet = sheets.find((s) => findRoom(s.free, width, height, preference));
    if (!sheet) {
      sheet = { free: [area], packed: [] };
      sheets.push(sheet);
    }
    const room = findRoom(sheet.free, width, height, preference);
    if (!room) throw new Error(`${item.piece.name} is larger than its sheet.`);
    sheet.packed.push({ item, x: room.x, y: room.y });
    sheet.free = take(sheet.free, room);
  }
  return sheets.map((s) => s.packed);
}
