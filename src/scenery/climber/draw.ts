import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { smoothLine } from '../../geometry/pen.js';
import { circle, rectangle } from '../../geometry/primitives.js';
import type { Line, Point, Region } from '../../geometry/types.js';
import { keptClear } from '../brick/craft.js';
import type { Growth, Plot } from '../family.js';
import { fitToCut } from '../land/fit.js';
import { leaf, TIP_RADIUS_MM } from '../leaf.js';
import { type LimbNode, limb } from '../limb.js';
import { lobedLeaf } from '../lobed-leaf.js';
import type { Random } from '../random.js';
import { degrees, radians } from '../tree/angles.js';
import { CLEARANCE_MM } from '../tree/scores.js';
import { type Borne, berries, bloom, grapes } from './bearing.js';
import { type Hold, holdOf } from './hold.js';
import type { ClimberValues } from './parameters.js';

/** Sizes that a climber is drawn by, in mm. */
interface Scale {
  readonly stem: number;
  readonly leaf: number;
  /** From one place that bears a leaf to the next. */
  readonly step: number;
  /** How far the stem winds off its hold. */
  readonly off: number;
}

/** A leaf as a share of the reach, in smallest webs at least, and from one to the next in leaves. */
const LEAF = { share: 0.54, webs: 4, finer: 0.25, step: 0.72 };
const STEM_WEBS: readonly [number, number] = [1.9, 1.2];

export function drawClimber(plot: Plot, values: ClimberValues, random: Random): Growth {
  const hold = holdOf(plot);
  const scale = scaleOf(hold, plot, values);
  const path = stemOn(hold, scale, plot, random.branch('stem'));
  const stem = union([{ contours: [limb(path.nodes)] }, ...footOf(hold, scale, plot)]);
  const borne = placesOn(path.bends, hold, scale, plot, values, random.branch('places'));
  const leaves = union(borne.filter((b) => !b.isFruit).flatMap((b) => b.card));
  const fruit = union(borne.filter((b) => b.isFruit).flatMap((b) => b.card));
  const drawn = union([stem, leaves, fruit]);
  const { body, holes } = fitToCut(drawn, plot);
  const own = subtract(body, [holes]);
  const { card: frame, window } = plot.frame;
  const card = window.contours.length > 0 ? union([frame, intersect(own, window)]) : own;
  const lines = borne.flatMap((b) => b.lines);
  return {
    body,
    holes,
    scores: keptClear(lines, card, CLEARANCE_MM),
    reliefs: [],
    parts: {
      stem: intersect(own, stem),
      leaves: intersect(own, leaves),
      fruit: intersect(own, fruit),
    },
  };
}

function scaleOf(hold: Hold, plot: Plot, values: ClimberValues): Scale {
  const { smallestWeb: web, smallestHole: hole } = plot;
  const finer = 1 - LEAF.finer * plot.fineness;
  const leafMm = Math.max(Math.min(LEAF.share * hold.reach * finer, 16), LEAF.webs * web);
  const stem = STEM_WEBS[0] * web;
  const wide = values.winding * Math.max(0.22 * hold.reach, stem / 2 + 1.5 * hole);
  // A stem that leaves its hold by less than a hole would leave a slit: then it keeps close.
  const off = wide > stem / 2 + 1.1 * hole && hold.reach > 3 * stem ? wide : 0.25 * stem;
  const step = (LEAF.step * leafMm) / values.leaves;
  return { stem, leaf: leafMm, step: Math.max(step, 1.5 * web + hole), off };
}

/** A place on the stem where something may grow: how far along, and how far off the edge. */
interface Bend extends Point {
  readonly mm: number;
  readonly into: number;
}

