import { intersect, union } from './boolean/boolean.js';
import { components, containsPoint, holeCount } from './components.js';
import { regionArea } from './measure.js';
import { nearestChord, type Outline, outlineOf } from './outline.js';
import { pen, regionOf } from './pen.js';
import type { Point, Region } from './types.js';

/** A strip of card that joins two pieces. */
export interface Bridge {
  readonly bridge: Region;
  /** Length of the gap it spans. */
  readonly lengthMm: number;
  /** Where it leaves the one piece and meets the other, on their outlines. */
  readonly from: Point;
  readonly to: Point;
}

/** Places looked at, shortest gaps first: more find a sounder strip at times, and cost time. */
const PLACES = 24;
/** Gaps longer than this many times the shortest are not looked at, save by a few widths. */
const LONGEST_GAPS = 2;
const LONGEST_WIDTHS = 4;
/** The strip's ends are wider than its middle by this factor: a sharp root tears first. */
const FLARE = 1.5;
/** The strip runs into a piece until all its end lies on card, in steps of this (widths)... */
const DEPTH_STEP = 0.25;
/** ... but no further than this (widths); card too slender up to there is only run into so far. */
const MAX_DEPTH = 3;
const SLENDER_DEPTH = 0.75;
/** Overlaps smaller than this (mm2) are rounding. */
const CRUMB_MM2 = 1e-3;

/**
 * The shortest sound strip, `widthMm` wide and wider at its ends, that joins two pieces of card
 * which do not overlap. It runs straight between two nearby points of their outlines and a little
 * into both, deeper where a piece is too slender to hold its end; both run-ins count as length.
 * Sound means: the strip makes the two one piece fewer, no new hole comes about, and the strip
 * touches nothing of `others`. Null where no place is sound, or where the two touch already.
 */
export function shortestBridge(
  from: Region,
  to: Region,
  widthMm: number,
  others: Region = { contours: [] },
): Bridge | null {
  const strips = gapsBetween(outlineOf(from), outlineOf(to), widthMm)
    .map((gap) => ({ gap, ...depthsOf(gap, from, to, widthMm) }))
    .sort((a, b) => a.wholeMm - b.wholeMm);
  for (const { gap, into, onto } of strips) {
    const bridge = stripOver(gap, into, onto, widthMm);
    if (isSound(bridge, from, to, others)) return { bridge, ...gap };
  }
  return null;
}

type Gap = Omit<Bridge, 'bridge'>;

/** Short ways from one outline to the other, the shortest first, each a width from those before. */
function gapsBetween(from: Outline, to: Outline, widthMm: number): Gap[] {
  // Of two outlines that do not cross, one of the closest points is an end of a chord.
  const there = gapsFromEnds(from, to, widthMm);
  const back = gapsFromEnds(to, from, widthMm);
  const gaps = [...there, ...back.map((gap) => ({ ...gap, from: gap.to, to: gap.from }))];
  gaps.sort((a, b) => a.lengthMm - b.lengthMm);
  if (gaps.length === 0 || gaps[0].lengthMm === 0) return [];
  const apart: Gap[] = [];
  for (const gap of gaps) {
    if (apart.every((other) => distance(gap.from, other.from) >= widthMm)) apart.push(gap);
    if (apart.length === PLACES) break;
  }
  return apart;
}

/** Gaps from the ends of an outline's chords, and from places along the long ones. */
function gapsFromEnds({ ax, ay, bx, by }: Outline, other: Outline, widthMm: number): Gap[] {
  const gaps: Gap[] = [];
  let shortest = Infinity;
  for (let k = 0; k < ax.length; k++) {
    const places = Math.ceil(Math.hypot(bx[k] - ax[k], by[k] - ay[k]) / widthMm);
    for (let j = 0; j < places; j++) {
      const from = {
        x: ax[k] + (j / places) * (bx[k] - ax[k]),
        y: ay[k] + (j / places) * (by[k] - ay[k]),
      };
      const limit = LONGEST_GAPS * shortest + LONGEST_WIDTHS * widthMm;
      const foot = nearestChord(other, from.x, from.y, limit);
      if (foot === null) continue;
      shortest = Math.min(shortest, foot.distanceMm);
      gaps.push({ from, to: { x: foot.x, y: foot.y }, lengthMm: foot.distanceMm });
    }
  }
  return gaps;
}

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y);

/** How far the strip over a gap runs into either piece, and the length by which it is judged. */
function depthsOf(
  { from, to, lengthMm }: Gap,
  a: Region,
  b: Region,
  widthMm: number,
): { into: number; onto: number; wholeMm: number } {
  const ux = (to.x - from.x) / lengthMm;
  const uy = (to.y - from.y) / lengthMm;
  const into = depthInto(a, from, { x: -ux, y: -uy }, widthMm);
  const onto = depthInto(b, to, { x: ux, y: uy }, widthMm);
  // In card too slender to hold the strip's end, running on along it would only draw a stub.
  const runIn = (sought: number): number =>
    sought < MAX_DEPTH * widthMm ? sought : SLENDER_DEPTH * widthMm;
  return { into: runIn(into), onto: runIn(onto), wholeMm: into + lengthMm + onto };
}

/** How far into a piece the whole end of the strip lies on card, or card ends, or it is too far. */
function depthInto(piece: Region, { x, y }: Point, ahead: Point, widthMm: number): number {
  const step = DEPTH_STEP * widthMm;
  const wide = (widthMm * FLARE) / 2;
  const isOnCard = (depth: number, aside: number): boolean =>
    containsPoint(piece, {
      x: x + ahead.x * depth - ahead.y * aside,
      y: y + ahead.y * depth + ahead.x * aside,
    });
  let depth = step;
  // Where the card ends before that, the strip must not come out on its far side.
  while (depth < MAX_DEPTH * widthMm && isOnCard(depth + step, 0)) {
    if (isOnCard(depth, wide) && isOnCard(depth, -wide)) break;
    depth += step;
  }
  return depth;
}

/** The strip over a gap, its sides curving out toward its ends. */
function stripOver(
  { from, to, lengthMm }: Gap,
  into: number,
  onto: number,
  widthMm: number,
): Region {
  const ux = (to.x - from.x) / lengthMm;
  const uy = (to.y - from.y) / lengthMm;
  /** The point so far along the gap and so far to the right of it, walking from `from`. */
  const at = (along: number, aside: number): [number, number] => [
    from.x + ux * along - uy * aside,
    from.y + uy * along + ux * aside,
  ];
  const half = widthMm / 2;
  const wide = half * FLARE;
  const waist = Math.min(widthMm, lengthMm / 2);
  const [first, last, end] = [waist, lengthMm - waist, lengthMm + onto];
  return regionOf(
    pen(...at(-into, -wide))
      .quadTo(...at(0, -half), ...at(first, -half))
      .lineTo(...at(last, -half))
      .quadTo(...at(lengthMm, -half), ...at(end, -wide))
      .lineTo(...at(end, wide))
      .quadTo(...at(lengthMm, half), ...at(last, half))
      .lineTo(...at(first, half))
      .quadTo(...at(0, half), ...at(-into, wide))
      .close(),
  );
}

function isSound(bridge: Region, from: Region, to: Region, others: Region): boolean {
  if (others.contours.length > 0 && regionArea(intersect(bridge, others)) > CRUMB_MM2) return false;
  const joined = union([from, to, bridge]);
  const pieces = components(from).length + components(to).length;
  const holes = holeCount(from) + holeCount(to);
  return components(joined).length === pieces - 1 && holeCount(joined) === holes;
}
