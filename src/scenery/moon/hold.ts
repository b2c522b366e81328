import { union } from '../../geometry/boolean/boolean.js';
import { circle } from '../../geometry/primitives.js';
import { inverse, movePoint, moveRegion } from '../../geometry/transform.js';
import type { Point, Region } from '../../geometry/types.js';
import { mix, shapeOf } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { type LimbNode, limb } from '../limb.js';
import type { Random } from '../random.js';
import { billowOf } from '../sky/billow.js';
import type { Sky } from '../sky/upright.js';
import type { Disc } from './disc.js';

/** A stay is this many webs broad, and spreads at both its ends. */
const STAY = 1.35;
const SPREAD = 2.4;

/** Stays from places on the disc straight into the frame, each a little splayed. */
export function staysOf(plot: Plot, disc: Disc, ends: readonly Point[], random: Random): Region {
  const { smallestWeb } = plot;
  const stays = ends.map((end, i): Region => {
    const splay = (end.x - disc.centre.x) * random.branch(i).between(0.15, 0.4);
    const foot = { x: end.x + splay, y: plot.root };
    const at = (t: number, webs: number) => ({
      x: mix(foot.x, end.x, t),
      y: mix(foot.y, end.y, t),
      thickness: webs * smallestWeb,
    });
    const edge = plot.root / (plot.root - end.y);
    return shapeOf(
      limb([
        at(0, SPREAD),
        at(edge, SPREAD),
        at(mix(edge, 1, 0.3), STAY),
        at(0.9, STAY),
        at(1, STAY),
      ]),
    );
  });
  const beads = ends.flatMap((end, i) => {
    const luck = random.branch(`bead ${i}`);
    const free = -end.y - disc.radius * 0.4;
    if (free < 9 * smallestWeb) return [];
    const t = luck.between(0.35, 0.65);
    const splay = (end.x - disc.centre.x) * random.branch(i).between(0.15, 0.4);
    const edge = plot.root / (plot.root - end.y);
    const along = mix(edge, 1, t);
    const at = { x: mix(end.x + splay, end.x, along), y: mix(plot.root, end.y, along) };
    return [circle(at.x, at.y, luck.between(1.2, 1.6) * smallestWeb)];
  });
  return union([...stays, ...beads]);
}

/** How far below the disc's middle the band crosses it, and how thick it is there, in radii. */
const CROSSES = 0.34;
const THICK = 0.27;
/** Bands run on this far behind a jamb, mm. */
const BEHIND_MM = 7;
/** A fork leaves the band this far from the disc's middle and ends so far past it, in radii. */
const FORK = { from: 0.35, past: [1.5, 2.1] } as const;
/** Forks need a disc of this radius, in webs. */
const FORKED_WEBS = 4.5;

/** How far a bank reaches to each side, in the disc's reach, and how near to its middle, in radii. */
const BANK_REACH = 2.1;
const BANK_HIDES = 0.2;

/** Whether bands can run to both jambs, or start from the jamb that the disc hangs from. */
export function isBanded(plot: Plot, sky: Sky): boolean {
  if (plot.side === 'left' || plot.side === 'right') return true;
  const near = 2 * plot.smallestHole;
  return sky.box.minX <= sky.opening.minX + near && sky.box.maxX >= sky.opening.maxX - near;
}

/** Where the band crosses the disc, upright. */
export const crossingOf = (sky: Sky, disc: Disc): Point => {
  const { x, y } = movePoint(disc.centre, inverse(sky.toPlot));
  return { x, y: y + CROSSES * disc.radius };
};

/**
 * A long drifting band of cloud that crosses the disc, from jamb to jamb or out from the jamb that
 * the disc hangs from, with forks that drift off it: one below, and one above where `both`.
 */
