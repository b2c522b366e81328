import { flatten } from '../../geometry/measure.js';
import { pen } from '../../geometry/pen.js';
import type { Bounds, Line, Point, Region } from '../../geometry/types.js';
import { mix, shapeOf } from '../brick/craft.js';
import { smoothNoise } from '../brick/patches.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';
import type { FarEdge } from './far-edge.js';

/** Length of a glint at the far edge and at the viewer's, mm. */
const FAR_MM = 12;
const NEAR_MM = 26;
/** Held at both ends, a strip of card bears about this many times its width in length. */
const LONGEST_IN_WEBS = 15;
/** Height of a glint at the far and at the near edge, in smallest holes. */
const FAR_HIGH = 1.06;
const NEAR_HIGH = 1.35;
/** A lens may lie this much of its height above or below its row. */
const PLAY = 0.08;
/** Width of a glint's tips, mm: a knife turns round them. */
const TIP_MM = 0.5;
/** Width of a streak halfway down, mm. */
const STREAK_MM = 12;
/** A wave of the surface is seen as light or dark over about this length, mm. */
const PATCH_MM = 34;
/** Strips of card are this much wider than the smallest web, so that a drawn curve may wander. */
const WEB_SLACK = 1.1;

export interface Surface {
  readonly glints: readonly Region[];
  /** Ripples drawn where no glint is. */
  readonly ripples: readonly Line[];
}

interface Row {
  readonly y: number;
  readonly high: number;
  /** 0 at the far edge, 1 at the foot of the plot. */
  readonly t: number;
}

/**
 * Rows of long level lenses that grow longer and higher towards the viewer. Some are glints, the
 * others are drawn as ripples. Every strip of card between two glints, and between
 * them and the far edge, is at least the smallest web. With `cut` false all are drawn.
 */
export function surfaceOf(
  plot: Plot,
  far: FarEdge,
  light: number,
  streaks: number,
  cut: boolean,
  random: Random,
): Surface {
  const noise = smoothNoise(random.branch('patches'), PATCH_MM, plot.height * 0.8);
  const columns = Array.from({ length: streaks }, (_, i) => streakAt(plot, i, random));
  const taken: Placed[] = [];
  const glints: Region[] = [];
  const ripples: Line[] = [];
  rowsOf(plot, far).forEach((row, i) => {
    const luck = random.branch(`row ${i}`);
    lensesOf(plot, row, columns, far, luck).forEach((lens, k) => {
      const own = luck.branch(`lens ${k}`);
      const lit =
        lens.streak || noise((lens.from + lens.to) / 2, row.y) * 0.7 + own.next() * 0.3 < light;
      // Below the sill there is card behind the lens, not light.
      const opens = cut && row.y + row.high / 2 < 0;
      const found = lit && opens ? fitted(plot, lens, taken, far, own) : null;
      if (found) {
        taken.push(found.placed);
        glints.push(found.region);
      } else if (lit || own.chance(RIPPLE_SHARE)) {
        ripples.push(...ripplesOf(lens, own));
      }
    });
  });
  return { glints, ripples };
}

/** The lens as a glint, shortened from either end where its neighbours leave no room for all. */
function fitted(
  plot: Plot,
  lens: Lens,
  taken: readonly Placed[],
  far: FarEdge,
  random: Random,
): { region: Region; placed: Placed } | null {
  const length = lens.to - lens.from;
  for (const cut of CUTS) {
    const { from, to } = lens;
    const tries =
      cut === 0
        ? [lens]
        : [
            { ...lens, from: from + cut * length },
            { ...lens, to: to - cut * length },
          ];
    for (const shorter of tries) {
      if (shorter.to - shorter.from < SHORTEST_IN_HIGHS * lens.high) continue;
      const region = glint(shorter, random.branch('glint'));
      const placed = placedOf(region);
      if (isClear(plot, placed, taken, far)) return { region, placed };
    }
  }
  return null;
}

/** What is tried off a lens's length where it does not fit, and the stubbiest glint. */
const CUTS = [0, 0.2, 0.4, 0.55];
const SHORTEST_IN_HIGHS = 3.2;

/** The share of lenses without light that are drawn. */
const RIPPLE_SHARE = 0.85;
/** How often a ripple is two strokes, and how far a stroke swells, mm. */
const SECOND_STROKE = 0.55;
const SWELL_MM = 0.55;

interface Lens {
  readonly from: number;
  readonly to: number;
  readonly y: number;
  readonly high: number;
  readonly streak: boolean;
}

/** Where a streak stands: near thirds rather than halves, each with its own width. */
function streakAt(plot: Plot, index: number, random: Random): { x: number; wide: number } {
  const luck = random.branch(`streak ${index}`);
  const share = [0.36, 0.7, 0.53][index] + luck.between(-0.06, 0.06);
  return { x: (share - 0.5) * plot.width, wide: STREAK_MM * luck.between(0.8, 1.3) };
}

function rowsOf(plot: Plot, far: FarEdge): Row[] {
  const { height, root, smallestWeb, smallestHole } = plot;
  const web = smallestWeb * WEB_SLACK;
  const rows: Row[] = [];
  let top = far.lowest + web;
  for (;;) {
    const t = Math.max(0, Math.min(1, (top + height) / (height + root)));
    const high = smallestHole * mix(FAR_HIGH, NEAR_HIGH, t);
    if (top + high > root - web) return rows;
    rows.push({ y: top + high / 2, high, t });
    top += high * (1 + 2 * PLAY) + web * mix(1, 1.25, t);
  }
}

