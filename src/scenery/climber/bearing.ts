import { pen, smoothContour } from '../../geometry/pen.js';
import { circle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import type { Random } from '../random.js';

/** What a climber bears at one place: card, and lines on it that the cut may still shorten. */
export interface Borne {
  readonly card: readonly Region[];
  readonly lines: readonly Line[];
}

const SCALLOPS = 7;
/** Turns of the line that rolls a rose's petals in, and where it begins. */
const ROLL = { turns: 1.6, from: 0.16, to: 0.62 };

/** A rose seen from the front: scalloped, its petals rolled into the middle. */
export function bloom(at: Point, r: number, random: Random): Borne {
  const turn = random.between(0, 2 * Math.PI);
  const rim = Array.from({ length: 2 * SCALLOPS }, (_, i) => {
    const a = turn + (Math.PI * i) / SCALLOPS;
    const out = r * (i % 2 ? 1 : 0.86) * random.between(0.97, 1.03);
    return { x: at.x + out * Math.cos(a), y: at.y + out * Math.sin(a) };
  });
  const steps = 12;
  const roll = Array.from({ length: steps + 1 }, (_, i) => {
    const f = i / steps;
    const a = turn + 2 * Math.PI * ROLL.turns * f;
    const out = r * (ROLL.from + (ROLL.to - ROLL.from) * f);
    return { x: at.x + out * Math.cos(a), y: at.y + out * Math.sin(a) };
  });
  const line = pen(roll[0].x, roll[0].y).smoothTo(roll.slice(1)).line();
  return { card: [{ contours: [smoothContour(rim)] }], lines: [line] };
}

/** Rows of a bunch of grapes, from the stalk down. */
const ROWS = [3, 4, 3, 2, 1];
const SMALL_ROWS = [2, 3, 2, 1];

/** A bunch of grapes that hangs plumb from `at`, `longMm` long. */
export function grapes(at: Point, longMm: number, leastMm: number, random: Random): Borne {
  const rows = longMm > 9 * leastMm ? ROWS : SMALL_ROWS;
  const r = longMm / (1.7 * rows.length + 0.5);
  const card = rows.flatMap((count, row) =>
    Array.from({ length: count }, (_, i) => {
      const x = at.x + (i - (count - 1) / 2) * 1.7 * r + 0.2 * r * random.bell();
      return circle(x, at.y + (1 + 1.6 * row) * r, r * random.between(1, 1.15));
    }),
  );
  return { card, lines: [] };
}

const BERRIES = 6;

/** A round head of ivy berries. */
export function berries(at: Point, r: number, random: Random): Borne {
  const turn = random.between(0, 2 * Math.PI);
  const card = Array.from({ length: BERRIES }, (_, i) => {
    const a = turn + (2 * Math.PI * i) / BERRIES;
    return circle(at.x + 0.68 * r * Math.cos(a), at.y + 0.68 * r * Math.sin(a), 0.42 * r);
  });
  return { card: [circle(at.x, at.y, 0.6 * r), ...card], lines: [] };
}