export function bandsOf(plot: Plot, sky: Sky, disc: Disc, both: boolean, random: Random): Region[] {
  const at = crossingOf(sky, disc);
  const { radius } = disc;
  const { smallestWeb, smallestHole } = plot;
  const { box, opening } = sky;
  const thick = Math.max(1.9 * smallestWeb, THICK * radius);
  const far = radius * random.between(1.4, 1.8);
  const from = plot.side === 'right' ? Math.max(box.minX, at.x - far) : opening.minX - BEHIND_MM;
  const to = plot.side === 'left' ? Math.min(box.maxX, at.x + far) : opening.maxX + BEHIND_MM;
  const ends = { from, to, at, thick };
  const band = wisp(passing(ends, plot, random.branch('band')));
  if (radius < FORKED_WEBS * smallestWeb) return [moveRegion(band, sky.toPlot)];
  const drop = 0.85 * thick + Math.max(1.5 * smallestHole, 0.16 * radius);
  const hand = random.chance(0.5) ? 1 : -1;
  const forks = [
    { hand, drop },
    { hand: -hand, drop: -drop },
  ].slice(0, both ? 2 : 1);
  const drifting = forks.map((fork, i): Region => {
    const luck = random.branch(`fork ${i}`);
    const x = at.x + fork.hand * FORK.from * radius;
    const past = at.x + fork.hand * radius * luck.between(...FORK.past);
    const end = Math.min(box.maxX - smallestWeb, Math.max(box.minX + smallestWeb, past));
    const y = at.y + fork.drop;
    const thickness = 0.8 * thick;
    return wisp([
      { x: at.x, y: at.y, thickness },
      { x: mix(x, end, 0.12), y: at.y + 0.7 * fork.drop, thickness },
      { x: mix(x, end, 0.35), y, thickness },
      {
        x: mix(x, end, 0.7),
        y: y + 0.05 * radius,
        thickness: mix(thickness, 1.2 * smallestWeb, 0.4),
      },
      { x: end, y, thickness: 1.2 * smallestWeb },
    ]);
  });
  return [band, ...drifting].map((region) => moveRegion(region, sky.toPlot));
}

interface Passing {
  readonly from: number;
  readonly to: number;
  readonly at: Point;
  readonly thick: number;
}

/** The band's middle line: full at the disc, thinner and swaying towards its ends. */
function passing({ from, to, at, thick }: Passing, plot: Plot, luck: Random): LimbNode[] {
  const least = 1.3 * plot.smallestWeb;
  const sway = () => luck.between(-0.5, 0.5) * thick;
  const node = (x: number, swell: number, y: number) => ({
    x,
    y: at.y + y,
    thickness: Math.max(least, thick * swell),
  });
  const [left, right] = [at.x - from, to - at.x];
  return [
    node(from, 0.5, sway()),
    node(at.x - 0.66 * left, 0.62, sway()),
    node(at.x - 0.33 * left, 0.95, 0.4 * sway()),
    node(at.x, 1, 0),
    node(at.x + 0.33 * right, 0.95, 0.4 * sway()),
    node(at.x + 0.66 * right, 0.62, sway()),
    node(to, 0.5, sway()),
  ];
}

const wisp = (nodes: readonly LimbNode[]): Region => shapeOf(limb(nodes));

/** A bank of cloud that billows in from the foot and hides the nearer part of the disc. */
export function bankOf(plot: Plot, disc: Disc, random: Random): Region {
  const half = Math.min(plot.width / 2, BANK_REACH * disc.reach);
  // The disc stands over its bank for all that.
  const most = Math.max(0, half - disc.reach);
  const free = random.between(-0.25, 0.25) * Math.max(0, plot.width / 2 - disc.reach);
  const aside = Math.max(-most, Math.min(most, free));
  const left = Math.max(-plot.width / 2, aside - half);
  const right = Math.min(plot.width / 2, aside + half);
  const heap = {
    left,
    right,
    summit: -left / (right - left),
    base: plot.root,
    top: disc.centre.y + BANK_HIDES * disc.radius,
  };
  return billowOf(heap, 1.3 * plot.smallestWeb, random).region;
}
