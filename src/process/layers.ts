import type { FoldKind } from '../book/book.js';
import { contourArea } from '../geometry/measure.js';
import {
  type Affine,
  inOrder,
  moveCubics,
  reversed,
  scaling,
  translation,
} from '../geometry/transform.js';
import type { Cubics, Region } from '../geometry/types.js';
import type { Piece } from '../panel/piece.js';
import type { Score } from '../panel/score.js';
import type { Relief } from '../scenery/family.js';

/** The face of the card that lies up while it is worked. */
export type Face = 'front' | 'back';

/** What is done to a piece, in working order. Guides are never cut. */
export const OPERATIONS = ['emboss', 'fold', 'detail', 'cut', 'guide'] as const;
export type Operation = (typeof OPERATIONS)[number];

/** One path of one operation. Mountain, valley, raised and sunk are as the card's front shows. */
export interface Mark {
  readonly cubics: Cubics;
  readonly closed: boolean;
  /** What a fold is, or why a cut is not a plain closed contour. */
  readonly kind?: FoldKind | 'outline' | 'register' | 'check' | OpenCut;
  readonly relief?: { readonly side: Relief['side']; readonly depthMm: number };
}

/** A mark in its place on a sheet. */
export interface PlacedMark extends Mark {
  readonly piece: string;
  readonly copy: number;
}

/**
 * Why a cut is open: parts left uncut (`nib`), run on past its start (`overcut`), one line for
 * two edges (`shared`), a fold as short cuts (`perforation`), or a cut that frees nothing (`slit`).
 */
export type OpenCut = 'nib' | 'overcut' | 'shared' | 'perforation' | 'slit';

export type Layers = Readonly<Record<Operation, readonly Mark[]>>;

/**
 * What is done to a piece from the given faces, in the piece's own front coordinates (mm, y down).
 * The card is cut from `cutFace`; the back without it shows the card's outline as a guide instead.
 * Both faces together give the whole piece, for work that is done in one go.
 */
export function pieceLayers(piece: Piece, faces: readonly Face[], cutFace: Face = 'front'): Layers {
  const scores = piece.scores.filter((s) => {
    const face = scoreFace(s, piece);
    return faces.includes(face === 'cut' ? cutFace : face);
  });
  const reliefs = piece.reliefs.filter((r) => faces.includes(reliefFace(r)));
  const front = faces.includes('front');
  return {
    emboss: reliefs.flatMap(reliefMarks),
    fold: scores.flatMap(({ kind, line }) =>
      kind === 'detail' ? [] : [{ cubics: line.cubics, closed: false, kind }],
    ),
    detail: scores
      .filter((s) => s.kind === 'detail')
      .map((s) => ({ cubics: s.line.cubics, closed: false })),
    cut: faces.includes(cutFace) ? cutMarks(piece.card) : [],
    guide: front
      ? piece.guides.map((g) => ({ cubics: g.cubics, closed: false }))
      : faces.includes(cutFace)
        ? []
        : outlineMarks(piece.card),
  };
}

/** Whether anything is scored or embossed from this face; cutting can be done from either. */
export const isPressedFrom = (piece: Piece, face: Face): boolean =>
  piece.scores.some((s) => scoreFace(s, piece) === face) ||
  piece.reliefs.some((r) => reliefFace(r) === face);

/** A groove belongs on the outside of its fold: mountains from the front, valleys from the back. */
const scoreFace = (score: Score, piece: Piece): Face | 'cut' =>
  score.face ?? (score.kind === 'valley' && piece.scoring === 'both' ? 'back' : 'front');

/** The tool pushes the card away from itself. */
const reliefFace = (relief: Relief): Face => (relief.side === 'raised' ? 'back' : 'front');

function reliefMarks({ region, side, depthMm, strokes }: Relief): Mark[] {
  const relief = { side, depthMm };
  if (strokes) return strokes.map(({ cubics }) => ({ cubics, closed: false, relief }));
  return region.contours.map((cubics) => ({ cubics, closed: true, relief }));
}

/**
 * A contour held by another covers less than it, so small before large also cuts every inner
 * contour while the card round it is still held by its sheet.
 */
export function cutMarks(card: Region): Mark[] {
  const size = new Map(card.contours.map((c) => [c, Math.abs(contourArea(c))]));
  return card.contours
    .toSorted((a, b) => size.get(a)! - size.get(b)!)
    .map((cubics) => ({ cubics, closed: true }));
}

const outlineMarks = (card: Region): Mark[] =>
  card.contours
    .filter((c) => contourArea(c) > 0)
    .map((cubics) => ({ cubics, closed: true, kind: 'outline' }));

/** The map that turns a page or sheet over, left to right. */
export const turnedOver = (width: number): Affine => inOrder(scaling(-1, 1), translation(width, 0));

/** A mark moved; a map that mirrors reverses closed marks, so that outers stay clockwise. */
export function moveMark(mark: Mark, m: Affine): Mark {
  const cubics = moveCubics(mark.cubics, m);
  const mirrors = m.a * m.d - m.b * m.c < 0;
  return { ...mark, cubics: mark.closed && mirrors ? reversed(cubics) : cubics };
}

export function moveLayers(layers: Layers, m: Affine): Layers {
  const move = (marks: readonly Mark[]) => marks.map((mark) => moveMark(mark, m));
  return {
    emboss: move(layers.emboss),
    fold: move(layers.fold),
    detail: move(layers.detail),
    cut: move(layers.cut),
    guide: move(layers.guide),
  };
}