/** The lenses of a row: streaks first, the rest outward from the middle. */
function lensesOf(
  plot: Plot,
  { y, high, t }: Row,
  columns: readonly { x: number; wide: number }[],
  far: FarEdge,
  random: Random,
): Lens[] {
  const { smallestWeb } = plot;
  const longest = LONGEST_IN_WEBS * smallestWeb;
  const size = mix(FAR_MM, NEAR_MM, t);
  const lenses: Lens[] = columns.map((column, i) => {
    const luck = random.branch(`streak ${i}`);
    const half = Math.min(longest, column.wide * mix(0.7, 1.3, t) * luck.between(0.75, 1.2)) / 2;
    const x = column.x + luck.between(-0.2, 0.2) * column.wide;
    return { from: x - half, to: x + half, y, high, streak: true };
  });
  for (const hand of [-1, 1]) {
    const luck = random.branch(hand);
    const edge = (hand < 0 ? -far.from : far.to) - smallestWeb * 1.3;
    let x = hand < 0 ? smallestWeb : luck.between(0, 0.6) * size;
    while (x < edge) {
      const length = Math.min(longest, size * luck.between(0.65, 1.35));
      const [a, b] = [hand * x, hand * Math.min(edge, x + length)];
      const dy = luck.between(-PLAY, PLAY) * high;
      const whole = { from: Math.min(a, b), to: Math.max(a, b), y: y + dy, high, streak: false };
      const lens = besides(whole, lenses, smallestWeb * WEB_SLACK);
      if (lens.to - lens.from > SHORTEST_IN_HIGHS * high) lenses.push(lens);
      x += length + smallestWeb * luck.between(1.2, 2.2);
    }
  }
  return lenses;
}

/** The longest part of the lens that stands clear of the others in its row. */
function besides(lens: Lens, others: readonly Lens[], gap: number): Lens {
  let { from, to } = lens;
  for (const other of others) {
    if (to + gap < other.from || other.to + gap < from) continue;
    const before = other.from - gap - from;
    const after = to - other.to - gap;
    if (before > after) to = other.from - gap;
    else from = other.to + gap;
  }
  return { ...lens, from, to };
}

/** A flat lens with fine round tips, its belly off its middle and a little tilted. */
function glint({ from, to, y, high }: Lens, random: Random): Region {
  const r = TIP_MM / 2;
  const belly = random.between(0.35, 0.65);
  const lean = random.between(-0.1, 0.1) * high;
  const [left, right] = [from + r, to - r];
  const reachL = (right - left) * belly * 0.7;
  const reachR = (right - left) * (1 - belly) * 0.7;
  // With both handles at this height the curve swells to half the lens's height.
  const rise = (high / 2 - r) / 0.75 + r;
  const turnL = Math.atan2(rise - r, reachL);
  const turnR = Math.atan2(rise - r, reachR);
  const deg = 180 / Math.PI;
  const [yL, yR] = [y + lean, y - lean];
  const upper = { x: right + r * Math.sin(turnR), y: yR - r * Math.cos(turnR) };
  const lower = { x: left - r * Math.sin(turnL), y: yL + r * Math.cos(turnL) };
  return shapeOf(
    pen(lower.x, lower.y)
      .arcAround(left, yL, 180 - 2 * turnL * deg)
      .curveTo(left + reachL, yL - rise, right - reachR, yR - rise, upper.x, upper.y)
      .arcAround(right, yR, 180 - 2 * turnR * deg)
      .curveTo(right - reachR, yR + rise, left + reachL, yL + rise, lower.x, lower.y)
      .close(),
  );
}

/** A lens only drawn: a stroke or two, the second shorter and a little lower. */
function ripplesOf({ from, to, y, high }: Lens, random: Random): Line[] {
  const length = to - from;
  const rise = high * random.between(0.2, 0.4);
  const a = from + length * random.between(0, 0.15);
  const b = to - length * random.between(0, 0.2);
  const lines = [swell(a, b, y - rise, random)];
  if (random.chance(SECOND_STROKE)) {
    const c = mix(a, b, random.between(0.25, 0.5));
    lines.push(swell(c, Math.min(to, c + length * random.between(0.35, 0.6)), y + rise, random));
  }
  return lines;
}

function swell(a: number, b: number, y: number, random: Random): Line {
  const bow = () => random.between(-1, 1) * SWELL_MM;
  return pen(a, y)
    .curveTo(mix(a, b, 0.33), y + bow(), mix(a, b, 0.67), y + bow(), b, y + bow() / 2)
    .line();
}

/** A glint as points, to measure distances by. */
interface Placed {
  readonly points: readonly Point[];
  readonly bounds: Bounds;
}

function placedOf(region: Region): Placed {
  const points = flatten(region.contours[0], 0.02);
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const bounds = {
    minX: Math.min(...xs),
    minY: Math.min(...ys),
    maxX: Math.max(...xs),
    maxY: Math.max(...ys),
  };
  return { points, bounds };
}

function isClear(plot: Plot, glint: Placed, taken: readonly Placed[], far: FarEdge): boolean {
  const web = plot.smallestWeb * WEB_SLACK;
  if (glint.bounds.minX - far.from < web || far.to - glint.bounds.maxX < web) return false;
  if (glint.points.some((p) => p.y - far.yAt(p.x) < web)) return false;
  return taken.every(
    (t) =>
      t.bounds.maxX + web < glint.bounds.minX ||
      glint.bounds.maxX + web < t.bounds.minX ||
      t.bounds.maxY + web < glint.bounds.minY ||
      glint.points.every((p) => t.points.every((q) => Math.hypot(p.x - q.x, p.y - q.y) >= web)),
  );
}
