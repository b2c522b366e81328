import { regionArea, regionBounds } from '../geometry/measure.js';
import { mountPieces } from '../panel/mounts.js';
import { type Finding, type Rule, rounded } from './finding.js';

/** A glued area smaller than this comes off when the book is handled. Common practice, no source. */
const LEAST_MM2 = 20;

/** A loose piece or a backing that hardly lies on its panel's card has nothing to be glued to. */
export const glueZone: Rule = ({ panels }) =>
  panels.flatMap(({ attached, number }) =>
    attached.flatMap((piece): Finding[] => {
      const areaMm2 = rounded(regionArea(piece.glue));
      const isMounted = piece.mount === 'flat' || mountPieces(piece).length > 0;
      if (areaMm2 >= LEAST_MM2 && isMounted) return [];
      const { minX, minY } = regionBounds(piece.card);
      return [
        {
          rule: 'glue-zone',
          severity: areaMm2 === 0 ? 'error' : 'warning',
          where: { piece: piece.name },
          measured: areaMm2,
          wanted: LEAST_MM2,
          unit: 'mm2',
          message: `${piece.name} lies on ${areaMm2} mm2 of panel ${number}'s card, ${rounded(minX)} mm from its left and ${rounded(minY)} mm from its top; it takes ${LEAST_MM2} mm2 ${isMounted ? 'to hold it' : 'in one place to hold it and its pads'}.`,
          cure: 'Move it so that it overlaps the frame or scenery of its panel, or give it more "glue".',
        },
      ];
    }),
  );
