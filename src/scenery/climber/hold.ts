import { containsPoint } from '../../geometry/components.js';
import { flatten, regionBounds } from '../../geometry/measure.js';
import { polyline } from '../../geometry/pen.js';
import type { Point } from '../../geometry/types.js';
import { type Guide, guideOf } from '../edge.js';
import type { Plot } from '../family.js';

/** What a climber climbs: the window's edge from its foot up, or a post of its own on a sill. */
export interface Hold {
  readonly kind: 'edge' | 'post';
  readonly guide: Guide;
  /** A place `into` mm off the edge toward the light, and the way up there, of length 1. */
  at(mm: number, into: number): Point;
  way(mm: number): Point;
  /** +1 where the light lies right of the way up, else -1. */
  readonly side: 1 | -1;
  /** How far from the edge it may reach, in mm. */
  readonly reach: number;
}

/** Directions are taken over this length (mm) to each side, so that corners are cut short. */
const FEEL_MM = 3;

export function holdOf(plot: Plot): Hold {
  const along = edgeFrom(plot);
  const straight = [
    { x: 0, y: 0 },
    { x: 0, y: -plot.height },
  ];
  const guide = guideOf(polyline(along ?? straight));
  const way = (mm: number): Point => {
    const a = guide.station(mm - FEEL_MM).at;
    const b = guide.station(mm + FEEL_MM).at;
    const length = Math.max(1e-9, Math.hypot(b.x - a.x, b.y - a.y));
    return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  };
  const side = along ? lightSide(plot, guide, way) : plot.side === 'right' ? -1 : 1;
  const kind = along || plot.side !== 'sill' ? 'edge' : 'post';
  const at = (mm: number, into: number): Point => {
    const { at: p } = guide.station(mm);
    const { x, y } = way(mm);
    return { x: p.x - side * into * y, y: p.y + side * into * x };
  };
  return { kind, guide, at, way, side, reach: plot.width / 2 };
}

function lightSide(plot: Plot, guide: Guide, way: (mm: number) => Point): 1 | -1 {
  const { at } = guide.station(guide.lengthMm / 2);
  const { x, y } = way(guide.lengthMm / 2);
  return containsPoint(plot.frame.window, { x: at.x - y, y: at.y + x }) ? 1 : -1;
}

/** A sill climber runs to a jamb that is no further from it than its own reach, and this (mm). */
const NEAR_MM = 4;

/** The window's edge from the origin up to the climber's height, or null where it has none. */
function edgeFrom(plot: Plot): Point[] | null {
  const { window } = plot.frame;
  if (window.contours.length === 0) return null;
  const { minX, maxX } = regionBounds(window);
  const nearer = Math.min(-minX, maxX);
  if (plot.side === 'sill' && nearer > plot.width / 2 + NEAR_MM) return null;
  const ring = nearestRing(window.contours.map((c) => flatten(c, 0.02)));
  const turn = plot.side === 'sill' ? (-minX < maxX ? -1 : 1) : 0;
  // Up a jamb; along a sill to the nearer corner first.
  const gain = (p: Point): number => (turn === 0 ? -p.y : turn * p.x);
  const forward = gain(ring[Math.min(ring.length - 1, 2)]) > gain(ring[ring.length - 2]);
  return upTo(forward ? ring : [...ring].reverse(), plot);
}

/** Walks from the ring's start until it is as high as the plot, or the edge turns down again. */
function upTo(ring: readonly Point[], { height }: Plot): Point[] {
  const walked: Point[] = [ring[0]];
  for (let i = 1; i < ring.length; i++) {
    const [a, b] = [ring[i - 1], ring[i]];
    if (b.y > a.y + 1e-6 && a.y < -0.3 * height) break;
    if (b.y <= -height) {
      const f = (a.y + height) / Math.max(1e-9, a.y - b.y);
      walked.push({ x: a.x + f * (b.x - a.x), y: -height });
      break;
    }
    walked.push(b);
  }
  return walked;
}

/** Steps (mm) into which a ring's chords are parted. */
const STEP_MM = 1;

/** The ring that passes nearest the origin, from there once round. */
function nearestRing(rings: readonly Point[][]): Point[] {
  const fine = rings.map((ring) =>
    ring.slice(1).flatMap((b, i) => {
      const a = ring[i];
      const steps = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / STEP_MM));
      return Array.from({ length: steps }, (_, k) => ({
        x: a.x + ((k + 1) / steps) * (b.x - a.x),
        y: a.y + ((k + 1) / steps) * (b.y - a.y),
      }));
    }),
  );
  const far = (p: Point): number => Math.hypot(p.x, p.y);
  let best = { ring: fine[0], start: 0 };
  for (const ring of fine) {
    ring.forEach((p, start) => {
      if (far(p) < far(best.ring[best.start])) best = { ring, start };
    });
  }
  return [...best.ring.slice(best.start), ...best.ring.slice(0, best.start + 1)];
}
