import { intersect, subtract, union } from '../../src/geometry/boolean/boolean.js';
import { flatten, regionBounds } from '../../src/geometry/measure.js';
import { pen, regionOf } from '../../src/geometry/pen.js';
import { ellipse, rectangle, roundedRectangle } from '../../src/geometry/primitives.js';
import { EMPTY_REGION, type Line, type Region } from '../../src/geometry/types.js';
import type { ElementDescription } from '../../src/scene/parameter.js';
import type { Family, Growth, Plot } from '../../src/scenery/family.js';
import { randomFrom } from '../../src/scenery/random.js';

/** Windows 96 mm wide in a panel of 140 x 200, or none; origin at the window's foot. */
export const WINDOWS = {
  rectangle: rectangle(-48, -130, 96, 130),
  rounded: roundedRectangle(-48, -130, 96, 130, 6),
  arch: regionOf(pen(-48, -82).arcAround(0, -82, 180).lineTo(48, 0).lineTo(-48, 0).close()),
  pointed: regionOf(
    pen(-48, -60)
      .arcAround(48, -60, 60)
      .arcAround(-48, -60, 60)
      .lineTo(48, 0)
      .lineTo(-48, 0)
      .close(),
  ),
  circle: ellipse(0, -60, 46, 46),
  none: EMPTY_REGION,
} as const;
export type WindowName = keyof typeof WINDOWS;

export function plotWith(window: WindowName, changes: Partial<Plot> = {}): Plot {
  const panel = rectangle(-70, -165, 140, 200);
  const opening: Region = WINDOWS[window];
  return {
    side: 'sill',
    width: 96,
    height: 40,
    root: 10,
    smallestWeb: 1.5,
    smallestHole: 2,
    fineness: 0.3,
    frame: {
      card: opening.contours.length > 0 ? subtract(panel, [opening]) : panel,
      bounds: regionBounds(panel),
      window: opening,
    },
    ...changes,
  };
}

/** A wide, low window, 140 x 90 mm, for what grows along a sill. */
export function sillPlot(changes: Partial<Plot>): Plot {
  const window = rectangle(-70, -90, 140, 90);
  const sheet = rectangle(-100, -120, 200, 150);
  return {
    side: 'sill',
    width: 70,
    height: 24,
    root: 6,
    smallestWeb: 1,
    smallestHole: 1,
    fineness: 0,
    frame: { card: subtract(sheet, [window]), bounds: regionBounds(sheet), window },
    ...changes,
  };
}

/** The family's values: its defaults and what is given. */
export function valuesOf(
  family: ElementDescription,
  given: Record<string, number | string | boolean> = {},
): Record<string, number | string | boolean> {
  const defaults = Object.entries(family.parameters).map(([key, p]) => [key, p.default]);
  return { ...Object.fromEntries(defaults), ...given };
}

export const grown = (
  family: Family,
  plot: Plot,
  given: Record<string, number | string | boolean> = {},
  seed = 1,
): Growth => family.grow(plot, valuesOf(family, given), randomFrom(seed, family.name));

/** Frame and scenery as one card, as they are cut. */
export const cardWith = (plot: Plot, growth: Growth): Region =>
  union([plot.frame.card, intersect(subtract(growth.body, [growth.holes]), plot.frame.window)]);

/** Everything a growth holds, as text: equal texts mean equal bytes. */
export const written = (growth: Growth): string =>
  JSON.stringify(growth, (_, v) => (v instanceof Float64Array ? Array.from(v) : v));

/** Shortest distance from points of the lines to the region's edge, mm. */
export function clearance(lines: readonly Line[], region: Region): number {
  const edges = region.contours.map((c) => flatten(c, 0.005));
  let least = Infinity;
  for (const line of lines) {
    for (const p of flatten(line.cubics, 0.005)) {
      for (const edge of edges) {
        for (let i = 0; i + 1 < edge.length; i++) {
          const [a, b] = [edge[i], edge[i + 1]];
          const [dx, dy] = [b.x - a.x, b.y - a.y];
          const length = dx * dx + dy * dy;
          const t = length === 0 ? 0 : ((p.x - a.x) * dx + (p.y - a.y) * dy) / length;
          const f = Math.max(0, Math.min(1, t));
          least = Math.min(least, Math.hypot(a.x + f * dx - p.x, a.y + f * dy - p.y));
        }
      }
    }
  }
  return least;
}
