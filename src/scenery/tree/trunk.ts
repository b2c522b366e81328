import { pen, smoothLine } from '../../geometry/pen.js';
import type { Cubics, Line, Point } from '../../geometry/types.js';
import type { Plot } from '../family.js';
import { alongSmooth } from '../limb.js';
import type { Random } from '../random.js';
import type { Branch } from './branches.js';

/** The collar's sides spring from within the trunk, so that they part from its edge smoothly. */
const WITHIN = 0.44;
/** A collar leans no further aside than it is high. */
const MOST_LEAN = 1;

/** So far (mm) a foot runs in behind the jamb that it grows from, however thin the trunk. */
const BEHIND_JAMB_MM = 2.2;

/** The foot of a trunk, spreading into the ground unevenly and running down to the plot's root. */
export function collarAt(trunk: Branch, { root, side: grows }: Plot, random: Random): Cubics {
  const d = trunk.thickness;
  const [, foot, next] = trunk.points;
  const rises = foot.y - next.y;
  // The first bough of a tiny tree may leave at the ground or below it.
  const lean = rises <= 0 ? 0 : bounded((next.x - foot.x) / rises, MOST_LEAN);
  const side = (sign: number) => ({
    half: sign * WITHIN * d,
    spread: sign * d * (WITHIN + random.between(0.5, 0.95)),
    rise: d * random.between(1.1, 1.7),
  });
  const [left, right] = [side(-1), side(1)];
  const at = (x: number, y: number): Point => ({ x: foot.x + x - lean * y, y });
  const points = [left, right].map(({ half, spread, rise }) => ({
    top: at(half, -rise),
    bend: at(half, -0.4 * rise),
    sole: { x: foot.x + spread * 0.75, y: -0.16 * d },
    toe: { x: behindJamb(foot.x + spread, grows), y: 0.3 },
  }));
  const [l, r] = points;
  return pen(l.toe.x, root)
    .lineTo(l.toe.x, l.toe.y)
    .curveTo(l.sole.x, l.sole.y, l.bend.x, l.bend.y, l.top.x, l.top.y)
    .lineTo(r.top.x, r.top.y)
    .curveTo(r.bend.x, r.bend.y, r.sole.x, r.sole.y, r.toe.x, r.toe.y)
    .lineTo(r.toe.x, root)
    .close();
}

/** The place of a toe, moved further behind the jamb if it is the one that stands there. */
function behindJamb(x: number, grows: Plot['side']): number {
  if (grows === 'left' && x < 0) return Math.min(x, -BEHIND_JAMB_MM);
  return grows === 'right' && x > 0 ? Math.max(x, BEHIND_JAMB_MM) : x;
}

/** Where bark lines run across the trunk, in its thickness, by how thick it is in mm. */
const TRACKS: readonly { above: number; tracks: readonly number[] }[] = [
  { above: 6, tracks: [-0.24, 0.04, 0.27] },
  { above: 4, tracks: [-0.15, 0.17] },
  { above: 0, tracks: [0.02] },
];
/** Bark lines spread over this share of the trunk above its foot. */
const SPREADING = 0.18;

/** Bark: a few broken lines that follow the trunk and fan out a little at its foot. */
export function barkLines(trunk: Branch, random: Random): Line[] {
  const d = trunk.thickness;
  const axis = alongSmooth(trunk.points.slice(1), 4);
  const { tracks } = TRACKS.find(({ above }) => d > above) ?? TRACKS[TRACKS.length - 1];
  return tracks.flatMap((track, i) => {
    const r = random.branch(i);
    const lines: Line[] = [];
    let from = r.between(0.02, 0.2);
    for (let k = 0; k < 3; k++) {
      const to = Math.min(0.97, from + r.between(0.3, 0.6));
      const sway = r.between(-0.03, 0.03);
      const points = [0, 0.5, 1].map((f, n) => {
        const t = from + f * (to - from);
        const fan = 1 + Math.max(0, SPREADING - t) / SPREADING;
        return beside(axis, t, d * (track * fan + (n % 2 ? sway : -sway)));
      });
      if (to - from > 0.1) lines.push(smoothLine(points));
      from = to + r.between(0.08, 0.22);
    }
    return lines;
  });
}

/** Dashes follow each other in this many trunk thicknesses. */
const DASH_STEP: readonly [number, number] = [0.45, 1];

/** Marks where bark peels: short level strokes that sag a little, by ones and twos up the trunk. */
export function barkDashes(trunk: Branch, random: Random): Line[] {
  const d = trunk.thickness;
  const axis = alongSmooth(trunk.points.slice(1), 4);
  const rise = Math.abs(axis[axis.length - 1].y - axis[0].y);
  const dashes: Line[] = [];
  let up = 0.5 * d;
  for (let k = 0; up < rise && k < 40; k++) {
    const r = random.branch(k);
    const half = d * r.between(0.16, 0.34);
    const middle = d * r.between(-0.14, 0.14);
    const at = (aside: number, lower: number): Point =>
      beside(axis, (up - lower) / rise, middle + aside);
    dashes.push(smoothLine([at(-half, 0), at(0, 0.05 * d), at(half, 0.01 * d)]));
    up += d * (r.chance(0.3) ? 0.22 : r.between(...DASH_STEP));
  }
  return dashes;
}

/** The point at share t of a polyline, moved `aside` mm to its right. */
function beside(axis: readonly Point[], t: number, aside: number): Point {
  const f = t * (axis.length - 1);
  const i = Math.min(axis.length - 2, Math.floor(f));
  const [a, b] = [axis[i], axis[i + 1]];
  const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return {
    x: a.x + (f - i) * (b.x - a.x) - (aside * (b.y - a.y)) / length,
    y: a.y + (f - i) * (b.y - a.y) + (aside * (b.x - a.x)) / length,
  };
}

const bounded = (value: number, most: number): number => Math.max(-most, Math.min(most, value));
