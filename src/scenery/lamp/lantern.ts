import { pen } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import { shape, shapeOf } from '../brick/craft.js';
import type { Drawing } from '../built/finish.js';
import type { Plot } from '../family.js';

/** A lantern's room: its middle, its foot (y, negative upward) and its size, mm. */
export interface Room {
  readonly x: number;
  readonly foot: number;
  readonly width: number;
  readonly height: number;
}

/** A cap swept up to its vent, or a round one. */
export const ROOFS = ['swept', 'domed'] as const;
export type Roof = (typeof ROOFS)[number];

/** Heights over the foot, and half widths, as shares of the lantern's height and width. */
const CAP = 0.88;
const EAVES = 0.66;
const GLASS = [0.13, 0.6] as const;
const HALF_TOP = 0.46;
const HALF_FOOT = 0.3;
const OVERHANG = 0.56;
/** A side pane is seen aslant: its width as a share of the middle one. */
const ASLANT = 0.62;

/** A lantern's width for its height. */
export const LANTERN_WIDE = 0.66;

/** A street lantern: cap over eaves, glass that narrows to the foot, panes cut where they fit. */
export function lanternOf(plot: Plot, room: Room, hangs: boolean, form: Roof): Drawing {
  const { x, foot, width, height } = room;
  const at = (dx: number, up: number): Point => ({ x: x + dx * width, y: foot - up * height });
  const neck = Math.max(0.13, (0.58 * plot.smallestWeb) / width);
  const cap = [at(-OVERHANG, EAVES), at(OVERHANG, EAVES), at(neck, CAP), at(-neck, CAP)];
  const bend = (hand: number) =>
    form === 'domed' ? at(hand * 0.4, CAP - 0.01) : at(hand * 0.24, EAVES + 0.03);
  const roof = shapeOf(
    pen(cap[0].x, cap[0].y)
      .lineTo(at(-OVERHANG, EAVES - 0.04).x, at(0, EAVES - 0.04).y)
      .lineTo(at(OVERHANG, EAVES - 0.04).x, at(0, EAVES - 0.04).y)
      .lineTo(cap[1].x, cap[1].y)
      .quadTo(bend(1).x, bend(1).y, cap[2].x, cap[2].y)
      .lineTo(cap[3].x, cap[3].y)
      .quadTo(bend(-1).x, bend(-1).y, cap[0].x, cap[0].y)
      .close(),
  );
  const glass = shape([
    at(-HALF_TOP, EAVES),
    at(HALF_TOP, EAVES),
    at(HALF_FOOT, 0.06),
    at(neck, 0),
    at(-neck, 0),
    at(-HALF_FOOT, 0.06),
  ]);
  const vent = shape([
    at(-neck * 1.7, CAP - 0.07),
    at(neck * 1.7, CAP - 0.07),
    at(neck * 1.5, CAP),
    at(-neck * 1.5, CAP),
  ]);
  const solids = [roof, glass, vent, ...finial(plot, room, hangs)];
  return { solids, cuts: panesOf(plot, room), lines: [] };
}

function finial(plot: Plot, { x, foot, width, height }: Room, hangs: boolean): Region[] {
  const rod = Math.max(1.15 * plot.smallestWeb, 0.1 * width);
  const top = foot - height;
  const stem = rectangle(x - rod / 2, top, rod, (1 - CAP + 0.05) * height);
  if (hangs) return [stem];
  const ball = Math.max(rod * 0.62, 0.075 * width);
  const upright = rectangle(x - rod / 2, top + ball, rod, (1 - CAP + 0.05) * height - ball);
  return [upright, circle(x, top + ball, ball)];
}

/** Three panes, two, one or none: as many as leave bars that hold. */
function panesOf(plot: Plot, room: Room): Region[] {
  const { smallestWeb, smallestHole } = plot;
  const { x, foot, width, height } = room;
  const rim = Math.max(1.15 * smallestWeb, 0.055 * width);
  const bar = Math.max(1.12 * smallestWeb, 0.05 * width);
  const low = foot - Math.max(GLASS[0] * height, 1.1 * rim);
  const high = foot - GLASS[1] * height + Math.max(0, rim - (EAVES - GLASS[1] + 0.1) * height);
  const halfAt = (y: number) => {
    const t = ((foot - y) / height - 0.06) / (EAVES - 0.06);
    return width * (HALF_FOOT + (HALF_TOP - HALF_FOOT) * t) - rim;
  };
  const least = 1.12 * smallestHole;
  if (low - high < least) return [];
  const layouts = [[ASLANT, 1, ASLANT], [1, 1], [1]];
  const clear = (shares: readonly number[], y: number) => 2 * halfAt(y) - bar * (shares.length - 1);
  const narrowest = (shares: readonly number[]) =>
    (clear(shares, low) * Math.min(...shares)) / sum(shares);
  const shares = layouts.find((l) => narrowest(l) >= least);
  if (!shares) return [];
  const edge = (i: number, y: number) =>
    x - halfAt(y) + (clear(shares, y) * sum(shares.slice(0, i))) / sum(shares) + i * bar;
  return shares.map((share, i) => {
    const wide = (y: number) => (clear(shares, y) * share) / sum(shares);
    return shape([
      { x: edge(i, high), y: high },
      { x: edge(i, high) + wide(high), y: high },
      { x: edge(i, low) + wide(low), y: low },
      { x: edge(i, low), y: low },
    ]);
  });
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
