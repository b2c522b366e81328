import { nearestChord, type Outline } from '../outline.js';
import type { Point } from '../types.js';
import { closestPair, stretchOfOutline } from './closest.js';
import type { EdgeSamples } from './inscribed.js';
import { type OutlinePlace, placeOfSample, placeOnChord } from './parting.js';

/** A place where the card narrows between two wider ends. */
export interface Neck {
  readonly at: Point;
  readonly widthMm: number;
  readonly lengthMm: number;
  /** The middles of its card from end to end; one point where it is no longer than a corner. */
  readonly axis: readonly Point[];
  /** The two places of the outline between which it is narrowest. */
  readonly ends: readonly [OutlinePlace, OutlinePlace];
  /** The two samples from which it was found. */
  readonly seeds: readonly [number, number];
  /** The samples along one side of it, in the outline's order; none where corners touch. */
  readonly side: readonly number[];
}

/** What is wider than a neck by this much is a wider end, not a wave in its edge. */
const WIDER = 1.1;
/** ... and by this much (mm): more than circles between chords err by. Less finds necks in horns. */
const WIDER_MM = 0.02;
/** Straight across: the circle touches at two ends of a diameter, give or take 30 degrees. */
const STRAIGHT_ACROSS = Math.cos((15 * Math.PI) / 180);
/** Samples see a neck up to this much too wide, between two corners whose fans just miss it. */
const NEARLY = 1.02;
/** Necks whose ends are both nearer than this share of the width asked for are one, seen twice. */
const SAME_PLACE = 0.5;
/** Widths that differ by less than this (mm) are even. */
const EVEN_MM = 0.01;
/** What hangs on less outline than this (mm) is a speck. */
const SPECK_MM = 0.5;
/** A neck's narrowest place lies within this (mm) of the samples that found it: just over a spacing.
 * More would slide past a wider pocket into the next narrow place. */
const REACH_MM = 0.5;

/**
 * The necks narrower than `belowMm`, the narrowest first as the samples see them (so to about 2 %),
 * and the samples that lie on one.
 *
 * A neck starts from two samples across from each other. Walk the outline from one of them both
 * ways for as long as the card is hardly wider: if that reaches the other sample, the outline only
 * went round a free end, and this is a tip; if not, the card widens on both ends.
 */
export function findNecks(
  outline: Outline,
  samples: EdgeSamples,
  belowMm: number,
): { places: Neck[]; taken: Uint8Array } {
  const { opposite, widthMm, stretchMm } = samples;
  const taken = new Uint8Array(samples.count);
  const settled = new Uint8Array(samples.count);
  const places = touchingPoints(outline, samples);
  for (const seed of seedsOf(samples, belowMm)) {
    if (settled[seed]) continue;
    const wider = Math.max(WIDER * widthMm[seed], widthMm[seed] + WIDER_MM);
    const run = runFrom(samples, seed, wider);
    if (holds(run, opposite[seed])) {
      // Any wider pair within this run has a run that holds this one: it is no neck either.
      forRun(run, (s) => {
        if (holds(run, opposite[s])) settled[s] = 1;
      });
      continue;
    }
    // A kink in the outline, too small to be cut, pinches it without holding anything.
    if (arcBetween(samples, seed, opposite[seed]) < SPECK_MM) continue;
    const narrowest = narrowestNear(outline, samples, seed);
    if (narrowest.distanceMm >= belowMm) continue;
    const side = stripFrom(samples, seed, NEARLY * belowMm);
    // Past a free end the two sides are one: a set counts what both walks met once.
    const strip = new Set([...side, ...stripFrom(samples, opposite[seed], NEARLY * belowMm)]);
    let length = 0;
    for (const s of strip) {
      if (widthMm[s] < belowMm) length += stretchMm[s];
      for (const k of [s, opposite[s]]) taken[k] = settled[k] = 1;
    }
    const seeds = [seed, opposite[seed]] as const;
    if (places.some((p) => areSame(samples, p.seeds, seeds, SAME_PLACE * belowMm))) continue;
    const { at, ends } = middleOf(outline, samples, side, seed, narrowest);
    places.push({
      at,
      widthMm: narrowest.distanceMm,
      lengthMm: length / 2,
      axis: axisOf(samples, side, at),
      ends,
      seeds,
      side,
    });
  }
  return { places, taken };
}

/** Corners on one spot (mm): far above rounding, far below any cut. */
const ONE_SPOT_MM = 1e-5;

