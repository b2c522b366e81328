import { linesInside, trimLine } from '../../geometry/clip-lines.js';
import { lineLength } from '../../geometry/measure.js';
import { stroke } from '../../geometry/offset/offset.js';
import { pen, polyline } from '../../geometry/pen.js';
import { circle, roundedRectangle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { handCut, shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import type { Random } from '../random.js';

export const KINDS = ['narrowboat', 'rowing', 'sailing', 'fishing'] as const;
export type Kind = (typeof KINDS)[number];

/** The size a boat is designed at, in units of its own: length, height over the water, freeboard. */
export interface Design {
  readonly length: number;
  readonly height: number;
  readonly freeboard: number;
}

/** How much longer or shorter for its height a boat may be drawn than it is designed. */
const STRETCH = [0.75, 1.35] as const;
/** A loaded boat lies this share of her freeboard deeper. */
const LOADED = 0.55;
/** Least freeboard in webs. */
const LEAST_FREEBOARD = 1.4;
const WANDER_MM = 0.1;
/** The hull goes on under the water, mm, so that it is one with the frame. */
export const UNDER_MM = 0.8;

export type Corner = readonly [x: number, up: number];

/** Draws in a boat's own units: x toward the bow, up from the water when she is light. */
export interface Kit {
  readonly plot: Plot;
  readonly level: number;
  readonly at: (x: number, up: number) => Point;
  /** mm a unit. */
  readonly scale: { readonly x: number; readonly y: number };
  /** Width of a spar or rope that is `units` thick, never under the smallest web. */
  readonly thick: (units: number) => number;
}

export function kitOf(plot: Plot, design: Design, load: number, level: number, hand: number): Kit {
  const { width, height, smallestWeb } = plot;
  const [shorter, longer] = STRETCH;
  const [sx, sy] = [width / design.length, height / design.height];
  const x = Math.min(sx, sy * longer);
  const y = Math.min(sy, sx / shorter);
  const sunk = load * LOADED * design.freeboard * y;
  const lift = Math.max(0, LEAST_FREEBOARD * smallestWeb - (design.freeboard * y - sunk));
  return {
    plot,
    level,
    scale: { x, y },
    at: (along, up) => ({ x: hand * along * x, y: -(up * y - sunk + lift) }),
    thick: (units) => Math.max(1.12 * smallestWeb, units * y),
  };
}

/** A shape through corners, cut by hand. */
export const cut = ({ at }: Kit, corners: readonly Corner[], random: Random): Region =>
  handCut(
    corners.map(([x, up]) => at(x, up)),
    WANDER_MM,
    random,
  );

/** A hull: a smooth sheer from stern to bow, closed under the water. */
export function hullOf({ at }: Kit, sheer: readonly Corner[], stern: Corner, bow: Corner): Region {
  const points = sheer.map(([x, up]) => at(x, up));
  const [s, b] = [at(...stern), at(...bow)];
  const start = { x: s.x, y: Math.max(UNDER_MM, s.y) };
  const end = { x: b.x, y: Math.max(UNDER_MM, b.y) };
  const [first] = points;
  const last = points[points.length - 1];
  return shapeOf(
    pen(start.x, start.y)
      .quadTo(start.x + (first.x - start.x) * 0.75, start.y * 0.6 + first.y * 0.4, first.x, first.y)
      .smoothTo(points.slice(1))
      .quadTo(end.x + (last.x - end.x) * 0.55, end.y * 0.6 + last.y * 0.4, end.x, end.y)
      .close(),
  );
}

/** A straight spar or rope. */
export const spar = ({ at, thick }: Kit, from: Corner, to: Corner, units: number): Region =>
  stroke([polyline([at(...from), at(...to)])], thick(units));

/** A bent one. */
export const bent = ({ at, thick }: Kit, through: readonly Corner[], units: number): Region => {
  const [first, ...rest] = through.map(([x, up]) => at(x, up));
  return stroke([pen(first.x, first.y).smoothTo(rest).line()], thick(units));
};

/** Openings in a wall from one corner to the other: as many of those wanted as leave card between. */
export function panes(
  kit: Kit,
  low: Corner,
  high: Corner,
  wanted: number,
  round: boolean,
): Region[] {
  const { smallestWeb, smallestHole } = kit.plot;
  const [a, b] = [kit.at(...low), kit.at(...high)];
  const [left, right] = [Math.min(a.x, b.x), Math.max(a.x, b.x)];
  const [top, foot] = [Math.min(a.y, b.y), Math.max(a.y, b.y)];
  const least = 1.12 * smallestHole;
  const rim = 1.2 * smallestWeb;
  const room = right - left - 2 * rim;
  const tall = Math.min(0.62 * (foot - top), foot - top - 2 * rim);
  const count = Math.min(
    wanted,
    Math.floor((room + 1.4 * smallestWeb) / (least + 1.4 * smallestWeb)),
  );
  if (tall < least || count < 1) return [];
  const step = (right - left) / count;
  const most = step - 1.4 * smallestWeb;
  const wide = Math.max(least, Math.min(most, round ? tall : tall * 1.35, 0.62 * step));
  const y = (top + foot) / 2;
  return Array.from({ length: count }, (_, i) => {
    const x = left + (i + 0.5) * step;
    if (round) return circle(x, y, Math.min(wide, tall) / 2);
    return roundedRectangle(x - wide / 2, y - tall / 2, wide, tall, 0.12 * tall);
  });
}

/** Somebody aboard, from the thighs up; `up` is the deck, `reach` what the hand holds. */
export function person(
  kit: Kit,
  x: number,
  up: number,
  tall: number,
  reach: Corner,
  random: Random,
): Region[] {
  const { at, scale, plot } = kit;
  const foot = at(x, up - 1);
  const height = tall * scale.y;
  const half = Math.max(0.75 * plot.smallestWeb, 0.155 * height);
  const head = Math.max(0.72 * plot.smallestWeb, 0.12 * height);
  const lean = random.between(-0.04, 0.04) * height;
  const shoulder = foot.y - height + 2.2 * head;
  const middle = foot.x + lean;
  const corners: [number, number][] = [
    [-0.8 * half, foot.y],
    [-0.72 * half, (foot.y + shoulder) / 2],
    [-1.02 * half, shoulder + 0.55 * half],
    [-0.75 * half, shoulder + 0.1 * half],
    [-0.55 * head, shoulder - 0.15 * head],
    [0.55 * head, shoulder - 0.15 * head],
    [0.75 * half, shoulder + 0.1 * half],
    [1.02 * half, shoulder + 0.55 * half],
    [0.72 * half, (foot.y + shoulder) / 2],
    [0.8 * half, foot.y],
  ];
  const body = handCut(
    corners.map(([dx, y]) => ({ x: middle + dx, y })),
    WANDER_MM,
    random,
  );
  const sleeve = { x: middle, y: shoulder + 0.6 * half };
  const arm = stroke([polyline([sleeve, at(...reach)])], kit.thick(0.085 * tall));
  return [body, arm, circle(middle, shoulder - 0.95 * head, head)];
}

/** Strakes: lines along the sheer, in broken strokes within the hull. */
export function strakes(kit: Kit, hull: Region, sheer: readonly Corner[], random: Random): Line[] {
  const [{ up: low }] = [...sheer].map(([, up]) => ({ up })).sort((a, b) => a.up - b.up);
  return Array.from({ length: kit.level + 1 }, (_, i) => {
    const share = 1 - (i + 1) / (kit.level + 2);
    const down = low * (1 - share);
    const points = sheer.map(([x, up]) => kit.at(x, up - down - (up - low) * 0.25 * (i + 1)));
    return pen(points[0].x, points[0].y).smoothTo(points.slice(1)).line();
  }).flatMap((line, i) => linesInside([line], hull).flatMap((l) => broken(l, random.branch(i))));
}

/** Two strokes with a gap, so that none becomes a fold. */
function broken(line: Line, luck: Random): Line[] {
  const length = lineLength(line);
  const at = length * luck.between(0.3, 0.65);
  const parts = [
    trimLine(line, length * luck.between(0.02, 0.1), length - at),
    trimLine(line, at + 3, length * luck.between(0.02, 0.1)),
  ];
  return parts.filter((part) => part !== null);
}
