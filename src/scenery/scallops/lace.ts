import { circle } from '../../geometry/primitives.js';
import { moveRegion } from '../../geometry/transform.js';
import type { Point, Region } from '../../geometry/types.js';
import { inset } from '../window/walk.js';
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
  return teeth.crests.flatMap((crest) =>
    (crest.corner ? atCorner : plain).map(({ x, y, r }) =>
      moveRegion(circle(x, y, r), frameAt(crest)),
    ),
  );
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
  const rim = rimHoles(half - web - r, deep - web - r, 2 * r + web, r);
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

/** Holes evenly along an ellipse's lower half, as many as lie no nearer to one another than asked. */
function rimHoles(a: number, b: number, apartMm: number, r: number): Hole[] {
  if (a <= 0 || b <= r) return [];
  // No hole may run over the hem into the frame.
  const from = Math.max((RIM_FROM_DEG * Math.PI) / 180, Math.asin(r / b));
  const points = Array.from({ length: RIM_STEPS + 1 }, (_, i) => {
    const angle = from + ((Math.PI - 2 * from) * i) / RIM_STEPS;
    return { x: a * Math.cos(angle), y: b * Math.sin(angle) };
  });
  const lengths = [0];
  for (let i = 1; i < points.length; i++) lengths.push(lengths[i - 1] + apart(points, i - 1, i));
  const whole = lengths[RIM_STEPS];
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

function apart(points: readonly Point[], i: number, k: number): number {
  return Math.hypot(points[i].x - points[k].x, points[i].y - points[k].y);
}
