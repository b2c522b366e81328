import { subtract } from '../../src/geometry/boolean/boolean.js';
import { boundsOf, contourArea, regionArea, regionBounds } from '../../src/geometry/measure.js';
import { rectangle } from '../../src/geometry/primitives.js';
import type { Region } from '../../src/geometry/types.js';
import type { Piece } from '../../src/panel/piece.js';
import type { Size } from './boxes.js';

/** Insets that are tried to find a full rectangle inside an outline, mm. */
const INSETS_MM = [0, 0.5, 2, 4, 8, 16];

/** So many times as much of a sheet's side as this is tried as a measure of pieces. */
const MOST_ABREAST = 6;

/**
 * Sheets that pieces of one stock need at the least, since large ones leave strips: no layout can
 * do with fewer. Each large piece counts as a full rectangle inside its outline, its window filled,
 * which is fair as no window holds another. How much of a sheet such a rectangle takes at the
 * least, whatever lies beside it, dual feasible functions tell (S. P. Fekete, J. Schepers, New
 * classes of fast lower bounds for bin packing problems, Mathematical Programming 91, 2001; from
 * memory).
 */
export function leastSheets(pieces: readonly Piece[], usable: Size, spacing: number): number {
  const windows = pieces.flatMap((piece) =>
    piece.card.contours.filter((c) => contourArea(c) < 0).map((c) => boundsOf([c])),
  );
  const solid = new Map([...new Set(pieces)].map((piece) => [piece, fullRectangle(piece)]));
  const large = pieces
    .map((piece) => solid.get(piece)!)
    .filter(({ width, height }) =>
      windows.every((w) => w.maxX - w.minX < width || w.maxY - w.minY < height),
    );
  // Rectangles 3 mm apart corner to corner are no less than this apart along one axis.
  const gap = spacing / Math.SQRT2;
  let least = 0;
  for (let k = 1; k <= MOST_ABREAST; k++) {
    for (let l = 1; l <= MOST_ABREAST; l++) {
      const sheets = large.reduce(
        (sum, { width, height }) =>
          sum +
          share((width + gap) / (usable.width + gap), k) *
            share((height + gap) / (usable.height + gap), l),
        0,
      );
      least = Math.max(least, Math.ceil(sheets - 1e-9));
    }
  }
  return least;
}

/** What part of a side a length takes, when no more than so many of its kind can lie abreast. */
function share(x: number, abreast: number): number {
  const times = (abreast + 1) * x;
  return Number.isInteger(times) ? x : Math.floor(times) / abreast;
}

/** The largest rectangle of a few that lies wholly in a piece's outline, its holes filled. */
function fullRectangle({ card }: Piece): Size {
  const filled: Region = { contours: card.contours.filter((c) => contourArea(c) > 0) };
  const { minX, minY, maxX, maxY } = regionBounds(filled);
  let best: Size = { width: 0, height: 0 };
  for (const dx of INSETS_MM) {
    for (const dy of INSETS_MM) {
      const width = maxX - minX - 2 * dx;
      const height = maxY - minY - 2 * dy;
      if (width <= 0 || height <= 0 || width * height <= best.width * best.height) continue;
      const left = subtract(rectangle(minX + dx, minY + dy, width, height), [filled]);
      if (regionArea(left) < 1e-3) best = { width, height };
    }
  }
  return best;
}
