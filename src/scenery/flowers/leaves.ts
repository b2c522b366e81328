import type { Cubics, Line, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { type Arc, arcLine, pointOn, ribbon, spindle, wayOn } from '../grass/ribbon.js';
import type { Random } from '../random.js';
import { bedHeight, type Stem, type Tuft } from './bed.js';
import type { HeadKind } from './head.js';

export type Arrangement = 'alternate' | 'opposite';

/** A leaf and its midrib. */
export interface Leaf {
  readonly outline: Cubics;
  readonly rib: Line;
}

/** Breadth as a share of the length, and length as a share of the bed's height. */
const FORMS: Record<HeadKind, { breadth: number; length: number; basal: number; fan: number }> = {
  daisy: { breadth: 0.36, length: 0.2, basal: 0.3, fan: 52 },
  umbel: { breadth: 0.32, length: 0.22, basal: 0.32, fan: 52 },
  spike: { breadth: 0.26, length: 0.24, basal: 0.34, fan: 46 },
  tulip: { breadth: 0.2, length: 0.4, basal: 0.62, fan: 30 },
};
/** Where on a stem leaves are borne, how far they stand off it and their tips bend over, degrees. */
const LEAFY_STEM: Bearing = { borne: [0.2, 0.78], open: [38, 58], bend: [10, 45] };
const SHEATHED_STEM: Bearing = { borne: [0.04, 0.24], open: [18, 32], bend: [6, 24] };

type Span = readonly [number, number];
interface Bearing {
  readonly borne: Span;
  readonly open: Span;
  readonly bend: Span;
}

/** A leaf from its foot along a heading (0 = right, 90 = down) that bends by `bendDeg` to its tip. */
function leafAt(
  foot: Point,
  headingDeg: number,
  bendDeg: number,
  lengthMm: number,
  breadth: number,
  smallestWeb: number,
): Leaf {
  const way = (deg: number, mm: number): Point => ({
    x: mm * Math.cos((deg * Math.PI) / 180),
    y: mm * Math.sin((deg * Math.PI) / 180),
  });
  const [a, b] = [way(headingDeg, lengthMm / 2), way(headingDeg + bendDeg, lengthMm / 2)];
  const arc: Arc = {
    from: foot,
    control: { x: foot.x + a.x, y: foot.y + a.y },
    to: { x: foot.x + a.x + b.x, y: foot.y + a.y + b.y },
  };
  const half = Math.max(0.8 * smallestWeb, (breadth * lengthMm) / 2);
  return {
    outline: ribbon(arc, spindle(0.57 * smallestWeb, half, 0.5), 'round'),
    rib: arcLine(arc, 0.18, 0.78),
  };
}

const headingOf = ({ x, y }: Point): number => (Math.atan2(y, x) * 180) / Math.PI;

/** Leaves up a stem: by turns left and right, or in pairs. */
export function stemLeaves(
  stem: Stem,
  plot: Plot,
  leafy: number,
  arrangement: Arrangement,
  random: Random,
): Leaf[] {
  const form = FORMS[stem.kind];
  const { borne, open, bend } = stem.kind === 'tulip' ? SHEATHED_STEM : LEAFY_STEM;
  const longest = Math.max(3.2 * plot.smallestWeb, form.length * bedHeight(plot));
  // Two leaves on one side stand far enough apart to show the sky between them.
  const room = (2 * 0.5 * form.breadth * longest + plot.smallestHole) * mix(1.3, 1, plot.fineness);
  const stretch = (borne[1] - borne[0]) * Math.abs(stem.arc.to.y - stem.arc.from.y);
  const most = stem.kind === 'tulip' ? 1 : Math.floor(stretch / room);
  const nodes = Math.min(6, Math.round(most * mix(0, 1, leafy)));
  const count = arrangement === 'opposite' ? nodes : 2 * nodes;
  const first = random.chance(0.5) ? 1 : -1;
  return Array.from({ length: count }, (_, i) => {
    const luck = random.branch(i);
    const t = mix(...borne, (i + luck.between(0.3, 0.7)) / count);
    const size = longest * mix(1, 0.6, t) * luck.between(0.85, 1.1);
    const heading = headingOf(wayOn(stem.arc, t));
    const sides = arrangement === 'opposite' ? [1, -1] : [i % 2 ? -first : first];
    return sides.map((side) => {
      const [off, over] = [luck.between(...open), luck.between(...bend)];
      const foot = pointOn(stem.arc, t);
      return leafAt(foot, heading + side * off, side * over, size, form.breadth, plot.smallestWeb);
    });
  }).flat();
}

/** Leaves that fan out from the foot of a tuft. */
export function basalLeaves(tuft: Tuft, plot: Plot, leafy: number, random: Random): Leaf[] {
  const form = FORMS[tuft.kind];
  const count = 2 + Math.round(leafy * mix(2, 5, plot.fineness));
  const turn = random.between(-8, 8);
  return Array.from({ length: count }, (_, i) => {
    const luck = random.branch(i);
    const fan = count > 1 ? (2 * i) / (count - 1) - 1 : 0;
    const heading = -90 + turn + fan * form.fan + luck.between(-7, 7);
    const size =
      Math.max(3.4 * plot.smallestWeb, form.basal * bedHeight(plot)) *
      mix(1, 0.72, Math.abs(fan)) *
      luck.between(0.78, 1.15);
    const foot = { x: tuft.x + fan * 0.12 * size, y: 0 };
    const bend = Math.sign(fan || turn) * luck.between(8, 50);
    return leafAt(foot, heading, bend, size, 0.8 * form.breadth, plot.smallestWeb);
  });
}
