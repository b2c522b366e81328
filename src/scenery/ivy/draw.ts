import { intersect, subtract, union } from '../../geometry/boolean/boolean.js';
import { pen, smoothLine } from '../../geometry/pen.js';
import { rectangle } from '../../geometry/primitives.js';
import type { Cubics, Line, Point, Region } from '../../geometry/types.js';
import { endsOf, keptClear, shapeOf } from '../brick/craft.js';
import type { Growth, Plot } from '../family.js';
import { fitToCut } from '../land/fit.js';
import { alongSmooth, limb } from '../limb.js';
import { lobedLeaf } from '../lobed-leaf.js';
import { heldAt } from '../net.js';
import type { Random } from '../random.js';
import { degrees, radians } from '../tree/angles.js';
import { CLEARANCE_MM } from '../tree/scores.js';
import type { IvyValues } from './parameters.js';
import { type Strand, strandsOf } from './strands.js';

/** Length of a leaf as a share of the height, in smallest webs at least, and in mm at most. */
const LEAF = { share: 0.34, webs: 5.2, most: 12, finer: 0.25 };

/** Where leaves are small the edge still has a rim of card that they hang from, mm. */
const LEAST_BAND_MM = 1.3;

export function drawIvy(plot: Plot, values: IvyValues, random: Random): Growth {
  const { smallestWeb: web, height } = plot;
  const size = LEAF.share * height * (1 - LEAF.finer * plot.fineness);
  const leafMm = Math.max(LEAF.webs * web, Math.min(LEAF.most, size));
  const band = bandLeaves(plot, values, leafMm, random.branch('band'));
  const strands = strandsOf(plot, values, leafMm, random.branch('strands'));
  const hung = strands.map((s) => strandLeaves(s, values, leafMm, web));
  const { left, right } = endsOf(plot);
  const root = rootOf(plot, bandDepth(plot, values, leafMm), leafMm, random.branch('root'));
  // Each by itself first: the loop of a stem bent tighter than it is thick would cut into the rest.
  const stems = union([
    root,
    ...strands
      .flatMap(({ path, ties }) => [path, ...ties])
      .map((way) => union([{ contours: [stemOf(way, web)] }])),
  ]);
  const grown = [...band, ...hung.flat()];
  const leaves = union(grown.map(({ outline }) => ({ contours: [outline] })));
  // What reaches past the ends of its edge would stand in the card or beyond it.
  const strip = rectangle(left, -2 * height, right - left, 2 * height + plot.root);
  const drawn = intersect(union([stems, leaves]), strip);
  const { body, holes } = fitToCut(drawn, plot, heldAt(drawn));
  const own = subtract(body, [holes]);
  const { card: frame, window } = plot.frame;
  const card = window.contours.length > 0 ? union([frame, intersect(own, window)]) : own;
  // Ribs of leaves that lie over one another would cross.
  const ribs = grown.filter((_, i) => i % 2 === 0).flatMap((l) => l.ribs);
  return {
    body,
    holes,
    scores: keptClear(ribs, card, CLEARANCE_MM),
    reliefs: [],
    parts: { strands: intersect(own, stems), leaves: intersect(own, leaves) },
  };
}

/** The card that the band's leaves hang from: its rim swings, as leaves behind leaves do. */
function rootOf(plot: Plot, bandMm: number, leafMm: number, random: Random): Region {
  const { left, right } = endsOf(plot);
  const least = Math.max(LEAST_BAND_MM, 0.8 * plot.smallestWeb);
  const deep = Math.max(least, bandMm - 0.7 * leafMm);
  const count = Math.max(2, Math.round((right - left) / (0.7 * leafMm)));
  const rim = Array.from({ length: count + 1 }, (_, i) => ({
    x: left + (i / count) * (right - left),
    y: -Math.max(least, deep * random.between(0.55, 1.3)),
  }));
  const outline = pen(left, plot.root).lineTo(left, rim[0].y).smoothTo(rim.slice(1));
  return shapeOf(outline.lineTo(right, plot.root).close());
}

