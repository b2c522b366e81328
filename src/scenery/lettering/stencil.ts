import { subtract, union } from '../../geometry/boolean/boolean.js';
import { shortestBridge } from '../../geometry/bridge.js';
import { components } from '../../geometry/components.js';
import {
  contourArea,
  flatten,
  perimeter,
  regionArea,
  regionBounds,
} from '../../geometry/measure.js';
import { offset } from '../../geometry/offset/offset.js';
import { polygon, regionOf } from '../../geometry/pen.js';
import { reversed } from '../../geometry/transform.js';
import type { Bounds, Point, Region } from '../../geometry/types.js';
import { type Fineness, tied } from '../grass/tidy.js';
import { type Axis, beside, type Crossing, crossings, pointOn, waysOut } from './crossings.js';
import type { SetLetter } from './guide.js';
import { sheetRound, trimmed } from './openings.js';

/** What the process can cut, mm. */
export interface StencilLimits {
  readonly smallestWeb: number;
  readonly smallestHole: number;
  readonly smallestSlot: number;
}

/** Letters as holes that leave one sheet of card. */
export interface Stencil {
  readonly holes: Region;
  /** The strips of card that hold the islands, as wide as `bridgeMm`. */
  readonly bridges: readonly Region[];
  readonly bridgeMm: number;
}

/** Bridges are a third to a half of the stroke (common practice, no source), never below the web. */
const BRIDGE_OF_STROKE = 1 / 3;

/** The letters' mean stroke: of a band w wide and l long the outline is 2 l and the area w l. */
export const strokeOf = (letters: Region): number =>
  (2 * regionArea(letters)) / Math.max(1e-9, perimeter(letters));

/**
 * The letters as a stencil. Each island gets two bridges opposite each other on one straight axis:
 * upright and through its middle where that crosses the strokes shortly, else leaning or aside as
 * little as it may; counters above one another share an axis. Bridges are all of one width.
 */
export function stencil(letters: readonly SetLetter[], limits: StencilLimits): Stencil {
  const drawn = union(letters.map(({ shape }) => shape));
  const strokes = trimmed(drawn, limits.smallestWeb, limits.smallestSlot);
  const strokeMm = strokeOf(drawn);
  const bridgeMm = Math.max(limits.smallestWeb, BRIDGE_OF_STROKE * strokeMm);
  const bridges = components(strokes).flatMap((piece) => {
    const ties: Tie[] = [];
    for (const island of topDown(islandsOf(piece))) {
      const upright = uprightAt(island, letters);
      const tie = bestTie({ island, strokes: piece, strokeMm, bridgeMm, upright }, ties);
      if (tie) ties.push(tie);
    }
    return ties.flatMap((tie) => tie.strips);
  });
  const room = sheetRound(strokes, limits.smallestWeb);
  const holes = cuttable(subtract(strokes, bridges), limits);
  const more = lastResorts(subtract(room, [holes]), bridgeMm);
  const sheet = subtract(room, [subtract(holes, more)]);
  return {
    holes: subtract(room, [tied(sheet, finenessOf(limits))]),
    bridges: [...bridges, ...more],
    bridgeMm,
  };
}

const finenessOf = ({ smallestWeb, smallestHole, smallestSlot }: StencilLimits): Fineness => ({
  smallestWeb,
  smallestHole: smallestSlot,
  eyelet: smallestHole,
});

const islandsOf = (piece: Region): Region[] =>
  piece.contours.filter((c) => contourArea(c) < 0).map((c) => ({ contours: [reversed(c)] }));

const topDown = (islands: readonly Region[]): Region[] =>
  islands
    .map((island) => ({ island, y: regionBounds(island).minY }))
    .sort((a, b) => a.y - b.y)
    .map(({ island }) => island);

const middleOf = ({ minX, minY, maxX, maxY }: Bounds): Point => ({
  x: (minX + maxX) / 2,
  y: (minY + maxY) / 2,
});

/** The upright of the letter that the island lies in. */
function uprightAt(island: Region, letters: readonly SetLetter[]): number {
  const at = middleOf(regionBounds(island));
  const away = ({ shape }: SetLetter): number => {
    const middle = middleOf(regionBounds(shape));
    return Math.hypot(middle.x - at.x, middle.y - at.y);
  };
  return letters.reduce((best, letter) => (away(letter) < away(best) ? letter : best)).degrees;
}

/** How an island is tied: its axis, and one or two strips on it. */
interface Tie {
  readonly axis: Axis;
  readonly degrees: number;
  readonly strips: readonly Region[];
  readonly cost: number;
}

interface Island {
  readonly island: Region;
  readonly strokes: Region;
  readonly strokeMm: number;
  readonly bridgeMm: number;
  /** Degrees. */
  readonly upright: number;
}

/** Leanings tried, in degrees off the upright, and what each costs in strokes crossed. */
const LEANINGS = [
  [0, 0],
  [12, 0.5],
  [-12, 0.5],
  [25, 0.9],
  [-25, 0.9],
  [45, 1.4],
  [-45, 1.4],
  [90, 1.6],
] as const;
/** Places tried across an island, as shares of half its width, and what the outermost costs. */
const ASIDE = [0, 0.15, -0.15, 0.3, -0.3, 0.45, -0.45, 0.6, -0.6];
const ASIDE_COST = 3;
/** What the axis of another bridge near by is worth. */
const SHARED_WORTH = 0.5;
/** A tie this cheap is not bettered by leaning further: two strokes crossed, a little aside. */
const GOOD_COST = 2.5;
/** What a bridge costs that has none opposite. */
const ALONE_COST = 3;

