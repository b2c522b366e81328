import type { Cubics, Line, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { lengthOf } from '../grass/arc.js';
import { type Arc, arcLine, pointOn, ribbon, subArc, taper, wayOn } from '../grass/ribbon.js';
import type { Random } from '../random.js';

export const KINDS = ['feather', 'bracken', 'tongue'] as const;
export type Kind = (typeof KINDS)[number];

export interface Frond {
  readonly outlines: readonly Cubics[];
  readonly rib: Line;
}

/** How a frond is made: its half breadth as a share of its length, where along it that is. */
interface Form {
  readonly half: number;
  readonly widest: number;
  /** Bare stalk below the first pinna, as a share of the length. */
  readonly stalk: number;
  /** Degrees between the rachis and its pinnae, at the foot and at the tip. */
  readonly open: readonly [number, number];
}

const FORMS: Record<Kind, Form> = {
  feather: { half: 0.13, widest: 0.42, stalk: 0.2, open: [82, 42] },
  bracken: { half: 0.2, widest: 0.24, stalk: 0.32, open: [76, 48] },
  tongue: { half: 0.075, widest: 0.5, stalk: 0.12, open: [0, 0] },
};
/** From pinna to pinna, in smallest webs and holes and at the least as a share of the length. */
const PITCH = { webs: 1.14, holes: 1.12, share: 0.075 };
/** A pinna's share of its pitch at its foot: more and the frond closes, less and it is a comb. */
const FULL = 0.36;
/** A rachis is at most this many times as long as wide. Common practice, no source. */
const SLENDER = 15;

/** Half a frond's breadth at its broadest, mm: never less than shows between two cuts. */
export const halfBreadth = (kind: Kind, lengthMm: number, smallestWeb: number): number =>
  Math.max(FORMS[kind].half * lengthMm, (kind === 'tongue' ? 1.1 : 2.2) * smallestWeb);

/** How broad a frond is, from its stalk (0) to its tip (1), as a share of its broadest. */
export function breadthAt(kind: Kind, t: number): number {
  const { widest } = FORMS[kind];
  if (t < widest)
    return mix(kind === 'bracken' ? 0.9 : 0.5, 1, Math.sin((t / widest) * (Math.PI / 2)));
  return Math.max(0, 1 - ((t - widest) / (1 - widest)) ** 1.7);
}

/** One frond along its rachis: pinnae on both sides, or an undivided strap. */
export function frond(arc: Arc, kind: Kind, plot: Plot, random: Random): Frond {
  const length = lengthOf(arc);
  const { smallestWeb: web } = plot;
  const foot = Math.max(0.62 * web, length / SLENDER / 2);
  const form = FORMS[kind];
  const rib = arcLine(arc, form.stalk, 0.8);
  if (kind === 'tongue') return { outlines: strap(arc, length, foot, web, random), rib };
  const rachis = ribbon(subArc(arc, 0, 0.97), taper(foot, 0.58 * web, 1.2), 'round');
  return { outlines: [rachis, ...pinnae(arc, kind, plot, random)], rib };
}

function pinnae(arc: Arc, kind: Kind, plot: Plot, random: Random): Cubics[] {
  const length = lengthOf(arc);
  const { smallestWeb: web, smallestHole: hole, fineness } = plot;
  const form = FORMS[kind];
  const coarser = mix(1.15, 1, fineness);
  const pitch = Math.max(PITCH.webs * web + PITCH.holes * hole, PITCH.share * length) * coarser;
  const half = halfBreadth(kind, length, web);
  const count = Math.floor(((1 - form.stalk) * length - 0.4 * pitch) / pitch);
  const drawn: Cubics[] = [];
  for (let i = 0; i < count; i++) {
    for (const side of [-1, 1]) {
      const luck = random.branch(`${i} ${side}`);
      // Pinnae of the two sides stand a little apart, as alternate ones do.
      const place = (i + 0.4 + 0.16 * side + luck.between(-0.07, 0.07)) * pitch;
      const s = place / ((1 - form.stalk) * length);
      const t = form.stalk + s * (1 - form.stalk);
      const tip = Math.max(0.57 * web, 0.16 * pitch);
      const reach = Math.max(
        half * breadthAt(kind, s) * luck.between(0.92, 1.06),
        tip + 0.75 * web,
      );
      if ((1 - t) * length < pitch) continue;
      drawn.push(pinna(arc, t, side, mix(...form.open, s), reach - tip, pitch, tip));
    }
  }
  return drawn;
}

/** Broad where it is fused to the rachis, curved toward the frond's tip, round at its end. */
function pinna(
  arc: Arc,
  t: number,
  side: number,
  openDeg: number,
  reach: number,
  pitch: number,
  tip: number,
): Cubics {
  const from = pointOn(arc, t);
  const way = wayOn(arc, t);
  const along = (deg: number, mm: number): Point => {
    const a = (side * deg * Math.PI) / 180;
    return {
      x: mm * (way.x * Math.cos(a) - way.y * Math.sin(a)),
      y: mm * (way.x * Math.sin(a) + way.y * Math.cos(a)),
    };
  };
  const [a, b] = [along(openDeg, 0.55 * reach), along(openDeg - 16, 0.48 * reach)];
  const control = { x: from.x + a.x, y: from.y + a.y };
  const to = { x: control.x + b.x, y: control.y + b.y };
  // A short one widens no faster than it is long: its sides would cross.
  const foot = Math.max(tip, Math.min(FULL * pitch, tip + 0.25 * reach));
  return ribbon({ from, control, to }, taper(foot, tip, 2), 'round');
}

/** Waves along a strap's edge. */
const WAVES = 4;

/** An undivided frond: a strap that narrows to both ends, its edges waving a little. */
function strap(arc: Arc, length: number, foot: number, web: number, random: Random): Cubics[] {
  const half = halfBreadth('tongue', length, web);
  const { stalk } = FORMS.tongue;
  const lobes = Array.from({ length: WAVES }, (_, i) => {
    const luck = random.branch(i);
    const t0 = stalk + (0.9 - stalk) * ((i - 0.35) / WAVES);
    const t1 = stalk + (0.9 - stalk) * ((i + 1.5) / WAVES);
    const swell = half * [0.82, 1, 1, 0.8][i] * luck.between(0.94, 1.08);
    const part = subArc(arc, Math.max(0.02, t0), Math.min(1, t1));
    return ribbon(
      part,
      {
        half: (t) => mix(0.5, 1, Math.sin(Math.PI * t)) * swell,
        slope: (t) => 0.5 * Math.PI * Math.cos(Math.PI * t) * swell,
      },
      'round',
    );
  });
  return [ribbon(arc, taper(Math.max(foot, 0.5 * half), 0.58 * web, 3)), ...lobes];
}
