import { joined, pointOn, subchain } from '../chain.js';
import { straightCubic } from '../cubic.js';
import type { Outline } from '../outline.js';
import type { Cubics, Point } from '../types.js';
import type { EdgeSamples } from './inscribed.js';

/** A place on a region's outline: the place u (see chain.ts) on one of its contours. */
export interface OutlinePlace {
  readonly contour: number;
  readonly u: number;
}

/** A straight cut through card from one place of the outline to another. */
export type Cut = readonly [OutlinePlace, OutlinePlace];

/** Contours parted by cuts: all that was card lies on one side of a cut or the other. */
export interface Parting {
  readonly contours: readonly Cubics[];
  /** For each cut, the new contour that runs on along the outline after each of its two places. */
  readonly after: readonly (readonly [number, number])[];
  /** The new contour on which a place of the old outline lies. */
  readonly contourAt: (place: OutlinePlace) => number;
}

/** A place this near to a chord's end (share of the chord) is the end, but for rounding. */
const AT_END = 1e-7;

/** The place a fraction of the way along a chord of an outline. */
export function placeOnChord(outline: Outline, chord: number, fraction: number): OutlinePlace {
  const contour = outline.contour[chord];
  const [u0, u1] = [outline.u0[chord], outline.u1[chord]];
  const f = fraction < AT_END ? 0 : fraction > 1 - AT_END ? 1 : fraction;
  const u = u0 + f * (u1 - u0);
  // A contour ends where it starts.
  return { contour, u: u === outline.contours[contour].length / 8 ? 0 : u };
}

/** The place of a sample. */
export function placeOfSample(
  outline: Outline,
  { chord, x, y }: EdgeSamples,
  s: number,
): OutlinePlace {
  const { ax, ay, bx, by } = outline;
  const k = chord[s];
  const length = Math.hypot(bx[k] - ax[k], by[k] - ay[k]);
  return placeOnChord(outline, k, Math.hypot(x[s] - ax[k], y[s] - ay[k]) / length);
}

/** One end of a cut; cut k has the ends 2 k and 2 k + 1. */
interface End {
  readonly id: number;
  readonly u: number;
  readonly at: Point;
  /** Angle from the way the contour comes, through card, to the cut. */
  readonly sweep: number;
}

/** The stretch of a contour from one end of a cut to the next end on it. */
interface Arc {
  readonly contour: number;
  readonly from: End;
  readonly to: End;
  /** Whether it runs across the contour's start. */
  readonly wraps: boolean;
}

/**
 * Parts contours along straight cuts, exactly: curves stay as they are, and each cut becomes an
 * edge of what lies on either side of it. A cut between two contours joins them, as where a ring is
 * cut through. Cuts must run through card; they may share an end but not cross.
 */
export function parted(contours: readonly Cubics[], cuts: readonly Cut[]): Parting {
  const rings = endsOf(contours, cuts);
  const arcs: Arc[] = [];
  rings.forEach((ring, contour) => {
    ring.forEach((from, k) => {
      const wraps = k + 1 === ring.length;
      arcs[from.id] = { contour, from, to: ring[wraps ? 0 : k + 1], wraps };
    });
  });
  const made: Cubics[] = [];
  const kept = contours.map((c, k) => (rings[k].length > 0 ? -1 : made.push(c) - 1));
  const owner = new Int32Array(arcs.length).fill(-1);
  for (let first = 0; first < arcs.length; first++) {
    if (owner[first] >= 0) continue;
    const numbers: number[] = [];
    // Along the outline to the next cut, across by it, and on along the outline from there.
    for (let id = first; owner[id] < 0; ) {
      owner[id] = made.length;
      const { contour, from, to, wraps } = arcs[id];
      for (const v of chainBetween(contours[contour], from.u, to.u, wraps)) numbers.push(v);
      id = to.id ^ 1;
      numbers.push(...edge(to.at, arcs[id].from.at));
    }
    made.push(Float64Array.from(numbers));
  }
  return {
    contours: made,
    after: cuts.map((_, k) => [owner[2 * k], owner[2 * k + 1]]),
    contourAt: ({ contour, u }) => {
      const ring = rings[contour];
      if (ring.length === 0) return kept[contour];
      let k = ring.length - 1;
      while (k >= 0 && ring[k].u > u) k--;
      return owner[ring[k < 0 ? ring.length - 1 : k].id];
    },
  };
}

/** The ends of all cuts on each contour, in its order. */
function endsOf(contours: readonly Cubics[], cuts: readonly Cut[]): End[][] {
  const rings: End[][] = contours.map(() => []);
  cuts.forEach((cut, k) => {
    const points = cut.map(({ contour, u }) => pointOn(contours[contour], u));
    cut.forEach(({ contour, u }, n) => {
      const sweep = sweepTo(contours[contour], u, points[n], points[1 - n]);
      rings[contour].push({ id: 2 * k + n, u, at: points[n], sweep });
    });
  });
  // Where cuts share an end, the contour comes to that of the least sweep first.
  for (const ring of rings) ring.sort((a, b) => a.u - b.u || a.sweep - b.sweep);
  return rings;
}

/** How far along a contour (in t) to look for the way it runs. */
const BESIDE_T = 1e-4;

/** The angle from the way a contour comes to a place, through card, to the way to a point. */
function sweepTo(c: Cubics, u: number, at: Point, other: Point): number {
  const back = pointOn(c, u >= BESIDE_T ? u - BESIDE_T : c.length / 8 - BESIDE_T);
  // Card lies on the right as the contour runs, so anticlockwise on screen from where it comes.
  const came = Math.atan2(back.y - at.y, back.x - at.x);
  const sweep = came - Math.atan2(other.y - at.y, other.x - at.x);
  return sweep < 0 ? sweep + 2 * Math.PI : sweep;
}

/**
 * Where the outline touches itself in a point: whether card runs through between the two, pinched,
 * so that it can be cut there; if not, two tips of card touch, which their contours keep apart.
 */
export function isPinch(contours: readonly Cubics[], [a, b]: Cut): boolean {
  const at = pointOn(contours[a.contour], a.u);
  const way = ({ contour, u }: OutlinePlace): Point => pointOn(contours[contour], u + BESIDE_T);
  const sweep = (to: Point): number => sweepTo(contours[a.contour], a.u, at, to);
  // What runs on from the one place within the card at the other has that card on both sides.
  return sweep(way(b)) < sweep(way(a));
}

const edge = (a: Point, b: Point): number[] =>
  a.x === b.x && a.y === b.y ? [] : straightCubic(a.x, a.y, b.x, b.y);

/** A contour from one place to another, all round where it wraps from a place to itself. */
function chainBetween(c: Cubics, from: number, to: number, wraps: boolean): Cubics {
  if (!wraps) return from < to ? subchain(c, from, to) : new Float64Array(0);
  const last = subchain(c, from, c.length / 8);
  return to > 0 ? joined(last, subchain(c, 0, to)) : last;
}
