import type { Point, Region } from '../../geometry/types.js';
import { endsOf, handCut } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

export const STYLES = ['picket', 'post-and-rail', 'paling', 'woven hurdle'] as const;
export type Style = (typeof STYLES)[number];

/** Edges cut by hand swell by so much, mm. */
export const WANDER_MM = 0.15;
/** Feet reach this far under the ground, so that they are one with the frame, mm. */
export const SUNK_MM = 0.6;

/** A stretch along the ground, mm. */
export interface Run {
  readonly from: number;
  readonly to: number;
}

export interface Layout {
  readonly plot: Plot;
  /** All of the ground that is fenced, behind the jambs if it reaches them. */
  readonly whole: Run;
  readonly runs: readonly Run[];
  readonly gate: Run | null;
  /** Width of a post. */
  readonly post: number;
  /** Age: 0 new, 1 old and crooked. */
  readonly wear: number;
  /** 0 close, 1 open. */
  readonly gaps: number;
  /** Luck that all runs share. */
  readonly kin: Random;
}

const POST = 0.12;
const LEAST_POST = 1.5;
/** A gate's width as a share of its height, and the least in smallest holes and posts. */
const GATE = { 'post-and-rail': 1.55, picket: 0.85, paling: 0.85, 'woven hurdle': 0.9 } as const;

export function layoutOf(
  plot: Plot,
  style: Style,
  wantsGate: boolean,
  wear: number,
  gaps: number,
  random: Random,
): Layout {
  const { width, height, smallestWeb, smallestHole } = plot;
  const { left, right } = endsOf(plot);
  const whole = { from: left, to: right };
  const post = Math.max(LEAST_POST * smallestWeb, POST * height);
  const least = 2 * post + 3 * smallestHole;
  const gateWidth = Math.max(least, GATE[style] * height + 2 * post);
  const place = random.branch('gate').between(-0.16, 0.16) * width;
  const frame = { plot, whole, post, wear, gaps, kin: random.branch('kin') };
  const size = Math.min(gateWidth, 0.55 * width);
  if (!wantsGate || size < least) return { ...frame, runs: [whole], gate: null };
  const gate = { from: place - size / 2, to: place + size / 2 };
  const runs = [
    { from: left, to: gate.from + post / 2 },
    { from: gate.to - post / 2, to: right },
  ];
  return { ...frame, runs, gate };
}

export const at = (x: number, y: number): Point => ({ x, y });

/** A sawn bar from one point to another, a little thicker at one end. */
export function bar(a: Point, b: Point, thick: number, random: Random): Region {
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  const [nx, ny] = [-(b.y - a.y) / length / 2, (b.x - a.x) / length / 2];
  const [s, t] = [thick * random.between(1, 1.12), thick * random.between(1, 1.12)];
  const corners = [
    at(a.x + nx * s, a.y + ny * s),
    at(b.x + nx * t, b.y + ny * t),
    at(b.x - nx * t, b.y - ny * t),
    at(a.x - nx * s, a.y - ny * s),
  ];
  return handCut(corners, WANDER_MM, random);
}

/** A post with a weathered top: sloped one way, or four-sided with a blunt point. */
export function postAt(
  x: number,
  width: number,
  top: number,
  lean: number,
  sloped: boolean,
  random: Random,
): Region {
  const half = width / 2;
  const head = sloped
    ? [at(x - half + lean, -top + 0.28 * width), at(x + half + lean, -top)]
    : [
        at(x - half + lean, -top + 0.3 * width),
        at(x - 0.12 * width + lean, -top),
        at(x + 0.12 * width + lean, -top),
        at(x + half + lean, -top + 0.3 * width),
      ];
  const corners = [at(x - half, SUNK_MM), ...head, at(x + half, SUNK_MM)];
  return handCut(corners, WANDER_MM, random);
}
