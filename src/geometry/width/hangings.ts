import { pointOn } from '../chain.js';
import { components } from '../components.js';
import { regionArea } from '../measure.js';
import { type Outline, outlineOf } from '../outline.js';
import type { Cubics, Point, Region } from '../types.js';
import type { EdgeSamples } from './inscribed.js';
import { findNecks, type Neck } from './necks.js';
import { isPinch, type Parting, parted, placeOfSample } from './parting.js';
import { asPlace, type NarrowPlace, samplesFor, WIDTH_SLACK_MM } from './webs.js';

/** Card that stays in one piece at the width asked for, cut off where webs hold it. */
export interface Part {
  readonly region: Region;
  readonly areaMm2: number;
  /** Narrower than asked all over: a twig, or where webs branch. */
  readonly isNarrow: boolean;
}

/** All webs between the same two parts. */
export interface Link {
  /** Their numbers in `parts`, the larger part first; twice the same where a part loops back. */
  readonly between: readonly [number, number];
  /** The webs, narrowest first. */
  readonly webs: readonly NarrowPlace[];
  /** Sum of the webs' widths: how much card would have to tear. */
  readonly widthMm: number;
  /** The parts that would come off if it tore, the lesser share of card; none if held elsewhere. */
  readonly holds: readonly number[];
}

/** How a region hangs together. */
export interface Hangings {
  /** Largest first. Together they are the region, and none overlaps another. */
  readonly parts: readonly Part[];
  /** In the order of their parts. What hangs on a single web is held by a link of one. */
  readonly links: readonly Link[];
}

/**
 * The region as parts that hang on each other by webs narrower than `widthMm`. Each web is cut
 * straight across where it is narrowest, so the parts keep their ends of it, and all curves are as
 * they were. A web is what `narrowWebs` calls a neck: it widens by a tenth at least on both ends.
 * Parts that touch in a point hang on a web of width 0.
 */
export function hangings(region: Region, widthMm: number): Hangings {
  const belowMm = widthMm - WIDTH_SLACK_MM;
  const outline = outlineOf(region);
  const samples = samplesFor(region, widthMm);
  const found = findNecks(outline, samples, belowMm).places;
  // Cuts do not cross: of two that would, the narrower web is cut.
  const necks = found
    .sort((a, b) => a.widthMm - b.widthMm)
    .filter((neck, k) => !found.slice(0, k).some((other) => cross(region, neck, other)));
  const isApart = necks.map((neck) => isTouch(region, neck));
  const cut = parted(
    region.contours,
    necks.filter((_, k) => !isApart[k]).map((neck) => neck.ends),
  );
  const { parts, partOf } = partsOf(cut, outline, samples, belowMm);
  const sides = [...cut.after];
  const between = necks.map((neck, k) =>
    (isApart[k] ? neck.ends.map(cut.contourAt) : sides.shift()!).map((c) => partOf(c)),
  );
  return { parts, links: linksOf(necks, between, parts) };
}

/** Tips of card that only touch are apart without a cut. */
const isTouch = ({ contours }: Region, { widthMm, ends }: Neck): boolean =>
  widthMm === 0 && !isPinch(contours, ends);

/** Whether two necks' cuts cross; ends in common do not count. */
function cross({ contours }: Region, p: Neck, q: Neck): boolean {
  const [a, b, c, d] = [...p.ends, ...q.ends].map((end) => pointOn(contours[end.contour], end.u));
  const side = (from: Point, to: Point, at: Point): number =>
    (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** The parts, largest first, and the number of the part to which each contour belongs. */
function partsOf(
  cut: Parting,
  outline: Outline,
  samples: EdgeSamples,
  belowMm: number,
): { parts: Part[]; partOf: (contour: number) => number } {
  const wide = new Set<Cubics>();
  for (let s = 0; s < samples.count; s++) {
    if (samples.widthMm[s] < belowMm) continue;
    wide.add(cut.contours[cut.contourAt(placeOfSample(outline, samples, s))]);
  }
  const regions = components({ contours: cut.contours });
  const owner = new Map(regions.flatMap((part, k) => part.contours.map((c) => [c, k] as const)));
  const parts = regions.map(
    (part): Part => ({
      region: part,
      areaMm2: regionArea(part),
      isNarrow: !part.contours.some((c) => wide.has(c)),
    }),
  );
  return { parts, partOf: (contour) => owner.get(cut.contours[contour])! };
}

/** The webs gathered by the parts that they lie between. */
function linksOf(
  necks: readonly Neck[],
  between: readonly (readonly number[])[],
  parts: readonly Part[],
): Link[] {
  const webs = new Map<number, NarrowPlace[]>();
  necks.forEach((neck, k) => {
    const key = Math.min(...between[k]) * parts.length + Math.max(...between[k]);
    webs.set(key, [...(webs.get(key) ?? []), asPlace(neck)]);
  });
  const keys = [...webs.keys()].sort((a, b) => a - b);
  const pairs = keys.map((key) => [Math.floor(key / parts.length), key % parts.length] as const);
  const neighbours = parts.map((): number[] => []);
  for (const [a, b] of pairs) {
    neighbours[a].push(b);
    neighbours[b].push(a);
  }
  return pairs.map((pair, k): Link => {
    const own = webs.get(keys[k])!;
    const widthMm = own.reduce((sum, web) => sum + web.widthMm, 0);
    return { between: pair, webs: own, widthMm, holds: heldBy(pair, neighbours, parts) };
  });
}

/** What two parts would come apart into without the link between them, the lesser share. */
function heldBy(
  [a, b]: readonly [number, number],
  neighbours: readonly (readonly number[])[],
  parts: readonly Part[],
): number[] {
  const reachedFrom = (start: number, barred: number): number[] => {
    const reached = new Set([start]);
    // A set is walked in the order in which it fills, what is added on the way included.
    for (const part of reached) {
      for (const other of neighbours[part]) {
        if (!(part === start && other === barred)) reached.add(other);
      }
    }
    return [...reached].sort((p, q) => p - q);
  };
  const fromA = reachedFrom(a, b);
  if (a === b || fromA.includes(b)) return [];
  const fromB = reachedFrom(b, a);
  const area = (numbers: readonly number[]): number =>
    numbers.reduce((sum, k) => sum + parts[k].areaMm2, 0);
  return area(fromB) <= area(fromA) ? fromB : fromA;
}
