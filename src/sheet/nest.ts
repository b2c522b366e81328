import { regionBounds } from '../geometry/measure.js';
import type { Piece } from '../panel/piece.js';
import { forProcess } from '../process/for-process.js';
import { isPressedFrom } from '../process/layers.js';
import type { Process } from '../process/process.js';
import type { Stock } from '../scene/scene.js';
import { type Box, nearestTop, type Preference, tightest } from './free-space.js';
import { ceilMicrometres, floorMicrometres, MICROMETRES_PER_MM } from './micrometres.js';
import { type Item, type Packed, pack, usableBox } from './pack.js';
import { type SheetProblem, sheetProblem } from './problem.js';
import { type Placement, type Sheet, sheetOf } from './sheet.js';

export interface NestOptions {
  /** Card left between two pieces, in mm. Less saves card, more keeps the sheet stiff. Default: 3. */
  readonly spacing: number;
}

export const NEST_DEFAULTS: NestOptions = { spacing: 3 };

export interface Nesting {
  readonly sheets: readonly Sheet[];
  /** Pieces that no sheet of their stock can hold; they are on none of the sheets. */
  readonly problems: readonly SheetProblem[];
}

/**
 * All copies of all pieces laid out on sheets of their stock, packed by the boxes round their card.
 * Pieces stay upright, because grain runs along the height of piece and sheet alike; a half turn
 * would keep the grain but gains nothing for boxes. Of a few packings the best is taken: fewest
 * sheets, then fewest faces to work, then the least height used. The same pieces always give the
 * same sheets; that no packing needs fewer is not guaranteed.
 */
export function nest(
  pieces: readonly Piece[],
  process: Process,
  options: Partial<NestOptions> = {},
): Nesting {
  const gap = ceilMicrometres({ ...NEST_DEFAULTS, ...options }.spacing);
  const problems: SheetProblem[] = [];
  const sheets: Sheet[] = [];
  for (const group of byStock(pieces.map((piece) => forProcess(piece, process)))) {
    const { stock } = group[0];
    const items: Item[] = [];
    for (const piece of group) {
      const box = cardBox(piece);
      const problem = sheetProblem(piece.name, box, usableBox(stock), stock);
      if (problem) problems.push(problem);
      else for (let copy = 1; copy <= piece.copies; copy++) items.push({ piece, copy, box });
    }
    for (const packed of bestPacking(items, stock, gap)) {
      const name = `sheet-${String(sheets.length + 1).padStart(2, '0')}`;
      sheets.push(sheetOf(name, stock, placements(packed, items), process));
    }
  }
  return { sheets, problems };
}

/** Pieces that can share a sheet, in the order of their first. */
function byStock(pieces: readonly Piece[]): Piece[][] {
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const { name, colour, gramsPerM2, caliperMm, sheet, margin } = piece.stock;
    const { width, height } = sheet;
    const key = JSON.stringify([name, colour, gramsPerM2, caliperMm, width, height, margin]);
    const group = groups.get(key);
    if (group) group.push(piece);
    else groups.set(key, [piece]);
  }
  return [...groups.values()];
}

function cardBox(piece: Piece): Box {
  if (piece.card.contours.length === 0) throw new Error(`${piece.name} has no card left to cut.`);
  const { minX, minY, maxX, maxY } = regionBounds(piece.card);
  const x = floorMicrometres(minX);
  const y = floorMicrometres(minY);
  return { x, y, width: ceilMicrometres(maxX) - x, height: ceilMicrometres(maxY) - y };
}

/** A sheet's placements, listed in the order of the pieces. */
const placements = (packed: readonly Packed[], items: readonly Item[]): Placement[] =>
  packed
    .toSorted((a, b) => items.indexOf(a.item) - items.indexOf(b.item))
    .map(({ item: { piece, copy, box }, x, y }) => ({
      piece,
      dx: (x - box.x) / MICROMETRES_PER_MM,
      dy: (y - box.y) / MICROMETRES_PER_MM,
      copy,
    }));

type Order = (a: Item, b: Item) => number;

const SIZE_ORDERS: readonly Order[] = [
  (a, b) => b.box.height - a.box.height || b.box.width - a.box.width,
  (a, b) => b.box.width - a.box.width || b.box.height - a.box.height,
  (a, b) => b.box.width * b.box.height - a.box.width * a.box.height,
];

/** The same orders, and the same again within pieces that are worked from the same faces. */
const ORDERS: readonly Order[] = SIZE_ORDERS.flatMap((bySize): Order[] => [
  bySize,
  (a, b) => faceRank(a.piece) - faceRank(b.piece) || bySize(a, b),
]);

const PREFERENCES: readonly Preference[] = [nearestTop, tightest];

/**
 * Brings together what can share a face: pieces worked from both faces come first, those worked
 * from the back alone last, which a sheet of their own lets be cut from the back too.
 */
function faceRank(piece: Piece): number {
  const back = isPressedFrom(piece, 'back');
  if (isPressedFrom(piece, 'front')) return back ? 0 : 1;
  return back ? 3 : 2;
}

function bestPacking(items: readonly Item[], stock: Stock, gap: number): Packed[][] {
  let best: Packed[][] = [];
  let bestCost: readonly number[] = [Infinity];
  for (const order of ORDERS) {
    for (const preference of PREFERENCES) {
      const packing = pack(items.toSorted(order), usableBox(stock), gap, preference);
      const cost = costOf(packing);
      if (!isLess(cost, bestCost)) continue;
      best = packing;
      bestCost = cost;
    }
  }
  return best;
}

/** What makes a packing worse, the weightiest first. */
function costOf(packing: readonly Packed[][]): readonly number[] {
  let faces = 0;
  let usedHeight = 0;
  for (const sheet of packing) {
    const front = sheet.some((p) => isPressedFrom(p.item.piece, 'front'));
    const back = sheet.some((p) => isPressedFrom(p.item.piece, 'back'));
    faces += front && back ? 2 : 1;
    usedHeight += Math.max(...sheet.map((p) => p.y + p.item.box.height));
  }
  return [packing.length, faces, usedHeight];
}

/** Compares two lists number by number. */
function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i] < b[i];
  return false;
}