/** The stem's middle line: by turns off its hold and back to it, thinning to its tip. */
function stemOn(hold: Hold, scale: Scale, plot: Plot, random: Random) {
  const long = hold.guide.lengthMm;
  const wave = Math.max(1.25 * scale.leaf, 2.6 * scale.off, 4 * plot.smallestHole);
  const count = Math.max(2, Math.round(long / wave));
  const near = hold.kind === 'post' ? -1 : -0.12;
  const bends = Array.from({ length: count + 1 }, (_, i): Bend => {
    const own = random.branch(i);
    const f = (i + (i === 0 || i === count ? 0 : 0.14 * own.bell())) / count;
    const isOff = i % 2 === 1 && i < count;
    const into = (isOff ? own.between(0.85, 1.15) : near * own.between(0.8, 1.1)) * scale.off;
    const mm = f * long;
    return { ...hold.at(mm, i === 0 ? 0 : into), mm, into };
  });
  const nodes = bends.map((p, i): LimbNode => {
    const share = STEM_WEBS[0] + ((STEM_WEBS[1] - STEM_WEBS[0]) * i) / count;
    return { ...p, thickness: share * plot.smallestWeb };
  });
  return { nodes, bends };
}

/** How deep in the frame the climber's own card runs along the edge that it climbs, in mm. */
const BAND_MM = 3;

/** What it stands on and holds to: its root, and the post or the card behind the edge. */
function footOf(hold: Hold, scale: Scale, plot: Plot): Region[] {
  const long = hold.guide.lengthMm;
  const r = Math.max(0.8 * scale.stem, 1.2);
  const root = plot.side === 'sill' ? [rectangle(-r, 0, 2 * r, plot.root)] : [];
  const knob = circle(0, -0.3, r);
  if (hold.kind === 'post') return [...root, knob, ...postOf(plot)];
  const steps = Math.max(2, Math.round(long / 2));
  const nodes = Array.from({ length: steps + 1 }, (_, i) => ({
    ...hold.at((i / steps) * long, -BAND_MM / 2),
    thickness: BAND_MM + 0.2,
  }));
  return [...root, knob, { contours: [limb(nodes)] }];
}

/** A post with a round head, a little higher than the climber. */
function postOf({ root, height, smallestWeb }: Plot): Region[] {
  const half = Math.min(2, Math.max(1.1, 0.02 * height)) * smallestWeb;
  const head = 1.7 * half;
  const top = -Math.max(height - head, 2 * head);
  return [rectangle(-half, top, 2 * half, root - top), circle(0, top, head)];
}

interface Placed extends Borne {
  readonly isFruit: boolean;
}

/** Leaves to the light and now and then to the edge, or fruit instead; and a leaf at the tip. */
function placesOn(
  bends: readonly Bend[],
  hold: Hold,
  scale: Scale,
  plot: Plot,
  values: ClimberValues,
  random: Random,
): Placed[] {
  const long = hold.guide.lengthMm;
  const count = Math.max(2, Math.floor(long / scale.step));
  const first = random.whole(0, 3);
  const places = Array.from({ length: count }, (_, i): Placed => {
    const own = random.branch(i);
    const mm = ((i + 0.5 + own.between(-0.2, 0.2)) / count) * long;
    const turn = TURNS[(i + first) % TURNS.length];
    const size = scale.leaf * own.between(0.82, 1.12) * (1.08 - (0.35 * mm) / long);
    const isFruit = own.chance(values.bearing) && turn.from > 0;
    const from = onStem(bends, hold, mm);
    const mirrored = hold.kind === 'post' && i % 2 ? -1 : 1;
    const heading = upAt(hold, mm) + mirrored * hold.side * own.between(turn.from, turn.to);
    const grown = isFruit
      ? fruitAt(values.kind, from, heading, size, plot, own.branch('fruit'))
      : leafAt(values.kind, from, heading, size, plot, own.branch('leaf'));
    return { ...grown, isFruit };
  });
  const own = random.branch('tip');
  const heading = upAt(hold, long) + hold.side * own.between(5, 30);
  const tip = leafAt(values.kind, hold.at(long, 0), heading, 0.7 * scale.leaf, plot, own);
  return [...places, { ...tip, isFruit: false }];
}

/** How leaves stand off the way up, degrees toward the light: up, out, up, and to the edge. */
const TURNS = [
  { from: 28, to: 50 },
  { from: 76, to: 104 },
  { from: 34, to: 62 },
  { from: -64, to: -38 },
];

