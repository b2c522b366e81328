import { smoothLine } from '../../geometry/pen.js';
import type { Line, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { Hill } from './crests.js';

/** Hedgerows on one hill at the fullest, and the fewest. */
const ROWS = [3, 8] as const;
/** How far a row runs outward on its way down, as a share of its way from the top. */
const FAN = 0.55;
/** Fields nearer to each other than this are one, mm. */
const NARROWEST_MM = 7;
/** Furrows lie about this far apart at the crest, mm; from one in so many fields. */
const FURROW_MM = 2.6;
const PLOUGHED = 0.4;

/** Hedgerows that run down from the crest, lanes across between them, and furrows in some fields. */
export function fieldLines(plot: Plot, hill: Hill, fields: number, random: Random): Line[] {
  if (fields === 0) return [];
  const most = Math.max(2, Math.floor(plot.width / NARROWEST_MM));
  const count = Math.min(most, Math.round(mix(ROWS[0], ROWS[1], fields)));
  const feet = Array.from({ length: count + 1 }, (_, k) => {
    const jitter = random.branch(`row ${k}`).between(-0.3, 0.3);
    return ((k + jitter) / count - 0.5) * plot.width;
  });
  const bend = random.between(-0.06, 0.06) * plot.width;
  /** The place on the slope below the crest at x, v of the way down. */
  const on = (x: number, v: number): Point => {
    const px = x + FAN * v * (x - hill.peak.x) + bend * Math.sin(Math.PI * v);
    return { x: px, y: hill.levelAt(px) * (1 - v) };
  };
  const row = (x: number, v0: number, v1: number): Line =>
    smoothLine([0, 0.25, 0.5, 0.75, 1].map((t) => on(x, mix(v0, v1, t))));
  const lines = feet.map((x, k) => row(x, 0, random.branch(`end ${k}`).between(0.7, 1)));
  for (let k = 0; k < count; k++) {
    const luck = random.branch(`field ${k}`);
    const [v0, v1] = [luck.between(0.25, 0.6), luck.between(0.25, 0.6)];
    const [a, b] = [feet[k], feet[k + 1]];
    const lane = [0, 0.33, 0.67, 1].map((t) => on(mix(a, b, t), mix(v0, v1, t)));
    if (luck.chance(0.75)) lines.push(smoothLine(lane));
    const furrows = Math.floor((b - a) / FURROW_MM);
    if (!luck.chance(PLOUGHED)) continue;
    for (let f = 1; f < furrows; f++) {
      const t = f / furrows;
      lines.push(row(mix(a, b, t), mix(v0, v1, t) + 0.06, 0.94));
    }
  }
  return lines;
}
