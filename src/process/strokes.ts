import { linesInside } from '../geometry/clip-lines.js';
import { components } from '../geometry/components.js';
import { regionBounds } from '../geometry/measure.js';
import { offset } from '../geometry/offset/offset.js';
import { polyline } from '../geometry/pen.js';
import { moveLine, moveRegion, reversed, rotation } from '../geometry/transform.js';
import type { Cubics, Line, Region } from '../geometry/types.js';

/**
 * Parallel lines across a region, `apartMm` from one to the next, cut off exactly at its edge.
 * `angleDeg` is anticlockwise on screen from the width. Every separate part is hatched by itself,
 * from its middle out, so that even one narrower than the distance has a line; within a part every
 * other line runs back, as a head would sweep.
 */
export function hatchLines(region: Region, angleDeg: number, apartMm: number): Line[] {
  const level = rotation(angleDeg);
  const back = rotation(-angleDeg);
  return components(region).flatMap((part) =>
    levelLines(moveRegion(part, level), apartMm).flatMap((row, k) => {
      const lines = linesInside([moveLine(row, back)], part);
      return k % 2 === 0 ? lines : lines.map(turnedBack).reverse();
    }),
  );
}

/** Level lines from left to right across a region's box, top to bottom. */
function levelLines(region: Region, apartMm: number): Line[] {
  const { minX, minY, maxX, maxY } = regionBounds(region);
  const count = Math.max(1, Math.floor((maxY - minY) / apartMm));
  const first = (minY + maxY - (count - 1) * apartMm) / 2;
  return Array.from({ length: count }, (_, k) => {
    const y = first + k * apartMm;
    return polyline([
      { x: minX - apartMm, y },
      { x: maxX + apartMm, y },
    ]);
  });
}

const turnedBack = ({ cubics }: Line): Line => ({ cubics: reversed(cubics) });

/**
 * The region's outline, and within it rings `apartMm` apart until nothing is left: closed contours,
 * from the edge inward.
 */
export function ringContours(region: Region, apartMm: number): Cubics[] {
  const rings: Cubics[] = [];
  let ring = region;
  for (let k = 1; ring.contours.length > 0; k++) {
    rings.push(...ring.contours);
    // From the edge each time, so that what each offset strays does not add up.
    ring = offset(region, -k * apartMm);
  }
  return rings;
}
