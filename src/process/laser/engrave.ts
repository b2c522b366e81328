import { cleanRegion, subtract, union } from '../../geometry/boolean/boolean.js';
import { EMPTY_REGION, type Region } from '../../geometry/types.js';
import type { Mark } from '../layers.js';
import type { EngravedRelief } from '../process.js';
import { hatchLines, rings } from '../relief-strokes.js';

/**
 * Relief as strokes burnt into the card's face. Areas are hatched or filled with rings, and where
 * two of them overlap the deeper one is; a pattern of strokes is burnt as it is. A beam can only
 * sink: raised relief is burnt alike, as tone.
 */
export function engravedMarks(designed: readonly Mark[], engraving: EngravedRelief): Mark[] {
  if (engraving.how === 'none') return [];
  const areas = designed.filter(({ closed }) => closed);
  const depths = [...new Set(areas.map((mark) => mark.relief?.depthMm ?? 0))];
  let deeper: Region = EMPTY_REGION;
  const filled = depths
    .toSorted((a, b) => b - a)
    .flatMap((depthMm): Mark[] => {
      const marks = areas.filter((mark) => (mark.relief?.depthMm ?? 0) === depthMm);
      const all = cleanRegion(marks.map(({ cubics }) => cubics));
      const own = subtract(all, [deeper]);
      deeper = union([deeper, all]);
      const [{ relief }] = marks;
      return strokesOf(own, engraving).map((stroke) => ({ ...stroke, relief }));
    });
  return [...designed.filter(({ closed }) => !closed), ...filled];
}

function strokesOf(region: Region, { how, angleDeg, apartMm }: EngravedRelief): Mark[] {
  return how === 'hatch'
    ? hatchLines(region, angleDeg, apartMm).map(({ cubics }) => ({ cubics, closed: false }))
    : rings(region, apartMm);
}
