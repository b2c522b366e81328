import type Geometry from 'jsts/org/locationtech/jts/geom/Geometry.js';
import DistanceOp from 'jsts/org/locationtech/jts/operation/distance/DistanceOp.js';
import { expect } from 'vitest';
import { moveRegion } from '../../src/geometry/transform.js';
import type { Piece } from '../../src/panel/piece.js';
import { placementOf } from '../../src/sheet/job.js';
import type { Sheet } from '../../src/sheet/sheet.js';
import { jtsRegion } from '../geometry/reference.js';

/** Places are whole micrometres, and chords lie within 0.0004 mm of their curves. */
export const SLACK_MM = 0.002;

/** The cards of a sheet in their places, as JSTS has them. */
export const placedCards = (sheet: Sheet): Geometry[] =>
  sheet.placements.map((p) => jtsRegion(moveRegion(p.piece.card, placementOf(p))));

/**
 * By JSTS: every card inside the margins, and no two nearer than the spacing. Cards that overlap are 0
 * apart, and one in another's hole is as far from it as from the hole's edge.
 */
export function expectSoundSheets(sheets: readonly Sheet[], spacing: number): void {
  for (const sheet of sheets) {
    const cards = placedCards(sheet);
    const { width, height, stock } = sheet;
    cards.forEach((card, i) => {
      const box = card.getEnvelopeInternal();
      expect(box.getMinX()).toBeGreaterThanOrEqual(stock.margin - SLACK_MM);
      expect(box.getMinY()).toBeGreaterThanOrEqual(stock.margin - SLACK_MM);
      expect(box.getMaxX()).toBeLessThanOrEqual(width - stock.margin + SLACK_MM);
      expect(box.getMaxY()).toBeLessThanOrEqual(height - stock.margin + SLACK_MM);
      for (const other of cards.slice(0, i)) {
        const apart = DistanceOp.distance(card, other);
        expect(apart).toBeGreaterThanOrEqual(spacing - SLACK_MM);
      }
    });
  }
}

/** Every copy of every piece is there once, all numbered from 1. */
export function expectAllPlaced(
  sheets: readonly Sheet[],
  pieces: readonly Piece[],
  copies = 1,
): void {
  const placed = sheets.flatMap((s) => s.placements.map((p) => `${p.piece.name} ${p.copy}`));
  const wanted = pieces.flatMap((piece) =>
    Array.from({ length: piece.copies * copies }, (_, i) => `${piece.name} ${i + 1}`),
  );
  expect(placed.toSorted()).toEqual(wanted.toSorted());
}
