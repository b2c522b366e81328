import type { Book, PanelPlan } from '../book/book.js';
import { subtract } from '../geometry/boolean/boolean.js';
import { linesInside, outlineLines } from '../geometry/clip-lines.js';
import { components } from '../geometry/components.js';
import { regionBounds } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { polygon, polyline, regionOf } from '../geometry/pen.js';
import {
  type Affine,
  IDENTITY,
  inOrder,
  moveRegion,
  scaling,
  translation,
} from '../geometry/transform.js';
import { EMPTY_REGION, type Line, type Region } from '../geometry/types.js';
import type { Stock } from '../scene/scene.js';
import { numberTicks } from './number-ticks.js';
import { pageOf } from './page.js';
import type { Panel } from './panel.js';
import { type Piece, panelName } from './piece.js';
import type { Stencil } from './stencil-forms.js';

// Stencil and counter plate have the panel's own outline: pushed into one corner, all lie true.
// A stencil is drawn as it lies under the card, which is pressed down into it; a counter plate with
// its forms up, to be turned over onto the card. Both are worked from the face that is drawn.

/** Scores end this far within the edges of their board. */
const SCORE_MARGIN_MM = 1;
/** Arms of the corner run on so far past the panel's hinge and past its corner, mm. */
const CORNER_ARM_MM = 40;
const CORNER_BREADTH_MM = 15;
/** The corner is higher than a stencil by its base, the counter plate, and one board to spare. */
const PLATES = 3;

/** All plates of a book, and the corner that they are laid up in. */
export function stencilPieces(book: Book, panels: readonly Panel[]): Piece[] {
  const stencils = panels.flatMap((panel) =>
    (panel.stencils ?? [])
      .filter(({ terraces }) => terraces.length > 0)
      .map((stencil) => ({ plan: book.panels[panel.number - 1], stencil })),
  );
  if (stencils.length === 0) return [];
  const layers = Math.max(
    ...stencils.flatMap(({ stencil }) => stencil.terraces.map((t) => t.layers)),
  );
  return [
    ...stencils.flatMap(({ plan, stencil }) => platesOf(book, plan, stencil)),
    cornerPiece(book, stencils[0].stencil.card, layers + PLATES),
  ];
}

/** Boards glued on one another, the lowest first. */
interface Board {
  readonly name: string;
  readonly card: Region;
  readonly copies: number;
}

function platesOf(book: Book, plan: PanelPlan, stencil: Stencil): Piece[] {
  const name = `${panelName(plan.number)}-${stencil.side}`;
  const under = stencil.side === 'raised' ? turnedOver(book) : IDENTITY;
  const over = stencil.side === 'raised' ? IDENTITY : turnedOver(book);
  return [
    ...glued(book, plan, stencil, stencilBoards(name, plan, stencil), under, `${name}-island`),
    ...glued(book, plan, stencil, counterBoards(name, plan, stencil), over, `${name}-form`),
  ];
}

const turnedOver = ({ width }: Book): Affine => inOrder(scaling(-1, 1), translation(width, 0));

/** The deepest terrace lies lowest; on a base where something would fall out of it. */
function stencilBoards(name: string, { blank }: PanelPlan, stencil: Stencil): Board[] {
  const { terraces, clearanceMm } = stencil;
  const boards = terraces
    .map(
      ({ layers, form }, i): Board => ({
        name: `${name}-stencil${terraces.length > 1 ? `-${i + 1}` : ''}`,
        card: subtract(blank, [offset(form, clearanceMm)]),
        copies: layers - (terraces[i - 1]?.layers ?? 0),
      }),
    )
    .reverse();
  if (components(boards[0].card).length === 1) return boards;
  return [{ name: `${name}-stencil-base`, card: blank, copies: 1 }, ...boards];
}

function counterBoards(name: string, { blank }: PanelPlan, { terraces }: Stencil): Board[] {
  return [
    { name: `${name}-counter`, card: blank, copies: 1 },
    ...terraces.map(({ layers, form }, i) => ({
      name: `${name}-form`,
      card: form,
      copies: layers - (terraces[i - 1]?.layers ?? 0),
    })),
  ];
}

/**
 * The boards as pieces. What is as wide as the panel is a plate; other parts are pieces of their
 * own, numbered from the lowest, and each board bears the outlines of those that are glued to it.
 */
function glued(
  book: Book,
  plan: PanelPlan,
  { card: stock }: Stencil,
  boards: readonly Board[],
  drawn: Affine,
  partName: string,
): Piece[] {
  let count = 0;
  const isPlate = (part: Region) => spread(part) > spread(plan.blank) - 1;
  return boards.flatMap((board, i) => {
    const parts = components(moveRegion(board.card, drawn));
    const above = components(moveRegion(boards[i + 1]?.card ?? EMPTY_REGION, drawn));
    const places = above.filter((part) => !isPlate(part)).flatMap(outlineLines);
    return parts.map((card): Piece => {
      const plate = isPlate(card);
      const lines = plate ? [...places, ...plateMarks(plan)] : places;
      const piece = {
        name: plate ? board.name : `${partName}-${++count}`,
        folder: 'stencils',
        stock,
        copies: board.copies,
        card,
        scores: linesInside(lines, offset(card, -SCORE_MARGIN_MM)).map(
          (line) => ({ line, kind: 'detail' }) as const,
        ),
        reliefs: [],
        guides: [],
      } as const;
      if (!plate) return pageOf(book, piece);
      return { ...piece, width: book.width, height: book.height, scoring: book.spine.scoring };
    });
  });
}

function spread(part: Region): number {
  const { minX, maxX } = regionBounds(part);
  return maxX - minX;
}

/** The panel's number, and an arrow to its head, where its left flap lies. */
function plateMarks(plan: PanelPlan): Line[] {
  const x = plan.hinge.leftX / 2;
  const { minY, maxY } = regionBounds(plan.blank);
  const tip = minY + (maxY - minY) / 6;
  const half = Math.min(2.5, x / 3);
  const arrow = [
    [
      { x, y: tip + 4 * half },
      { x, y: tip },
    ],
    [
      { x: x - half, y: tip + half },
      { x, y: tip },
      { x: x + half, y: tip + half },
    ],
  ];
  return [...numberTicks(plan), ...arrow.map(polyline)];
}

/** Two arms at a right angle, in as many layers as everything that is pushed into them. */
function cornerPiece(book: Book, stock: Stock, copies: number): Piece {
  const { hinge, blank } = book.panels[0];
  const { minX, maxX, minY, maxY } = regionBounds(blank);
  const inner = CORNER_BREADTH_MM;
  const right = inner + Math.min(hinge.leftX + CORNER_ARM_MM, (maxX - minX) / 2);
  const foot = inner + Math.min(CORNER_ARM_MM, (maxY - minY) / 2);
  const card = regionOf(
    polygon([
      { x: 0, y: 0 },
      { x: right, y: 0 },
      { x: right, y: inner },
      { x: inner, y: inner },
      { x: inner, y: foot },
      { x: 0, y: foot },
    ]),
  );
  return pageOf(book, {
    name: 'stencil-corner',
    folder: 'stencils',
    stock,
    copies,
    card,
    scores: [],
    reliefs: [],
    guides: [],
  });
}
