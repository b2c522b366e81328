import { circle } from '../../geometry/primitives.js';
import type { Cubics, Point } from '../../geometry/types.js';
import { mix } from '../brick/craft.js';
import type { Plot } from '../family.js';
import { type LimbNode, limb } from '../limb.js';

/** A stalk is at most this many times as long as it is thick. Common practice, no source. */
const SLENDER = 15;
/** The coil turns this far. */
const COIL_DEG = 400;
const STEPS = 20;
/** A coil as high as this share of its crozier, or more, looks like a hoop. */
const LARGEST_COIL = 0.36;

const thickness = (heightMm: number, web: number): number =>
  Math.max(1.25 * web, heightMm / SLENDER);
const eyeOf = (web: number): number => 0.75 * web;

/** A coil's radius, mm: between its outer turn and its eye lies a gap that can be cut. */
export const coilRadius = (heightMm: number, { smallestWeb, smallestHole }: Plot): number =>
  eyeOf(smallestWeb) + 1.15 * smallestHole + 0.6 * thickness(heightMm, smallestWeb);

/** Whether a crozier of this height has room for a coil that can be cut. */
export const canCoil = (heightMm: number, plot: Plot): boolean =>
  2 * coilRadius(heightMm, plot) < LARGEST_COIL * heightMm;

/** A young frond still rolled up: a stalk that ends in a coil, which opens to its side. */
export function crozier(foot: Point, heightMm: number, side: 1 | -1, plot: Plot): Cubics[] {
  const { smallestWeb: web } = plot;
  const thick = thickness(heightMm, web);
  const radius = coilRadius(heightMm, plot);
  const eye = eyeOf(web);
  const middle = { x: foot.x + side * radius, y: foot.y - heightMm + radius + thick / 2 };
  const stalk: LimbNode[] = [0, 0.35, 0.7].map((t) => ({
    x: foot.x - side * 0.05 * heightMm * Math.sin(Math.PI * t),
    y: mix(foot.y + 0.5, middle.y, t),
    thickness: thick * mix(1.2, 1, t),
  }));
  const coil = Array.from({ length: STEPS + 1 }, (_, i): LimbNode => {
    const t = i / STEPS;
    const a = Math.PI + (t * COIL_DEG * Math.PI) / 180;
    const r = mix(radius, 0.25 * eye, Math.max(0, (t - 0.45) / 0.55) ** 1.2);
    return {
      x: middle.x + side * r * Math.cos(a),
      y: middle.y + r * Math.sin(a),
      thickness: mix(thick, 1.3 * web, t),
    };
  });
  return [limb([...stalk, ...coil]), circle(middle.x, middle.y, eye).contours[0]];
}
