import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { groundOf } from '../land/ground.js';
import type { Random } from '../random.js';

export const FORMS = ['swell', 'breakers', 'surf'] as const;
export type Form = (typeof FORMS)[number];

/** One wave of a row: from trough to trough, mm, and how high its crest rises over them. */
export interface Wave {
  readonly from: number;
  readonly to: number;
  readonly rise: number;
}

/** One row of waves: its waves, and the level (y, mm) of its troughs. */
export interface Row {
  readonly waves: readonly Wave[];
  readonly left: number;
  readonly right: number;
  /** Height of the troughs over the sill at x, mm: less towards an end that stands free. */
  readonly troughAt: (x: number) => number;
}

/** How high waves rise as a share of the plot's height, and how long they are in rises. */
const RISE: Record<Form, number> = { swell: 0.24, breakers: 0.44, surf: 0.2 };
const LENGTH: Record<Form, number> = { swell: 6, breakers: 2.3, surf: 5 };
/** Height of the nearest row as a share of the farthest. */
const NEAREST = 0.36;
/** Nearer waves are longer by this each row. */
const NEARER = 0.22;
/** A wave rises and runs at least so many webs. */
const LEAST_WEBS = { rise: 1.6, length: 9 } as const;
/** Rows lie at least so many webs apart. */
const ROW_WEBS = 3;
/** A free end slopes down over so much of the height. */
const SLOPE = 1.1;

/** Rows of waves, farthest first. */
export function rowsOf(plot: Plot, form: Form, wanted: number, random: Random): Row[] {
  const { height, smallestWeb } = plot;
  const { left, right, freeLeft, freeRight } = groundOf(plot);
  const room = Math.floor(((1 - NEAREST) * height) / (ROW_WEBS * smallestWeb)) + 1;
  const count = Math.max(1, Math.min(wanted, room));
  const rise = Math.max(LEAST_WEBS.rise * smallestWeb, RISE[form] * height);
  const slope = Math.min(SLOPE * height, 0.3 * (right - left));
  const envelope = (x: number): number => {
    const a = freeLeft ? Math.min(1, (x - left) / slope) : 1;
    const b = freeRight ? Math.min(1, (right - x) / slope) : 1;
    return Math.sin((Math.PI / 2) * Math.max(0, Math.min(a, b)));
  };
  return Array.from({ length: count }, (_, i): Row => {
    const luck = random.branch(i);
    const top = height * mix(1, NEAREST, count > 1 ? i / (count - 1) : 0);
    const own = Math.min(rise, 0.82 * top);
    const length = Math.max(LEAST_WEBS.length * smallestWeb, own * LENGTH[form] * (1 + NEARER * i));
    return {
      waves: wavesOf(left, right, length, (x) => own * envelope(x), luck),
      left,
      right,
      troughAt: (x) => (top - own) * envelope(x),
    };
  });
}

/** Waves uneven in length and height, that fill the row; the first begins by chance outside it. */
function wavesOf(
  left: number,
  right: number,
  length: number,
  riseAt: (x: number) => number,
  random: Random,
): Wave[] {
  const waves: Wave[] = [];
  let from = left - random.next() * length;
  for (let i = 0; from < right; i++) {
    const luck = random.branch(i);
    const to = from + length * luck.between(0.78, 1.25);
    waves.push({ from, to, rise: riseAt((from + to) / 2) * luck.between(0.78, 1) });
    from = to;
  }
  return waves;
}
