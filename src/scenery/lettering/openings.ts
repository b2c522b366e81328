import { intersect, subtract } from '../../geometry/boolean/boolean.js';
import { regionBounds } from '../../geometry/measure.js';
import { offset, stroke } from '../../geometry/offset/offset.js';
import { smoothLine } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Region } from '../../geometry/types.js';
import { type NarrowPlace, narrowWebs } from '../../geometry/width/webs.js';

/** A hair more than the web, so that curves drawn anew still pass. */
const AMPLE = 1.04;
/** A neck without length is opened by a disc so many webs across. */
const DISC = 1.3;
/** Opening one gap can narrow the next. */
const ROUNDS = 4;

/** A sheet of card with room all round what is cut out of it. */
export function sheetRound(region: Region, webMm: number): Region {
  const { minX, minY, maxX, maxY } = regionBounds(region);
  const margin = Math.max(maxX - minX, maxY - minY, 4 * webMm);
  return rectangle(
    minX - margin,
    minY - margin,
    maxX - minX + 2 * margin,
    maxY - minY + 2 * margin,
  );
}

/** What is narrower than a slot is kept within so many slots of what is wider: corners stay sharp. */
const CORNER = 0.6;

/**
 * Letters whose card can hold: gaps that lead somewhere, such as the mouth of an e or between the
 * feet of an n, are opened to the web at the cost of the strokes beside them, as a stencil cutter
 * trims serifs; card that ends in a finer tip, as in the crotch of a V, becomes stroke; and strokes
 * too narrow for the tool are left as card.
 */
export function trimmed(drawn: Region, webMm: number, slotMm: number): Region {
  const sheet = sheetRound(drawn, webMm);
  let strokes = drawn;
  for (let round = 0; round < ROUNDS; round++) {
    const necks = narrowWebs(subtract(sheet, [strokes]), webMm).filter((p) => p.kind === 'neck');
    if (necks.length === 0) break;
    strokes = subtract(
      strokes,
      necks.map((neck) => opening(neck, webMm)),
    );
  }
  const blunt = offset(offset(strokes, webMm / 2), -webMm / 2);
  return intersect(blunt, offset(offset(blunt, -slotMm / 2), (0.5 + CORNER) * slotMm));
}

const opening = ({ axis, at }: NarrowPlace, webMm: number): Region =>
  axis.length < 2
    ? circle(at.x, at.y, (DISC * webMm) / 2)
    : stroke([smoothLine(axis)], AMPLE * webMm);
