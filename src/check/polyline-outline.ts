import { regionBounds } from '../geometry/measure.js';
import { polylinedContours } from '../geometry/polylined.js';
import { type Finding, type Rule, rounded } from './finding.js';

/** How far a polyline that stands in for curves may lie from them, mm. */
const POLYLINE_MM = 0.01;

/** Outlines whose curves could not be worked out: sound, but of many short straight steps. */
export const polylineOutline: Rule = ({ pieces }) =>
  pieces.flatMap((piece) =>
    polylinedContours(piece.card).map((contour): Finding => {
      const { minX, minY, maxX, maxY } = regionBounds({ contours: [contour] });
      const [x, y] = [rounded((minX + maxX) / 2), rounded((minY + maxY) / 2)];
      return {
        rule: 'polyline-outline',
        severity: 'hint',
        where: { piece: piece.name, x, y },
        measured: POLYLINE_MM,
        wanted: 0,
        unit: 'mm',
        message: `An outline of ${piece.name}, round ${x} mm from its left and ${y} mm from its top, is made of short straight steps up to ${POLYLINE_MM} mm off its curves, because these could not be worked out.`,
        cure: 'It can be cut as it is; a cutter may run it slowly. Move or reseed an element there to get smooth curves.',
      };
    }),
  );