/** Where corners of the outline touch: card that hangs together in a point is a neck of width 0. */
function touchingPoints(outline: Outline, { chord }: EdgeSamples): Neck[] {
  const { ax, ay } = outline;
  const met = new Map<string, number[]>();
  for (let k = 0; k < ax.length; k++) {
    const spot = `${Math.round(ax[k] / ONE_SPOT_MM)} ${Math.round(ay[k] / ONE_SPOT_MM)}`;
    met.set(spot, [...(met.get(spot) ?? []), k]);
  }
  return [...met.values()].flatMap(([first, ...others]): Neck[] => {
    const second = others.find((k) => !isKink(outline, first, k));
    if (second === undefined) return [];
    const at = { x: ax[first], y: ay[first] };
    const ends = [placeOnChord(outline, first, 0), placeOnChord(outline, second, 0)] as const;
    const seeds = [chord.indexOf(first), chord.indexOf(second)] as const;
    return [{ at, widthMm: 0, lengthMm: 0, axis: [at], ends, seeds, side: [] }];
  });
}

/** Whether the outline goes from the start of one chord to that of the other by less than a speck. */
const isKink = (outline: Outline, a: number, b: number): boolean =>
  outline.contour[a] === outline.contour[b] && (isSpeck(outline, a, b) || isSpeck(outline, b, a));

function isSpeck({ ax, ay, bx, by, contour, first }: Outline, from: number, to: number): boolean {
  const [start, end] = [first[contour[from]], first[contour[from] + 1]];
  let length = 0;
  for (let k = from; k !== to && length < SPECK_MM; k = k + 1 < end ? k + 1 : start) {
    length += Math.hypot(bx[k] - ax[k], by[k] - ay[k]);
  }
  return length < SPECK_MM;
}

/** Whether two necks start and end on the same stretches of outline. */
function areSame(
  samples: EdgeSamples,
  p: Neck['seeds'],
  q: Neck['seeds'],
  withinMm: number,
): boolean {
  const isNear = (a: number, b: number): boolean => arcBetween(samples, a, b) < withinMm;
  return (isNear(p[0], q[0]) && isNear(p[1], q[1])) || (isNear(p[0], q[1]) && isNear(p[1], q[0]));
}

/** Samples that look straight across narrow card, narrowest first. */
function seedsOf({ widthMm, acrossMm, count }: EdgeSamples, belowMm: number): number[] {
  const seeds: number[] = [];
  for (let s = 0; s < count; s++) {
    if (widthMm[s] < NEARLY * belowMm && acrossMm[s] >= STRAIGHT_ACROSS * widthMm[s]) seeds.push(s);
  }
  return seeds.sort((a, b) => widthMm[a] - widthMm[b]);
}

/** Neighbouring samples of one contour: `length` of them from `start`, going round its end. */
interface Run {
  readonly first: number;
  readonly size: number;
  readonly start: number;
  readonly length: number;
}

const holds = ({ first, size, start, length }: Run, s: number): boolean =>
  s >= first && s < first + size && (s - start + size) % size < length;

function forRun({ first, size, start, length }: Run, visit: (s: number) => void): void {
  for (let k = 0; k < length; k++) visit(first + ((start - first + k) % size));
}

/** The neighbours of a sample, both ways, for as long as the card is narrower than `limitMm`. */
function runFrom(samples: EdgeSamples, seed: number, limitMm: number): Run {
  const { widthMm, opposite, contour } = samples;
  const first = samples.first[contour[seed]];
  const size = samples.first[contour[seed] + 1] - first;
  const acrossOwn = contour[opposite[seed]] === contour[seed];
  const goesOn = (s: number): boolean => {
    if (widthMm[s] >= limitMm) return false;
    // Where a hole lies across, what hangs on the seed is a ring, not a free end.
    return !acrossOwn || contour[opposite[s]] === contour[s];
  };
  const at = (k: number): number => first + ((((seed - first + k) % size) + size) % size);
  let before = 0;
  while (before + 1 < size && goesOn(at(-before - 1))) before++;
  let after = 0;
  while (before + after + 1 < size && goesOn(at(after + 1))) after++;
  return { first, size, start: at(-before), length: before + after + 1 };
}

/**
 * The samples of a neck on one side of it: from a seed both ways while the card is narrower than
 * `limitMm` and the place across moves along steadily. Bumps shorter than that are stepped over.
 */
