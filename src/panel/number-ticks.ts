import type { PanelPlan } from '../book/book.js';
import { regionBounds } from '../geometry/measure.js';
import { polyline } from '../geometry/pen.js';
import type { Line } from '../geometry/types.js';

const TICK_MM = 3;
const TICK_STEP_MM = 2;

/** As many ticks on the left flap as the panel's number: hidden once the flap is glued. */
export function numberTicks({ number, hinge, blank }: PanelPlan): Line[] {
  const { minY, maxY } = regionBounds(blank);
  const middle = (minY + maxY) / 2;
  const right = hinge.leftX - TICK_MM;
  return Array.from({ length: number }, (_, i) => {
    const y = middle + (i - (number - 1) / 2) * TICK_STEP_MM;
    return polyline([
      { x: right - TICK_MM, y },
      { x: right, y },
    ]);
  });
}
