import { polyline } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Region } from '../../geometry/types.js';
import { inStrokes, shape } from '../brick/craft.js';
import { type Built, joinBuilt, NOTHING } from '../cottage/plan.js';
import type { Random } from '../random.js';
import { edgeAnchor, lightsIn, merlonHeight, merlons, type Site } from './parts.js';

/** Height of the curtain wall and of its corner turrets as shares of the whole. */
const CURTAIN = [0.36, 0.42] as const;
const TURRET = [0.56, 0.64] as const;
/** The parapet stands out on corbels by this share of the tower's half width. */
const CORBEL = 0.17;
const BATTER = 0.12;
/** A turret's width for the tower's, and the curtain's length from which it is built, in turrets. */
const TURRET_WIDE = 0.62;
const TURRET_FROM = 2.2;

/** A keep with battlements; curtain walls and turrets beside it where there is room. */
export function castleOn(site: Site, random: Random): Built {
  const { plot, half, left, right, hand } = site;
  const keep = towerAt(site, 0, half, plot.height, random.branch('keep'));
  const curtain = plot.height * random.between(...CURTAIN);
  const sides = [left, right].map((end): Built => {
    const way = Math.sign(end);
    const long = Math.abs(end) - half;
    if (long < 3 * plot.smallestWeb) return NOTHING;
    const luck = random.branch(`side ${way}`);
    const wide = Math.max(half * TURRET_WIDE, 2 * plot.smallestWeb);
    const high = plot.height * luck.between(...TURRET) * (way === hand ? 1 : 0.86);
    const hasTurret = long > TURRET_FROM * 2 * wide;
    const wall = curtainTo(site, end, hasTurret ? 2 * wide : 0, curtain, luck);
    const corner = end - way * wide * (1 + CORBEL);
    return hasTurret
      ? joinBuilt([wall, towerAt(site, corner, wide, high, luck.branch('turret'))])
      : wall;
  });
  return joinBuilt([keep, ...sides]);
}

/** A tower with a battered foot and a parapet on corbels. */
function towerAt(site: Site, x: number, half: number, high: number, random: Random): Built {
  const { plot } = site;
  const wanted = half * 0.34;
  const crown = merlonHeight(wanted, plot);
  const out = half * (1 + CORBEL);
  const parapet = Math.max(1.2 * plot.smallestWeb, 0.1 * high);
  const top = -(high - crown);
  const corbel = top + parapet;
  const foot = half * (1 + BATTER);
  const shaft = shape([
    { x: x - foot, y: 0.5 },
    { x: x - half, y: -0.22 * high },
    { x: x - half, y: corbel + (out - half) * 0.9 },
    { x: x - out, y: corbel },
    { x: x - out, y: top },
    { x: x + out, y: top },
    { x: x + out, y: corbel },
    { x: x + half, y: corbel + (out - half) * 0.9 },
    { x: x + half, y: -0.22 * high },
    { x: x + foot, y: 0.5 },
  ]);
  const band = polyline([
    { x: x - out, y: corbel },
    { x: x + out, y: corbel },
  ]);
  const upper = { x0: x - half, x1: x + half, y0: 0.78 * corbel, y1: 0.5 * corbel };
  const lower = { x0: x - half, x1: x + half, y0: 0.42 * corbel, y1: 0.12 * corbel };
  const [wide, tall] = [0.34 * half, 0.2 * high];
  return joinBuilt([
    {
      ...NOTHING,
      solids: [shaft, ...merlons(x - out, x + out, top, wanted, plot)],
      lines: inStrokes(band, random),
      anchors: [edgeAnchor(x - half, top * 0.8), edgeAnchor(x + half, top * 0.8)],
    },
    lightsIn(site, upper, 'round', 2, wide, tall),
    lightsIn(site, lower, 'round', 1, wide * 1.2, tall),
  ]);
}

/** The wall from the keep out to `end`, merlons as far as the turret at its end. */
function curtainTo(site: Site, end: number, turret: number, high: number, random: Random): Built {
  const { plot, half } = site;
  const way = Math.sign(end);
  const wanted = half * 0.3;
  const top = -(high - merlonHeight(wanted, plot));
  const inner = way * half * 0.5;
  const [x0, x1] = [inner, end].sort((a, b) => a - b);
  // Merlons keep a gap to the towers that can be cut.
  const gap = Math.max(0.9 * plot.smallestHole, 1.5);
  const [from, to] = [
    way * (half * (1 + CORBEL) + gap),
    end - way * (turret > 0 ? turret * 1.2 + gap : 0),
  ];
  const [m0, m1] = [from, to].sort((a, b) => a - b);
  const crown: Region[] = (to - from) * way > 0 ? merlons(m0, m1, top, wanted, plot) : [];
  const walk = polyline([
    { x: m0, y: top + 2 },
    { x: m1, y: top + 2 },
  ]);
  const gate = { x0: m0, x1: m1, y0: top + 0.12 * high, y1: -0.04 * high };
  const slits = lightsIn(site, gate, 'round', Math.floor((m1 - m0) / 9), 0.24 * half, 0.3 * high);
  return joinBuilt([
    {
      ...NOTHING,
      solids: [rectangle(x0, top, x1 - x0, -top + 0.5), ...crown],
      lines: inStrokes(walk, random),
      anchors: [edgeAnchor(end, top)],
    },
    slits,
  ]);
}
