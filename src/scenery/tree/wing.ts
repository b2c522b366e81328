import { containsPoint } from '../../geometry/components.js';
import { pen, smoothLine } from '../../geometry/pen.js';
import { reversed } from '../../geometry/transform.js';
import type { Cubics, Line, Point, Region } from '../../geometry/types.js';
import { type LeafForm, leaf } from '../leaf.js';
import { alongSmooth } from '../limb.js';
import type { Random } from '../random.js';
import { degrees } from './angles.js';
import type { Layer } from './layers.js';

/** One bough of a conifer with all that hangs from it. Lengths in mm. */
export interface WingPlan {
  /** Where it leaves the trunk. */
  readonly at: Point;
  readonly side: -1 | 1;
  /** Distance from trunk to tip. */
  readonly reach: number;
  /** How far the tip hangs below the start, as a share of the reach; negative: it rises. */
  readonly droop: number;
  /** From its tier to the next. */
  readonly spacing: number;
  /** How deep the foliage hangs at the trunk, in spacings. */
  readonly depth: number;
  readonly random: Random;
}

export interface Wing extends Layer {
  /** Needle sprays along its edges and at its tip. */
  readonly sprays: readonly Spray[];
  /** The bough itself, from trunk to tip. */
  readonly spine: readonly Point[];
  readonly rib: Line;
}

/** A needle spray as drawn, and where it points. */
export interface Spray {
  readonly outline: Cubics;
  readonly tip: Point;
  readonly headingDeg: number;
}

/** Stations along a wing, 0 at the trunk and 1 at the tip. */
const STATIONS = [0, 0.25, 0.5, 0.75, 0.95];

/** Edges of a wing by station: a place so far below the upper edge, and the lower edge. */
interface Edges {
  readonly place: (t: number, down: number) => Point;
  readonly under: (t: number) => Point;
}

/** A wing deepest at the trunk, its tip lifted. */
export function wing(
  plan: WingPlan,
  spray: LeafForm,
  { smallestWeb: web }: { smallestWeb: number },
): Wing {
  const { at, side, reach, droop, spacing, random } = plan;
  const lift = random.between(0.05, 0.17);
  const deep = plan.depth * spacing * random.between(0.8, 1.2);
  const gapSpan = { from: random.between(0.04, 0.14), widest: random.between(0.42, 0.6) };
  const sag = (t: number): number =>
    reach * (droop * t * (1.35 - 0.35 * t) - lift * Math.max(0, t - 0.6));
  const place = (t: number, down: number): Point => ({
    x: at.x + side * t * reach,
    y: at.y + sag(t) + down,
  });
  const depth = (t: number): number => deep * (1 - t) ** 0.7;
  const under = (t: number): Point => place(0.97 * t, depth(t) + 0.6 * web);
  const edges = { place, under };
  const gap = (openness: number): Region => wedge(plan, edges, gapSpan, openness, web);
  let known: { openness: number; region: Region } | null = null;
  return {
    body: wingBody(plan, edges, web),
    gap,
    isInGap: (p, openness) => {
      if (known?.openness !== openness) known = { openness, region: gap(openness) };
      return containsPoint(known.region, p);
    },
    sprays: spraysOf(plan, edges, spray),
    spine: STATIONS.map((t) => place(t, 0.35 * depth(t) + 0.3 * web)),
    rib: smoothLine([0.1, 0.35, 0.6].map((t) => place(t, 0.42 * depth(t)))),
  };
}

function wingBody({ side, spacing }: WingPlan, { place, under }: Edges, web: number): Region {
  // The upper edge runs up into the trunk, as a bough's collar does.
  const root = [place(0, -0.35 * spacing), place(0.09, -0.02 * spacing)];
  const upper = [...root, ...STATIONS.slice(1).map((t) => place(t, 0)), place(1, 0.2 * web)];
  const lower = STATIONS.map(under).reverse();
  const outline = pen(upper[0].x, upper[0].y)
    .smoothTo([...upper.slice(1), ...lower])
    .close();
  return { contours: [side > 0 ? outline : reversed(outline)] };
}

