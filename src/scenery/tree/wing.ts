import { containsPoint } from '../../geometry/components.js';
import { pen, smoothLine } from '../../geometry/pen.js';
import { reversed } from '../../geometry/transform.js';
import type { Cubics, Line, Point, Region } from '../../geometry/types.js';
import { type LeafForm, leaf } from '../leaf.js';
import { alongSmooth } from '../limb.js';
import type { Random } from '../random.js';
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

/** A wing deepest at the trunk, its tip lifted; `web` is the least that any of it may measure. */
export function wing(plan: WingPlan, spray: LeafForm, web: number): Wing {
  const { at, side, reach, droop, spacing, random } = plan;
  const lift = random.between(0.05, 0.17);
  const deep = plan.depth * spacing * random.between(0.8, 1.2);
  const sag = (t: number): number =>
    reach * (droop * t * (1.35 - 0.35 * t) - lift * Math.max(0, t - 0.6));
  const place = (t: number, down: number): Point => ({
    x: at.x + side * t * reach,
    y: at.y + sag(t) + down,
  });
  const under = (t: number): Point => place(0.97 * t, deep * (1 - t) ** 0.7 + 0.6 * web);
  // The upper edge runs up into the trunk, as a bough's collar does.
  const top = [place(0, -0.35 * spacing), place(0.09, -0.02 * spacing)];
  const upper = [...top, ...STATIONS.slice(1).map((t) => place(t, 0)), place(1, 0.2 * web)];
  const lower = STATIONS.map(under).reverse();
  const outline = pen(upper[0].x, upper[0].y)
    .smoothTo([...upper.slice(1), ...lower])
    .close();
  const body: Region = { contours: [side > 0 ? outline : reversed(outline)] };
  const gapWidest = random.between(0.42, 0.6);
  const gapFrom = random.between(0.04, 0.14);
  const gap = (openness: number): Region => {
    const deepest = openness * spacing;
    const edge = [0.3, 0.7, 1, 1.25, 1.45].map((f) => {
      const t = gapFrom + f * (gapWidest - gapFrom);
      const share = f <= 1 ? f ** 0.8 : 1 - ((f - 1) / 0.45) ** 2;
      const p = under(t);
      return { x: p.x, y: p.y + deepest * share };
    });
    const back = [1.2, 0.8, 0.4].map((f) => under(gapFrom + f * (gapWidest - gapFrom)));
    const start = under(gapFrom);
    const contour = pen(start.x, start.y)
      .smoothTo([...edge, ...back.map((p) => ({ x: p.x, y: p.y - 0.5 * web }))])
      .close();
    return { contours: [side > 0 ? reversed(contour) : contour] };
  };
  let known: { openness: number; region: Region } | null = null;
  return {
    body,
    gap,
    isInGap: (p, openness) => {
      if (known?.openness !== openness) known = { openness, region: gap(openness) };
      return containsPoint(known.region, p);
    },
    sprays: spraysOf(plan, place, under, spray),
    spine: STATIONS.map((t) => place(t, 0.35 * deep * (1 - t) ** 0.7 + 0.3 * web)),
    rib: smoothLine([0.1, 0.35, 0.6].map((t) => place(t, 0.42 * deep * (1 - t) ** 0.7))),
  };
}

/** How far along the wing one spray follows another, in spray lengths. */
const SPRAY_STEP = 0.52;

function spraysOf(
  { side, reach, random }: WingPlan,
  place: (t: number, down: number) => Point,
  under: (t: number) => Point,
  form: LeafForm,
): Spray[] {
  const sprays: Spray[] = [];
  const add = (rim: Point, angle: number, size: number, out: number): void => {
    const length = form.length * size;
    const foot = {
      x: rim.x - (1 - out) * length * Math.cos(angle),
      y: rim.y - (1 - out) * length * Math.sin(angle),
    };
    const width = Math.max(form.width, 0.42 * length);
    const headingDeg = (angle * 180) / Math.PI;
    const tip = {
      x: rim.x + out * length * Math.cos(angle),
      y: rim.y + out * length * Math.sin(angle),
    };
    sprays.push({ outline: leaf({ ...form, length, width }, foot, headingDeg), tip, headingDeg });
  };
  const heading = (p: Point, q: Point): number => Math.atan2(q.y - p.y, q.x - p.x);
  const count = Math.max(2, Math.round(reach / (form.length * SPRAY_STEP)));
  const line = alongSmooth(STATIONS.map(under), 5);
  for (let k = 0; k < count; k++) {
    const t = 0.06 + (0.92 * (k + random.between(0.15, 0.85))) / count;
    const i = Math.min(line.length - 2, Math.floor(t * (line.length - 1)));
    const turn = side * random.between(0.4, 0.95) * (1 - 0.55 * t);
    const size = random.between(0.75, 1.3) * (1.1 - 0.35 * t);
    if (t > 0.5 || random.chance(0.35))
      add(line[i], heading(line[i], line[i + 1]) + turn, size, t < 0.5 ? 0.35 : 0.55);
  }
  for (let k = 0; k < Math.round(count / 2); k++) {
    const t = random.between(0.35, 0.95);
    const turn = -side * random.between(0.25, 0.5);
    add(
      place(t, 0),
      heading(place(t, 0), place(t + 0.05, 0)) + turn,
      random.between(0.6, 0.85),
      0.6,
    );
  }
  add(place(1, 0), heading(place(0.85, 0), place(1, 0)), 1, 0.4);
  return sprays;
}
