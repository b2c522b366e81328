import { endsOf, mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { type Head, type HeadSize, headSizeOf } from './heads.js';
import { leastForRings, leastForScrolls } from './scrolls.js';

/** Heights are mm over the ground. */
export interface Plan {
  readonly plot: Plot;
  readonly from: number;
  readonly to: number;
  /** Thickness of bars and of rails, and width of the standards between panels. */
  readonly bar: number;
  readonly rail: number;
  readonly standard: number;
  readonly head: HeadSize;
  /** Middles of standards. */
  readonly standards: readonly number[];
  /** From bar to bar at least. */
  readonly pitch: number;
  readonly wall: number;
  /** Middles of the rails, from the top. The first two enclose the band of scrolls. */
  readonly rails: readonly number[];
  readonly filling: 'scrolls' | 'rings' | null;
}

const BAR = 0.028;
const LEAST_BAR = 1.12;
const RAIL = 0.034;
const STANDARD = 1.9;
/** Clear of the heads to each other, as shares of the height: close and open. */
const CLEAR = [0.03, 0.13] as const;
/** From standard to standard, in heights. */
const PANEL = 1.25;
const WALL = 0.34;
/** Most of the height that scrolls may take. */
const BAND = 0.32;
const BOTTOM = 0.1;

export function planOf(
  plot: Plot,
  form: Head,
  wantsScrolls: boolean,
  spacing: number,
  wallShare: number,
): Plan {
  const { width, height, smallestWeb, smallestHole } = plot;
  const { left: from, right: to } = endsOf(plot);
  const bar = Math.max(LEAST_BAR * smallestWeb, BAR * height);
  const rail = Math.max(LEAST_BAR * smallestWeb, RAIL * height);
  const standard = STANDARD * bar;
  const head = headSizeOf(form, bar, height);
  const clear = Math.max(1.25 * smallestHole, mix(...CLEAR, spacing) * height);
  const wall = wallShare * WALL * height;
  // Standards rise over the heads, so that these stay a little below the full height.
  const top = 0.95 * height - head.height - rail / 2;
  const least = 1.35 * smallestHole;
  const bottom = Math.max(wall + least + rail / 2, wall + BOTTOM * height);
  const room = top - rail - Math.max(wall, bottom + rail / 2);
  const filling = wantsScrolls ? fillingOf(bar, smallestHole, room - least, height) : null;
  const band = filling === null ? 0 : filling.band;
  const rails = top - rail / 2 - wall < least ? [] : [top];
  if (filling) rails.push(top - rail - band);
  if (rails.length > 0 && rails[rails.length - 1] - bottom - rail > least) rails.push(bottom);
  const span = to - from - standard;
  const leastPanel = standard + 2 * bar + 3 * clear;
  const panels = Math.max(1, Math.round(Math.min(span / (PANEL * height), span / leastPanel)));
  const standards = Array.from(
    { length: panels + 1 },
    (_, i) => from + standard / 2 + (i * span) / panels,
  );
  const pitch = Math.min(width, Math.max(head.width + clear, bar + 1.5 * clear));
  return {
    plot,
    from,
    to,
    bar,
    rail,
    standard,
    head,
    standards,
    pitch,
    wall,
    rails,
    filling: filling?.kind ?? null,
  };
}

function fillingOf(bar: number, hole: number, room: number, height: number) {
  const most = Math.min(room, BAND * height);
  const forScrolls = Math.max(leastForScrolls(bar, hole), 0.16 * height);
  if (forScrolls <= most) return { kind: 'scrolls', band: forScrolls } as const;
  const forRings = Math.max(leastForRings(bar, hole), 0.12 * height);
  if (forRings <= most) return { kind: 'rings', band: forRings } as const;
  return null;
}