/** A wedge's lower edge: how far along its span and how deep there, both as shares. */
const WEDGE: readonly [along: number, deep: number][] = [
  [0.3, 0.38],
  [0.7, 0.75],
  [1, 1],
  [1.25, 0.69],
  [1.45, 0],
];

/** The light beneath a wing: a wedge, pointed at the trunk and blunt outside. */
function wedge(
  { side, spacing }: WingPlan,
  { under }: Edges,
  span: { from: number; widest: number },
  openness: number,
  web: number,
): Region {
  const at = (share: number, down: number): Point => {
    const p = under(span.from + share * (span.widest - span.from));
    return { x: p.x, y: p.y + down };
  };
  const start = at(0, 0);
  const lower = WEDGE.map(([along, deep]) => at(along, deep * openness * spacing));
  const back = [1.2, 0.8, 0.4].map((along) => at(along, -0.5 * web));
  const outline = pen(start.x, start.y)
    .smoothTo([...lower, ...back])
    .close();
  return { contours: [side > 0 ? reversed(outline) : outline] };
}

/** How far along the wing one spray follows another, in spray lengths. */
const SPRAY_STEP = 0.52;
/** Over the wedge sprays are few and short, or they would close it. */
const WEDGE_END = 0.5;
const OVER_WEDGE = { share: 0.35, out: 0.35 };
/** Share of a spray's length that shows below the wing, above it and at its tip. */
const OUT = { below: 0.55, above: 0.6, tip: 0.4 };

/** Sprays that hang from the lower edge, fewer that rise from the upper, and one at the tip. */
function spraysOf(plan: WingPlan, { place, under }: Edges, form: LeafForm): Spray[] {
  const { side, reach, random } = plan;
  const heading = (p: Point, q: Point): number => Math.atan2(q.y - p.y, q.x - p.x);
  const count = Math.max(2, Math.round(reach / (form.length * SPRAY_STEP)));
  const line = alongSmooth(STATIONS.map(under), 5);
  const sprays: Spray[] = [];
  for (let k = 0; k < count; k++) {
    const t = 0.06 + (0.92 * (k + random.between(0.15, 0.85))) / count;
    const i = Math.min(line.length - 2, Math.floor(t * (line.length - 1)));
    const turn = side * random.between(0.4, 0.95) * (1 - 0.55 * t);
    const size = random.between(0.75, 1.3) * (1.1 - 0.35 * t);
    const isOverWedge = t < WEDGE_END;
    if (!random.chance(isOverWedge ? OVER_WEDGE.share : 1)) continue;
    const angle = heading(line[i], line[i + 1]) + turn;
    sprays.push(sprayAt(line[i], angle, size, isOverWedge ? OVER_WEDGE.out : OUT.below, form));
  }
  for (let k = 0; k < Math.round(count / 2); k++) {
    const t = random.between(0.35, 0.95);
    const rim = place(t, 0);
    const angle = heading(rim, place(t + 0.05, 0)) - side * random.between(0.25, 0.5);
    sprays.push(sprayAt(rim, angle, random.between(0.6, 0.85), OUT.above, form));
  }
  const tip = place(1, 0);
  return [...sprays, sprayAt(tip, heading(place(0.85, 0), tip), 1, OUT.tip, form)];
}

/** Width of a spray for its length. */
const SPRAY_WIDTH = 0.42;

function sprayAt(rim: Point, angle: number, size: number, out: number, form: LeafForm): Spray {
  const length = form.length * size;
  const onward = (distance: number): Point => ({
    x: rim.x + distance * Math.cos(angle),
    y: rim.y + distance * Math.sin(angle),
  });
  const headingDeg = degrees(angle);
  const width = Math.max(form.width, SPRAY_WIDTH * length);
  return {
    outline: leaf({ ...form, length, width }, onward((out - 1) * length), headingDeg),
    tip: onward(out * length),
    headingDeg,
  };
}
