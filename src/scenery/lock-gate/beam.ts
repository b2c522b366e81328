import { stroke } from '../../geometry/offset/offset.js';
import { pen } from '../../geometry/pen.js';
import type { Line, Point } from '../../geometry/types.js';
import { handDrawn, mix, shapeOf } from '../brick/craft.js';
import type { Random } from '../random.js';
import type { Timber } from './leaf.js';
import { alongFor, gearPlaceOf, type Hand, onLeaf, type Stand } from './stand.js';

/** Thickness of the beam as shares of the gate's height, from the mitre to the butt. */
const THIN = 0.085;
const THICK = 0.17;
/** The beam rises to its butt by this share of what it reaches out. */
const RISE = 0.09;
const WANDER_MM = 0.2;

/** The balance beam: from the mitre post out over the lock side, thicker and higher to its butt. */
export function beamOf(stand: Stand, hand: Hand, random: Random): Timber {
  const { leaf, tail, height, timber } = stand;
  const rise = ((RISE * tail) / height) * random.between(0.7, 1.3);
  const swell = random.between(0.92, 1.08);
  // s runs from 0 at the mitre post to 1 at the butt.
  const alongAt = (s: number) => mix(leaf, -tail, s);
  const heel = leaf / (leaf + tail);
  const middle = (s: number) =>
    stand.up.beam / height + rise * Math.max(0, (s - heel) / Math.max(0.05, 1 - heel)) ** 1.5;
  const thick = (s: number) => Math.max(timber, height * swell * mix(THIN, THICK, s ** 1.6));
  const edge = (s: number, side: number): Point =>
    onLeaf(stand, hand, alongAt(s), middle(s) * height + (side * thick(s)) / 2);

  const steps = [0, 0.35, heel, mix(heel, 1, 0.5), 1];
  const upper = steps.map((s) => edge(s, 1));
  const lower = steps.map((s) => edge(s, -1)).reverse();
  const [end, under] = [upper[4], lower[0]];
  const outline = pen(upper[0].x, upper[0].y).smoothTo(upper.slice(1));
  const butt = buttOf(stand, hand, end, under);
  for (const p of butt) outline.lineTo(p.x, p.y);
  outline.lineTo(under.x, under.y).smoothTo(lower.slice(1));

  const band = (s: number) => handDrawn([edge(s, 1), edge(s, -1)], WANDER_MM, random.branch(s));
  const grain = (from: number, to: number, side: number, label: string): Line =>
    handDrawn(
      [from, mix(from, to, 0.5), to].map((s) => edge(s, side)),
      WANDER_MM,
      random.branch(label),
    );
  const lines = [
    band(mix(heel, 1, 0.78)),
    band(heel - 0.02),
    band(heel - 0.09),
    grain(heel + 0.03, mix(heel, 1, random.between(0.5, 0.7)), random.between(-0.2, 0.1), 'long'),
    grain(random.between(0.1, 0.2), heel - 0.14, random.between(-0.1, 0.2), 'inner'),
  ];
  return { solids: [shapeOf(outline.close())], holes: [], lines };
}

/** The end grain, seen when the beam swings towards the eye. */
function buttOf(stand: Stand, hand: Hand, end: Point, under: Point): Point[] {
  const width = Math.abs(end.y - under.y) * 0.6 * Math.sin(stand.angle);
  return [
    { x: end.x + hand * width, y: end.y + 0.3 },
    { x: under.x + hand * width, y: under.y - 0.3 },
  ];
}

/** The handrail's bends, mm: a smith's, not a corner. */
const BEND_MM = 2.2;
/** Its outer foot stands out by this, mm. */
const SPLAY_MM = 1.2;

/** An iron handrail over the walkway: up near the mitre, along, and down to the beam again. */
export function handrailOf(stand: Stand, hand: Hand, random: Random): Timber {
  const { leaf, height, timber, plot } = stand;
  const top = stand.up.handrail * random.between(0.95, 1) - timber / 2;
  const base = stand.up.beam;
  const at = (a: number, up: number) => onLeaf(stand, hand, a, up);
  const from = leaf - alongFor(stand, timber / 2 + plot.smallestHole * 0.8, leaf);
  const gear = gearPlaceOf(stand);
  const clearOfGear = gear.inner + timber / 2 + SPLAY_MM + plot.smallestHole * 1.25;
  const to = Math.max(
    leaf * random.between(0.34, 0.52),
    gear.along + alongFor(stand, clearOfGear, gear.along),
  );
  const room = Math.abs(at(from, 0).x - at(to, 0).x) - timber;
  const clear = top - base - (THIN * height) / 2 - timber / 2;
  if (to > from || room < 1.5 * plot.smallestHole || clear < plot.smallestHole) {
    return { solids: [], holes: [], lines: [] };
  }
  const out = to - alongFor(stand, SPLAY_MM, to);
  const rail = bent([at(from, base), at(from, top), at(to, top), at(out, base)], BEND_MM);
  const posts: Line[] = [];
  if (room > 4 * plot.smallestHole + timber) {
    const middle = mix(from, to, random.between(0.46, 0.56));
    posts.push(handDrawn([at(middle, base), at(middle, top)], 0.1, random.branch('post')));
  }
  return { solids: [stroke([rail, ...posts], timber)], holes: [], lines: [] };
}

/** A line through the points with its corners bent round. */
function bent(points: readonly Point[], bendMm: number): Line {
  const p = pen(points[0].x, points[0].y);
  points.forEach((corner, i) => {
    const [before, after] = [points[i - 1], points[i + 1]];
    if (!before || !after) return;
    const a = towards(corner, before, bendMm);
    const b = towards(corner, after, bendMm);
    p.lineTo(a.x, a.y).quadTo(corner.x, corner.y, b.x, b.y);
  });
  const end = points.at(-1)!;
  return p.lineTo(end.x, end.y).line();
}

function towards(a: Point, b: Point, mm: number): Point {
  const t = Math.min(0.45, mm / Math.hypot(b.x - a.x, b.y - a.y));
  return { x: mix(a.x, b.x, t), y: mix(a.y, b.y, t) };
}
