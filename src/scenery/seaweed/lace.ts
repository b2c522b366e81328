import type { Cubics } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { limb } from '../limb.js';
import type { Random } from '../random.js';
import { type Forking, forked } from './fork.js';
import { type Holdfast, type Shoot, shootsOf } from './stand.js';
import type { Weed } from './weed.js';
import { inPlace, scaled, topOf } from './wrack.js';

/** Shoots of a plant lean out from each other by this, degrees. */
const APART_DEG = 46;
type Flow = (upMm: number) => number;

/** Branching fans: twigs as fine as the process cuts, fewer forks where it is coarse. */
export function lace(at: Holdfast, flow: Flow, plot: Plot, random: Random): Weed {
  const card = shootsOf(at, APART_DEG, 3, random).flatMap((shoot) =>
    fan(at.x, shoot, flow, plot, random.branch(`fan ${shoot.key}`)),
  );
  return { card, floats: [], ribs: [] };
}

function fan(x: number, shoot: Shoot, flow: Flow, plot: Plot, random: Random): Cubics[] {
  const { smallestWeb: web, smallestHole: hole, fineness } = plot;
  const { heightMm } = shoot;
  const levels = forksFor(heightMm, plot);
  const stem = Math.max(1.5 * web, 0.055 * heightMm);
  const fine = 1.2 * web;
  const forking: Forking = {
    levels,
    openDeg: [19, 29],
    firstMm: heightMm / (0.9 * levels + 0.9),
    shorter: 0.92,
    thickness: (level) => Math.max(fine, mix(stem, fine, Math.min(1, level / levels))),
    again: mix(0.86, 0.94, fineness),
    upright: 0.22,
  };
  const stretches = forked(forking, shoot.leanDeg, random.branch('fork'));
  const scale = (heightMm - 0.5 * hole) / topOf(stretches);
  return stretches.map((s) => limb(inPlace(scaled(s.nodes, scale), x, flow)));
}

/** How often a fan of this height may fork before its twigs stand too close to be cut. */
export function forksFor(heightMm: number, { smallestWeb, smallestHole, fineness }: Plot): number {
  const each = (1.2 * smallestWeb + smallestHole) * mix(1.25, 1, fineness);
  // The twigs of a fan end on an arc about as long as each is high.
  const twigs = heightMm / each;
  return Math.max(1, Math.min(5, Math.floor(Math.log2(Math.max(2, twigs)))));
}
