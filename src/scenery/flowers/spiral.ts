import type { Point } from '../../geometry/types.js';

/**
 * The golden angle, 360 degrees (2 - phi) with phi = (1 + sqrt 5) / 2.
 * H. Vogel, A better way to construct the sunflower head, Mathematical Biosciences 44 (1979).
 */
export const GOLDEN_DEG = 360 * (2 - (1 + Math.sqrt(5)) / 2);

/** Vogel's spiral with scale 1 brings no two florets nearer than this: numbers 1 and 4. */
const NEAREST = 1.60195;

/** Floret n (1, 2, ...) of a head round the origin: radius c sqrt(n), n golden angles round. */
export function floret(n: number, c: number): Point {
  const a = (n * GOLDEN_DEG * Math.PI) / 180;
  const r = c * Math.sqrt(n);
  return { x: r * Math.cos(a), y: r * Math.sin(a) };
}

/** The least scale at which florets stay `apartMm` from each other, middle to middle. */
export const scaleFor = (apartMm: number): number => apartMm / NEAREST;

/** All the florets, `apartMm` from each other, that lie within `radiusMm` of the middle. */
export function floretsWithin(radiusMm: number, apartMm: number): Point[] {
  const c = scaleFor(apartMm);
  const count = Math.max(0, Math.floor((radiusMm / c) ** 2));
  return Array.from({ length: count }, (_, i) => floret(i + 1, c));
}
