import { polyline } from '../../geometry/pen.js';
import type { Line, Point } from '../../geometry/types.js';
import type { Random } from '../random.js';
import type { Peak } from './massif.js';

/** Turns of the main ridge on its way down, and how far down it runs. */
const TURNS = 6;
const RUN = 0.88;

/** A zigzag ridge down from a peak, with spurs to both sides. */
export function ridgesOf(peak: Peak, amount: number, jagged: number, random: Random): Line[] {
  if (amount === 0) return [];
  const side = random.chance(0.5) ? 1 : -1;
  const wide = Math.min(peak.x - peak.left.x, peak.right.x - peak.x);
  const spine: Point[] = [{ x: peak.x, y: peak.y }];
  for (let k = 1; k <= TURNS; k++) {
    const t = (k + random.between(-0.25, 0.25)) / TURNS;
    const zigzag = (k % 2 === 0 ? -1 : 1) * (0.05 + 0.06 * jagged) * random.between(0.5, 1.4);
    const x = peak.x + side * wide * (0.34 * t + zigzag);
    spine.push({ x, y: peak.y * (1 - RUN * t) });
  }
  const lines = [polyline(spine)];
  for (let k = 1; k < TURNS; k++) {
    for (const hand of [-1, 1]) {
      const luck = random.branch(`spur ${k} ${hand}`);
      if (!luck.chance(amount)) continue;
      const from = spine[k];
      const reach = wide * luck.between(0.16, 0.36) * (0.5 + k / TURNS);
      const fall = -peak.y * luck.between(0.12, 0.26);
      const elbow = { x: from.x + hand * reach * 0.55, y: from.y + fall * 0.35 };
      const end = { x: from.x + hand * reach, y: Math.min(from.y + fall, 0) };
      lines.push(polyline([from, elbow, end]));
    }
  }
  return lines;
}
