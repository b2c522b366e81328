import { pen, regionOf } from './pen.js';
import type { Region } from './types.js';

/** Handle length of a quarter circle of radius 1, 4/3 (sqrt 2 - 1). */
const KAPPA = (4 / 3) * (Math.SQRT2 - 1);

/** An axis-parallel rectangle from its top left corner. */
export function rectangle(x: number, y: number, width: number, height: number): Region {
  return regionOf(
    pen(x, y)
      .lineTo(x + width, y)
      .lineTo(x + width, y + height)
      .lineTo(x, y + height)
      .close(),
  );
}

/** A rectangle with round corners; the radius is held to half the shorter side. */
export function roundedRectangle(
  x: number,
  y: number,
  width: number,
  height: number,
  radius: number,
): Region {
  const r = Math.min(radius, width / 2, height / 2);
  if (r <= 0) return rectangle(x, y, width, height);
  return regionOf(
    pen(x + r, y)
      .lineTo(x + width - r, y)
      .arcAround(x + width - r, y + r, 90)
      .lineTo(x + width, y + height - r)
      .arcAround(x + width - r, y + height - r, 90)
      .lineTo(x + r, y + height)
      .arcAround(x + r, y + height - r, 90)
      .lineTo(x, y + r)
      .arcAround(x + r, y + r, 90)
      .close(),
  );
}

/** An ellipse as four cubics, within 0.0273 % of the larger radius. */
export function ellipse(cx: number, cy: number, rx: number, ry: number): Region {
  const kx = rx * KAPPA;
  const ky = ry * KAPPA;
  return regionOf(
    pen(cx + rx, cy)
      .curveTo(cx + rx, cy + ky, cx + kx, cy + ry, cx, cy + ry)
      .curveTo(cx - kx, cy + ry, cx - rx, cy + ky, cx - rx, cy)
      .curveTo(cx - rx, cy - ky, cx - kx, cy - ry, cx, cy - ry)
      .curveTo(cx + kx, cy - ry, cx + rx, cy - ky, cx + rx, cy)
      .close(),
  );
}

export const circle = (cx: number, cy: number, radius: number): Region =>
  ellipse(cx, cy, radius, radius);
