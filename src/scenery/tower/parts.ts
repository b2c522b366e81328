import { pen } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Region } from '../../geometry/types.js';
import { mix, rounded, shapeOf } from '../brick/craft.js';
import type { Anchor } from '../brick/patches.js';
import { type Built, NOTHING } from '../cottage/plan.js';
import type { Plot } from '../family.js';

/** A tower set out on its plot, lengths in mm, y negative upward from the ground. */
export interface Site {
  readonly plot: Plot;
  /** Half the shaft's width. */
  readonly half: number;
  /** Where the lower buildings beside it end: its own sides where there are none. */
  readonly left: number;
  readonly right: number;
  /** The side on which the larger of them stands. */
  readonly hand: -1 | 1;
  /** Openings are cut, not scored. */
  readonly lit: boolean;
}

export type LightForm = 'pointed' | 'round';

/** Card left beside and over an opening, in smallest webs; the least opening in smallest holes. */
const BESIDE_WEBS = 1.15;
const LEAST_HOLES = 1.1;
const CORNER_MM = 0.25;
/** The least that a scored opening may measure, mm. */
const LEAST_SCORED_MM = 2;

/** A face that openings may stand in, with card all round it. */
export interface Face {
  readonly x0: number;
  readonly x1: number;
  readonly y0: number;
  readonly y1: number;
}

/** Up to `count` openings side by side in a face, as many and as large as it can hold. */
export function lightsIn(
  { plot, lit }: Site,
  face: Face,
  form: LightForm,
  count: number,
  wide: number,
  high: number,
): Built {
  const { smallestWeb: web, smallestHole: hole } = plot;
  const beside = lit ? BESIDE_WEBS * web : 2;
  const least = lit ? LEAST_HOLES * hole : LEAST_SCORED_MM;
  const tall = Math.min(high, face.y1 - face.y0 - 2 * beside);
  for (let n = count; n >= 1; n--) {
    const pitch = (face.x1 - face.x0 - beside) / n;
    const broad = Math.min(wide, pitch - beside);
    if (broad < least || tall < Math.max(least, 0.9 * broad)) continue;
    const foot = (face.y0 + face.y1 + tall) / 2;
    const openings = Array.from({ length: n }, (_, k) => {
      const x = (face.x0 + face.x1) / 2 + (k - (n - 1) / 2) * pitch;
      return rounded(arched(x, foot, broad, tall, form), CORNER_MM);
    });
    if (lit) return { ...NOTHING, holes: openings, bare: openings };
    const lines = openings.flatMap((o) => o.contours.map((cubics) => ({ cubics })));
    return { ...NOTHING, lines, bare: openings };
  }
  return NOTHING;
}

/** An opening with a round or a pointed head. */
export function arched(
  x: number,
  foot: number,
  wide: number,
  high: number,
  form: LightForm,
): Region {
  const [l, r] = [x - wide / 2, x + wide / 2];
  const rise = Math.min(form === 'pointed' ? 0.866 * wide : wide / 2, 0.8 * high);
  const top = foot - high;
  const spring = top + rise;
  const p = pen(l, foot).lineTo(l, spring);
  if (form === 'pointed') {
    p.quadTo(l, mix(spring, top, 0.55), x, top).quadTo(r, mix(spring, top, 0.55), r, spring);
  } else {
    const k = 0.5523;
    p.curveTo(l, spring - k * rise, x - (k * wide) / 2, top, x, top);
    p.curveTo(x + (k * wide) / 2, top, r, spring - k * rise, r, spring);
  }
  return shapeOf(p.lineTo(r, foot).close());
}

/** A merlon's width for its height, and its width in webs at least. */
const MERLON = { high: 1.1, webs: 1.1, mm: 2 };

/** Merlons over a parapet whose top is at y, about `wanted` mm broad; none where none fits. */
export function merlons(x0: number, x1: number, y: number, wanted: number, plot: Plot): Region[] {
  const broad = Math.max(MERLON.webs * plot.smallestWeb, MERLON.mm, wanted);
  const gap = Math.max(0.85 * broad, 0.9 * plot.smallestHole);
  const count = Math.floor((x1 - x0 + gap) / (broad + gap));
  if (count < 2) return [];
  // What is left over goes to all alike.
  const scale = (x1 - x0) / (count * broad + (count - 1) * gap);
  const high = merlonHeight(wanted, plot);
  return Array.from({ length: count }, (_, k) =>
    rectangle(x0 + k * (broad + gap) * scale, y - high, broad * scale, high + 0.5),
  );
}

export const merlonHeight = (wanted: number, plot: Plot): number =>
  MERLON.high * Math.max(0.8 * plot.smallestWeb, 1.4, 0.9 * wanted);

/** Joints gather at a plumb edge. */
export const edgeAnchor = (x: number, top: number): Anchor => ({
  x0: x,
  x1: x,
  y0: top,
  y1: 0,
  reach: 7,
  pull: 0.5,
});
