import { components } from '../geometry/components.js';
import { chainLength, regionArea } from '../geometry/measure.js';
import { narrowestWeb } from '../geometry/width/webs.js';
import type { Piece } from '../panel/piece.js';
import { type Mark, pieceLayers } from './layers.js';

/** What one copy of a piece comes to. */
export interface PieceStatistics {
  /** Card left when all is cut. */
  readonly areaMm2: number;
  /** Connected parts: more than one means that something falls out. */
  readonly components: number;
  readonly holes: number;
  /** The narrowest card between two cuts, or null when none is narrower than 10 mm. */
  readonly narrowestWebMm: number | null;
  /** Path length of each operation, both faces together. */
  readonly lengthsMm: {
    readonly cut: number;
    readonly fold: number;
    readonly detail: number;
    readonly emboss: number;
  };
}

/** Card wider than this is no web in any process, so its width tells nothing. */
const WIDEST_WEB_MM = 10;

export function pieceStatistics(piece: Piece): PieceStatistics {
  const layers = pieceLayers(piece, ['front', 'back']);
  const parts = components(piece.card).length;
  return {
    areaMm2: regionArea(piece.card),
    components: parts,
    // Every contour that is not a part's outer one is a hole.
    holes: piece.card.contours.length - parts,
    narrowestWebMm: narrowestWeb(piece.card, WIDEST_WEB_MM)?.widthMm ?? null,
    lengthsMm: {
      cut: totalLength(layers.cut),
      fold: totalLength(layers.fold),
      detail: totalLength(layers.detail),
      emboss: totalLength(layers.emboss),
    },
  };
}

const totalLength = (marks: readonly Mark[]): number =>
  marks.reduce((sum, mark) => sum + chainLength(mark.cubics), 0);
