import { subtract, union } from '../../geometry/boolean/boolean.js';
import { stroke } from '../../geometry/offset/offset.js';
import { smoothLine } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';

/** The room between two rails and two standards that is filled, mm; y negative upward. */
export interface Band {
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly foot: number;
  readonly bar: number;
}

/** How deep a ring or scroll lies in the rails that hold it, in bars. */
const LAP = 0.35;
/** From the middle of a curl to its eye, in radii, and the eye's radius in bars. */
const EYE_AT = 0.22;
const EYE = 0.78;
const CURL_DEG = 300;
const STEPS = 14;

/** Least height of a band for rings and for scrolls, mm. */
export const leastForRings = (bar: number, hole: number): number => 2 * bar + 1.2 * hole;
export const leastForScrolls = (bar: number, hole: number): number =>
  (2 * (1.3 * bar + 1.5 * hole)) / (1 - EYE_AT) + bar - 2 * LAP * bar;

/** Rings side by side, each touching both rails. */
export function ringsIn(band: Band): Region[] {
  const { from, to, top, foot, bar } = band;
  const outer = (foot - top) / 2 + LAP * bar;
  const count = Math.max(1, Math.floor((to - from + 2 * LAP * bar) / (2 * outer - bar * 0.8)));
  const step = (to - from) / count;
  return Array.from({ length: count }, (_, i) => {
    const x = from + (i + 0.5) * step;
    const y = (top + foot) / 2;
    return subtract(circle(x, y, outer), [circle(x, y, outer - bar)]);
  });
}

/** Running scrolls, turned alternately, so that every other one curls the other way up. */
export function scrollsIn(band: Band): Region[] {
  const { from, to, top, foot, bar } = band;
  const radius = (foot - top) / 2 + LAP * bar - bar / 2;
  const count = Math.max(1, Math.round((to - from) / (4.5 * radius)));
  const step = (to - from) / count;
  return Array.from({ length: count }, (_, i) => {
    const middle = { x: from + (i + 0.5) * step, y: (top + foot) / 2 };
    const reach = step / 2 - radius - bar * 0.2;
    return scroll(middle, Math.max(radius * 1.02, reach), radius, bar, i % 2 ? 1 : -1);
  });
}

/** Two curls joined in an S: one hangs from the upper rail, the other stands on the lower. */
function scroll(at: Point, reach: number, radius: number, bar: number, way: number): Region {
  const curl = (x: number, turn: number): Point[] =>
    Array.from({ length: STEPS + 1 }, (_, i) => {
      const t = i / STEPS;
      const a = ((turn + way * CURL_DEG * t) * Math.PI) / 180;
      const r = radius * (1 - (1 - EYE_AT) * t ** 1.35);
      return { x: x + r * Math.cos(a), y: at.y + r * Math.sin(a) };
    });
  const first = curl(at.x - reach, way * 90).reverse();
  const second = curl(at.x + reach, way * -90);
  const line = smoothLine([...first, ...second]);
  const eyes = [first[0], second[second.length - 1]].map(({ x, y }) => circle(x, y, EYE * bar));
  return union([stroke([line], bar), ...eyes]);
}
