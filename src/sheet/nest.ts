import { regionArea } from '../geometry/measure.js';
import type { Piece } from '../panel/piece.js';
import { forProcess } from '../process/for-process.js';
import type { Process } from '../process/process.js';
import type { Stock } from '../scene/scene.js';
import { cardBox, type Footprint, footprint, turnedByHalf } from './footprint.js';
import type { Ground, Item, Laid } from './lay-out.js';
import { ceilMicrometres, MICROMETRES_PER_MM } from './micrometres.js';
import { type Gaps, NoFits } from './no-fit.js';
import { type SheetProblem, sheetProblem } from './problem.js';
import { usableBox } from './room.js';
import { Search } from './search.js';
import { type Placement, pressedOf, type Sheet, sheetOf } from './sheet.js';

export interface NestOptions {
  /** Card left between two pieces, in mm. Less saves card, more keeps the sheet stiff. Default: 3. */
  readonly spacing: number;
  /**
   * Card left between the outer edges of two plain rectangles, in mm. Default: 0 for a laser that cuts
   * shared edges once, else the spacing.
   */
  readonly touching?: number;
  /** How many of the whole book. Default: 1. */
  readonly copies: number;
  /**
   * How many changes are tried on each stock's first layout. The same effort always gives the same
   * sheets. Default: 20.
   */
  readonly effort: number;
  /** Asked with the effort so far, then after each round of 20 more: whether to go on. */
  readonly goOn?: (effort: number) => boolean;
}

export const NEST_DEFAULTS: NestOptions = { spacing: 3, copies: 1, effort: 20 };

export interface Nesting {
  readonly sheets: readonly Sheet[];
  /** Pieces that no sheet of their stock can hold; they are on none of the sheets. */
  readonly problems: readonly SheetProblem[];
  /** What was spent: asked for again, it gives the same sheets. */
  readonly effort: number;
}

/**
 * All copies of all pieces laid out on sheets of their stock by their true outlines: in the scrap
 * between others and in the windows of frames. Grain runs along the height of piece and sheet
 * alike, so pieces lie upright or turned by half, never by a quarter. Of all layouts tried the best
 * is taken: fewest sheets, then fewest faces to work, then the fullest first sheets.
 */
export function nest(
  pieces: readonly Piece[],
  process: Process,
  options: Partial<NestOptions> = {},
): Nesting {
  const { copies, goOn, ...rest } = { ...NEST_DEFAULTS, ...options };
  const gaps = gapsOf(rest, process);
  const problems: SheetProblem[] = [];
  const made = pieces.map((piece) => forProcess(piece, process));
  const layouts = byStock(made).map((group) => {
    const { stock } = group[0];
    const usable = usableBox(stock, pressedOf(group), process);
    const fitting = group.filter((piece) => {
      const problem = sheetProblem(piece.name, cardBox(piece), usable, stock, process.bed);
      if (problem) problems.push(problem);
      return !problem;
    });
    const items = itemsOf(fitting, copies);
    const noFits = new NoFits(gaps, halvesOf(items));
    const ground: Ground = { usable, process, noFit: noFits.between };
    return { stock, search: new Search(items, ground) };
  });
  const effort = spend(
    layouts.map(({ search }) => search),
    rest.effort,
    goOn,
  );
  const laid = layouts.flatMap(({ stock, search }) =>
    search.sheets.map((sheet) => ({ stock, sheet })),
  );
  const count = new Map<Piece, number>();
  const sheets = laid.map(({ stock, sheet }, i) => {
    const name = `sheet-${String(i + 1).padStart(2, '0')}`;
    return sheetOf(name, stock, placements(sheet, made, count), process);
  });
  return { sheets, problems, effort };
}

function gapsOf(
  { spacing, touching }: Pick<NestOptions, 'spacing' | 'touching'>,
  process: Process,
): Gaps {
  const shared = process.kind === 'laser' && process.sharedEdges;
  return {
    spacing: ceilMicrometres(spacing),
    touching: ceilMicrometres(touching ?? (shared ? 0 : spacing)),
  };
}

/** Changes that are tried before it is asked again whether to go on. */
const ROUND = 20;

/** Tries as many changes as told, then round by round; the effort in the end. */
function spend(searches: readonly Search[], first: number, goOn: NestOptions['goOn']): number {
  const tryEach = (times: number): void => {
    for (const search of searches) for (let k = 0; k < times; k++) search.tryChange();
  };
  tryEach(first);
  let effort = first;
  while (goOn?.(effort) && searches.some((search) => !search.isSettled)) {
    tryEach(ROUND);
    effort += ROUND;
  }
  return effort;
}

/** Pieces that can share a sheet, in the order of their first. */
function byStock(pieces: readonly Piece[]): Piece[][] {
  const groups = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const key = stockKey(piece.stock);
    const group = groups.get(key);
    if (group) group.push(piece);
    else groups.set(key, [piece]);
  }
  return [...groups.values()];
}

const stockKey = ({ name, colour, gramsPerM2, caliperMm, sheet, margin }: Stock): string =>
  JSON.stringify([name, colour, gramsPerM2, caliperMm, sheet.width, sheet.height, margin]);

/** Every copy of pieces that can share a sheet; copies of equal outline share their footprints. */
function itemsOf(pieces: readonly Piece[], copies: number): Item[] {
  const boxes = pieces.map(cardBox);
  const least = {
    width: Math.min(...boxes.map(({ width }) => width)),
    height: Math.min(...boxes.map(({ height }) => height)),
  };
  const known = new Map<string, Footprint>();
  const shared = (print: Footprint): Footprint => {
    const kept = known.get(print.key) ?? print;
    known.set(kept.key, kept);
    return kept;
  };
  return pieces.flatMap((piece, i): Item[] => {
    const upright = shared(footprint(piece, boxes[i], least));
    const turned = shared(turnedByHalf(upright));
    const item: Item = {
      piece,
      box: boxes[i],
      prints: turned === upright ? [upright] : [upright, turned],
      pressed: pressedOf([piece]),
      area: regionArea(piece.card) * MICROMETRES_PER_MM ** 2,
    };
    return Array.from({ length: piece.copies * copies }, () => ({ ...item }));
  });
}

const halvesOf = (items: readonly Item[]): Map<Footprint, Footprint> =>
  new Map(
    items.flatMap(({ prints: [upright, turned = upright] }) => [
      [upright, turned],
      [turned, upright],
    ]),
  );

/** A sheet's placements in the order of the pieces; copies are numbered from sheet to sheet. */
const placements = (
  sheet: readonly Laid[],
  pieces: readonly Piece[],
  count: Map<Piece, number>,
): Placement[] =>
  sheet
    .toSorted((a, b) => pieces.indexOf(a.item.piece) - pieces.indexOf(b.item.piece))
    .map((laid) => {
      const { piece } = laid.item;
      const copy = (count.get(piece) ?? 0) + 1;
      count.set(piece, copy);
      return { piece, copy, ...placeOf(laid) };
    });

function placeOf({
  item: { piece, box },
  isTurned,
  x,
  y,
}: Laid): Omit<Placement, 'piece' | 'copy'> {
  if (!isTurned) {
    return { dx: (x - box.x) / MICROMETRES_PER_MM, dy: (y - box.y) / MICROMETRES_PER_MM };
  }
  return {
    dx: (x + box.x + box.width) / MICROMETRES_PER_MM - piece.width,
    dy: (y + box.y + box.height) / MICROMETRES_PER_MM - piece.height,
    halfTurn: true,
  };
}