const STEM_WEBS: readonly [number, number] = [1.7, 1.25];

const stemOf = (path: readonly Point[], web: number): Cubics =>
  limb(
    path.map((p, i) => {
      const f = i / (path.length - 1);
      return { ...p, thickness: web * (STEM_WEBS[0] + f * (STEM_WEBS[1] - STEM_WEBS[0])) };
    }),
  );

interface Leaf {
  readonly outline: Cubics;
  readonly ribs: readonly Line[];
}

/** From one leaf of the band's rim to the next, in leaf lengths: closer, and none shows its lobes. */
const RIM_STEP = 0.95;

/** Leaves along the band's rim, each hanging from under the last row. */
function bandLeaves(plot: Plot, values: IvyValues, leafMm: number, random: Random): Leaf[] {
  const deep = bandDepth(plot, values, leafMm);
  const count = Math.max(1, Math.round(plot.width / (RIM_STEP * leafMm)));
  return Array.from({ length: count }, (_, i): Leaf => {
    const own = random.branch(i);
    const x = -plot.width / 2 + ((i + 0.5 + own.between(-0.16, 0.16)) / count) * plot.width;
    const size = leafMm * own.between(0.8, 1.15);
    const low = deep * own.between(0.72, 1.12);
    const foot = { x, y: -Math.max(0, low - 0.78 * size) };
    return leafAt(values.leaf, foot, -90 + own.between(-34, 34), size, plot.smallestWeb, own);
  });
}

const bandDepth = (plot: Plot, values: IvyValues, leafMm: number): number =>
  Math.max(values.band * plot.height, 0.6 * leafMm);

/** From one leaf of a strand to the next, in leaf lengths. */
const STRAND_STEP = 0.6;

/** A strand's leaves by turns to either side, a smaller one at its tip. */
function strandLeaves(strand: Strand, values: IvyValues, leafMm: number, web: number): Leaf[] {
  const line = alongSmooth(strand.path, 8);
  const own = strand.random.branch('leaves');
  const leaves: Leaf[] = [];
  let side = own.chance(0.5) ? 1 : -1;
  let since = 0.3 * leafMm;
  for (let i = 1; i + 1 < line.length; i++) {
    since += Math.hypot(line[i].x - line[i - 1].x, line[i].y - line[i - 1].y);
    const size = leafMm * own.between(0.74, 0.96) * (1 - (0.22 * i) / line.length);
    if (since < STRAND_STEP * leafMm) continue;
    since = 0;
    side = -side;
    const heading = headingAt(line, i) + side * own.between(48, 76);
    const foot = onward(line[i], heading, 0.08 * size);
    leaves.push(leafAt(values.leaf, foot, heading, size, web, own));
  }
  const end = line[line.length - 1];
  const heading = headingAt(line, line.length - 2) + own.between(-12, 12);
  const foot = onward(end, heading, -0.1 * leafMm);
  return [...leaves, leafAt(values.leaf, foot, heading, 0.85 * leafMm, web, own)];
}

function leafAt(
  kind: IvyValues['leaf'],
  foot: Point,
  heading: number,
  size: number,
  web: number,
  random: Random,
): Leaf {
  const breadth = random.between(0.92, 1.06);
  const outline = lobedLeaf(kind, size, breadth, web, foot, heading);
  const start = onward(foot, heading, 0.14 * size);
  const rib = smoothLine([0.14, 0.48, 0.82].map((f) => onward(foot, heading, f * size)));
  const side = (turn: number): Line =>
    smoothLine([start, onward(start, heading + turn, 0.36 * size)]);
  return { outline, ribs: [rib, side(52), side(-52)] };
}

const headingAt = (line: readonly Point[], i: number): number =>
  degrees(Math.atan2(line[i + 1].y - line[i].y, line[i + 1].x - line[i].x));

const onward = ({ x, y }: Point, headingDeg: number, mm: number): Point => ({
  x: x + mm * Math.cos(radians(headingDeg)),
  y: y + mm * Math.sin(radians(headingDeg)),
});