function bestTie(island: Island, others: readonly Tie[]): Tie | null {
  let best: Tie | null = null;
  for (const [lean, leanCost] of LEANINGS) {
    if (best && best.cost <= Math.max(GOOD_COST, leanCost)) break;
    const { axis, half } = middleAxis(island.island, island.upright + lean);
    const places = ASIDE.map((share) => ({
      aside: share * half,
      cost: leanCost + ASIDE_COST * share ** 2,
    }));
    const shared = others
      .filter((o) => Math.abs(o.degrees - island.upright - lean) < 1)
      .map((o) => asideOf(axis, o.axis))
      .filter((aside) => Math.abs(aside) <= 0.6 * half)
      .map((aside) => ({
        aside,
        cost: leanCost + ASIDE_COST * (aside / half) ** 2 - SHARED_WORTH,
      }));
    for (const { aside, cost } of [...shared, ...places]) {
      const tie = tieOn(beside(axis, aside), island, cost, island.upright + lean);
      if (tie && (best === null || tie.cost < best.cost)) best = tie;
    }
  }
  return best;
}

/** The axis up through the island's middle, and half the island's width across it. */
function middleAxis(island: Region, degrees: number): { axis: Axis; half: number } {
  const radians = (degrees * Math.PI) / 180;
  const along = { x: Math.sin(radians), y: -Math.cos(radians) };
  const points = island.contours.flatMap((c) => flatten(c, 0.02));
  const middle = middleOf(regionBounds(island));
  const across = points.map((p) => -(p.x - middle.x) * along.y + (p.y - middle.y) * along.x);
  const [low, high] = [Math.min(...across), Math.max(...across)];
  const axis = beside({ origin: middle, along }, (low + high) / 2);
  return { axis, half: (high - low) / 2 };
}

const asideOf = (axis: Axis, other: Axis): number =>
  -(other.origin.x - axis.origin.x) * axis.along.y +
  (other.origin.y - axis.origin.y) * axis.along.x;

/** Bridges on one axis, the shortest each way; null where the axis leads nowhere. */
function tieOn(axis: Axis, island: Island, placeCost: number, degrees: number): Tie | null {
  const { strokes, strokeMm } = island;
  const { minX, minY, maxX, maxY } = regionBounds(strokes);
  const reachMm = Math.hypot(maxX - minX, maxY - minY);
  const ways = waysOut(axis, crossings(axis, strokes, reachMm), island.island);
  const strips = [ways.ahead, ways.back].flatMap((list) => {
    const found = list.map((crossing) => stripOver(axis, crossing, island, reachMm));
    return found.sort((a, b) => a.lengthMm - b.lengthMm).slice(0, 1);
  });
  if (strips.length === 0) return null;
  const crossed = strips.reduce((sum, strip) => sum + strip.lengthMm / strokeMm, 0);
  const cost = placeCost + crossed + (strips.length === 1 ? ALONE_COST : 0);
  return { axis, degrees, strips: strips.map((s) => s.region), cost };
}

/** Rays across a bridge's width on which its length is measured. */
const RAYS = [-0.5, -0.25, 0, 0.25, 0.5];
/** A strip runs on past the stroke's edge by this share of its width. */
const RUN_ON = 0.1;

/** The strip that crosses a stroke with the whole of its width. */
function stripOver(
  axis: Axis,
  crossing: Crossing,
  { strokes, bridgeMm }: Island,
  reachMm: number,
): { region: Region; lengthMm: number } {
  const met = RAYS.flatMap((share) =>
    crossings(beside(axis, share * bridgeMm), strokes, reachMm).filter(
      (c) => c.to > crossing.from && c.from < crossing.to,
    ),
  );
  const from = Math.min(crossing.from, ...met.map((c) => c.from)) - RUN_ON * bridgeMm;
  const to = Math.max(crossing.to, ...met.map((c) => c.to)) + RUN_ON * bridgeMm;
  const [left, right] = [beside(axis, -bridgeMm / 2), beside(axis, bridgeMm / 2)];
  const corners = [
    pointOn(left, from),
    pointOn(left, to),
    pointOn(right, to),
    pointOn(right, from),
  ];
  return { region: regionOf(polygon(corners)), lengthMm: to - from };
}

/** What is left of the strokes without pieces that the process cannot cut. */
function cuttable(holes: Region, { smallestHole, smallestSlot }: StencilLimits): Region {
  const leastMm2 = (Math.PI / 4) * smallestHole ** 2;
  const kept = components(holes).filter(
    (piece) => regionArea(piece) >= leastMm2 && regionArea(offset(piece, -smallestSlot / 2)) > 0,
  );
  return { contours: kept.flatMap((piece) => piece.contours) };
}

/** Bridges to what no axis could hold. */
function lastResorts(sheet: Region, bridgeMm: number): Region[] {
  const strips: Region[] = [];
  let [held, ...loose] = components(sheet);
  while (loose.length > 0) {
    const [island, ...others] = loose;
    const rest = { contours: others.flatMap((o) => o.contours) };
    const found =
      shortestBridge(island, held, bridgeMm, rest) ?? shortestBridge(island, held, bridgeMm);
    if (found === null) return strips;
    strips.push(found.bridge);
    [held, ...loose] = components(union([held, island, rest, found.bridge]));
  }
  return strips;
}
