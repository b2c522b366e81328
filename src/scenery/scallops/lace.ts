import { circle } from '../../geometry/primitives.js';
import { movePoint } from '../../geometry/transform.js';
import type { Point, Region } from '../../geometry/types.js';
import { inset, type Station } from '../window/walk.js';
import { STRAY, type Teeth } from './edging.js';
import { frameAt, type Measures } from './measures.js';

/** Holes are this much larger than the smallest, and webs wider, than the process must have. */
const AMPLE = 1.06;
/** Small holes follow a lobe's rim between these angles from the hem. */
const RIM_FROM_DEG = 24;
/** Holes of a corner's lobe start this share of its radius from the corner. */
const CORNER_FOOT = 0.3;
/** Steps in which a rim is measured. */
const RIM_STEPS = 180;
/** From this fineness on there is room for patience. */
const FINE = 0.3;

/** Least pitch and depth of a lobe that takes a hole. */
export function leastLace(web: number, hole: number): { pitch: number; depth: number } {
  return { pitch: AMPLE * (2 * web + 1.25 * hole), depth: AMPLE * (1.3 * web + 1.15 * hole) };
}

/** The holes pierced in each lobe: one in coarse lace, a ring round it in fine lace. */
export function pierced(teeth: Teeth, measures: Measures, fineness: number): Region[] {
  const deep = measures.depth * (1 - 2.5 * STRAY);
  const half = roomBeside(teeth, deep) / 2;
  // A corner's lobe is round, about the corner itself: its holes lie in its inner part.
  const round = Math.max(measures.pitch / 2, deep);
  const foot = CORNER_FOOT * round;
  const plain = holesIn(half, deep, measures, fineness);
  const atCorner = holesIn(half, round - foot, measures, 0).map((h) => ({ ...h, y: h.y + foot }));
  const [corners, others] = [true, false].map((corner) =>
    teeth.crests.filter((crest) => crest.corner === corner),
  );
  const along = others.flatMap((crest) => plain.map((hole) => placed(hole, crest)));
  const inCorners = corners.flatMap((crest) => atCorner.map((hole) => placed(hole, crest)));
  return [...along, ...keptApart(inCorners, along, measures)].map(({ x, y, r }) => circle(x, y, r));
}

const placed = (hole: Hole, crest: Station): Hole => ({
  ...movePoint(hole, frameAt(crest)),
  r: hole.r,
});

/** The holes of corners, shrunk where a deep corner's come near to others or to one another. */
function keptApart(inCorners: readonly Hole[], along: readonly Hole[], measures: Measures): Hole[] {
  const web = AMPLE * measures.web;
  const between = (p: Hole, q: Hole) => Math.hypot(p.x - q.x, p.y - q.y);
  return inCorners
    .map((hole) => {
      const fromOthers = along.map((other) => between(hole, other) - other.r - web);
      const fromCorners = inCorners
        .filter((other) => other !== hole)
        .map((other) => (between(hole, other) - web) / 2);
      return { ...hole, r: Math.min(hole.r, ...fromOthers, ...fromCorners) };
    })
    .filter(({ r }) => 2 * r >= measures.hole);
}

/** How far a lobe is from the next at least, at its hem or, on a round window, at its tip. */
function roomBeside({ crests }: Teeth, deepMm: number): number {
  const gaps = crests.flatMap((crest, k) => {
    const next = crests[(k + 1) % crests.length];
    return (crest.corner || next.corner ? [0] : [0, deepMm]).map((mm) => {
      const [p, q] = [inset(crest, mm), inset(next, mm)];
      return Math.hypot(q.x - p.x, q.y - p.y);
    });
  });
  return Math.min(...gaps);
}

interface Hole {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** The holes of a lobe `half` wide to each side and `deep` from its hem. */
function holesIn(half: number, deep: number, measures: Measures, fineness: number): Hole[] {
  const web = AMPLE * measures.web;
  const r = (AMPLE * measures.hole) / 2;
  const rim = rimHoles(half, deep, web + r, 2 * r + web, r);
  const within = deep - 2 * web - 2 * r;
  if (fineness >= FINE && rim.length >= 3) {
    const middle = { x: 0, y: Math.max(r, within / 2) };
    const free = rim.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y) - r - web);
    const big = Math.min(2 * r, within / 2, ...free);
    return big >= r ? [{ ...middle, r: big }, ...rim] : rim;
  }
  const single = Math.min((deep - web) / 2, 0.8 * half - web);
  const big = Math.min(single, 0.3 * deep);
  if (single < r) return [];
  return [{ x: 0, y: deep - web - Math.max(big, r), r: Math.max(big, r) }];
}

/**
 * Holes evenly along the lower half of an ellipse of radii a and b, their middles `insetMm` within
 * it everywhere: as many as lie no nearer to one another than asked.
 */
function rimHoles(a: number, b: number, insetMm: number, apartMm: number, r: number): Hole[] {
  if (a <= insetMm || b <= insetMm + r) return [];
  const from = (RIM_FROM_DEG * Math.PI) / 180;
  const points = Array.from(
    { length: RIM_STEPS + 1 },
    (_, i) => insetPoint(a, b, insetMm, from + ((Math.PI - 2 * from) * i) / RIM_STEPS),
    // No hole may run over the hem into the frame, or past the lobe's middle line.
  ).filter(({ x, y }, i) => y >= r && x * (RIM_STEPS / 2 - i) >= 0);
  const lengths = [0];
  for (let i = 1; i < points.length; i++) lengths.push(lengths[i - 1] + apart(points, i - 1, i));
  const whole = lengths[lengths.length - 1];
  for (let gaps = Math.floor(whole / apartMm); gaps >= 2; gaps--) {
    const places = Array.from({ length: gaps + 1 }, (_, i) =>
      lengths.findIndex((l) => l >= (i / gaps) * whole - 1e-9),
    );
    const isFree = places.every((p, i) =>
      places.slice(0, i).every((q) => apart(points, p, q) >= apartMm),
    );
    if (isFree) return places.map((place) => ({ ...points[place], r }));
  }
  return [];
}

/** The place so far within an ellipse from where it is at an angle of its circle. */
function insetPoint(a: number, b: number, insetMm: number, angle: number): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const share = insetMm / Math.hypot(b * cos, a * sin);
  return { x: (a - share * b) * cos, y: (b - share * a) * sin };
}

function apart(points: readonly Point[], i: number, k: number): number {
  return Math.hypot(points[i].x - points[k].x, points[i].y - points[k].y);
}
