import { flatten } from '../geometry/measure.js';
import { type Pen, pen } from '../geometry/pen.js';
import type { Line, Point } from '../geometry/types.js';
import type { Random } from './random.js';

/** How leaves roughen a clipped edge: low and high bounds in mm. */
export interface Nibble {
  /** From one notch to the next, along the edge. */
  readonly wavelength: readonly [number, number];
  /** How far a notch reaches in from the plane that the shears left. */
  readonly depth: readonly [number, number];
}

/** A place on a guide: the point, the direction of travel and the normal to its right. */
interface Station {
  readonly at: Point;
  readonly along: Point;
  readonly inward: Point;
}

/** A line that can be asked for its place and direction at a length along it. */
export interface Guide {
  readonly lengthMm: number;
  readonly station: (mm: number) => Station;
}

/** Chord error of a guide: a tenth of the finest nibble. */
const GUIDE_TOLERANCE_MM = 0.03;

/** Half the span (mm) that a direction is taken over: the chords turn in steps, this smoothly. */
const FEEL_MM = 0.4;

export function guideOf(line: Line): Guide {
  const points = flatten(line.cubics, GUIDE_TOLERANCE_MM);
  const ends = [0];
  for (let i = 1; i < points.length; i++) {
    ends.push(
      ends[i - 1] + Math.hypot(points[i].x - points[i - 1].x, points[i].y - points[i - 1].y),
    );
  }
  const lengthMm = ends[ends.length - 1];
  const point = (mm: number) => pointAlong(points, ends, Math.max(0, Math.min(lengthMm, mm)));
  const station = (mm: number): Station => {
    const a = point(mm - FEEL_MM);
    const b = point(mm + FEEL_MM);
    const length = Math.max(1e-9, Math.hypot(b.x - a.x, b.y - a.y));
    const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
    return { at: point(mm), along, inward: { x: -along.y, y: along.x } };
  };
  return { lengthMm, station };
}

/** The point at a length along chords whose ends lie at the lengths `ends`. */
function pointAlong(points: readonly Point[], ends: readonly number[], mm: number): Point {
  let low = 1;
  let high = ends.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (ends[middle] < mm) low = middle + 1;
    else high = middle;
  }
  const share = (mm - ends[low - 1]) / Math.max(1e-9, ends[low] - ends[low - 1]);
  return towards(points[low - 1], points[low], share);
}

/**
 * Goes on with `outline` along the guide (card to the right of travel), its edge nibbled into leaf
 * tips. The tips touch the guide, so the plane stays readable, and the notches lie inside it.
 * Nibbles are counted from `anchorMm` both ways: a longer guide with the same anchor carries the
 * same leaves and only adds to its ends.
 */
export function nibbleAlong(
  outline: Pen,
  guide: Guide,
  anchorMm: number,
  nibble: Nibble,
  random: Random,
): Pen {
  const before = spans(anchorMm, nibble, random.branch('before')).reverse();
  const after = spans(guide.lengthMm - anchorMm, nibble, random.branch('after'));
  const all = [...before, ...after];
  let startMm = 0;
  let from = guide.station(0).at;
  all.forEach((span, i) => {
    const last = i === all.length - 1;
    const endMm = last ? guide.lengthMm : startMm + span.lengthMm;
    const to = last ? guide.station(endMm).at : inset(guide, endMm, span.depthMm);
    leafTip(outline, guide, { span, startMm, endMm, from, to });
    startMm = endMm;
    from = to;
  });
  return outline;
}

/** One nibble, from notch to notch. */
interface Span {
  readonly lengthMm: number;
  /** Of the notch that ends it. */
  readonly depthMm: number;
  /** The longer of its tip's two flanks, as a share of its length, and whether it comes first. */
  readonly flank: number;
  readonly forward: boolean;
  /** How full the tip is. */
  readonly full: number;
  /** How far its flanks fall away at the tip, in depths: 0 for a round tip. */
  readonly sharp: number;
}

/** Leaves lie the same way in runs of a few, as shoots do: the chance that a run ends. */
const TURN = 0.3;

function spans(lengthMm: number, nibble: Nibble, random: Random): Span[] {
  const list: Span[] = [];
  let covered = 0;
  let forward = random.chance(0.5);
  while (covered < lengthMm - 1e-9 && list.length < 5000) {
    if (random.chance(TURN)) forward = !forward;
    const span = {
      lengthMm: random.between(...nibble.wavelength),
      depthMm: random.between(...nibble.depth),
      flank: random.between(0.6, 0.85),
      forward,
      full: random.between(0.35, 0.75),
      sharp: random.chance(0.5) ? random.between(0.3, 0.7) : 0,
    };
    list.push(span);
    covered += span.lengthMm;
  }
  return fitted(list, lengthMm, nibble.wavelength);
}

/** The last two spans share what is left, so that none falls short of the wavelength. */
function fitted(list: Span[], lengthMm: number, [shortest, longest]: Nibble['wavelength']): Span[] {
  if (list.length === 0) return list;
  const kept = list.slice(0, -2);
  const rest = lengthMm - kept.reduce((sum, s) => sum + s.lengthMm, 0);
  const tail = list.slice(-2);
  if (tail.length < 2 || rest <= longest) {
    const depthMm = tail[0].depthMm * Math.min(1, rest / shortest);
    return [...kept, { ...tail[0], lengthMm: rest, depthMm }];
  }
  return [...kept, ...tail.map((s) => ({ ...s, lengthMm: rest / 2 }))];
}

function inset(guide: Guide, mm: number, depthMm: number): Point {
  const { at, inward } = guide.station(mm);
  return { x: at.x + inward.x * depthMm, y: at.y + inward.y * depthMm };
}

/** A span in its place on the guide, from one notch to the next. */
interface Placed {
  readonly span: Span;
  readonly startMm: number;
  readonly endMm: number;
  readonly from: Point;
  readonly to: Point;
}

/** Where the guide climbs or falls more steeply than this (a sine) its leaves all point up. */
const STEEP = 0.6;

function leafTip(outline: Pen, guide: Guide, { span, startMm, endMm, from, to }: Placed): void {
  const { y: slope } = guide.station((startMm + endMm) / 2).along;
  const forward = Math.abs(slope) > STEEP ? slope < 0 : span.forward;
  const share = forward ? span.flank : 1 - span.flank;
  const tipMm = startMm + (endMm - startMm) * share;
  const { at, along, inward } = guide.station(tipMm);
  const sink = span.sharp * span.depthMm;
  const shoulder = (mm: number): Point => ({
    x: at.x + along.x * mm + inward.x * sink,
    y: at.y + along.y * mm + inward.y * sink,
  });
  const before = shoulder((startMm - tipMm) * span.full);
  const after = shoulder((endMm - tipMm) * span.full);
  const rising = towards(from, before, 0.6);
  const falling = towards(to, after, 0.6);
  outline.curveTo(rising.x, rising.y, before.x, before.y, at.x, at.y);
  outline.curveTo(after.x, after.y, falling.x, falling.y, to.x, to.y);
}

const towards = (a: Point, b: Point, share: number): Point => ({
  x: a.x + share * (b.x - a.x),
  y: a.y + share * (b.y - a.y),
});

/** The line nibbled, as an open line of its own; `anchor` is a share of its length. */
export function nibbledLine(line: Line, anchor: number, nibble: Nibble, random: Random): Line {
  const guide = guideOf(line);
  const { at } = guide.station(0);
  return nibbleAlong(pen(at.x, at.y), guide, anchor * guide.lengthMm, nibble, random).line();
}