const upAt = (hold: Hold, mm: number): number => {
  const { x, y } = hold.way(mm);
  return degrees(Math.atan2(y, x));
};

/** Where the stem is at a length along its hold. */
function onStem(bends: readonly Bend[], hold: Hold, mm: number): Point {
  const k = Math.max(0, Math.min(bends.length - 2, bends.findIndex((b) => b.mm > mm) - 1));
  const [a, b] = [bends[k], bends[k + 1]];
  const f = (mm - a.mm) / Math.max(1e-9, b.mm - a.mm);
  const s = f * f * (3 - 2 * f);
  return hold.at(mm, a.into + s * (b.into - a.into));
}

const onward = ({ x, y }: Point, headingDeg: number, mm: number): Point => ({
  x: x + mm * Math.cos(radians(headingDeg)),
  y: y + mm * Math.sin(radians(headingDeg)),
});

/** A stalk's share of its leaf's length. */
const STALK = 0.28;

function leafAt(
  kind: ClimberValues['kind'],
  from: Point,
  heading: number,
  size: number,
  plot: Plot,
  random: Random,
): Borne {
  const web = plot.smallestWeb;
  const foot = onward(from, heading, STALK * size);
  const stalk = limb([
    { ...from, thickness: 1.2 * web },
    { ...onward(foot, heading, 0.12 * size), thickness: 1.15 * web },
  ]);
  if (kind === 'rose') return roseLeaf(from, heading, size, web, random);
  const turned = heading + 8 * random.bell();
  const outline = lobedLeaf(kind, size, random.between(0.92, 1.06), web, foot, turned);
  const rib = smoothLine([0.14, 0.5, 0.82].map((f) => onward(foot, turned, f * size)));
  const side = (turn: number): Line => {
    const start = onward(foot, turned, 0.14 * size);
    return smoothLine([start, onward(start, turned + turn, 0.36 * size)]);
  };
  return {
    card: [{ contours: [stalk] }, { contours: [outline] }],
    lines: [rib, side(52), side(-52)],
  };
}

/** Leaflets of a rose: one at the end, and pairs that stand off the stalk. */
function roseLeaf(from: Point, heading: number, size: number, web: number, random: Random): Borne {
  const long = 1.25 * size;
  const pairs = size > 7 * web ? [0.36, 0.68] : [0.5];
  const form = (share: number) => ({
    length: Math.max(share * size, 2.4 * web),
    width: Math.max(0.52 * share * size, 1.5 * web),
    widest: 0.5,
    tipRadius: TIP_RADIUS_MM,
  });
  const stalk = limb([
    { ...from, thickness: 1.25 * web },
    { ...onward(from, heading, 0.75 * long), thickness: 1.1 * web },
  ]);
  const end = onward(from, heading + 2 * random.bell(), 0.66 * long);
  const leaflets = [
    leaf(form(0.62), end, heading + 4 * random.bell()),
    ...pairs.flatMap((f) =>
      [-1, 1].map((side) =>
        leaf(
          form(0.5),
          onward(from, heading, f * 0.8 * long),
          heading + side * random.between(58, 74),
        ),
      ),
    ),
  ];
  const rib = smoothLine([0.2, 0.8].map((f) => onward(end, heading, f * 0.62 * size)));
  return { card: [stalk, ...leaflets].map((c) => ({ contours: [c] })), lines: [rib] };
}

function fruitAt(
  kind: ClimberValues['kind'],
  from: Point,
  heading: number,
  size: number,
  plot: Plot,
  random: Random,
): Borne {
  const web = plot.smallestWeb;
  const r = Math.max((kind === 'rose' ? 0.46 : 0.36) * size, 1.6 * web);
  const at = onward(from, heading, 0.55 * size);
  const stalk = {
    contours: [
      limb([
        { ...from, thickness: 1.3 * web },
        { ...at, thickness: 1.2 * web },
      ]),
    ],
  };
  const borne =
    kind === 'rose'
      ? bloom(at, r, random)
      : kind === 'vine'
        ? grapes(at, 1.25 * size, web, random)
        : berries(at, r, random);
  return { card: [stalk, ...borne.card], lines: borne.lines };
}
