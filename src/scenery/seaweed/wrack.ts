import { smoothLine } from '../../geometry/pen.js';
import { circle, ellipse } from '../../geometry/primitives.js';
import { inOrder, moveCubics, rotation, translation } from '../../geometry/transform.js';
import type { Cubics, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { type LimbNode, limb } from '../limb.js';
import type { Random } from '../random.js';
import { type Forking, forked, type Stretch } from './fork.js';
import { carried, type Holdfast, type Shoot, shootsOf } from './stand.js';
import type { Weed } from './weed.js';

type Flow = (upMm: number) => number;

/** A stretch moved to its holdfast and carried by the current. */
export const inPlace = (nodes: readonly LimbNode[], x: number, flow: Flow): LimbNode[] =>
  nodes.map((n) => ({ ...carried(flow, x + n.x, -n.y), thickness: n.thickness }));

/** The height of a forking plant, mm, as drawn without the current. */
export const topOf = (stretches: readonly Stretch[]): number =>
  Math.max(...stretches.flatMap((s) => s.nodes.map((n) => -n.y)));

/** Shoots of a plant lean out from each other by this, degrees. */
const APART_DEG = 44;

/** Flat blades that fork in two, with a midrib, bladders in pairs and swollen tips. */
export function wrack(at: Holdfast, flow: Flow, plot: Plot, random: Random): Weed {
  const count = at.heightMm > 11 * plot.smallestWeb ? 3 : 2;
  const drawn = shootsOf(at, APART_DEG, count, random).map((shoot) =>
    frond(at.x, shoot, flow, plot, random.branch(`frond ${shoot.key}`)),
  );
  return {
    card: drawn.flatMap((d) => d.card),
    floats: drawn.flatMap((d) => d.floats),
    // The middle shoot lies in front.
    ribs: drawn[0].ribs,
  };
}

function frond(x: number, shoot: Shoot, flow: Flow, plot: Plot, random: Random): Weed {
  const { smallestWeb: web, smallestHole: hole } = plot;
  const { heightMm } = shoot;
  const broad = Math.max(1.5 * web, 0.08 * heightMm);
  const room = heightMm / (3.3 * broad + 1.5 * hole);
  const levels = Math.max(1, Math.min(3, Math.floor(room * mix(0.8, 1.1, plot.fineness))));
  const forking: Forking = {
    levels,
    openDeg: [19, 29],
    firstMm: (0.6 * heightMm) / (levels + 0.8),
    shorter: 1.2,
    thickness: (level) => Math.max(1.25 * web, broad * 0.9 ** level),
    again: 0.8,
    upright: 0.5,
  };
  const stretches = forked(forking, shoot.leanDeg, random.branch('fork'));
  const scale = (heightMm - 0.6 * broad) / topOf(stretches);
  const placed = stretches.map((s) => ({
    ...s,
    nodes: inPlace(scaled(s.nodes, scale), x, flow),
  }));
  return {
    card: placed.map((s) => limb(s.nodes)),
    floats: placed.flatMap((s, i) =>
      s.isLast ? tipsOf(s.nodes, web) : bladders(s.nodes, web, s.level, random.branch(`b${i}`)),
    ),
    ribs: placed.map((s) => smoothLine(s.nodes)),
  };
}

/** The nodes further from the foot, or nearer, as thick as before. */
export const scaled = (nodes: readonly LimbNode[], scale: number): LimbNode[] =>
  nodes.map((n) => ({ ...n, x: n.x * scale, y: n.y * scale }));

/** A pair of bladders, one on each side of the midrib. */
function bladders(nodes: readonly LimbNode[], web: number, level: number, luck: Random): Cubics[] {
  if (level !== 1 || !luck.chance(0.75)) return [];
  const { x, y, thickness } = nodes[2];
  const way = wayOf(nodes[1], nodes[3]);
  const r = Math.max(0.75 * web, 0.42 * thickness);
  return [-1, 1].map((side) => {
    const off = side * (0.42 * thickness + 0.3 * r);
    return circle(x - off * way.y, y + off * way.x, r).contours[0];
  });
}

/** The swollen end of a blade: two lobes side by side. */
function tipsOf(nodes: readonly LimbNode[], web: number): Cubics[] {
  const tip = nodes[nodes.length - 1];
  const way = wayOf(nodes[nodes.length - 2], tip);
  const deg = (Math.atan2(way.y, way.x) * 180) / Math.PI;
  const [rx, ry] = [
    Math.max(1.15 * web, 0.85 * tip.thickness),
    Math.max(0.6 * web, 0.36 * tip.thickness),
  ];
  return [-1, 1].map((side) =>
    moveCubics(
      ellipse(0.55 * rx, side * 0.62 * ry, rx, ry).contours[0],
      inOrder(rotation(deg + side * 14), translation(tip.x, tip.y)),
    ),
  );
}

function wayOf(a: Point, b: Point): Point {
  const length = Math.max(1e-9, Math.hypot(b.x - a.x, b.y - a.y));
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
}
