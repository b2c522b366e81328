import { pen, polyline } from '../../geometry/pen.js';
import type { Line } from '../../geometry/types.js';
import { openingOf } from '../brick/opening.js';
import type { Opening } from '../window/opening.js';

/** Bars run on behind the window's edge by this much, mm. */
const BEHIND_MM = 3;
/** Under a level head the tracery springs this share of the height down at most. */
const HEAD = 0.46;
const MOST_LIGHTS = 6;
/** Rise of an equilateral arch for its span. */
const EQUILATERAL = Math.sqrt(3) / 2;

/**
 * Intersecting tracery: mullions that each branch both ways at the springing, all arcs struck with
 * one radius, so that they cross as pointed arches over every group of lights. Under a pointed or
 * round head the outermost arcs are the window's own; under a level one they are struck to fit it.
 */
export function tracery({ window, bounds }: Opening, lightMm: number, barMm: number): Line[] {
  const { minX, maxX, minY, maxY } = bounds;
  const [width, height] = [maxX - minX, maxY - minY];
  const lights = Math.max(2, Math.min(MOST_LIGHTS, Math.round(width / lightMm)));
  const known = openingOf(window);
  const rise = known?.form === 'flat' ? Math.min(EQUILATERAL * width, HEAD * height) : null;
  const springing = rise === null ? (known?.springing ?? minY) : minY + rise;
  // An arch of span w and rise h is struck with h^2 / w + w / 4 (two-centred arch, from its geometry).
  const high = Math.max(springing - minY, width / 2);
  const radius = high ** 2 / width + width / 4;
  const places = Array.from({ length: lights + 1 }, (_, k) => minX + (k / lights) * width);
  const lines: Line[] = places.slice(1, -1).map((x) =>
    polyline([
      { x, y: springing },
      { x, y: maxY + BEHIND_MM },
    ]),
  );
  const drawn = rise === null ? places.slice(1, -1) : places;
  for (const x of drawn) {
    for (const way of [-1, 1] as const) {
      if (x + way * barMm <= minX || x + way * barMm >= maxX) continue;
      lines.push(arc(x, springing, way, radius, maxX, minX));
    }
  }
  const transom = known?.form === 'round' ? [] : [level(minX, maxX, springing)];
  return [...lines, ...transom];
}

/** From a mullion's top over to the side, up to the far edge of the window or a quarter circle. */
function arc(x: number, y: number, way: -1 | 1, radius: number, maxX: number, minX: number): Line {
  const far = way > 0 ? maxX - x : x - minX;
  const angle = Math.acos(Math.max(0, 1 - (far + BEHIND_MM) / radius));
  return pen(x, y)
    .arcAround(x + way * radius, y, (way * angle * 180) / Math.PI)
    .line();
}

const level = (minX: number, maxX: number, y: number): Line =>
  polyline([
    { x: minX - BEHIND_MM, y },
    { x: maxX + BEHIND_MM, y },
  ]);
