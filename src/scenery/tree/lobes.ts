import type { Point } from '../../geometry/types.js';
import type { Random } from '../random.js';
import { degrees, radians } from './angles.js';
import { CROWN_RATIO, type CrownFrame, crownPoint } from './crown-frame.js';
import type { Clump, Tuft } from './tufts.js';

/** Where a lobe of the crown is to be, in the crown's frame. */
export interface LobePlace extends Point {
  readonly r: number;
}

/** A twig of a lobe, and the clump of leaves at its end. In the crown's frame, angles y up. */
interface Twig {
  readonly at: Point;
  readonly way: Point;
  readonly r: number;
  readonly heading: number;
}

/** A lobe: twigs that fan out from the end of a bough. In the crown's frame. */
export interface Lobe {
  readonly place: LobePlace;
  /** Where the bough ends and the twigs begin. */
  readonly base: Point;
  readonly heading: number;
  readonly twigs: readonly Twig[];
  /** Lobes are laid in rising order of this: mostly low ones first. */
  readonly rank: number;
}

/** Share of its radius at which a lobe's twigs begin, back toward the bough. */
const BASE_BACK = 0.75;
/** Fan of a lobe's twigs, from first to last. */
const FAN_DEG: readonly [number, number] = [105, 135];

/** A lobe that grows away from `from`, with so many twigs. */
export function lobeAt(
  place: LobePlace,
  from: Point,
  twigCount: readonly [number, number],
  random: Random,
): Lobe {
  const heading = Math.atan2(place.y - from.y, place.x - from.x);
  const base = along(place, heading, -BASE_BACK * place.r);
  const count = random.whole(...twigCount);
  const fan = random.between(...FAN_DEG);
  const step = count > 1 ? fan / (count - 1) : 0;
  const twigs = Array.from({ length: count }, (_, i): Twig => {
    const offDeg = (i - (count - 1) / 2) * step + 7 * random.bell();
    const turned = heading + radians(offDeg);
    const shorter = 1.15 - (0.35 * Math.abs(offDeg)) / 60;
    const at = along(base, turned, place.r * shorter * random.between(0.9, 1.12));
    const bow = 0.06 * random.bell() + 0.0016 * offDeg;
    return {
      at,
      way: bowed(base, at, -bow),
      r: place.r * random.between(0.5, 0.66),
      heading: turned,
    };
  });
  return { place, base, heading, twigs, rank: place.y + 0.24 * random.bell() };
}

const along = (p: Point, angle: number, distance: number): Point => ({
  x: p.x + distance * Math.cos(angle),
  y: p.y + distance * Math.sin(angle),
});

/** The middle between two points, moved aside by a share of their distance. */
export const bowed = (a: Point, b: Point, share: number): Point => ({
  x: (a.x + b.x) / 2 - (b.y - a.y) * share,
  y: (a.y + b.y) / 2 + (b.x - a.x) * share,
});

/** How far a clump, leaves included, may reach past its lobe's radius. */
const LOBE_REACH = 1.16;

/** The lobes' places moved and stretched so that the crown fills its frame from `foot` upward. */
export function fitted(places: readonly LobePlace[], foot: number): LobePlace[] {
  const left = Math.min(...places.map((l) => l.x - LOBE_REACH * l.r));
  const right = Math.max(...places.map((l) => l.x + LOBE_REACH * l.r));
  const top = Math.max(...places.map((l) => l.y + LOBE_REACH * l.r));
  const bottom = Math.min(...places.map((l) => l.y - LOBE_REACH * l.r));
  const across = 1 / (right - left);
  const up = (CROWN_RATIO - foot) / (top - bottom);
  return places.map((l) => ({
    x: (l.x - (left + right) / 2) * across,
    y: foot + (l.y - bottom) * up,
    r: l.r * Math.sqrt(across * up),
  }));
}

/** Clumps laid singly over the rest of their lobe, each with a gap of its own. */
const SINGLE_CLUMPS = 2;
/** How strongly a lobe's gap is drawn to the crown's middle: gaps on the outside leave hooks. */
const INWARD = 0.3;

/** The lobes as tufts in laying order, in mm. */
export function tuftsOf(lobes: readonly Lobe[], frame: CrownFrame, random: Random): Tuft[] {
  const keyed = lobes.map((lobe, i) => ({ lobe, random: random.branch(`lobe ${i}`) }));
  keyed.sort((a, b) => a.lobe.rank - b.lobe.rank);
  return keyed.flatMap((own, nth) =>
    tuftsOfLobe(
      own.lobe,
      keyed.slice(0, nth).map((k) => k.lobe),
      frame,
      own.random,
    ),
  );
}

function tuftsOfLobe(
  lobe: Lobe,
  below: readonly Lobe[],
  frame: CrownFrame,
  random: Random,
): Tuft[] {
  const { place, base, heading } = lobe;
  const order = lobe.twigs.map((twig) => ({ twig, key: random.next() }));
  order.sort((a, b) => a.key - b.key);
  const core = order.slice(0, Math.max(1, order.length - SINGLE_CLUMPS)).map((o) => o.twig);
  const singles = order.slice(core.length).map((o) => o.twig);
  const turn = gapAngle(lobe, below) + 0.3 * random.bell();
  const depth = place.r * random.between(0.8, 1.25);
  const inner = along(base, heading, 0.2 * place.r);
  const tufts: Tuft[] = [
    {
      clumps: core.map((t) => clumpOf(t, frame)),
      fill: [inner, ...lobe.twigs.map((t) => t.at)].map((p) => crownPoint(frame, p)),
      shade: shadeOf(turn, depth, frame),
      random: random.branch('core'),
    },
  ];
  const laid = core.map((t) => t.at);
  singles.forEach((twig, i) => {
    const near = laid.reduce((p, q) => (distance(q, twig.at) < distance(p, twig.at) ? q : p));
    const back = { x: (near.x + base.x) / 2 - twig.at.x, y: (near.y + base.y) / 2 - twig.at.y };
    const angle = Math.atan2(back.y, back.x) + 0.25 * random.bell();
    tufts.push({
      clumps: [clumpOf(twig, frame)],
      fill: [],
      shade: shadeOf(angle, twig.r * random.between(1.1, 1.8), frame),
      random: random.branch(`single ${i}`),
    });
    laid.push(twig.at);
  });
  return tufts;
}

/** A lobe's gap falls on the lobes that it overlaps, and a little toward its own bough. */
function gapAngle(lobe: Lobe, below: readonly Lobe[]): number {
  let x = -INWARD * Math.cos(lobe.heading) * lobe.place.r;
  let y = -INWARD * Math.sin(lobe.heading) * lobe.place.r;
  for (const { place } of below) {
    const d = distance(place, lobe.place);
    const overlap = Math.max(0, 0.95 * (place.r + lobe.place.r) - d) / d;
    x += overlap * (place.x - lobe.place.x);
    y += overlap * (place.y - lobe.place.y);
  }
  return Math.atan2(y, x);
}

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

const shadeOf = (angle: number, depth: number, frame: CrownFrame): Point => ({
  x: depth * Math.cos(angle) * frame.across,
  y: -depth * Math.sin(angle) * frame.up,
});

/** A clump is a little wider than high: leaves lie out flat to the light. */
const clumpOf = (twig: Twig, frame: CrownFrame): Clump => ({
  ...crownPoint(frame, twig.at),
  rx: 1.05 * twig.r * frame.across,
  ry: 0.92 * twig.r * frame.up,
  headingDeg: degrees(Math.atan2(-Math.sin(twig.heading), Math.cos(twig.heading))),
});
