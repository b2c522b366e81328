import { subtract, union } from '../../geometry/boolean/boolean.js';
import { circle } from '../../geometry/primitives.js';
import type { Point, Region } from '../../geometry/types.js';
import { shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';

export const FORMS = ['moon', 'crescent', 'sun'] as const;
export type Form = (typeof FORMS)[number];
export const HOLDS = ['cloud', 'stays', 'edge'] as const;
export type Hold = (typeof HOLDS)[number];

/** Where the disc hangs, in the plot's coordinates, and how far its rays reach, mm. */
export interface Disc {
  readonly centre: Point;
  readonly radius: number;
  readonly reach: number;
}

/** A disc is never smaller than this many webs in radius. */
const LEAST_WEBS = 1.7;
/** A sun's disc as a share of its rays' reach. */
const SUN = 0.52;
/** How far a disc that the edge cuts stands out of it, in its radii. */
const RISEN = { moon: 0.42, sun: 0.1 } as const;
/** A crescent stands out at least so far, and is never hidden beyond this share of its thickness. */
const CRESCENT = { risen: 0.62, hidden: 0.9 } as const;
/** A bank of cloud that carries a disc is no taller than this many of its widths. */
const BANK = 0.4;

/** A sun that sinks behind cloud takes up this much below its middle, in radii. */
const SINKS = 1;

export interface Shown {
  readonly form: Form;
  readonly held: Hold;
  /** Of a crescent: a share of its width. */
  readonly thickness: number;
  /** Held by a band from jamb to jamb, not by a bank. */
  readonly banded: boolean;
}

export function discOf(plot: Plot, { form, held, thickness, banded }: Shown): Disc {
  const { width, height, smallestWeb } = plot;
  const isSun = form === 'sun';
  const risen =
    form === 'crescent' ? Math.max(CRESCENT.risen, 1 - CRESCENT.hidden * thickness) : RISEN[form];
  const most = { cloud: isSun ? 0.62 : 0.42, stays: 0.42, edge: 1 / (1 + risen) }[held];
  const across = held === 'cloud' && !isSun ? 0.42 : 0.5;
  const reach = Math.max(LEAST_WEBS * smallestWeb, Math.min(across * width, most * height));
  const radius = Math.max(LEAST_WEBS * smallestWeb, isSun ? SUN * reach : reach);
  const below = isSun && held === 'cloud' ? SINKS * radius : reach;
  const highest = held === 'cloud' && !banded ? BANK * width + 0.5 * radius : Infinity;
  const depth = held === 'edge' ? risen * reach : Math.min(highest, Math.max(height - below, 0));
  return { centre: { x: 0, y: -depth }, radius, reach: Math.max(reach, radius) };
}

/** The inner edge of a crescent as a share of its radius. */
const INNER = 0.86;

/** A crescent whose lit side faces `litDeg` (0 = right, 90 = down), `thick` of its width. */
export function crescentOf(disc: Disc, thick: number, litDeg: number): Region {
  const { centre, radius } = disc;
  const shift = (2 * thick - 1 + INNER) * radius;
  const a = (litDeg * Math.PI) / 180;
  const dark = circle(
    centre.x - shift * Math.cos(a),
    centre.y - shift * Math.sin(a),
    INNER * radius,
  );
  return subtract(circle(centre.x, centre.y, radius), [dark]);
}

/** Rays keep at least this much of a turn to themselves, in webs and holes at the disc's edge. */
const BASE = 0.72;
const SHORT = [0.56, 0.7] as const;

/**
 * Rays round a sun, alternating long and short, tapered to no less than the web. Those that point
 * within `runOnDeg` of the foot run on into the frame.
 */
export function raysOf(
  plot: Plot,
  disc: Disc,
  wanted: number,
  runOnDeg: number,
  random: Random,
): Region {
  const { smallestWeb, smallestHole } = plot;
  const { centre, radius, reach } = disc;
  const room = 1.5 * smallestWeb + smallestHole;
  const most = 2 * Math.floor((Math.PI * radius) / room);
  const count = Math.max(6, Math.min(2 * Math.round(wanted / 2), most));
  const turn = random.pick([0, 180 / count]);
  const rays = Array.from({ length: count }, (_, i): Region => {
    const luck = random.branch(i);
    const deg = 90 + turn + ((i + 0.12 * luck.between(-1, 1)) * 360) / count;
    const a = (deg * Math.PI) / 180;
    const [ux, uy] = [Math.cos(a), Math.sin(a)];
    const fromFoot = Math.abs(((((deg - 90 + 180) % 360) + 360) % 360) - 180);
    const runsOn = fromFoot <= runOnDeg;
    const share = i % 2 === 0 ? luck.between(0.94, 1) : luck.between(...SHORT);
    const free = radius + (reach - radius) * share;
    const end = runsOn ? (plot.root - centre.y) / uy : free;
    const base = Math.max(1.5 * smallestWeb, (BASE * 2 * Math.PI * radius) / count);
    const tip = Math.max(1.14, runsOn ? 1.4 : 0) * smallestWeb;
    const at = (r: number, thickness: number) => ({
      x: centre.x + ux * r,
      y: centre.y + uy * r,
      thickness: Math.max(tip, thickness),
    });
    const inner = radius * 0.85;
    const last = runsOn ? end : end - tip / 2;
    return shapeOf(
      limb([at(inner, base), at(radius + (end - radius) * 0.4, base * 0.62), at(last, tip)]),
    );
  });
  return union(rays);
}