function stripFrom(samples: EdgeSamples, seed: number, limitMm: number): number[] {
  const { widthMm, opposite, contour, stretchMm } = samples;
  const first = samples.first[contour[seed]];
  const size = samples.first[contour[seed] + 1] - first;
  const walk = (step: 1 | -1): number[] => {
    const met: number[] = [];
    let across = opposite[seed];
    let skippedMm = 0;
    for (let k = 1; k < size && skippedMm <= limitMm; k++) {
      const s = first + ((((seed - first + step * k) % size) + size) % size);
      if (widthMm[s] >= limitMm) break;
      if (arcBetween(samples, opposite[s], across) <= limitMm + skippedMm) {
        met.push(s);
        across = opposite[s];
        skippedMm = 0;
      } else {
        skippedMm += stretchMm[s];
      }
    }
    return met;
  };
  return [...walk(-1).reverse(), seed, ...walk(1)];
}

/** Where a neck stays as narrow for a while, the middle of that; else where it is narrowest. */
function middleOf(
  outline: Outline,
  samples: EdgeSamples,
  side: readonly number[],
  seed: number,
  narrowest: Narrowest,
): Pick<Neck, 'at' | 'ends'> {
  const { x, y, nx, ny, widthMm, chord, opposite } = samples;
  const isEven = (s: number | undefined): boolean =>
    s !== undefined && Math.abs(widthMm[s] - narrowest.distanceMm) < EVEN_MM;
  let from = side.indexOf(seed);
  let to = from;
  if (!isEven(seed)) return narrowest;
  while (isEven(side[from - 1])) from--;
  while (isEven(side[to + 1])) to++;
  const s = side[(from + to) >> 1];
  const o = opposite[s];
  const facing = stretchOfOutline(outline, chord[o], { x: x[o], y: y[o] }, widthMm[s]);
  const { b } = closestPair([{ x: x[s], y: y[s] }], facing);
  return {
    at: { x: x[s] + (nx[s] * widthMm[s]) / 2, y: y[s] + (ny[s] * widthMm[s]) / 2 },
    ends: [placeOfSample(outline, samples, s), placeOf(outline, b)],
  };
}

/** Points of an axis nearer to each other than this (mm) say the same. */
const AXIS_STEP_MM = 0.3;

/** The centres of the circles along one side of a neck. */
function axisOf(
  { x, y, nx, ny, widthMm }: EdgeSamples,
  side: readonly number[],
  at: Point,
): Point[] {
  const axis: Point[] = [];
  for (const s of side) {
    const half = widthMm[s] / 2;
    const centre = { x: x[s] + nx[s] * half, y: y[s] + ny[s] * half };
    const last = axis[axis.length - 1];
    if (last && Math.hypot(centre.x - last.x, centre.y - last.y) < AXIS_STEP_MM) continue;
    axis.push(centre);
  }
  return axis.length > 1 ? axis : [at];
}

/** Length of outline between two samples the short way round; Infinity on different contours. */
function arcBetween(
  { contour, alongMm, first, stretchMm }: EdgeSamples,
  a: number,
  b: number,
): number {
  if (contour[a] !== contour[b]) return Infinity;
  const last = first[contour[a] + 1] - 1;
  const whole = alongMm[last] + stretchMm[last] / 2;
  const apart = Math.abs(alongMm[a] - alongMm[b]);
  return Math.min(apart, whole - apart);
}

const placeOf = (outline: Outline, { x, y }: Point): OutlinePlace => {
  const foot = nearestChord(outline, x, y)!;
  return placeOnChord(outline, foot.chord, foot.fraction);
};

interface Narrowest {
  readonly at: Point;
  readonly distanceMm: number;
  readonly ends: Neck['ends'];
}

/** The narrowest place near a seed, straight across, and the middle of it. */
function narrowestNear(outline: Outline, samples: EdgeSamples, seed: number): Narrowest {
  const { x, y, chord, opposite } = samples;
  const other = opposite[seed];
  // The two stretches must not meet round a free end, where the distance is nothing.
  const reach = Math.min(REACH_MM, arcBetween(samples, seed, other) / 3);
  const stretch = (s: number): Point[] =>
    stretchOfOutline(outline, chord[s], { x: x[s], y: y[s] }, reach);
  const { a, b, distanceMm } = closestPair(stretch(seed), stretch(other));
  const at = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  return { at, distanceMm, ends: [placeOf(outline, a), placeOf(outline, b)] };
}
