import type { Book } from '../book/book.js';
import { type StripPart, stripParts } from '../book/strip.js';
import { polyline } from '../geometry/pen.js';
import { inOrder, moveLine, moveRegion, scaling, translation } from '../geometry/transform.js';
import type { Line } from '../geometry/types.js';
import type { Attached } from './attached.js';
import { placeMark } from './loose.js';
import { mountPieces } from './mounts.js';
import { pageOf } from './page.js';
import type { Panel } from './panel.js';
import { type Piece, panelName } from './piece.js';
import type { Score } from './score.js';
import { stencilPieces } from './stencils.js';

/** All that is cut from card for one book: the panels, the two spine strips, what is glued on, what presses. */
export const bookPieces = (book: Book, panels: readonly Panel[]): Piece[] => [
  ...panels.map((panel) => panelPiece(book, panel)),
  ...spinePieces(book),
  ...panels.flatMap(({ attached }) => attached.flatMap((a) => attachedPieces(book, a))),
  ...stencilPieces(book, panels),
];

function panelPiece(book: Book, panel: Panel): Piece {
  const { hinge, window } = book.panels[panel.number - 1];
  const { leftX, rightX, fold } = hinge;
  const hinges = [leftX, rightX].map((x): Score => ({ line: upright(x, book.height), kind: fold }));
  return {
    name: panelName(panel.number),
    folder: 'panels',
    stock: panel.stock,
    copies: 1,
    width: book.width,
    height: book.height,
    card: panel.card,
    scores: [...hinges, ...panel.scores],
    reliefs: panel.reliefs,
    ...(panel.stencils?.length ? { pressedBy: 'stencil' } : {}),
    guides: panel.guides,
    scoring: book.spine.scoring,
    ...(window === null ? {} : { window: window.outline }),
  };
}

/**
 * Both strips as seen from outside the book. From the right side the front end lies at the left;
 * from the left side it lies at the right, so the left strip is the right one mirrored.
 */
function spinePieces(book: Book): Piece[] {
  const { sheet, margin } = book.spine.card;
  const parts = stripParts(book.spine, book.height, sheet.width - 2 * margin);
  return (['left', 'right'] as const).flatMap((side) =>
    parts.map((part, i) => {
      const number = parts.length > 1 ? `-${i + 1}` : '';
      return stripPiece(book, part, `spine-${side}${number}`, side === 'left');
    }),
  );
}

function stripPiece(book: Book, part: StripPart, name: string, mirrored: boolean): Piece {
  const place = mirrored ? inOrder(scaling(-1, 1), translation(part.width, 0)) : translation(0, 0);
  const scores = part.folds.map(
    ({ x, kind }): Score => ({ line: moveLine(upright(x, part.height), place), kind }),
  );
  return {
    name,
    folder: 'spine',
    stock: book.spine.card,
    copies: 1,
    width: part.width,
    height: part.height,
    card: moveRegion(part.outline, place),
    scores,
    reliefs: [],
    guides: frontArrow(part).map((line) => moveLine(line, place)),
    scoring: book.spine.scoring,
  };
}

const upright = (x: number, height: number): Line =>
  polyline([
    { x, y: 0 },
    { x, y: height },
  ]);

/** An arrow that points to the front of the book, so that no strip is hung back to front. */
function frontArrow(part: StripPart): Line[] {
  const y = part.height / 2;
  const tip = part.folds[0].x + 3;
  return [
    polyline([
      { x: tip + 6, y },
      { x: tip, y },
    ]),
    polyline([
      { x: tip + 2.5, y: y - 2 },
      { x: tip, y },
      { x: tip + 2.5, y: y + 2 },
    ]),
  ];
}

/** A piece that is glued on, and what holds it off its panel. */
function attachedPieces(book: Book, attached: Attached): Piece[] {
  const { name, stock, copies, card, scores, reliefs, place } = attached;
  // From behind its glued face is its front, which shows the guides.
  const guides = place === 'behind' || attached.kind === 'backing' ? placeMark(attached) : [];
  const common = { folder: 'loose', stock } as const;
  const whole = pageOf(book, { ...common, name, copies, card, scores, reliefs, guides });
  const mounts = mountPieces(attached).map((mount) =>
    pageOf(book, { ...common, ...mount, reliefs: [], guides: [], hidden: true }),
  );
  return [whole, ...mounts];
}
