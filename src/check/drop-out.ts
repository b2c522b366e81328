import { regionArea, regionBounds } from '../geometry/measure.js';
import { dropOutsOf } from '../panel/heal.js';
import { type Finding, type Rule, rounded } from './finding.js';

/** Card that is not joined to the frame falls out when the panel is lifted off the mat. */
export const dropOut: Rule = ({ pieces }) =>
  pieces.flatMap((piece) =>
    dropOutsOf(piece.card).dropOuts.map((part): Finding => {
      const box = regionBounds(part);
      const x = rounded((box.minX + box.maxX) / 2);
      const y = rounded((box.minY + box.maxY) / 2);
      const width = rounded(box.maxX - box.minX);
      const height = rounded(box.maxY - box.minY);
      return {
        rule: 'drop-out',
        severity: 'error',
        where: { piece: piece.name, x, y },
        measured: rounded(regionArea(part)),
        wanted: 0,
        unit: 'mm2',
        message: `A part of ${width} x ${height} mm falls out of ${piece.name}, ${x} mm from its left and ${y} mm from its top.`,
        cure: 'Give its element "heal: bridge" to tie it in or "heal: drop" to leave it out, or move it so that it reaches the frame.',
      };
    }),
  );
